import { describe, expect, test } from 'vitest';
import { applyTo } from '../../../src/model/estimate/apply-to.ts';
import {
  combine,
  type Estimate,
  exact,
  expandedUncertainty,
  scaleCorrelation,
  standardUncertainty,
} from '../../../src/model/estimate/estimate.ts';

const field = { owner: 'test', id: 'x', name: 'length' };

function plain(id: string, value: number, u: number): Estimate {
  return { value, terms: [{ cause: { id, kind: 'repeatability', field }, weight: u }] };
}

function onScale(at: number, u: number): Estimate {
  return {
    value: at,
    terms: [{ cause: { id: `c@${at}`, kind: 'scale', instrument: 'c', at, field }, weight: u }],
  };
}

describe('estimates', () => {
  test('independent causes add in squares', () => {
    const sum = combine([
      [1, plain('a', 2, 3)],
      [1, plain('b', 5, 4)],
    ]);
    expect(sum.value).toBe(7);
    expect(standardUncertainty(sum)).toBeCloseTo(5, 12);
    expect(expandedUncertainty(sum)).toBeCloseTo(10, 12);
  });

  test('a common cause cancels in a difference and doubles in a sum', () => {
    const one = plain('same', 2, 3);
    expect(
      standardUncertainty(
        combine([
          [1, one],
          [-1, one],
        ]),
      ),
    ).toBe(0);
    expect(
      standardUncertainty(
        combine([
          [1, one],
          [1, one],
        ]),
      ),
    ).toBeCloseTo(6, 12);
  });

  test('near-equal readings of one caliper share their scale error, far ones do not', () => {
    const near = combine([
      [1, onScale(9, 1)],
      [-1, onScale(9.2, 1)],
    ]);
    const far = combine([
      [1, onScale(9, 1)],
      [-1, onScale(40, 1)],
    ]);
    expect(standardUncertainty(near)).toBeLessThan(0.05);
    expect(standardUncertainty(far)).toBeCloseTo(Math.SQRT2, 6);
  });

  test('two instruments never share a scale error', () => {
    const other: Estimate = {
      value: 9,
      terms: [{ cause: { id: 'd@9', kind: 'scale', instrument: 'd', at: 9, field }, weight: 1 }],
    };
    expect(
      standardUncertainty(
        combine([
          [1, onScale(9, 1)],
          [-1, other],
        ]),
      ),
    ).toBeCloseTo(Math.SQRT2, 12);
  });

  test('no set of readings ever has a negative variance', () => {
    const places = Array.from({ length: 12 }, (_, i) => i * 0.7);
    for (let sign = 0; sign < 64; sign++) {
      const parts = places.map((at, i): [number, Estimate] => [
        (sign >> (i % 6)) & 1 ? 1 : -1,
        onScale(at, 1),
      ]);
      expect(standardUncertainty(combine(parts))).toBeGreaterThanOrEqual(0);
    }
    expect(scaleCorrelation(0)).toBe(1);
  });

  test('carries doubt through a product as its partial derivatives say', () => {
    const product = applyTo([plain('a', 3, 0.01), plain('b', 4, 0.02)], ([a = 0, b = 0]) => a * b);
    expect(product.value).toBe(12);
    expect(standardUncertainty(product)).toBeCloseTo(Math.hypot(4 * 0.01, 3 * 0.02), 10);
  });

  test('at a corner the steeper side counts', () => {
    const bent = applyTo([plain('a', 0, 0.1)], ([a = 0]) => Math.max(0, 2 * a));
    expect(standardUncertainty(bent)).toBeCloseTo(0.1, 10);
    const peaked = applyTo([plain('a', 0, 0.1)], ([a = 0]) => Math.abs(2 * a));
    expect(standardUncertainty(peaked)).toBeCloseTo(0.2, 10);
  });

  test('an exact number brings no doubt', () => {
    expect(standardUncertainty(combine([[2, exact(5)]]))).toBe(0);
  });
});
