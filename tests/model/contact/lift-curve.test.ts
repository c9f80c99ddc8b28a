import { describe, expect, test } from 'vitest';
import { buildContactCurve } from '../../../src/model/contact/contact-curve.ts';
import { buildBallFoot, buildFoot } from '../../../src/model/contact/foot.ts';
import { buildKeyProfile } from '../../../src/model/contact/key-profile.ts';
import {
  firstTouchTravel,
  highestOn,
  type LiftCurve,
  liftAt,
  liftCurve,
  liftLine,
  type Steepest,
  steepestOn,
} from '../../../src/model/contact/lift-curve.ts';
import { toDegrees } from '../../../src/model/radians.ts';
import { BALL_IN, cutAtMm, INCH, SIX_CUTS } from './six-chamber-key.ts';

const CONTACT = buildContactCurve(buildKeyProfile(SIX_CUTS), buildBallFoot(BALL_IN * INCH));
const WAY = { rest: 0.2 * INCH, fromTravel: 2 * INCH, toTravel: 0 };

function degreesOf(climb: Steepest | undefined): number {
  return climb ? toDegrees(climb.angle) : NaN;
}

function chamber(number: number): LiftCurve {
  return liftCurve(CONTACT, cutAtMm(number), WAY);
}

// Worked by hand, inches.
describe('the lift in chamber 1', () => {
  test.each([
    [1.7, 0.2],
    [1.25, 0.30536],
    [1, 0.45536],
    [0.75, 0.39536],
    [0.5, 0.33536],
    [0.25, 0.42336],
    [0.15, 0.48999],
    [0.05, 0.42136],
    [0, 0.37136],
  ])('with the key %f out is %f', (travel, lift) => {
    expect(liftAt(chamber(1), travel * INCH) / INCH).toBeCloseTo(lift, 5);
  });

  test('starts when the tip comes under the ball', () => {
    expect(firstTouchTravel(CONTACT, cutAtMm(1)) / INCH).toBeCloseTo(1.95 + BALL_IN / 2 - 0.35, 12);
  });
});

describe('the largest lift', () => {
  test.each([
    [1, 0.5],
    [2, 0.5],
    [3, 0.5],
    [4, 0.5],
    [5, 0.473],
    [6, 0.3415],
  ])('of chamber %i is %f', (number, height) => {
    expect(highestOn(chamber(number)).height / INCH).toBeCloseTo(height, 9);
  });

  test('lasts as long as the ball rolls on the uncut blade', () => {
    // The blade between cuts 4 and 5 runs from s 1.237 to 1.273.
    const { travel, until } = highestOn(chamber(1));
    expect(travel / INCH).toBeCloseTo(1.273 - 0.35, 9);
    expect(until / INCH).toBeCloseTo(1.237 - 0.35, 9);
  });

  test('of the last chamber is over the peak between its cut and the tip', () => {
    const { travel, until } = highestOn(chamber(6));
    expect(travel / INCH).toBeCloseTo(1.6685 - 1.6, 9);
    expect(until).toBe(travel);
  });

  test('is the rest where the key never lifts the stack', () => {
    const idle = liftCurve(CONTACT, cutAtMm(6), { ...WAY, rest: 0.6 * INCH });
    expect(highestOn(idle)).toEqual({ height: 0.6 * INCH, travel: WAY.fromTravel, until: 0 });
    expect(steepestOn(idle)).toEqual({});
  });
});

describe('the steepest climb', () => {
  test('is a side of a cut at 45 degrees, both ways', () => {
    const { goingIn, comingOut } = steepestOn(chamber(1));
    expect(degreesOf(goingIn)).toBeCloseTo(45, 9);
    expect(goingIn?.from).toMatchObject({ kind: 'flank', side: 'bow' });
    expect(degreesOf(comingOut)).toBeCloseTo(45, 9);
    expect(comingOut?.from).toMatchObject({ kind: 'flank', side: 'tip' });
  });

  test('going in over a nose that meets the ball above its bottom is as steep as the ball is there', () => {
    // A nose .025 above the lowest point of the ball: acos(.05313 / .07813) = 47.15 degrees, past the ramp's 45.
    const radius = BALL_IN / 2;
    const curve = liftCurve(CONTACT, cutAtMm(6), { ...WAY, rest: 0.035 * INCH });
    const { goingIn } = steepestOn(curve);
    expect(goingIn?.angle).toBeCloseTo(Math.acos((radius - 0.025) / radius), 9);
    expect(goingIn?.from).toEqual({ kind: 'tip' });
    expect((goingIn?.height ?? 0) / INCH).toBeCloseTo(0.035, 9);
  });

  test('is upright when the nose meets the side of a flat pin', () => {
    const contact = buildContactCurve(buildKeyProfile(SIX_CUTS), buildFoot({ kind: 'flat' }, 0.078 * INCH));
    const low = steepestOn(liftCurve(contact, cutAtMm(1), { ...WAY, rest: 0.05 * INCH }));
    expect(degreesOf(low.goingIn)).toBe(90);
    const high = steepestOn(liftCurve(contact, cutAtMm(1), { ...WAY, rest: 0.061 * INCH }));
    expect(degreesOf(high.goingIn)).toBeCloseTo(45, 9);
  });
});

test('the drawn line follows the curve within its tolerance and keeps every end of a piece', () => {
  const curve = chamber(1);
  const line = liftLine(curve, 0.001);
  expect(line[0]?.travel).toBe(0);
  expect(line.at(-1)?.travel).toBe(WAY.fromTravel);
  for (const { from } of curve.pieces) expect(line.some(({ travel }) => travel === from)).toBe(true);
  const strays = line.slice(1).map((point, i) => {
    const before = line[i];
    if (!before) throw new Error('no point before');
    const middle = (before.travel + point.travel) / 2;
    return Math.abs(liftAt(curve, middle) - (before.height + point.height) / 2);
  });
  expect(Math.max(...strays)).toBeLessThan(0.002); // upright where the arc is steep, so past the tolerance across it
});
