/** Cut numbers as a person writes them: stacks with their lengths, or a sentence. Lengths in inches where said. */
import { describe, expect, test } from 'vitest';
import { type NumberTexts, readNumbers } from '../../../src/model/keying/numbers-plan.ts';

const INCH = 25.4;
const GOOD: NumberTexts = {
  first: '5 3, 2 7',
  second: '4 -',
  offset: '10',
  total: '23',
  increment: '.0125',
  bottomAtNone: '.110',
  topAtNone: '.050',
};
const read = (change: Partial<NumberTexts> = {}) => readNumbers({ ...GOOD, ...change }, 'in', 0.5);

describe('stacks from cut numbers', () => {
  test('lengths of bottom, master, build-up and top pin, worked by hand', () => {
    const plan = read();
    if (plan.type === 'error') throw new Error(plan.message);
    const [one, two] = plan.chambers;
    if (one?.type !== 'stack' || two?.type !== 'stack') throw new Error('no stacks');
    // Cuts 2 and 5, second line at 4 + 10: bottom 2, master 3, build-up 9, top 23 - 14 = 9.
    expect(one.lengths.bottom / INCH).toBeCloseTo(0.11 + 2 * 0.0125, 9);
    expect(one.lengths.masters.map((each) => each / INCH)).toEqual([expect.closeTo(3 * 0.0125, 9)]);
    expect((one.lengths.buildUp ?? 0) / INCH).toBeCloseTo(9 * 0.0125, 9);
    expect(one.lengths.top / INCH).toBeCloseTo(0.05 + 9 * 0.0125, 9);
    expect((one.secondLine ?? 0) - one.firstLine).toBeCloseTo(one.lengths.buildUp ?? 0, 9);
    expect(one.words).toContain('build-up pin');
    // The second line does not pass through chamber 2.
    expect(two.secondLine).toBeNull();
    expect(two.lengths.masters).toHaveLength(1);
  });

  test('a disc under the least is told', () => {
    const plan = read({ first: '3 3, 4 3' });
    const first = plan.type === 'plan' ? plan.chambers[0] : undefined;
    expect(first?.type === 'stack' && first.lengths.thin).toHaveLength(1);
  });

  test('a chamber without room says so and leaves the others alone', () => {
    const plan = read({ first: '9 3', second: '0 4', offset: '3' });
    expect(plan.type === 'plan' && plan.chambers.map(({ type }) => type)).toEqual(['error', 'stack']);
  });

  test.each([
    [{ first: 'five 3' }, 'Cuts of the keys at the first line: "five" is no whole number'],
    [{ first: '5 3, 2' }, 'Cuts: one key has 2 and another 1'],
    [{ second: '4' }, 'Cuts: one key has 2 and another 1'],
    [{ offset: '' }, 'Between the lines: "" is no whole number, for example 10.'],
    [{ total: '-3' }, 'Whole stack: "-3" is no whole number'],
    [{ increment: 'thin' }, 'One increment: "thin" is no length of a pin'],
    [{ topAtNone: '0' }, 'Top pin of number 0: "0" is no length of a pin'],
    [{ first: '1 2 3 4 5 6 7 8 9 1 2 3 4' }, '13 cuts are more than a cylinder has chambers'],
  ])('%o is told', (change, sentence) => {
    const plan = read(change);
    expect(plan.type === 'error' && plan.message).toContain(sentence);
  });
});
