/** Sections of turned parts held against the drop of their ends, which the mechanics uses and which shares no code. */
import { fc, test } from '@fast-check/vitest';
import { describe, expect } from 'vitest';
import { flattenRegion } from '../../src/geometry/flatten.ts';
import { regionArea } from '../../src/geometry/outline.ts';
import { partProfile } from '../../src/geometry/part-profile.ts';
import { sectionOfProfile } from '../../src/geometry/part-section.ts';
import { isInside } from '../../src/geometry/polygon.ts';
import type { StackPart } from '../../src/model/assembly/assembly.ts';
import { endDrop, type EndShape } from '../../src/model/end-shape.ts';
import { asRadians } from '../../src/model/radians.ts';
import { isPartMetal } from '../support/metal-at.ts';

const share = (from: number, to: number): fc.Arbitrary<number> =>
  fc.double({ min: from, max: to, noNaN: true });

function anyEnd(radius: number): fc.Arbitrary<EndShape> {
  return fc.oneof(
    fc.constant<EndShape>({ kind: 'flat' }),
    fc.record({
      kind: fc.constant('bevel' as const),
      width: share(0.05, 0.9).map((x) => x * radius),
      angle: share(0.3, 1.1).map(asRadians),
    }),
    fc.record({ kind: fc.constant('radius' as const), radius: share(0.05, 1).map((x) => x * radius) }),
    fc.record({ kind: fc.constant('dome' as const), radius: share(1.02, 6).map((x) => x * radius) }),
    fc.record({
      kind: fc.constant('cone' as const),
      tipFlatDiameter: share(0, 1.6).map((x) => x * radius),
      includedAngle: share(1.2, 2.6).map(asRadians),
    }),
    fc.record({
      kind: fc.constant('cup' as const),
      mouthDiameter: share(0.3, 1.9).map((x) => x * radius),
      includedAngle: share(1.4, 2.6).map(asRadians),
    }),
  );
}

const anyPart: fc.Arbitrary<StackPart> = share(1, 2.4).chain((radius) =>
  fc
    .record({
      lower: anyEnd(radius),
      upper: anyEnd(radius),
      body: share(2, 9),
      hasWaist: fc.boolean(),
      narrow: share(0.2, 0.9),
    })
    .map(({ lower, upper, body, hasWaist, narrow }): StackPart => {
      const depth = (end: EndShape): number =>
        Math.max(endDrop(end, radius, 0), endDrop(end, radius, radius));
      const length = depth(lower) + depth(upper) + body;
      return {
        part: 'part',
        label: 'part',
        role: 'driver',
        radius,
        length,
        lower,
        upper,
        seat: 0,
        waist: hasWaist
          ? { kind: 'mushroom', from: depth(lower) + body * 0.2, length: body * 0.5, radius: radius * narrow }
          : null,
        solid: 0,
        wire: 0,
        coils: 0,
      };
    }),
);

/** The area of the cut, summed up from upright strips between the two ends. */
function areaByStrips(part: StackPart, offset: number): number {
  const columns = 600;
  const reach = Math.sqrt(part.radius ** 2 - offset ** 2);
  let sum = 0;
  for (let column = 0; column < columns; column++) {
    const x = ((column + 0.5) / columns) * reach;
    const around = Math.hypot(x, offset);
    const low = endDrop(part.lower, part.radius, around);
    const high = part.length - endDrop(part.upper, part.radius, around);
    sum += Math.max(0, high - low) * 2 * (reach / columns);
  }
  return sum;
}

describe('sections of turned parts', () => {
  test.prop([anyPart, share(0, 0.97)], { numRuns: 300 })(
    'have the area that the drops of their ends enclose, at any distance from the axis',
    (part, at) => {
      const bare = { ...part, waist: null };
      const offset = at * bare.radius;
      const area = regionArea(sectionOfProfile(partProfile(bare), offset));
      const expected = areaByStrips(bare, offset);
      expect(Math.abs(area - expected)).toBeLessThanOrEqual(1e-3 * expected + 1e-3);
    },
  );

  test.prop([anyPart, share(0, 0.97), share(-1.1, 1.1), share(-0.05, 1.05)], { numRuns: 2000 })(
    'hold a point exactly when the solid does',
    (part, at, across, up) => {
      const offset = at * part.radius;
      const x = across * part.radius;
      const y = up * part.length;
      const { waist } = part;
      const flare = (height: number): number =>
        waist === null
          ? 0
          : waist.radius + ((part.radius - waist.radius) * (height - waist.from)) / waist.length;
      const isThere = (dx: number, dy: number): boolean => {
        const around = Math.hypot(x + dx, offset);
        const isInWaist =
          waist !== null &&
          y + dy > waist.from &&
          y + dy < waist.from + waist.length &&
          around > flare(y + dy);
        return isPartMetal({ ...part, waist: null }, { x: x + dx, y: y + dy, z: offset }) && !isInWaist;
      };
      const near = 1e-3;
      const truth = isThere(0, 0);
      const sameAround = [isThere(near, 0), isThere(-near, 0), isThere(0, near), isThere(0, -near)];
      if (!sameAround.every((each) => each === truth)) return;
      const polygons = flattenRegion(sectionOfProfile(partProfile(part), offset), 1e-4);
      expect(isInside(polygons, { x, y })).toBe(truth);
    },
  );

  test('of a domed pin through the axis is its rectangle less the corners over the dome', () => {
    const part: StackPart = {
      part: 'pin',
      label: 'pin',
      role: 'bottomPin',
      radius: 2,
      length: 8,
      lower: { kind: 'flat' },
      upper: { kind: 'dome', radius: 9 },
      seat: 0,
      waist: null,
      solid: 0,
      wire: 0,
      coils: 0,
    };
    const half = Math.asin(2 / 9);
    const rim = 9 - Math.sqrt(81 - 4);
    const segment = (81 / 2) * (2 * half - Math.sin(2 * half));
    const area = regionArea(sectionOfProfile(partProfile(part), 0));
    expect(area).toBeCloseTo(4 * (8 - rim) + segment, 10);
  });

  test('of a ball beside its axis is a smaller circle, drawn as true arcs', () => {
    const ball: StackPart = {
      part: 'ball',
      label: 'ball',
      role: 'ball',
      radius: 2,
      length: 4,
      lower: { kind: 'sphere' },
      upper: { kind: 'sphere' },
      seat: 0,
      waist: null,
      solid: 0,
      wire: 0,
      coils: 0,
    };
    const region = sectionOfProfile(partProfile(ball), 1.2);
    expect(regionArea(region)).toBeCloseTo(Math.PI * 1.6 ** 2, 10);
    expect(region[0]?.edges.every((edge) => edge.kind === 'arc')).toBe(true);
  });

  test('splits where the plane passes outside the waist', () => {
    const spool: StackPart = {
      part: 'driver',
      label: 'driver',
      role: 'driver',
      radius: 2,
      length: 7,
      lower: { kind: 'flat' },
      upper: { kind: 'flat' },
      seat: 0,
      waist: { kind: 'spool', from: 2, length: 3, radius: 1 },
      solid: 0,
      wire: 0,
      coils: 0,
    };
    expect(sectionOfProfile(partProfile(spool), 0.5)).toHaveLength(1);
    expect(sectionOfProfile(partProfile(spool), 1.5)).toHaveLength(2);
  });
});
