import { fc, test as propertyTest } from '@fast-check/vitest';
import { describe, expect, test } from 'vitest';
import { contactHeightAt } from '../../../src/model/contact/contact-at.ts';
import { buildContactCurve, settledHeight } from '../../../src/model/contact/contact-curve.ts';
import { eatenFlats } from '../../../src/model/contact/eaten-flats.ts';
import { buildBallFoot } from '../../../src/model/contact/foot.ts';
import { buildKeyProfile, type KeyShape } from '../../../src/model/contact/key-profile.ts';
import {
  contactOverBall,
  type MeasuredCut,
  overBallContact,
  rootDepthFromOverBall,
  withRootsFromBalls,
} from '../../../src/model/contact/over-ball.ts';
import { fromDegrees } from '../../../src/model/radians.ts';
import { between } from './random-keys.ts';
import { BALL_IN, cutAtMm, INCH, ROOT_DEPTHS_IN, SIX_CUTS } from './six-chamber-key.ts';

const SEED = 20_708;
const BALL_MM = BALL_IN * INCH;

/** Reads every cut over a ball, as a caliper without error would. */
function readOverBall(shape: KeyShape, ballDiameter: number): MeasuredCut[] {
  const curve = buildContactCurve(buildKeyProfile(shape), buildBallFoot(ballDiameter));
  return shape.cuts.map(({ id, at }) => ({
    cut: id,
    ballDiameter,
    reading: settledHeight(curve, at) + ballDiameter,
  }));
}

/** The key with no root depth known yet. */
function unread(shape: KeyShape): KeyShape {
  return { ...shape, cuts: shape.cuts.map((cut) => ({ ...cut, rootDepth: shape.bladeHeight })) };
}

// Worked by hand, inches.
describe('a reading over the ball', () => {
  test('less the ball is where it rests', () => {
    expect(contactOverBall(0.52761, BALL_IN)).toBeCloseTo(0.37136, 9);
  });

  test('gives the root of a bridged cut', () => {
    const cut = { rootFlat: 0.06 * INCH, includedAngle: fromDegrees(90) };
    const reading = (0.37136 + BALL_IN) * INCH;
    const root = rootDepthFromOverBall({ reading, ballDiameter: BALL_MM, cut, bladeHeight: 0.5 * INCH });
    expect(root / INCH).toBeCloseTo(0.369, 5);
  });

  test('gives the root of a wide cut as it is', () => {
    const cut = { rootFlat: 0.07 * INCH, includedAngle: fromDegrees(90) };
    const reading = 0.4 * INCH + BALL_MM;
    const root = rootDepthFromOverBall({ reading, ballDiameter: BALL_MM, cut, bladeHeight: 0.5 * INCH });
    expect(root / INCH).toBeCloseTo(0.4, 12);
  });

  test('lacks .005 for a cut .005 off its chamber, with a ball that bridges it', () => {
    const reading = { cut: 'cut 1', ballDiameter: BALL_MM, reading: (0.37136 + BALL_IN) * INCH };
    const found = overBallContact(
      unread(SIX_CUTS),
      reading,
      buildBallFoot(BALL_MM),
      cutAtMm(1) - 0.005 * INCH,
    );
    expect(found.seated / INCH).toBeCloseTo(0.37136, 9);
    expect(found.lacks / INCH).toBeCloseTo(0.005, 9);
    expect(found.contact / INCH).toBeCloseTo(0.37636, 9);
    expect(found.rootDepth / INCH).toBeCloseTo(0.369, 5);
  });

  test('lacks nothing within the free float of a wide flat, and the rest beyond it', () => {
    // Float (.070 - .06472) / 2 = .00264; a cut .005 off lacks .00236.
    const cuts = SIX_CUTS.cuts.map((cut) => ({ ...cut, rootFlat: 0.07 * INCH }));
    const reading = { cut: 'cut 1', ballDiameter: BALL_MM, reading: (0.369 + BALL_IN) * INCH };
    const at = (off: number): number =>
      overBallContact({ ...SIX_CUTS, cuts }, reading, buildBallFoot(BALL_MM), cutAtMm(1) + off * INCH).lacks /
      INCH;
    expect(at(0.0026)).toBeCloseTo(0, 9);
    expect(at(0.005)).toBeCloseTo(0.00236, 5);
  });

  test('of another ball serves too: the root is the same', () => {
    for (const ballIn of [0.125, 0.1875]) {
      const [reading] = readOverBall(SIX_CUTS, ballIn * INCH);
      if (!reading) throw new Error('a reading expected');
      const found = overBallContact(unread(SIX_CUTS), reading, buildBallFoot(BALL_MM), cutAtMm(1));
      expect(found.contact / INCH).toBeCloseTo(0.37136, 5);
    }
  });
});

