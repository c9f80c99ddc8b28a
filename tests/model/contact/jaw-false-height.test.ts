import { describe, expect, test } from 'vitest';
import { contactHeightAt } from '../../../src/model/contact/contact-at.ts';
import { buildFoot } from '../../../src/model/contact/foot.ts';
import { jawFalseHeight } from '../../../src/model/contact/jaw-false-height.ts';
import { buildKeyProfile } from '../../../src/model/contact/key-profile.ts';
import { fromDegrees } from '../../../src/model/radians.ts';
import { INCH, oneCut } from './six-chamber-key.ts';

// Worked by hand, inches: flat .060, 90 degrees.
describe('a caliper jaw in a cut', () => {
  const cut = { rootFlat: 0.06, includedAngle: fromDegrees(90) };

  test.each([
    [0.03, 0, 0],
    [0.075, 0, 0.0075],
    [0.125, 0, 0.0325],
    [0.03, 0.01, 0],
    [0.075, 0.01, 0.0175],
    [0.125, 0.01, 0.0425],
  ])('of width %f, %f off the middle, reads %f too high', (jaw, off, high) => {
    expect(jawFalseHeight(jaw, cut, off)).toBeCloseTo(high, 12);
  });

  test('reads what a flat foot of its width finds on the key', () => {
    const profile = buildKeyProfile(oneCut({ flatIn: 0.06, degrees: 104 }));
    const onKey =
      contactHeightAt(profile, buildFoot({ kind: 'flat' }, 0.0625 * INCH), INCH, 0.004 * INCH) / INCH - 0.3;
    expect(jawFalseHeight(0.125, { ...cut, includedAngle: fromDegrees(104) }, 0.004)).toBeCloseTo(onKey, 12);
  });
});
