/** The small sums under planning and counting keys: boundaries, empty lists and sentences, each worked by hand. mm. */
import { describe, expect, test } from 'vitest';
import type { ChamberResult, SplitResult } from '../../../src/model/evaluate/evaluation.ts';
import { buildUpLengths, buildUpStack } from '../../../src/model/keying/build-up.ts';
import { countKeys, productOfSteps, waysToFinish } from '../../../src/model/keying/count-keys.ts';
import { setIntent } from '../../../src/model/keying/intent.ts';
import { clears, heightsThatClear, joined } from '../../../src/model/keying/key-heights.ts';
import type { KeyOutcome } from '../../../src/model/keying/key-outcomes.ts';
import { type KeySystem, marksOfKey, mayFollow } from '../../../src/model/keying/key-system.ts';
import { listKeys } from '../../../src/model/keying/list-keys.ts';
import { groupSplits, heightForAll, offsetsAt } from '../../../src/model/keying/merge-splits.ts';
import { readNumbers } from '../../../src/model/keying/numbers-plan.ts';
import { sayChambers, sayOutcome, sayTurning } from '../../../src/model/keying/say-turning.ts';
import { buildJob } from '../../support/job-builder.ts';

describe('stacks in increments', () => {
  const build = (cuts: number[], secondCut: number | null, offset = 10, total = 23) =>
    buildUpStack({ cuts, secondCut, offset, total });

  test('bottom, masters, build-up and top add up to the whole', () => {
    expect(build([7, 2, 5, 5], 4)).toEqual({
      type: 'stack',
      stack: { bottom: 2, masters: [3, 2], buildUp: 7, top: 9 },
    });
    expect(build([5], null)).toEqual({
      type: 'stack',
      stack: { bottom: 5, masters: [], buildUp: null, top: 18 },
    });
    expect(build([0], 0, 1, 2)).toEqual({
      type: 'stack',
      stack: { bottom: 0, masters: [], buildUp: 1, top: 1 },
    });
  });

  const whole = 'Cuts, offset and total are whole numbers from 0 up, for example 5, 10 and 23.';
  test.each([
    [[5.5], 4, 10, 23, whole],
    [[-1], 4, 10, 23, whole],
    [[5], 4.5, 10, 23, whole],
    [[5], null, 0.5, 23, whole],
    [[5], null, 10, -1, whole],
    [[], 4, 10, 23, 'Name the cut of at least one key that turns the first line, for example 5.'],
    [
      [3, 9],
      1,
      8,
      23,
      'With cut 9 at the first line and 1 at the second, 8 increments apart, there is no room for a build-up pin: choose a smaller cut for the first line, or a larger one for the second.',
    ],
    [
      [5],
      4,
      10,
      14,
      'The pins under the top pin already make 14 increments of 14: there is no room for a top pin.',
    ],
    [
      [5],
      null,
      10,
      4,
      'The pins under the top pin already make 5 increments of 4: there is no room for a top pin.',
    ],
  ] as const)('cuts %j, second %j, offset %d, total %d is told', (cuts, second, offset, total, message) => {
    expect(build([...cuts], second, offset, total)).toEqual({ type: 'error', message });
  });

  test('lengths, and the discs under the least that holds', () => {
    const measures = { increment: 0.3, bottomAtNone: 2, topAtNone: 1 };
    const stack = { bottom: 2, masters: [1, 3], buildUp: 2, top: 4 };
    const lengths = buildUpLengths(stack, measures, 0.6);
    expect(lengths.bottom).toBeCloseTo(2.6, 9);
    expect(lengths.masters.map((each) => each.toFixed(3))).toEqual(['0.300', '0.900']);
    expect(lengths.buildUp).toBeCloseTo(0.6, 9);
    expect(lengths.top).toBeCloseTo(2.2, 9);
    expect(lengths.thin).toEqual([0.3]);
    expect(buildUpLengths({ ...stack, buildUp: null }, measures, 0.6)).toMatchObject({
      buildUp: null,
      thin: [0.3],
    });
    expect(buildUpLengths({ ...stack, masters: [], buildUp: 1 }, measures, 0.6).buildUp).toBeCloseTo(0.3, 9);
  });
});

