import { test as propertyTest } from '@fast-check/vitest';
import { describe, expect, test } from 'vitest';
import {
  bridgingLift,
  flatToReachRoot,
  freeFloat,
  heightOfSides,
} from '../../../src/model/contact/bridging.ts';
import { contactAt, contactHeightAt } from '../../../src/model/contact/contact-at.ts';
import { buildBallFoot } from '../../../src/model/contact/foot.ts';
import { buildKeyProfile } from '../../../src/model/contact/key-profile.ts';
import { fromDegrees } from '../../../src/model/radians.ts';
import { between } from './random-keys.ts';
import { BALL_IN, INCH, oneCut } from './six-chamber-key.ts';

const SEED = 20_706;
const RADIUS_IN = BALL_IN / 2;

test('a ball of 5/32 reaches the root from these flats on', () => {
  // Worked by hand, inches.
  expect(flatToReachRoot(RADIUS_IN, fromDegrees(90))).toBeCloseTo(0.06472, 5);
  expect(flatToReachRoot(RADIUS_IN, fromDegrees(100))).toBeCloseTo(0.05687, 5);
});

test('a cut wider than that may lie off its chamber by half the rest', () => {
  const cut = { rootFlat: 0.07472, includedAngle: fromDegrees(90) };
  expect(freeFloat(RADIUS_IN, cut)).toBeCloseTo(0.005, 5);
  expect(freeFloat(RADIUS_IN, { ...cut, rootFlat: 0.06 })).toBe(0);
});

describe(`one cut with long sides, seed ${SEED}`, () => {
  propertyTest.prop([between(0, 0.09), between(60, 130), between(0.04, 0.1)], {
    seed: SEED,
    numRuns: 400,
    endOnFailure: true,
  })('holds the ball on the profile where the closed form says', (flatIn, degrees, radiusIn) => {
    const shape = oneCut({ flatIn, degrees });
    const [cut] = shape.cuts;
    if (!cut) throw new Error('one cut expected');
    const radius = radiusIn * INCH;
    const profile = buildKeyProfile(shape);
    const foot = buildBallFoot(2 * radius);
    const lift = bridgingLift(radius, cut);
    expect(contactHeightAt(profile, foot, INCH, 0) - cut.rootDepth).toBeCloseTo(lift, 9);
    expect(lift === 0).toBe(cut.rootFlat >= flatToReachRoot(radius, cut.includedAngle));
    const { touches } = contactAt(profile, foot, INCH, 0);
    if (lift > 1e-6)
      expect((touches[0]?.height ?? 0) - cut.rootDepth).toBeCloseTo(heightOfSides(radius, cut), 9);
    const float = freeFloat(radius, cut);
    expect(contactHeightAt(profile, foot, INCH, float) - cut.rootDepth).toBeCloseTo(lift, 9);
    expect(contactHeightAt(profile, foot, INCH, float + 0.01) - cut.rootDepth).toBeGreaterThan(lift + 1e-4);
  });
});
