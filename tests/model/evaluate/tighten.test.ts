import { describe, expect, test } from 'vitest';
import { type Estimate, standardUncertainty } from '../../../src/model/estimate/estimate.ts';
import { tighten, UNBOUNDED, within } from '../../../src/model/evaluate/tighten.ts';

const field = { owner: 'test', id: 'x', name: 'length' };
const estimate: Estimate = {
  value: 10,
  terms: [{ cause: { id: 'a', kind: 'repeatability', field }, weight: 2 }],
};

/** Mean and spread of a normal distribution cut off at bounds, by plain summing. */
function bySumming(
  middle: number,
  spread: number,
  least: number,
  most: number,
): { mean: number; spread: number } {
  let weight = 0;
  let first = 0;
  let second = 0;
  const from = Math.max(least, middle - 9 * spread);
  const to = Math.min(most, middle + 9 * spread);
  const steps = 200_000;
  for (let i = 0; i < steps; i++) {
    const x = from + ((i + 0.5) * (to - from)) / steps;
    const density = Math.exp(-(((x - middle) / spread) ** 2) / 2);
    weight += density;
    first += density * x;
    second += density * x * x;
  }
  const mean = first / weight;
  return { mean, spread: Math.sqrt(second / weight - mean * mean) };
}

describe('tightening an estimate with what was felt and tried', () => {
  test.each([
    [9, Infinity],
    [-Infinity, 8],
    [9.5, 12],
    [13, Infinity],
  ])('agrees with summing a normal distribution cut off at %f and %f', (least, most) => {
    const cut = bySumming(10, 2, least, most);
    const tightened = tighten(estimate, { least, most });
    expect(tightened.contradicts).toBe(false);
    expect(tightened.estimate.value).toBeCloseTo(cut.mean, 4);
    expect(standardUncertainty(tightened.estimate)).toBeCloseTo(cut.spread, 3);
  });

  test('nothing felt changes nothing', () => {
    expect(tighten(estimate, UNBOUNDED).estimate).toBe(estimate);
  });

  test('what is known exactly stays as it is, and contradicts a bound that it lies beyond', () => {
    const known: Estimate = { value: 10, terms: [] };
    const told = (least: number, most: number) => tighten(known, { least, most });
    for (const [least, most] of [
      [9, 11],
      [10, Infinity],
      [-Infinity, 10],
      [10, 10],
    ] as const)
      expect(told(least, most)).toEqual({ estimate: known, contradicts: false });
    expect(told(10.001, Infinity)).toEqual({ estimate: known, contradicts: true });
    expect(told(-Infinity, 9.999)).toEqual({ estimate: known, contradicts: true });
  });

  test('what is common to other chambers stays common: every cause shrinks by the same factor', () => {
    const two: Estimate = {
      value: 10,
      terms: [
        { cause: { id: 'a', kind: 'repeatability', field }, weight: 1.6 },
        { cause: { id: 'b', kind: 'zero', field }, weight: -1.2 },
      ],
    };
    const cut = tighten(two, { least: 9, most: 11 }).estimate;
    const factor = bySumming(10, 2, 9, 11).spread / 2;
    expect(cut.terms.map(({ cause }) => cause.id)).toEqual(['a', 'b']);
    expect(cut.terms[0]?.weight).toBeCloseTo(1.6 * factor, 4);
    expect(cut.terms[1]?.weight).toBeCloseTo(-1.2 * factor, 4);
  });

  test('says so when bench and readings contradict each other, and keeps the readings', () => {
    expect(tighten(estimate, { least: 30, most: Infinity })).toEqual({ estimate, contradicts: true });
    expect(tighten(estimate, within({ least: 11, most: 12 }, { least: 13, most: 14 }))).toEqual({
      estimate,
      contradicts: true,
    });
  });
});
