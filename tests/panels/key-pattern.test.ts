import { describe, expect, test } from 'vitest';
import type { KeySystem } from '../../src/model/keying/key-system.ts';
import { readPattern } from '../../src/panels/keying/key-pattern.ts';
import { grouped, keysWord } from '../../src/panels/keying/keying-words.ts';

const system: KeySystem = {
  columns: [
    { marks: [1, 1, 1], isNextToBefore: false },
    { marks: [1], isNextToBefore: true },
  ],
  stepCount: 3,
  largestStep: null,
};

describe('a pattern of cuts', () => {
  test.each([
    ['', [null, null]],
    ['2', [[1], null]],
    ['? 3', [null, [2]]],
    ['1, *', [[0], null]],
  ])('%j', (text, steps) => {
    expect(readPattern(text, system)).toEqual({ type: 'steps', steps });
  });

  test.each([
    ['4', /"4" is no depth from 1 to 3/],
    ['0 1', /"0" is no depth/],
    ['a', /"a" is no depth/],
    ['-1', /"-1" is no depth/],
    ['1 2 3', /3 are named, and there are 2 chambers/],
  ])('%j gives a sentence', (text, sentence) => {
    const pattern = readPattern(text, system);
    expect(pattern.type === 'error' && pattern.message).toMatch(sentence);
  });
});

test('counts are grouped, and one and none are words', () => {
  expect([0n, 1n, 999n, 1000n, 1234567890n].map(keysWord)).toEqual([
    'no key',
    'one key',
    '999 keys',
    '1,000 keys',
    '1,234,567,890 keys',
  ]);
  expect(grouped(12n)).toBe('12');
});
