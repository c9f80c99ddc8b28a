/**
 * A ball in a cut with a flat root. The published side is the three-wire geometry of a sharp V (wire centre at
 * radius / sin(half angle) above the root); a flat root of width w is that V cut off where it is w wide, which lowers the
 * centre by (w / 2) / tan(half angle). Worked out from there, inches; not a published table itself.
 */
import { describe, expect, test } from 'vitest';
import { flatToReachRoot } from '../../src/model/contact/bridging.ts';
import { contactHeightAt } from '../../src/model/contact/contact-at.ts';
import { buildBallFoot } from '../../src/model/contact/foot.ts';
import { buildKeyProfile } from '../../src/model/contact/key-profile.ts';
import { fromDegrees } from '../../src/model/radians.ts';

const INCH = 25.4;

const ROWS = [
  { ball: 0.115, flat: 0.031, degrees: 100, needed: 0.04186, centre: 0.06205, lift: 0.00455 },
  { ball: 0.115, flat: 0.08, degrees: 90, needed: 0.04763, centre: 0.0575, lift: 0 },
  { ball: 0.115, flat: 0.031, degrees: 90, needed: 0.04763, centre: 0.06582, lift: 0.00832 },
  { ball: 0.115, flat: 0, degrees: 90, needed: 0.04763, centre: 0.08132, lift: 0.02382 },
  { ball: 0.125, flat: 0.05, degrees: 90, needed: 0.05178, centre: 0.06339, lift: 0.00089 },
  { ball: 0.15625, flat: 0.05, degrees: 90, needed: 0.06472, centre: 0.08549, lift: 0.00736 },
  { ball: 0.1875, flat: 0.05, degrees: 90, needed: 0.07767, centre: 0.10758, lift: 0.01383 },
  { ball: 0.1875, flat: 0.08, degrees: 90, needed: 0.07767, centre: 0.09375, lift: 0 },
];

describe.each(ROWS)(
  'a ball of $ball in a flat of $flat at $degrees degrees',
  ({ ball, flat, degrees, ...expected }) => {
    const root = 0.3 * INCH;
    const includedAngle = fromDegrees(degrees);
    const profile = buildKeyProfile({
      bladeHeight: INCH,
      stop: 'shoulder',
      tipAt: 3 * INCH,
      tipHeight: 0.1 * INCH,
      tipRamp: fromDegrees(45),
      cuts: [{ id: 'cut', at: INCH, rootDepth: root, rootFlat: flat * INCH, includedAngle }],
    });
    const lift = (contactHeightAt(profile, buildBallFoot(ball * INCH), INCH, 0) - root) / INCH;

    test('stands as high above the root', () => {
      expect(lift).toBeCloseTo(expected.lift, 5);
      expect(lift + ball / 2).toBeCloseTo(expected.centre, 5);
    });

    test('needs this flat to reach the root', () => {
      expect(flatToReachRoot(ball / 2, includedAngle)).toBeCloseTo(expected.needed, 5);
    });

    test('stands where the sharp V puts it, less the cut-off point', () => {
      const half = includedAngle / 2;
      const inSharpV = ball / 2 / Math.sin(half) - flat / 2 / Math.tan(half);
      expect(lift + ball / 2).toBeCloseTo(Math.max(ball / 2, inSharpV), 9);
    });
  },
);
