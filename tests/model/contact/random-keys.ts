/** Random keys and feet, wider than any workshop meets: cuts that eat each other, V cuts, square tips, blunt pins. */
import fc from 'fast-check';
import { buildFoot, type Foot } from '../../../src/model/contact/foot.ts';
import type { KeyShape } from '../../../src/model/contact/key-profile.ts';
import type { EndShape } from '../../../src/model/end-shape.ts';
import { fromDegrees } from '../../../src/model/radians.ts';

export type RandomFoot = { readonly end: EndShape; readonly radius: number; readonly foot: Foot };

/** Even over the range; a plain random double would nearly always be tiny. */
export function between(min: number, max: number): fc.Arbitrary<number> {
  return fc.integer({ min: 0, max: 1_000_000 }).map((step) => min + ((max - min) * step) / 1_000_000);
}

export const anyKey: fc.Arbitrary<KeyShape> = fc
  .record({
    bladeHeight: between(8, 14),
    first: between(3, 9),
    spacing: between(3, 7),
    cuts: fc.array(
      fc.record({
        rootDepth: between(4, 14),
        rootFlat: fc.oneof(
          { weight: 1, arbitrary: fc.constant(0) },
          { weight: 6, arbitrary: between(0, 2.5) },
        ),
        degrees: between(60, 130),
        nudge: between(-0.6, 0.6),
      }),
      { minLength: 1, maxLength: 7 },
    ),
    beyond: between(0.5, 8),
    tipHeight: between(0.3, 4),
    rampDegrees: fc.oneof(
      { weight: 1, arbitrary: fc.constant(90) },
      { weight: 5, arbitrary: between(25, 65) },
    ),
  })
  .map(({ bladeHeight, first, spacing, cuts, beyond, tipHeight, rampDegrees }) => ({
    bladeHeight,
    stop: 'shoulder' as const,
    tipAt: first + spacing * (cuts.length - 1) + beyond,
    tipHeight,
    tipRamp: fromDegrees(rampDegrees),
    cuts: cuts.map(({ rootDepth, rootFlat, degrees, nudge }, i) => ({
      id: `cut ${i + 1}`,
      at: first + spacing * i + nudge,
      rootDepth,
      rootFlat,
      includedAngle: fromDegrees(degrees),
    })),
  }));

export const anyFoot: fc.Arbitrary<RandomFoot> = fc
  .record({
    radius: between(0.8, 2.6),
    share: between(0.02, 0.98),
    degrees: between(40, 150),
    kind: fc.nat(6),
  })
  .map(({ radius, share, degrees, kind }) => {
    const end = endOf(kind, radius, share, degrees);
    return { end, radius, foot: buildFoot(end, radius) };
  });

export const anyBall: fc.Arbitrary<Foot> = between(0.5, 2.6).map((radius) =>
  buildFoot({ kind: 'sphere' }, radius),
);

/** Where along the key: 0 before its first cut, 1 where a foot has just left its tip. */
export const anyShare = between(0, 0.9999);

export function axisAt(shape: KeyShape, foot: Foot, share: number): number {
  return -5 + share * (shape.tipAt + foot.radius + 5);
}

function endOf(kind: number, radius: number, share: number, degrees: number): EndShape {
  switch (kind) {
    case 0:
      return { kind: 'flat' };
    case 1:
      return { kind: 'bevel', width: radius * share, angle: fromDegrees(degrees / 2) };
    case 2:
      return { kind: 'radius', radius: radius * share };
    case 3:
      return { kind: 'dome', radius: radius / share };
    case 4:
      return { kind: 'cone', tipFlatDiameter: radius * share, includedAngle: fromDegrees(degrees) };
    case 5:
      return { kind: 'cup', mouthDiameter: radius * share, includedAngle: fromDegrees(degrees) };
    default:
      return { kind: 'sphere' };
  }
}