test('a ball in cut 5 rolls to the corner that cut 6 left, a quarter thousandth lower than in line with its chamber', () => {
  // Worked by hand: the ball touches the side towards the bow and the corner at s 1.400, height .473.
  const curve = buildContactCurve(buildKeyProfile(SIX_CUTS), buildBallFoot(BALL_MM));
  const settled = settledHeight(curve, cutAtMm(5));
  const inLine = contactHeightAt(buildKeyProfile(SIX_CUTS), buildBallFoot(BALL_MM), cutAtMm(5), 0);
  expect((inLine - settled) / INCH).toBeCloseTo(0.00025, 5);
  const found = withRootsFromBalls(unread(SIX_CUTS), readOverBall(SIX_CUTS, BALL_MM));
  found.cuts.forEach(({ rootDepth }, i) => expect(rootDepth / INCH).toBeCloseTo(ROOT_DEPTHS_IN[i] ?? NaN, 9));
});

test('a ball that neighbours hold off its root leaves the root that one cut alone would have', () => {
  // Two deep cuts close by leave a ridge narrower than the ball: no root of the middle cut makes it settle so low.
  const form = { rootFlat: INCH * 0.04, includedAngle: fromDegrees(90) };
  const shape: KeyShape = {
    ...SIX_CUTS,
    cuts: [
      { id: 'bow', at: 0.4 * INCH, rootDepth: 0.4 * INCH, ...form },
      { id: 'middle', at: 0.5 * INCH, rootDepth: 0.4 * INCH, ...form },
    ],
  };
  const reading = { cut: 'middle', ballDiameter: BALL_MM, reading: 0.3 * INCH + BALL_MM };
  const found = withRootsFromBalls(shape, [reading]);
  const alone = rootDepthFromOverBall({ ...reading, cut: { ...form }, bladeHeight: shape.bladeHeight });
  expect(alone).toBeLessThan(0.3 * INCH);
  expect(found.cuts[1]?.rootDepth).toBeCloseTo(alone, 6);
});

describe(`random cuts, seed ${SEED}`, () => {
  propertyTest.prop([between(5, 10), between(0, 2.4), between(60, 130), between(1.5, 5), between(0, 4)], {
    seed: SEED,
    numRuns: 500,
  })('give their root back, however deep', (rootDepth, rootFlat, degrees, ballDiameter, deep) => {
    const cut = { id: 'cut', at: 25, rootDepth, rootFlat, includedAngle: fromDegrees(degrees) };
    const bladeHeight = rootDepth + deep;
    const shape = { ...SIX_CUTS, bladeHeight, tipAt: 60, cuts: [cut] };
    const contact = contactHeightAt(buildKeyProfile(shape), buildBallFoot(ballDiameter), 25, 0);
    const found = rootDepthFromOverBall({ reading: contact + ballDiameter, ballDiameter, cut, bladeHeight });
    expect(found).toBeCloseTo(rootDepth, 6);
  });

  const anyWorkshopKey = fc
    .record({
      bladeHeight: between(10, 13),
      cuts: fc.array(
        fc.record({ rootDepth: between(5, 10), rootFlat: between(0.4, 2), degrees: between(80, 110) }),
        {
          minLength: 4,
          maxLength: 7,
        },
      ),
    })
    .map(({ bladeHeight, cuts }): KeyShape => {
      const placed = cuts.map(({ rootDepth, rootFlat, degrees }, i) => ({
        id: `cut ${i + 1}`,
        at: 8 + 6.35 * i,
        rootDepth,
        rootFlat,
        includedAngle: fromDegrees(degrees),
      }));
      return { ...SIX_CUTS, bladeHeight, tipAt: 20 + 6.35 * placed.length, cuts: placed };
    });

  let rolled = 0;
  propertyTest.prop([anyWorkshopKey, between(2.5, 4.5)], { seed: SEED, numRuns: 600, endOnFailure: true })(
    'settle every ball where it was read, on keys whose flats are whole',
    (shape, ballDiameter) => {
      if (eatenFlats(shape).length > 0) return;
      const readings = readOverBall(shape, ballDiameter);
      const stays = ({ reading }: MeasuredCut, i: number): boolean =>
        reading - ballDiameter > (shape.cuts[i]?.rootDepth ?? 0) - 1e-9;
      if (!readings.every(stays)) return; // a big ball on a shallow cut beside a deep one rolls out of its cut
      const found = withRootsFromBalls(unread(shape), readings);
      found.cuts.forEach(({ rootDepth }, i) =>
        expect(rootDepth).toBeCloseTo(shape.cuts[i]?.rootDepth ?? NaN, 6),
      );
      const profile = buildKeyProfile(shape);
      const foot = buildBallFoot(ballDiameter);
      const isRolled = readings.some(
        ({ reading }, i) =>
          contactHeightAt(profile, foot, shape.cuts[i]?.at ?? 0, 0) - (reading - ballDiameter) > 1e-4,
      );
      if (isRolled) rolled++;
    },
  );

  test('were tried with many balls that roll aside', () => {
    expect(rolled).toBeGreaterThan(30);
  });
});