describe('contact heights that clear a line', () => {
  const split = (line: string, offset: number, lowest: number, highest: number): SplitResult =>
    ({ line, offset, window: { lowest, highest }, toLowest: 0.01, toHighest: 0.02 }) as SplitResult;
  const chamber = (contactHeight: number | null, ...splits: SplitResult[]) =>
    ({ contactHeight, splits }) as unknown as ChamberResult;
  const fixed = (ranges: ReturnType<typeof heightsThatClear>) =>
    ranges?.map(({ from, to }) => [Number(from.toFixed(6)), Number(to.toFixed(6))]) ?? null;

  test('from the lowest to the highest end, about where the foot would stand level', () => {
    // level at 5 - .3 = 4.7
    const result = chamber(5, split('line', 0.3, -0.2, 0.1), split('other', 0, -1, 1));
    expect(fixed(heightsThatClear(result, 'line', 9))).toEqual([[4.5, 4.8]]);
    expect(fixed(heightsThatClear(result, 'nowhere', 9))).toEqual([]);
  });

  test('worn by so much, surely or possibly', () => {
    const result = chamber(5, split('line', 0, -0.2, 0.1));
    const shift = { lowered: 0.05, raised: 0.03, doubt: 'as measured' } as const;
    expect(fixed(heightsThatClear(result, 'line', 9, shift))).toEqual([[4.75, 5.13]]);
    expect(fixed(heightsThatClear(result, 'line', 9, { ...shift, doubt: 'surely' }))).toEqual([[4.76, 5.11]]);
    expect(fixed(heightsThatClear(result, 'line', 9, { ...shift, doubt: 'possibly' }))).toEqual([
      [4.74, 5.15],
    ]);
  });

  test('no lower than the bottom edge and no higher than the blade', () => {
    const result = chamber(5, split('line', 0, -0.2, 0.1));
    expect(fixed(heightsThatClear(result, 'line', 4.9))).toEqual([[4.8, 4.9]]);
    expect(fixed(heightsThatClear(result, 'line', 4.8))).toEqual([[4.8, 4.8]]);
    expect(fixed(heightsThatClear(result, 'line', 4.7))).toEqual([]);
    expect(fixed(heightsThatClear(chamber(0.1, split('line', 0, -0.2, 0.1)), 'line', 9))).toEqual([[0, 0.2]]);
    expect(fixed(heightsThatClear(chamber(0, split('line', 0.5, -0.2, 0.1)), 'line', 9))).toEqual([]);
  });

  test('not known without a contact height or a split', () => {
    expect(heightsThatClear(chamber(null, split('line', 0, -0.2, 0.1)), 'line', 9)).toBeNull();
    expect(heightsThatClear(chamber(5), 'line', 9)).toBeNull();
  });

  test('ranges that touch or overlap are joined, in order', () => {
    const range = (from: number, to: number) => ({ from, to });
    expect(joined([range(4, 5), range(1, 2), range(2, 3)])).toEqual([range(1, 3), range(4, 5)]);
    expect(joined([range(1, 6), range(2, 3)])).toEqual([range(1, 6)]);
    expect(joined([range(1, 2), range(2 + 5e-10, 3)])).toEqual([range(1, 3)]);
    expect(joined([range(1, 2), range(2.001, 3)])).toHaveLength(2);
    expect(joined([])).toEqual([]);
  });

  test('a height on either end clears, beyond it does not', () => {
    const ranges = [
      { from: 1, to: 2 },
      { from: 4, to: 5 },
    ];
    expect([1, 2, 4.5, 5].map((height) => clears(ranges, height))).toEqual([true, true, true, true]);
    expect([1 - 5e-10, 5 + 5e-10].map((height) => clears(ranges, height))).toEqual([true, true]);
    expect([0.999, 2.001, 3, 5.001].map((height) => clears(ranges, height))).toEqual([
      false,
      false,
      false,
      false,
    ]);
    expect(clears([], 1)).toBe(false);
  });
});

