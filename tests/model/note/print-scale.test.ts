import { describe, expect, test } from 'vitest';
import { readClearance, readFactor } from '../../../src/model/note/print-scale.ts';

describe('how many times as large', () => {
  test.each([
    ['4', 4],
    [' 2.5 ', 2.5],
    ['2,5', 2.5],
    ['10:1', 10],
    ['3x', 3],
    ['20', 20],
  ])('%s is read', (text, value) => expect(readFactor(text)).toEqual({ type: 'success', value }));

  test.each(['', '1', '1:4', '20.1', '-4', '4e1', 'four', '4,5,6', '.', '99999999999999999999'])(
    '%j is refused with a sentence and an example',
    (text) =>
      expect(readFactor(text)).toEqual({
        type: 'error',
        message: 'Enlarged: a number from 2 to 20, 4 for example.',
      }),
  );
});

describe('clearance', () => {
  test.each([
    ['0', 0],
    ['.2', 0.2],
    ['0,25 mm', 0.25],
    ['1', 1],
  ])('%s is read', (text, value) => expect(readClearance(text)).toEqual({ type: 'success', value }));

  test.each(['', '1.1', '-0.1', '0.2 in', 'loose'])('%j is refused with a sentence and an example', (text) =>
    expect(readClearance(text)).toEqual({
      type: 'error',
      message: 'Clearance: from 0 to 1 mm of the print, 0.2 for example.',
    }),
  );
});
