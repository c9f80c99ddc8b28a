/**
 * The ± against published worked examples, computed with the same estimates as the readings of a job.
 *
 * JCGM 100:2008 (GUM), example H.1: calibration of an end gauge; combined standard uncertainty 32 nm (uc² = 1002 nm²).
 * EA-4/02 M, supplement S2: calibration of a weight of nominal 10 kg; u = 29.2 mg (29.3 unrounded), U = 59 mg at k = 2.
 * Both seen in second-hand copies; recomputed unrounded: 31.67 nm, 29.26 mg.
 */
import { describe, expect, test } from 'vitest';
import {
  combine,
  type Estimate,
  expandedUncertainty,
  standardUncertainty,
} from '../../src/model/estimate/estimate.ts';
import { draw, planDraws, seededNumbers } from '../../src/model/sureness/draws.ts';

const field = { owner: 'example', id: '', name: '' };
const normal = (id: string, value: number, u: number): Estimate => ({
  value,
  terms: [{ cause: { id, kind: 'repeatability', field }, weight: u }],
});
/** Rectangular, half-width a. */
const rectangular = (id: string, value: number, a: number): Estimate => ({
  value,
  terms: [{ cause: { id, kind: 'assumed', field }, weight: a / Math.sqrt(3) }],
});

/** nm. l = lS + d - lS (δα θ + αS δθ), linear in what is not certain at δα = δθ = 0. */
const gauge = (() => {
  const lS = 50_000_623;
  return combine([
    [1, normal('lS', lS, 25)],
    [1, normal('d', 215, 9.7)],
    [-lS * -0.1, rectangular('δα', 0, 1e-6)],
    [-lS * 11.5e-6, rectangular('δθ', 0, 0.05)],
  ]);
})();

/** mg. mX = mS + δD + δm + δmC + δB. */
const weight = combine([
  [1, normal('mS', 10_000_005, 45 / 2)],
  [1, rectangular('δD', 0, 15)],
  [1, normal('δm', 20, 25 / Math.sqrt(3))],
  [1, rectangular('δmC', 0, 10)],
  [1, rectangular('δB', 0, 10)],
]);

describe('published examples of uncertainty', () => {
  test('end gauge: length and combined standard uncertainty', () => {
    expect(gauge.value).toBe(50_000_838);
    expect(standardUncertainty(gauge)).toBeCloseTo(31.7, 1);
    expect(Math.round(standardUncertainty(gauge))).toBe(32);
  });

  test('weight: standard and expanded uncertainty', () => {
    expect(weight.value).toBe(10_000_025);
    expect(standardUncertainty(weight)).toBeCloseTo(29.26, 2);
    expect(Math.round(expandedUncertainty(weight))).toBe(59);
  });

  test.each([
    ['end gauge', gauge, 31.67],
    ['weight', weight, 29.26],
  ])('%s: a million draws spread alike', (_, estimate, published) => {
    const count = 1_000_000;
    let sum = 0;
    let squares = 0;
    let covered = 0;
    draw(planDraws([estimate]), count, seededNumbers(11), ([value = 0]) => {
      const off = value - estimate.value;
      sum += off;
      squares += off ** 2;
      if (Math.abs(off) <= 2 * published) covered += 1;
    });
    expect(Math.sqrt(squares / count - (sum / count) ** 2) / published).toBeCloseTo(1, 2);
    // Nineteen times in twenty.
    expect(covered / count).toBeGreaterThan(0.945);
    expect(covered / count).toBeLessThan(0.965);
  });
});