describe('one height for several splits', () => {
  const want = (level: number, lowest = -0.2, highest = 0.1) => ({ level, lowest, highest });

  test('level for the lowest where that serves all, else the middle of what fits', () => {
    expect(heightForAll([want(5)])).toBe(5);
    // 4.95 to 5.1; level for the lower one
    expect(heightForAll([want(5), want(5.15)])).toBeCloseTo(5.025, 9);
    expect(heightForAll([want(5), want(5.05)])).toBe(5);
    expect(heightForAll([want(5, -0.2, -0.1)])).toBeCloseTo(4.9, 9);
    expect(heightForAll([want(5.05), want(5)])).toBe(5);
  });

  test('touching is enough, a gap is not; no number is none', () => {
    expect(heightForAll([want(5, -0.25, 0.25), want(5.5, -0.25, 0.25)])).toBe(5.25);
    expect(heightForAll([want(5), want(5.31)])).toBeNull();
    expect(heightForAll([want(NaN)])).toBeNull();
  });

  test('offsets from each level', () => {
    expect(offsetsAt(5, [want(4.5), want(5.25)])).toEqual([0.5, -0.25]);
  });

  test('neighbours go together as long as they may, from the lowest up', () => {
    const all = [want(1), want(2), want(3), want(5)];
    const levels = (groups: (typeof all)[]) => groups.map((group) => group.map(({ level }) => level));
    expect(levels(groupSplits(all, (group, next) => next.level - group[0]!.level < 2))).toEqual([
      [1, 2],
      [3],
      [5],
    ]);
    expect(levels(groupSplits(all, () => true))).toEqual([[1, 2, 3, 5]]);
    expect(groupSplits([], () => true)).toEqual([]);
  });
});

describe('counting and listing keys', () => {
  /** Two chambers, three steps; 1 the inner line, 2 the outer. */
  const system = (largestStep: number | null, isNextToBefore = true): KeySystem => ({
    columns: [
      { marks: [1, 3, 0], isNextToBefore: false },
      { marks: [1, 2, 3], isNextToBefore },
    ],
    stepCount: 3,
    largestStep,
  });

  test('every key there is, by what it turns', () => {
    // steps 00: 1, 01: 0, 02: 1, 10: 1, 11: 2, 12: 3, 2x: 0
    expect(countKeys(system(null))).toEqual({ plugAlone: 3n, together: 1n, either: 1n, all: 9n });
    // without 02 and 20
    expect(countKeys(system(1))).toEqual({ plugAlone: 2n, together: 1n, either: 1n, all: 7n });
    expect(countKeys(system(1, false)).all).toBe(9n);
    expect(countKeys(system(0))).toEqual({ plugAlone: 1n, together: 1n, either: 0n, all: 3n });
  });

  test('only some steps, where they are asked for', () => {
    expect(countKeys(system(null), [null, [2]])).toEqual({
      plugAlone: 1n,
      together: 0n,
      either: 1n,
      all: 3n,
    });
    expect(countKeys(system(null), [[1], []]).all).toBe(0n);
    expect(countKeys(system(null), [[1], null]).all).toBe(3n);
  });

  test('in closed form without the largest step', () => {
    expect([1, 2, 3].map((line) => productOfSteps(system(0), line))).toEqual([4n, 2n, 1n]);
    expect(productOfSteps({ columns: [], stepCount: 3, largestStep: null }, 1)).toBe(1n);
  });

  test('ways from a place on', () => {
    const ways = waysToFinish(system(1), { turns: [1, 3] });
    expect(ways.total).toBe(3n);
    expect(ways.from(1, 0, 1)).toBe(1n);
    expect(ways.from(1, 1, 3)).toBe(2n);
    expect(ways.from(2, 0, 1)).toBe(1n);
    expect(ways.from(2, 0, 2)).toBe(0n);
    expect(ways.from(9, 0, 1)).toBe(0n);
  });

  test('one by one in the order of their steps, from any place', () => {
    const list = listKeys(system(null), { turns: [1, 2, 3] });
    const all = [...list.from()];
    expect(list.count).toBe(5n);
    expect(all).toEqual([
      { steps: [0, 0], turns: 1 },
      { steps: [0, 2], turns: 1 },
      { steps: [1, 0], turns: 1 },
      { steps: [1, 1], turns: 2 },
      { steps: [1, 2], turns: 3 },
    ]);
    expect(all.map(({ steps }) => marksOfKey(system(null), steps))).toEqual(all.map(({ turns }) => turns));
    expect([...list.from(3n)]).toEqual(all.slice(3));
    expect([...list.from(5n)]).toEqual([]);
    expect(list.at(4n)).toEqual(all[4]);
    expect(() => list.at(5n)).toThrow('place 5 in a list of 5');
    expect(() => list.at(-1n)).toThrow('place -1 in a list of 5');
    expect(
      [...listKeys(system(null), { turns: [1], steps: [null, [2]] }).from()].map(({ steps }) => steps),
    ).toEqual([[0, 2]]);
  });

  test('a step may follow one as far away as the largest step, next to it only', () => {
    const [, second] = system(2).columns;
    expect(mayFollow(system(2), second!, 0, 2)).toBe(true);
    expect(mayFollow(system(1), second!, 0, 2)).toBe(false);
    expect(mayFollow(system(1), second!, 2, 0)).toBe(false);
    expect(mayFollow(system(1), second!, null, 2)).toBe(true);
    expect(mayFollow(system(1), { ...second!, isNextToBefore: false }, 0, 2)).toBe(true);
    expect(mayFollow(system(null), second!, 0, 2)).toBe(true);
  });

  test('a step that is not in the table turns nothing', () => {
    expect(marksOfKey(system(null), [1, 7])).toBe(0);
    expect(marksOfKey(system(null), [1])).toBe(0);
  });
});

