/** Sections and end views of plug, sleeve and shell held against point-by-point questions in space. */
import { fc, test } from '@fast-check/vitest';
import { describe, expect } from 'vitest';
import { bodyEndView } from '../../src/geometry/body-end-view.ts';
import { bodySection } from '../../src/geometry/body-section.ts';
import { bodySpans, shellShape } from '../../src/geometry/body-sizes.ts';
import { flattenRegion } from '../../src/geometry/flatten.ts';
import { isInside } from '../../src/geometry/polygon.ts';
import type { Assembly } from '../../src/model/assembly/assembly.ts';
import type { MouthShape } from '../../src/model/window/window-input.ts';
import { isBodyMetal } from '../support/metal-at.ts';
import { sampleAssembly } from '../support/sample-assembly.ts';

const share = (from: number, to: number): fc.Arbitrary<number> =>
  fc.double({ min: from, max: to, noNaN: true });

const anyMouth: fc.Arbitrary<MouthShape> = fc.oneof(
  fc.constant<MouthShape>({ kind: 'sharp' }),
  fc.record({ kind: fc.constant('deburred along' as const), size: share(0.05, 0.4) }),
  fc.record({ kind: fc.constant('countersunk' as const), size: share(0.05, 0.6) }),
);

const anyAssembly = fc
  .record({
    mouth: anyMouth,
    hasSleeve: fc.boolean(),
    chambers: fc.integer({ min: 5, max: 7 }),
    crestDrop: fc.oneof(fc.constant(0), share(0.05, 0.5)),
    sideways: fc.oneof(fc.constant(0), share(-0.3, 0.3)),
  })
  .map((options) => sampleAssembly(options));

/** Compares a picture with the truth, unless an edge is near. Says whether it did. */
function comparePoint(
  isDrawn: () => boolean,
  isMetal: (dx: number, dy: number) => boolean,
  near: number,
): 'same' | 'differs' | 'near an edge' {
  const truth = isMetal(0, 0);
  const around = [-1, 0, 1].flatMap((i) => [-1, 0, 1].map((j) => isMetal(i * near, j * near)));
  if (!around.every((each) => each === truth)) return 'near an edge';
  return isDrawn() === truth ? 'same' : 'differs';
}

function heights(assembly: Assembly): { lowest: number; highest: number } {
  const shell = shellShape(assembly);
  return { lowest: shell.axisY - shell.barrelRadius - 1, highest: shell.topY + 1 };
}

describe('bodies cut along the plug', () => {
  test.prop([anyAssembly, share(-12, 12), share(0, 1), share(0, 1)], { numRuns: 1500 })(
    'are metal exactly where the body is, at any distance across',
    (assembly, offset, along, up) => {
      const { lowest, highest } = heights(assembly);
      const end = bodySpans(assembly)[0]!.back + 1;
      const z = -1 + along * (end + 1);
      const y = lowest + up * (highest - lowest);
      assembly.bodies.forEach((_, i) => {
        const isDrawn = (): boolean =>
          isInside(flattenRegion(bodySection(assembly, i, offset, 0), 1e-4), { x: z, y });
        const outcome = comparePoint(
          isDrawn,
          (dx, dy) => isBodyMetal(assembly, i, { x: offset, y: y + dy, z: z + dx }, 0),
          4e-3,
        );
        expect(outcome).not.toBe('differs');
      });
    },
  );

  test.prop([anyAssembly, share(-3, 3), share(-3.1, 3.1), share(0, 1), share(0, 1)], { numRuns: 1500 })(
    'are metal exactly where the turned body is',
    (withMouths, offset, turn, along, up) => {
      if (Math.abs(Math.cos(turn)) < 0.05) return;
      const assembly = withSharpMouths(withMouths);
      const z = along * bodySpans(assembly)[0]!.back;
      const radius = assembly.bodies[0]!.outerRadius;
      const y = -radius + up * 2 * radius;
      const isDrawn = (): boolean =>
        isInside(flattenRegion(bodySection(assembly, 0, offset, turn), 1e-4), { x: z, y });
      const outcome = comparePoint(
        isDrawn,
        (dx, dy) => isBodyMetal(assembly, 0, { x: offset, y: y + dy, z: z + dx }, turn),
        0.08,
      );
      expect(outcome).not.toBe('differs');
    },
  );

  test('split the plug between chambers where the plane passes through the keyway', () => {
    const assembly = sampleAssembly({ chambers: 5 });
    expect(bodySection(assembly, 0, 0, 0)).toHaveLength(7);
    expect(bodySection(assembly, 0, 1.5, 0)).toHaveLength(1);
    expect(bodySection(assembly, 0, 20, 0)).toHaveLength(0);
  });
});

describe('bodies cut across', () => {
  test.prop([anyAssembly, fc.integer({ min: 0, max: 4 }), share(-3, 3), share(-1, 1), share(0, 1)], {
    numRuns: 1500,
  })('are metal exactly where the body is, at any turn', (assembly, place, turn, across, up) => {
    const chamber = assembly.chambers[place]!;
    const { lowest, highest } = heights(assembly);
    const x = across * (shellShape(assembly).barrelRadius + 0.5);
    const y = lowest + up * (highest - lowest);
    assembly.bodies.forEach((body, i) => {
      const angle = body.role === 'shell' ? 0 : turn;
      const isDrawn = (): boolean =>
        isInside(flattenRegion(bodyEndView(assembly, i, chamber, angle), 1e-4), { x, y });
      const outcome = comparePoint(
        isDrawn,
        (dx, dy) => isBodyMetal(assembly, i, { x: x + dx, y: y + dy, z: chamber.z }, angle),
        2e-3,
      );
      expect(outcome).not.toBe('differs');
    });
  });
});

function withSharpMouths(assembly: Assembly): Assembly {
  return {
    ...assembly,
    chambers: assembly.chambers.map((chamber) => ({
      ...chamber,
      crestDrops: chamber.crestDrops.map(() => 0),
      holes: chamber.holes.map((hole) => ({
        ...hole,
        innerMouth: { kind: 'sharp' },
        outerMouth: { kind: 'sharp' },
      })),
    })),
  };
}
