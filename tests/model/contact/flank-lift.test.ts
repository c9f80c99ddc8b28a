import { test as propertyTest } from '@fast-check/vitest';
import { describe, expect, test } from 'vitest';
import { contactHeightAt } from '../../../src/model/contact/contact-at.ts';
import { flankLift } from '../../../src/model/contact/flank-lift.ts';
import { buildBallFoot } from '../../../src/model/contact/foot.ts';
import { buildKeyProfile, type KeyShape } from '../../../src/model/contact/key-profile.ts';
import { fromDegrees } from '../../../src/model/radians.ts';
import { anyFoot, anyKey, anyShare, axisAt } from './random-keys.ts';
import { BALL_IN, cutAtMm, INCH, SIX_CUTS } from './six-chamber-key.ts';

const SEED = 20_707;
const BALL = buildBallFoot(BALL_IN * INCH);

function liftOf(shape: KeyShape, z: number, travel?: number): NonNullable<ReturnType<typeof flankLift>> {
  const lift = flankLift(shape, buildKeyProfile(shape), BALL, z, travel);
  if (!lift) throw new Error('a lift expected');
  return lift;
}

// Worked by hand, inches.
describe('the lift above the root', () => {
  test('is all bridging for a cut under its chamber', () => {
    const lift = liftOf(SIX_CUTS, cutAtMm(1));
    expect(lift).toMatchObject({ cut: 'cut 1', outOfLine: 0, outOfLineLift: 0 });
    expect(lift.bridging / INCH).toBeCloseTo(0.00236, 5);
    expect(lift.lift / INCH).toBeCloseTo(0.00236, 5);
    expect(lift.neighbours).toBeCloseTo(0, 12);
  });

  test('has .005 more for a key that is .005 short of home', () => {
    const lift = liftOf(SIX_CUTS, cutAtMm(1), 0.005 * INCH);
    expect(lift.outOfLine / INCH).toBeCloseTo(-0.005, 12);
    expect(lift.bridging / INCH).toBeCloseTo(0.00236, 5);
    expect(lift.outOfLineLift / INCH).toBeCloseTo(0.005, 9);
    expect(lift.lift / INCH).toBeCloseTo(0.00736, 5);
  });

  test('is less where a deeper neighbour has eaten the flat past its middle', () => {
    const form = { rootFlat: 0.08 * INCH, includedAngle: fromDegrees(90) };
    const shape: KeyShape = {
      ...SIX_CUTS,
      cuts: [
        { id: 'shallow', at: 0.25 * INCH, rootDepth: 0.4 * INCH, ...form },
        { id: 'deep', at: 0.41 * INCH, rootDepth: 0.25 * INCH, ...form },
      ],
    };
    const lift = liftOf(shape, 0.25 * INCH);
    expect(lift.bridging).toBe(0);
    expect(lift.neighbours).toBeLessThan(-1e-3);
    expect(lift.lift).toBeCloseTo(lift.neighbours, 12);
  });
});

test('a key without cuts, or no key under the foot, has no lift to speak of', () => {
  const uncut = { ...SIX_CUTS, cuts: [] };
  expect(flankLift(uncut, buildKeyProfile(uncut), BALL, 10)).toBeUndefined();
  expect(flankLift(SIX_CUTS, buildKeyProfile(SIX_CUTS), BALL, 100)).toBeUndefined();
});

describe(`random keys, seed ${SEED}`, () => {
  propertyTest.prop([anyKey, anyFoot, anyShare], { seed: SEED, numRuns: 400, endOnFailure: true })(
    'have lifts whose parts add up, and neighbours that only take away',
    (shape, { foot }, share) => {
      const profile = buildKeyProfile(shape);
      const axis = axisAt(shape, foot, share);
      const lift = flankLift(shape, profile, foot, axis);
      const cut = shape.cuts.find(({ id }) => id === lift?.cut);
      if (!lift || !cut) throw new Error('a lift expected');
      expect(lift.bridging + lift.neighbours + lift.outOfLineLift).toBeCloseTo(lift.lift, 9);
      expect(lift.lift).toBeCloseTo(contactHeightAt(profile, foot, axis, 0) - cut.rootDepth, 12);
      expect(lift.neighbours).toBeLessThanOrEqual(1e-9);
      expect(Math.abs(lift.outOfLine)).toBe(Math.min(...shape.cuts.map(({ at }) => Math.abs(at - axis))));
    },
  );
});
