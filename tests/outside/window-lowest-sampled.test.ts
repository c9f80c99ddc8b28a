/**
 * How low a split may sit, against dense sampling: tests/support/dense-window.ts, which shares no code with the engine.
 */
import { describe, expect, it } from 'vitest';
import { asRadians } from '../../src/model/radians.ts';
import { shearWindow } from '../../src/model/window/shear-window.ts';
import { denseHeld, denseLowest, denseRide, denseSteepness } from '../support/dense-window.ts';
import { BATCHES, casesOf, ENDS, SAME, TOPS } from '../support/window-batches.ts';
import { randomWindow, seededRandom } from '../support/window-cases.ts';

describe('the lowest offset against dense sampling', () => {
  it.each(BATCHES)(
    'is the last too steep place of the ride, to 1e-6 in, seed %i',
    { timeout: 600_000 },
    (seed) => {
      for (const { input, name } of casesOf(300 + seed)) {
        const { lowest, lowestAt } = shearWindow(input);
        expect(lowestAt, name).not.toBeNull();
        if (lowestAt === null) continue;
        const { turn, height } = lowestAt;
        const steepest = Math.tan(input.steepestRamp);
        const arc = 1e-5 / input.lineRadius; // rises less than 1e-6 in on the steepest ramp
        expect(denseSteepness(input, turn - 2 * arc, arc * 1.001, false), name).toSatisfy(
          (slope: number) => slope > steepest - 1e-3 || denseRide(input, turn - arc / 2) === -Infinity,
        );
        expect(denseSteepness(input, turn + arc, arc), name).toBeLessThan(steepest + 1e-3);
        expect(Math.abs(denseRide(input, turn + arc / 10) - height), name).toBeLessThan(SAME);
        const end = Math.asin(Math.min(1, (1.1 * input.innerHole.radius) / input.lineRadius));
        const isRough = input.innerHole.mouth.kind !== 'sharp';
        const steps = isRough ? 16 : 60;
        for (let step = 0; step < steps; step++) {
          const from = turn + arc + ((end - turn) * step) / steps;
          expect(denseSteepness(input, from, (end - turn) / steps, isRough), name).toBeLessThan(
            steepest + 0.02,
          );
        }
        expect(Math.abs(denseHeld(input, input.lineRadius + lowest, turn) - height), name).toBeLessThan(SAME);
      }
    },
  );

  it('is found again by a search that is told nothing, 60 splits at 60 deg', { timeout: 600_000 }, () => {
    const random = seededRandom(400);
    let widest = 0;
    for (let i = 0; i < 60; i++) {
      const input = { ...randomWindow(random, TOPS, ENDS), steepestRamp: asRadians(Math.PI / 3) };
      const { lowest } = shearWindow(input);
      const difference = Math.abs(denseLowest(input).offset - lowest);
      expect(difference, `case ${i} ${JSON.stringify(input)}`).toBeLessThan(SAME);
      widest = Math.max(widest, difference);
    }
    expect(widest).toBeGreaterThan(0);
  });
});
