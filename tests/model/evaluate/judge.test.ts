import { describe, expect, test } from 'vitest';
import { holds, judge, letsTurn } from '../../../src/model/evaluate/judge.ts';

const base = {
  offset: 0,
  toLowest: 0.2,
  toLowestUncertainty: 0.05,
  toHighest: 0.1,
  toHighestUncertainty: 0.05,
  shopRule: 0.0254,
};

describe('judging a split', () => {
  test.each([
    ['level', {}],
    ['low, turns', { offset: -0.1, toLowest: 0.1, toHighest: 0.2 }],
    ['high, rubs', { offset: 0.04, toLowest: 0.24, toHighest: 0.06 }],
    ['too low', { offset: -0.3, toLowest: -0.1, toHighest: 0.4 }],
    ['too high', { offset: 0.2, toLowest: 0.4, toHighest: -0.1 }],
  ] as const)('says %s', (verdict, change) => {
    expect(judge({ ...base, ...change }).verdict).toBe(verdict);
  });

  test('cannot say when the ± crosses an end, and leans the way the middle lies', () => {
    expect(judge({ ...base, offset: 0.08, toLowest: 0.28, toHighest: 0.02 })).toMatchObject({
      verdict: "can't say yet",
      lean: 'probably turns',
    });
    expect(judge({ ...base, offset: -0.22, toLowest: -0.02, toHighest: 0.32 })).toMatchObject({
      verdict: "can't say yet",
      lean: 'probably not',
    });
  });

  test('a split just as far inside as the ± is decided, and so is one on the end without any ±', () => {
    expect(judge({ ...base, toHighest: 0.05 }).verdict).toBe('level');
    expect(
      judge({ ...base, offset: 0.1, toHighest: 0, toHighestUncertainty: 0, toLowestUncertainty: 0 }).verdict,
    ).toBe('high, rubs');
  });

  test('only what surely turns lets a line turn, and only what surely stops holds it', () => {
    expect(letsTurn("can't say yet")).toBe(false);
    expect(holds("can't say yet")).toBe(false);
    expect(letsTurn('high, rubs')).toBe(true);
    expect(holds('never turns')).toBe(true);
  });
});
