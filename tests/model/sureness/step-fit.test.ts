/** Root depths on even steps: found again, with wear told as residuals; depths at random are left alone. mm. */
import { describe, expect, test } from 'vitest';
import { seededNumbers } from '../../../src/model/sureness/draws.ts';
import { findSteps, fitSteps, WORTH_TELLING } from '../../../src/model/sureness/step-fit.ts';

const STEPS = [0.33, 0.381, 0.457, 0.5, 0.635];

describe('step fit', () => {
  test('finds the numbers of an unworn key', () => {
    const numbers = [3, 1, 5, 0, 2, 4];
    const fit = fitSteps(
      numbers.map((number) => 5.2 + 0.381 * number),
      0.381,
    );
    expect(fit?.cuts.map(({ number }) => number)).toEqual(numbers);
    expect(fit?.deepest).toBeCloseTo(5.2, 9);
    expect(fit?.rms).toBeLessThan(1e-9);
  });

  test('tells a worn cut by its residual', () => {
    const numbers = [3, 1, 5, 0, 2, 4];
    const depths = numbers.map((number, i) => 5.2 + 0.381 * number - (i === 2 ? 0.06 : 0));
    const fit = findSteps(depths, [0.381]);
    expect(fit?.cuts[2]?.number).toBe(5);
    expect(fit?.cuts[2]?.residual).toBeCloseTo(-0.05, 9);
    expect(Math.max(...(fit?.cuts ?? []).map(({ residual }) => residual))).toBeCloseTo(0.01, 9);
  });

  test('no other zero leaves smaller squares (tried by brute force)', () => {
    const random = seededNumbers(4);
    for (let run = 0; run < 200; run++) {
      const depths = Array.from({ length: 6 }, () => 4 + 3 * random());
      const step = 0.3 + 0.3 * random();
      const ours = fitSteps(depths, step)?.rms ?? Number.NaN;
      let least = Infinity;
      for (let at = 0; at < 400; at++) {
        const zero = (at / 400) * step;
        const squares = depths.reduce((sum, depth) => {
          const off = (depth - zero) / step;
          return sum + ((off - Math.round(off)) * step) ** 2;
        }, 0);
        least = Math.min(least, Math.sqrt(squares / depths.length));
      }
      expect(ours, `run ${run}`).toBeLessThanOrEqual(least + 1e-9);
      expect(least - ours, `run ${run}`).toBeLessThan(step / 50);
    }
  });

  test('random depths are rarely taken for steps', () => {
    const random = seededNumbers(9);
    let told = 0;
    for (let run = 0; run < 500; run++) {
      const depths = Array.from({ length: 6 }, () => 4 + 3 * random());
      if ((fitSteps(depths, 0.4)?.againstChance ?? 1) <= WORTH_TELLING) told += 1;
    }
    expect(told / 500).toBeLessThan(0.05);
  });

  test('three cuts fit anything, so nothing is said', () => {
    expect(fitSteps([5, 5.4, 5.8], 0.4)).toBeNull();
    expect(findSteps([5, 5.4, 5.8], STEPS)).toBeNull();
    expect(fitSteps([5, 5.4, 5.8, 6.2], 0)).toBeNull();
  });
});
