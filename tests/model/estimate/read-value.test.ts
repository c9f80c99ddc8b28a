import { describe, expect, test } from 'vitest';
import { combine, standardUncertainty, within } from '../../../src/model/estimate/estimate.ts';
import { type Measuring, readAngle, readLength, zeroOf } from '../../../src/model/estimate/read-value.ts';
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

  test('five readings are too few for a spread of their own, and so is the smallest of any number', () => {
    const wide = [9, 9.4, 8.6, 9.4, 8.6];
    const others = 0.01 ** 2 / 12 + 0.03 ** 2 / 3;
    expect(standardUncertainty(readLength(value(wide), field, measuring()))).toBeCloseTo(
      Math.sqrt(0.02 ** 2 / 5 + others),
      12,
    );
    const smallest = readLength(value([...wide, 9], { estimator: 'minimum' }), field, measuring());
    expect(smallest.value).toBe(8.6);
    expect(standardUncertainty(smallest)).toBeCloseTo(Math.sqrt(0.02 ** 2 + others), 12);
  });

  test('readings all left out count after all, so that nothing is lost', () => {
    const none = value([9, 10]);
    for (const reading of none.readings) reading.left = 'out';
    expect(readLength(none, field, measuring()).value).toBe(9.5);
  });

  test('a range counts for a stated value and for one read with nothing that is known', () => {
    const range = { from: 1.7, to: 2.1 };
    for (const read of [
      value([2], { basis: 'stated', range }),
      { ...value([2], { range }), readings: [{ ...value([2]).readings[0]!, instrument: null }] },
      { ...value([2], { range }), readings: [{ ...value([2]).readings[0]!, instrument: 'lost' }] },
    ])
      expect(standardUncertainty(readLength(read, field, measuring()))).toBeCloseTo(0.3 / Math.sqrt(3), 12);
    const bare = { ...value([2]), readings: [{ ...value([2]).readings[0]!, instrument: null }] };
    expect(readLength(bare, field, measuring())).toEqual({ value: 2, terms: [] });
    const sure = value([2], { basis: 'assumed', range: { from: 2, to: 2 } });
    expect(readLength(sure, field, measuring()).terms).toEqual([]);
  });

  test('two readings under one zero check share its error: it cancels in their difference and adds up in their sum', () => {
    const session: Session = { id: 's', instrument: 'c', at: '', closedReading: value([0.05]) };
    const under = (at: number, name: string) =>
      readLength(value([at], {}, 's'), { ...field, name }, measuring([session]));
    const [one, other] = [under(9, 'one'), under(40, 'other')];
    const own = 0.02 ** 2 + 0.01 ** 2 / 12 + 0.03 ** 2 / 3;
    const zero = 0.02 ** 2 + 0.01 ** 2 / 12;
    const of = (sign: number) =>
      standardUncertainty(
        combine([
          [1, one],
          [sign, other],
        ]),
      );
    expect(standardUncertainty(one)).toBeCloseTo(Math.sqrt(own + zero), 12);
    // 31 mm apart on the scale, its errors there share next to nothing
    expect(of(-1)).toBeCloseTo(Math.sqrt(2 * own), 8);
    expect(of(1)).toBeCloseTo(Math.sqrt(2 * own + 4 * zero), 8);
    expect(zeroOf({ session: 's' }, measuring([session]))).toBe(0.05);
    expect(zeroOf({ session: 's' }, measuring([{ id: 's', instrument: 'c', at: '' }]))).toBe(0);
    expect(zeroOf({ session: null }, measuring([session]))).toBe(0);
  });

  test('an angle comes in radians, as unsure as the farther end of its range', () => {
    const reading = { typed: '90', unit: 'deg' as const, value: 90, instrument: null, session: null };
    const angle = { readings: [reading], estimator: 'mean' as const, basis: 'assumed' as const };
    const read = readAngle({ ...angle, range: { from: 84, to: 92 } }, field);
    expect(read.value).toBeCloseTo(Math.PI / 2, 12);
    expect(standardUncertainty(read)).toBeCloseTo((6 * Math.PI) / 180 / Math.sqrt(3), 12);
  });

  test('what geometry cannot bear is kept within limits, its doubt kept', () => {
    const read = readLength(value([9]), field, measuring());
    expect(within(read, 10, 20)).toEqual({ ...read, value: 10 });
    expect(within(read, 1, 8)).toEqual({ ...read, value: 8 });
    expect(within(read, 1, 20)).toEqual(read);
  });
});
