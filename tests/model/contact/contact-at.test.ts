import { describe, expect, test } from 'vitest';
import { contactAt, contactHeightAt } from '../../../src/model/contact/contact-at.ts';
import { buildBallFoot, buildFoot, type Foot } from '../../../src/model/contact/foot.ts';
import { buildKeyProfile } from '../../../src/model/contact/key-profile.ts';
import { fromDegrees } from '../../../src/model/radians.ts';
import { BALL_IN, cutAtMm, INCH, oneCut, SIX_CUTS } from './six-chamber-key.ts';

const BALL = buildBallFoot(BALL_IN * INCH);

/** How far above the root a foot stands in the one cut, `offIn` from its middle. in. */
function liftIn(cut: { flatIn: number; degrees: number }, foot: Foot, offIn = 0): number {
  return contactHeightAt(buildKeyProfile(oneCut(cut)), foot, INCH, offIn * INCH) / INCH - 0.3;
}

function pointedPin(tipFlatRadiusIn: number, halfDegrees: number): Foot {
  const includedAngle = fromDegrees(2 * halfDegrees);
  return buildFoot(
    { kind: 'cone', tipFlatDiameter: 2 * tipFlatRadiusIn * INCH, includedAngle },
    0.078 * INCH,
  );
}

// Worked by hand, inches: root plus what a ball of 5/32 in a 90 degree cut with a flat of .060 bridges, .00236.
describe('the six chambers of the key', () => {
  const profile = buildKeyProfile(SIX_CUTS);

  test.each([
    [1, 0.37136],
    [2, 0.42336],
    [3, 0.33536],
    [4, 0.39536],
    [5, 0.45536],
    [6, 0.30536],
  ])('hold the ball of chamber %i at %f with the key home', (chamber, expected) => {
    const { height, touches } = contactAt(profile, BALL, cutAtMm(chamber), 0);
    expect(height / INCH).toBeCloseTo(expected, 5);
    // The side of cut 5 towards the tip ends before it is tangent: cut 6 has taken it.
    const sides = chamber === 5 ? ['bow'] : ['bow', 'tip'];
    expect(touches.map(({ from }) => from)).toEqual(
      sides.map((side) => ({ kind: 'flank', cut: `cut ${chamber}`, side })),
    );
  });

  test.each([
    [1.25, 0.30536],
    [1, 0.45536],
    [0.75, 0.39536],
    [0.5, 0.33536],
    [0.25, 0.42336],
    [0.15, 0.48999],
    [0.05, 0.42136],
    [0, 0.37136],
  ])('lift the first ball, key still %f out, to %f', (travel, expected) => {
    const { height } = contactAt(profile, BALL, cutAtMm(1), travel * INCH);
    expect(height / INCH).toBeCloseTo(expected, 5);
    expect(contactHeightAt(profile, BALL, cutAtMm(1), travel * INCH)).toBeCloseTo(height, 12);
  });

  test('find no key before its tip arrives', () => {
    expect(contactAt(profile, BALL, cutAtMm(1), 1.7 * INCH)).toEqual({ height: -Infinity, touches: [] });
    expect(contactHeightAt(profile, BALL, cutAtMm(1), 1.7 * INCH)).toBe(-Infinity);
  });

  test('meet the very end of the nose at the widest place of the ball', () => {
    const reach = SIX_CUTS.tipAt + BALL.radius;
    const { height, touches } = contactAt(profile, BALL, reach, 0);
    expect(height).toBeCloseTo(SIX_CUTS.tipHeight - BALL.radius, 6);
    expect(touches).toHaveLength(1);
    expect(touches[0]).toMatchObject({ s: SIX_CUTS.tipAt, from: { kind: 'tip' } });
  });

  test('roll the ball over a peak on the corner between two cuts', () => {
    const { touches } = contactAt(profile, BALL, cutAtMm(1), 0.151 * INCH); // right over the peak at .501
    expect(touches).toHaveLength(1);
    expect(touches[0]?.slope).toBeCloseTo(0, 9);
    expect(touches[0]?.sides.map(({ share }) => share)).toEqual([
      expect.closeTo(0.5, 9),
      expect.closeTo(0.5, 9),
    ]);
  });
});

