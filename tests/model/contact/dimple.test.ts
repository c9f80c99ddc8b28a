import { test as propertyTest } from '@fast-check/vitest';
import { describe, expect, test } from 'vitest';
import { ballAndPinHeight, ballStandsOut, dimpleSeat } from '../../../src/model/contact/dimple.ts';
import { endDrop } from '../../../src/model/end-shape.ts';
import { fromDegrees } from '../../../src/model/radians.ts';
import { between } from './random-keys.ts';
import { BALL_IN } from './six-chamber-key.ts';

const SEED = 20_709;
const RADIUS = BALL_IN / 2;

// Worked by hand, inches. A sharp cone of 60 degrees stands for a rim seat.
describe('a ball of 5/32 in a dimple', () => {
  test.each([
    [0.06, 60, 'rim', 0.15026],
    [0.09, 60, 'rim', 0.14199],
    [0.12, 118, 'cone', 0.13322],
    [0.13, 90, 'cone', 0.12361],
  ] as const)(
    'of mouth %f and %i degrees sits on its %s and stands out %f',
    (mouthDiameter, degrees, seat, out) => {
      const dimple = { mouthDiameter, includedAngle: fromDegrees(degrees) };
      expect(dimpleSeat(RADIUS, dimple)).toBe(seat);
      expect(ballStandsOut(RADIUS, dimple)).toBeCloseTo(out, 5);
    },
  );

  test('makes a stack .01426 shorter than plain addition says', () => {
    const cup = { kind: 'cup', mouthDiameter: 0.09, includedAngle: fromDegrees(60) } as const;
    expect(ballAndPinHeight(BALL_IN, 0.192, cup)).toBeCloseTo(0.33399, 5);
    expect(ballAndPinHeight(BALL_IN, 0.192, { kind: 'flat' })).toBeCloseTo(0.34825, 12);
  });

  test('that swallows it adds nothing to the pin', () => {
    const cup = { kind: 'cup', mouthDiameter: 1, includedAngle: fromDegrees(60) } as const;
    expect(ballAndPinHeight(BALL_IN, 0.192, cup)).toBe(0.192);
  });
});

describe(`random dimples, seed ${SEED}`, () => {
  propertyTest.prop([between(0.5, 2.5), between(0.05, 0.98), between(50, 150)], {
    seed: SEED,
    numRuns: 300,
    endOnFailure: true,
  })('let the ball in until it touches, no further', (radius, share, degrees) => {
    const dimple = { mouthDiameter: 2 * radius * share, includedAngle: fromDegrees(degrees) };
    const out = ballStandsOut(radius, dimple);
    const partRadius = radius * 1.2;
    // Ball's inner end at radius - out - radius from its centre: room between the pin's end and the ball, everywhere.
    const depthOfCup = dimple.mouthDiameter / 2 / Math.tan(dimple.includedAngle / 2);
    const rooms = Array.from({ length: 20_001 }, (_, i) => {
      const across = (partRadius * i) / 20_000;
      const hollow = across <= partRadius ? endDrop({ kind: 'cup', ...dimple }, partRadius, across) : 0;
      const ball = across <= radius ? Math.sqrt(radius ** 2 - across ** 2) - (out - radius) : -Infinity;
      return hollow - ball;
    });
    const least = Math.min(...rooms);
    expect(depthOfCup).toBeGreaterThan(0);
    expect(least).toBeGreaterThan(-1e-12);
    expect(least).toBeLessThan(radius * 1e-3);
  });
});
