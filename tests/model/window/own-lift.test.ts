import { describe, expect, it } from 'vitest';
import { asRadians, fromDegrees } from '../../../src/model/radians.ts';
import { heldByLower, nesting } from '../../../src/model/window/own-lift.ts';
import { denseHeld } from '../../support/dense-window.ts';
import { domeOf, inch, REFERENCE, withTop } from '../../support/reference-split.ts';
import { between, type EndKind, randomWindow, seededRandom } from '../../support/window-cases.ts';

const CONVEX: EndKind[] = ['flat', 'bevel', 'radius', 'dome', 'cone', 'sphere'];

describe('held by the lower part', () => {
  it('agrees with dense sampling for every pair of ends', () => {
    const random = seededRandom(61);
    for (let i = 0; i < 400; i++) {
      const input = randomWindow(random, CONVEX, CONVEX);
      // as far as the two still stand over each other
      const apart = (0.8 * (input.lower.radius + input.upper.radius)) / input.lineRadius;
      const turn = asRadians(between(random, 0, Math.min(0.25, apart)));
      const top = input.lineRadius + between(random, -0.4, 0.3);
      const held = heldByLower(input)(top, turn);
      expect(Math.abs(held - denseHeld(input, top, turn)), JSON.stringify({ turn, input })).toBeLessThan(
        1e-7,
      );
    }
  });

  it('hardly moves the driver on a top domed to the line, and lifts it on a flat one', () => {
    const turn = asRadians(0.01);
    expect(heldByLower(REFERENCE)(inch(0.374), turn)).toBeCloseTo(inch(0.374), 9);
    const flat = heldByLower({
      ...withTop({ kind: 'flat' }),
      upper: { bottom: { kind: 'flat' }, radius: inch(0.078), sideways: 0 },
    });
    // worked by hand: the corner rises by .078 sin turn and falls by .374 (1 - cos turn)
    const lift = 0.078 * Math.sin(turn) - 0.374 * (1 - Math.cos(turn));
    expect((flat(inch(0.374), turn) - inch(0.374)) / 25.4).toBeCloseTo(lift, 9);
  });

  it('is the same in both directions', () => {
    const held = heldByLower(withTop({ kind: 'flat' }, inch(0.002)));
    expect(held(9.4, 0.02)).toBe(held(9.4, -0.02));
  });
});

describe('nesting', () => {
  const upper = (bottom: typeof REFERENCE.upper.bottom) => ({ ...REFERENCE.upper, bottom });
  const dimple = { kind: 'cup', mouthDiameter: inch(0.09), includedAngle: fromDegrees(118) } as const;

  it('is nothing between ends without a dimple, or flat on a dimple', () => {
    expect(nesting(REFERENCE.lower, REFERENCE.upper)).toBe(0);
    expect(nesting(withTop(dimple).lower, upper({ kind: 'flat' }))).toBeCloseTo(0, 9);
  });

  it('of a ball in a dimple is the textbook figure, on the rim and on the cone', () => {
    const radius = inch(0.078);
    const ball = { ...REFERENCE.upper, bottom: { kind: 'sphere' } as const };
    // a ball on a sharp rim of diameter m sinks by r - sqrt(r^2 - (m/2)^2)
    expect(nesting(withTop({ ...dimple, includedAngle: fromDegrees(60) }).lower, ball)).toBeCloseTo(
      radius - Math.sqrt(radius ** 2 - inch(0.045) ** 2),
      7,
    );
    // in a cone of half angle g by (m/2) / tan g + r - r / sin g
    const half = (70 * Math.PI) / 180;
    const shallow = withTop({ ...dimple, includedAngle: fromDegrees(140) }).lower;
    expect(nesting(shallow, ball)).toBeCloseTo(
      inch(0.045) / Math.tan(half) + radius - radius / Math.sin(half),
      7,
    );
  });

  it('is the same whichever of the two ends is dimpled', () => {
    const one = nesting(withTop(dimple).lower, upper(domeOf(0.374)));
    const other = nesting(withTop(domeOf(0.374)).lower, upper(dimple));
    expect(one).toBeGreaterThan(inch(0.002));
    expect(other).toBeCloseTo(one, 12);
  });

  it('never sinks a part deeper than the dimple', () => {
    const random = seededRandom(62);
    for (let i = 0; i < 500; i++) {
      const { lower, upper: part } = randomWindow(random, ['cup'], [...CONVEX, 'cup']);
      if (lower.top.kind !== 'cup') continue;
      const depth = lower.top.mouthDiameter / 2 / Math.tan(lower.top.includedAngle / 2);
      const sunk = nesting(lower, part);
      expect(sunk).toBeGreaterThanOrEqual(0);
      expect(sunk).toBeLessThanOrEqual(depth + (part.bottom.kind === 'cup' ? Infinity : 1e-9));
    }
  });
});