describe('what a key is meant to turn', () => {
  const sleeved = buildJob({ chambers: 1, sleeve: { outerDiameter: 0.64, clearance: 0.003 } });
  const at = { key: 'key', cylinder: 'cylinder' };
  const said = (job = sleeved) => job.intents.map(({ key, line, turns }) => [key, line, turns]);

  test.each([
    ['plug', true, false],
    ['together', false, true],
    ['either', true, true],
    ['nothing', false, false],
  ] as const)('%s: one entry for each line', (meant, inner, outer) => {
    expect(said(setIntent(sleeved, at, meant))).toEqual([
      ['key', 'inner-line', inner],
      ['key', 'outer-line', outer],
    ]);
  });

  test('what is said anew takes the place of what was said, others stay', () => {
    const other = { key: 'other', cylinder: 'cylinder', line: 'inner-line', turns: true };
    const elsewhere = { key: 'key', cylinder: 'elsewhere', line: 'line', turns: true };
    const start = { ...sleeved, intents: [other, elsewhere] };
    const once = setIntent(setIntent(start, at, 'either'), at, 'nothing');
    expect(once.intents).toHaveLength(4);
    expect(once.intents.slice(0, 2)).toEqual([other, elsewhere]);
    expect(setIntent(once, at, null).intents).toEqual([other, elsewhere]);
    expect(() => setIntent(sleeved, { key: 'key', cylinder: 'gone' }, 'plug')).toThrow('cylinder gone');
  });
});

describe('in words', () => {
  test('what a key turns, without a sleeve and with one', () => {
    expect(
      (['plug', 'together', 'either', 'nothing'] as const).map((each) => sayTurning(each, true)),
    ).toEqual([
      'turns the plug alone',
      'turns plug and sleeve together',
      'either may turn: the plug alone, or plug and sleeve together',
      'turns nothing',
    ]);
    expect(sayTurning('plug', false)).toBe('turns the plug');
  });

  test('what it does, or probably does', () => {
    const outcome = (change: Partial<KeyOutcome>, lines = 1) =>
      sayOutcome({
        does: null,
        probably: null,
        isMixed: false,
        lines: Array.from({ length: lines }, () => ({})),
        ...change,
      } as KeyOutcome);
    expect(outcome({ does: 'plug' })).toBe('turns the plug');
    expect(outcome({ does: 'plug' }, 2)).toBe('turns the plug alone');
    expect(outcome({ does: 'nothing', isMixed: true }, 2)).toBe(
      'turns nothing: some chambers stand at the inner line, some at the outer',
    );
    expect(outcome({ probably: 'plug', isMixed: true })).toBe("can't say yet: probably turns the plug");
    expect(outcome({ probably: 'together' }, 2)).toBe(
      "can't say yet: probably turns plug and sleeve together",
    );
    expect(outcome({})).toBe('not measured yet');
  });

  test('chambers in a row', () => {
    expect([[], [2], [2, 5], [1, 2, 5]].map(sayChambers)).toEqual([
      'no chamber',
      'chamber 2',
      'chambers 2 and 5',
      'chambers 1, 2 and 5',
    ]);
  });
});

