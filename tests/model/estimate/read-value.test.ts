import { describe, expect, test } from 'vitest';
import { standardUncertainty } from '../../../src/model/estimate/estimate.ts';
import { type Measuring, readLength } from '../../../src/model/estimate/read-value.ts';
import type { Instrument, Session } from '../../../src/model/schema/cylinder-schema.ts';
import type { LengthValue } from '../../../src/model/schema/leaf.ts';

const field = { owner: 'test', id: 'x', name: 'length' };
const caliper: Instrument = {
  id: 'c',
  label: 'caliper',
  kind: 'digital caliper',
  resolutionMm: 0.01,
  maxPermissibleErrorMm: 0.03,
  repeatabilityMm: 0.02,
  source: 'assumed',
};

function measuring(sessions: Session[] = []): Measuring {
  return {
    instruments: new Map([['c', caliper]]),
    sessions: new Map(sessions.map((each) => [each.id, each])),
  };
}

function value(
  numbers: number[],
  rest: Partial<LengthValue> = {},
  session: string | null = null,
): LengthValue {
  return {
    readings: numbers.map((number) => ({
      typed: String(number),
      unit: 'mm',
      value: number,
      instrument: 'c',
      session,
    })),
    estimator: 'mean',
    basis: 'measured',
    ...rest,
  };
}

describe('reading an entered value', () => {
  test('one reading has repeatability, resolution and the limits of the instrument', () => {
    const read = readLength(value([9]), field, measuring());
    expect(standardUncertainty(read)).toBeCloseTo(Math.sqrt(0.02 ** 2 + 0.01 ** 2 / 12 + 0.03 ** 2 / 3), 12);
  });

  test('three readings shrink only the repeatability', () => {
    const read = readLength(value([9, 9.03, 8.97]), field, measuring());
    expect(read.value).toBeCloseTo(9, 12);
    expect(standardUncertainty(read)).toBeCloseTo(
      Math.sqrt(0.02 ** 2 / 3 + 0.01 ** 2 / 12 + 0.03 ** 2 / 3),
      12,
    );
  });

  test('from six readings on, their own spread counts', () => {
    const numbers = [9, 9.1, 8.9, 9, 9.1, 8.9];
    const spread = Math.sqrt((4 * 0.01) / 5);
    const read = readLength(value(numbers), field, measuring());
    expect(standardUncertainty(read)).toBeCloseTo(
      Math.sqrt(spread ** 2 / 6 + 0.01 ** 2 / 12 + 0.03 ** 2 / 3),
      12,
    );
  });

  test('the smallest of several counts as one reading, and a reading left out does not count', () => {
    const minimum = readLength(value([9.2, 9, 9.1], { estimator: 'minimum' }), field, measuring());
    expect(minimum.value).toBe(9);
    const leftOut = value([9, 12]);
    const second = leftOut.readings[1];
    if (second !== undefined) second.left = 'out';
    expect(readLength(leftOut, field, measuring()).value).toBe(9);
  });

  test('an assumed value is as unsure as the farther end of its range', () => {
    const read = readLength(
      value([2], { basis: 'assumed', range: { from: 1.5, to: 3 } }),
      field,
      measuring(),
    );
    expect(standardUncertainty(read)).toBeCloseTo(1 / Math.sqrt(3), 12);
  });

  test('a stated value is taken as it is', () => {
    expect(standardUncertainty(readLength(value([2], { basis: 'stated' }), field, measuring()))).toBe(0);
  });

  test('what the caliper reads closed is taken off every reading of that check', () => {
    const session: Session = {
      id: 's',
      instrument: 'c',
      at: '',
      closedReading: value([0.05]),
    };
    const read = readLength(value([9.05], {}, 's'), field, measuring([session]));
    expect(read.value).toBeCloseTo(9, 12);
    const zero = read.terms.find((term) => term.cause.kind === 'zero');
    expect(zero?.weight).toBeLessThan(0);
  });
});