// Worked by hand, inches: (radius - (flat / 2) cos a) / sin a - radius, with a half the included angle.
describe('a ball in one cut', () => {
  test.each([
    [0.07, 90, BALL_IN, 0],
    [0.06, 90, BALL_IN, 0.00236],
    [0.045, 90, BALL_IN, 0.00986],
    [0.03, 90, BALL_IN, 0.01736],
    [0.06, 100, BALL_IN, 0],
    [0.045, 100, BALL_IN, 0.00498],
    [0.046, 90, 0.115, 0.00082],
    [0.031, 100, 0.115, 0.00455],
  ])('of flat %f at %i degrees: a ball of %f stands %f above the root', (flatIn, degrees, ballIn, lift) => {
    expect(liftIn({ flatIn, degrees }, buildBallFoot(ballIn * INCH))).toBeCloseTo(lift, 5);
  });

  test.each([
    [0.002, 90, 0.00436],
    [0.005, 90, 0.00736],
    [0.01, 90, 0.01236],
    [0.015, 90, 0.01736],
    [0.002, 100, 0.00037],
    [0.005, 100, 0.00288],
    [0.01, 100, 0.00708],
    [0.015, 100, 0.01127],
  ])('%f out of line at %i degrees stands %f above the root, either way', (offIn, degrees, lift) => {
    expect(liftIn({ flatIn: 0.06, degrees }, BALL, offIn)).toBeCloseTo(lift, 5);
    expect(liftIn({ flatIn: 0.06, degrees }, BALL, -offIn)).toBeCloseTo(lift, 5);
  });

  test('just wide enough touches root and both sides', () => {
    const flatIn = BALL_IN * (1 - Math.SQRT1_2) * Math.SQRT2;
    const { touches } = contactAt(buildKeyProfile(oneCut({ flatIn, degrees: 90 })), BALL, INCH, 0);
    expect(touches.map(({ from }) => from.kind)).toEqual(['flank', 'root', 'flank']);
  });

  test('touches the sides where they are tangent to it', () => {
    const { touches } = contactAt(buildKeyProfile(oneCut({ flatIn: 0.03, degrees: 90 })), BALL, INCH, 0);
    const reach = BALL.radius * Math.SQRT1_2;
    expect(touches.map(({ s }) => s - INCH)).toEqual([expect.closeTo(-reach, 9), expect.closeTo(reach, 9)]);
    expect(touches.map(({ slope }) => slope)).toEqual([expect.closeTo(-1, 12), expect.closeTo(1, 12)]);
  });
});

// Worked by hand, inches: the corner of the small flat or the rim of the pin, whichever meets its side first.
describe('a pointed pin in one cut', () => {
  test.each([
    [0.06, 0.02, 35, 0, 0],
    [0.06, 0.04, 35, 0, 0.01],
    [0.06, 0.02, 55, 0, 0.00739],
    [0.045, 0.02, 35, 0, 0],
    [0.045, 0.04, 35, 0, 0.0175],
    [0.045, 0.02, 55, 0, 0.01489],
    [0.06, 0.02, 35, 0.01, 0],
    [0.06, 0.02, 35, 0.015, 0.005],
  ])('flat %f, tip flat radius %f, half angle %i, %f out of line: %f', (flatIn, tipIn, half, offIn, lift) => {
    expect(liftIn({ flatIn, degrees: 90 }, pointedPin(tipIn, half), offIn)).toBeCloseTo(lift, 5);
  });

  test('lies on the root with its whole small flat, said once', () => {
    const { touches } = contactAt(
      buildKeyProfile(oneCut({ flatIn: 0.06, degrees: 90 })),
      pointedPin(0.02, 35),
      INCH,
      0,
    );
    expect(touches).toHaveLength(1);
    expect(touches[0]).toMatchObject({ s: INCH, slope: 0, from: { kind: 'root', cut: 'cut' } });
  });

  test('that lies against a side with its own side is said once too', () => {
    const { touches } = contactAt(
      buildKeyProfile(oneCut({ flatIn: 0.06, degrees: 90 })),
      pointedPin(0.02, 45),
      INCH,
      0.03 * INCH,
    );
    expect(touches).toHaveLength(1);
    expect(touches[0]?.from).toEqual({ kind: 'flank', cut: 'cut', side: 'tip' });
  });
});

test('a flat pin spans a cut from edge to edge of the blade', () => {
  const shape = { ...oneCut({ flatIn: 0.01, degrees: 90 }), bladeHeight: 0.32 * INCH };
  const { height, touches } = contactAt(
    buildKeyProfile(shape),
    buildFoot({ kind: 'flat' }, 0.078 * INCH),
    INCH,
    0,
  );
  expect(height).toBeCloseTo(shape.bladeHeight, 12);
  expect(touches.map(({ from }) => from.kind)).toEqual(['blade', 'blade']);
});