describe('cut numbers as text', () => {
  const texts = {
    first: '5 3, 2 3',
    second: '4 -',
    offset: '10',
    total: '23',
    increment: '.0125',
    bottomAtNone: '.110',
    topAtNone: '.050',
  };
  const read = (change: Partial<typeof texts> = {}, unit: 'in' | 'mm' = 'in') =>
    readNumbers({ ...texts, ...change }, unit, 0.5);

  test('each chamber in a sentence, lines above the foot', () => {
    const plan = read();
    if (plan.type === 'error') throw new Error(plan.message);
    expect(plan.chambers.map((each) => (each.type === 'stack' ? each.words : each.message))).toEqual([
      'Chamber 1, bottom to top: bottom pin .135 in, master pin .0375 in, build-up pin .1125 in, top pin .1625 in.',
      'Chamber 2, bottom to top: bottom pin .1475 in, top pin .300 in.',
    ]);
    const lines = plan.chambers.map((each) =>
      each.type === 'stack' ? [each.firstLine / 25.4, (each.secondLine ?? NaN) / 25.4] : [],
    );
    expect(lines[0]![0]).toBeCloseTo(0.1725, 9);
    expect(lines[0]![1]).toBeCloseTo(0.285, 9);
    expect(lines[1]![0]).toBeCloseTo(0.1475, 9);
    expect(lines[1]![1]).toBeNaN();
  });

  test('without a second line its offset is not asked for; a dash may be a long one, cuts apart by semicolons', () => {
    const plan = read({ second: '  ', offset: 'none' });
    expect(
      plan.type === 'plan' && plan.chambers.map((each) => each.type === 'stack' && each.secondLine),
    ).toEqual([null, null]);
    expect(read({ first: '5;3', second: '– 4' }).type).toBe('plan');
    expect(read({ first: ' 5   3 ', second: '-  4 ' }).type).toBe('plan');
  });

  test('a key that does not pass a chamber leaves it to the others', () => {
    const plan = read({ first: '- 3, 2 4', second: '' });
    const [one, two] = plan.type === 'plan' ? plan.chambers : [];
    expect(one?.type === 'stack' && one.lengths.masters).toEqual([]);
    expect(two?.type === 'stack' && two.lengths.masters).toHaveLength(1);
    expect(read({ first: '- 3', second: '' })).toMatchObject({
      chambers: [
        { type: 'error', number: 1 },
        { type: 'stack', number: 2 },
      ],
    });
  });

  test('twelve chambers are the most', () => {
    const twelve = Array.from({ length: 12 }, () => '3').join(' ');
    expect(read({ first: twelve, second: '' })).toMatchObject({ type: 'plan' });
    expect(read({ first: `${twelve} 3`, second: '' })).toEqual({
      type: 'error',
      message:
        'Cuts of the keys at the first line: 13 cuts are more than a cylinder has chambers, at most 12.',
    });
  });

  test.each([
    [
      { first: '1234 3' },
      'in',
      'Cuts of the keys at the first line: "1234" is no whole number, for example 10.',
    ],
    [{ second: '4 x' }, 'in', 'Cuts of the key at the second line: "x" is no whole number, for example 10.'],
    [
      { second: '4 --' },
      'in',
      'Cuts of the key at the second line: "--" is no whole number, for example 10.',
    ],
    [{ total: ' 2a ' }, 'in', 'Whole stack: "2a" is no whole number, for example 10.'],
    [{ offset: 'a2' }, 'in', 'Between the lines: "a2" is no whole number, for example 10.'],
    [{ bottomAtNone: '-1' }, 'in', 'Bottom pin of number 0: "-1" is no length of a pin, for example .110.'],
    [{ bottomAtNone: ' no ' }, 'mm', 'Bottom pin of number 0: "no" is no length of a pin, for example 2.8.'],
    [{ topAtNone: '50.1' }, 'mm', 'Top pin of number 0: "50.1" is no length of a pin, for example 2.8.'],
    [{ first: '5 3, 2' }, 'in', 'Cuts: one key has 2 and another 1; write one number for each chamber.'],
  ] as const)('%j in %s is told', (change, unit, message) => {
    expect(read(change, unit)).toEqual({ type: 'error', message });
  });

  test('fifty mm is still a pin', () => {
    const mm = { increment: '0.5', bottomAtNone: '3', topAtNone: '50' };
    expect(read(mm, 'mm').type).toBe('plan');
  });
});
