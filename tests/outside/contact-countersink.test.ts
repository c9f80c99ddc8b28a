/** A ball in a countersink against inspection formulas: the same ball and cone as in a pin's dimple. Lengths as printed. */
import { describe, expect, test } from 'vitest';
import { ballStandsOut } from '../../src/model/contact/dimple.ts';
import { asRadians, fromDegrees } from '../../src/model/radians.ts';

describe('a ball on the sharp edge of a hole', () => {
  // mathscinotes.com, Sept 2014: E = 2 sqrt(H (B - H)), edge E, ball B, height H of the ball above the face. Values
  // worked out from it.
  test.each([
    [0.5, 0.4, 0.4],
    [0.25, 0.2, 0.2],
  ])('of %f stands %f out of an edge of %f', (ball, height, edge) => {
    expect(2 * Math.sqrt(height * (ball - height))).toBeCloseTo(edge, 12);
    const hole = { mouthDiameter: edge, includedAngle: fromDegrees(20) }; // too steep for the ball to reach its side
    expect(ballStandsOut(ball / 2, hole)).toBeCloseTo(height, 12);
  });
});

describe('the angle of a countersink from two balls', () => {
  // mathscinotes.com, Oct 2018: sin(t / 2) = ((B1 - B2) / 2) / (M - (B1 - B2) / 2), M between the tops of the balls.
  // For B .5 and .25 at 82 degrees M is .315532, worked out from it.
  test('comes back from where the model puts them', () => {
    const sink = { mouthDiameter: 1, includedAngle: fromDegrees(82) };
    const between = ballStandsOut(0.25, sink) - ballStandsOut(0.125, sink);
    expect(between).toBeCloseTo(0.315532, 6);
    const sine = 0.125 / (between - 0.125);
    expect(2 * Math.asin(sine)).toBeCloseTo(sink.includedAngle, 12);
  });
});

describe('the mouth of a countersink from one ball on its side', () => {
  // Worked by hand; pages that print a formula for this contradict one another. D = B / cos(t / 2) - 2 (H - B / 2)
  // tan(t / 2): B .25 standing .05 out at 82 degrees has a mouth of .461646.
  test('puts the ball back where it stood', () => {
    const sink = { mouthDiameter: 0.461646, includedAngle: fromDegrees(82) };
    expect(ballStandsOut(0.125, sink)).toBeCloseTo(0.05, 6);
  });

  test('holds for other angles and heights', () => {
    for (const degrees of [60, 90, 118]) {
      for (const height of [0.02, 0.1, 0.17]) {
        const half = asRadians(fromDegrees(degrees) / 2);
        const mouth = 0.25 / Math.cos(half) - 2 * (height - 0.125) * Math.tan(half);
        const sink = { mouthDiameter: mouth, includedAngle: fromDegrees(degrees) };
        expect(ballStandsOut(0.125, sink)).toBeCloseTo(height, 12);
      }
    }
  });
});
