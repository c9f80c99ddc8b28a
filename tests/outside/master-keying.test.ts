/**
 * Counting of keys and stacks for two lines against published figures. Cut numbers here only name steps; the cylinders are
 * our own, with a depth table of our own, and their keys are counted by the mechanics, not by the numbers.
 */
import { describe, expect, test } from 'vitest';
import { evaluate } from '../../src/model/evaluate/evaluate.ts';
import { buildUpStack } from '../../src/model/keying/build-up.ts';
import { countKeys, productOfSteps, waysToFinish } from '../../src/model/keying/count-keys.ts';
import { keyOutcomes } from '../../src/model/keying/key-outcomes.ts';
import { INNER, type KeySystem, OUTER } from '../../src/model/keying/key-system.ts';
import { listKeys } from '../../src/model/keying/list-keys.ts';
import { keyedJob, keysOf, rootDepthOf, tableOf, withKey } from '../support/keyed-job.ts';

/** Every step of every chamber clears the line. */
const open = (chambers: number, stepCount: number, largestStep: number | null = null): KeySystem => ({
  columns: Array.from({ length: chambers }, (_, i) => ({
    marks: Array.from({ length: stepCount }, () => INNER),
    isNextToBefore: i > 0,
  })),
  stepCount,
  largestStep,
});
const count = (system: KeySystem) => countKeys(system).plugAlone;
const cutsOf = (cuts: readonly (readonly number[])[]) => {
  const { system } = keysOf(keyedJob(cuts), tableOf(9));
  return [...listKeys(system, { turns: [INNER] }).from()].map(({ steps }) =>
    steps.map((step) => step + 1).join(''),
  );
};

describe('keys that open one cylinder', () => {
  // lockpicking101.com, thread p=272479: cuts 11 and 44, #3 master pins in both chambers
  test('two chambers with cuts 1 and 4 in each: 11, 14, 41, 44', () => {
    expect(
      cutsOf([
        [1, 4],
        [1, 4],
      ]),
    ).toEqual(['11', '14', '41', '44']);
  });

  // a public discussion page, answer d531dks: "any key with a 2 or 4 in every position"
  test('222222 and 444444 pinned everywhere: 422442 works too, as does any key of 2s and 4s', () => {
    const keys = cutsOf(Array.from({ length: 6 }, () => [2, 4]));
    expect(keys).toContain('422442');
    expect(keys).toHaveLength(2 ** 6);
    expect(keys.every((key) => /^[24]{6}$/.test(key))).toBe(true);
  });

  // hubpages.com, "Master keying": bottom 3, master 3, master 3
  test('bottom 3, master 3 (and master 3): cuts 3, 6 (and 9)', () => {
    expect(cutsOf([[3, 6]])).toEqual(['3', '6']);
    expect(cutsOf([[3, 6, 9]])).toEqual(['3', '6', '9']);
  });

  // product over the chambers of the number of splits; worked by hand
  test.each([
    [[2, 2, 2, 2, 2], 32n],
    [[2, 2, 2, 2, 2, 2], 64n],
    [[3, 2, 1, 2, 1, 2], 24n],
  ] as const)('splits %j: %d keys', (splits, keys) => {
    const cuts = splits.map((each) => [1, 4, 7].slice(0, each));
    const { counts, system } = keysOf(keyedJob(cuts), tableOf(9));
    expect(counts.plugAlone).toBe(keys);
    expect(productOfSteps(system, INNER)).toBe(keys);
  });
});

describe('keys that can be cut', () => {
  test.each([
    // Locksmith Ledger, "Thoughts On Master Keying", October 2010; a maker's service manual p. 5
    [6, 4, 4096n],
    [5, 4, 1024n],
    // lockpicking101.com t=54350, p=498364
    [5, 5, 3125n],
    [6, 5, 15625n],
    // Keynotes, September 2016, fig. 18: five of the depths used, one to seven chambers
    [1, 5, 5n],
    [2, 5, 25n],
    [3, 5, 125n],
    [4, 5, 625n],
    [7, 5, 78125n],
    // the same, fig. 19: six used
    [1, 6, 6n],
    [2, 6, 36n],
    [3, 6, 216n],
    [4, 6, 1296n],
    [5, 6, 7776n],
    [6, 6, 46656n],
    [7, 6, 279936n],
    // the same, fig. 11
    [7, 4, 16384n],
  ])('%d chambers, %d depths: %d', (chambers, depths, keys) => {
    expect(count(open(chambers, depths))).toBe(keys);
  });

  // a maker's handout, "Mathematics of Master Keying": depths available less one for the master
  test.each([
    [6, 5],
    [5, 4],
  ])('%d depths leave %d for each chamber of a change key', (depths, left) => {
    const system = open(6, depths);
    const others = Array.from({ length: depths }, (_, step) => step).filter((step) => step !== 2);
    const filter = { turns: [INNER], steps: system.columns.map(() => others) };
    expect(waysToFinish(system, filter).total).toBe(BigInt(left) ** 6n);
  });

  // US 6,516,644: 8 by 8 squares of 64; pieces of 1/4, 1, 4 and 16 squares
  test('a board of 4,096 and its pieces of 16, 64, 256 and 1,024', () => {
    const system = open(6, 4);
    const withFixed = (fixed: number) =>
      waysToFinish(system, {
        turns: [INNER],
        steps: system.columns.map((_, i) => (i < fixed ? [0] : null)),
      }).total;
    expect([0, 1, 2, 3, 4].map(withFixed)).toEqual([4096n, 1024n, 256n, 64n, 16n]);
  });

  // lockpicking101.com t=66014: master 11111, changes in steps of two; 91111 breaks a largest step of 7
  test('a largest step of 7 lets 31111, 51111 and 71111 pass, and not 91111', () => {
    const system = open(5, 9, 7);
    const steps = [[2, 4, 6, 8], [0], [0], [0], [0]];
    const keys = [...listKeys(system, { turns: [INNER], steps }).from()];
    expect(keys.map((key) => key.steps.map((step) => step + 1).join(''))).toEqual([
      '31111',
      '51111',
      '71111',
    ]);
  });
});

describe('stacks for a second line from cut numbers', () => {
  const stacks = (first: string, ...others: readonly string[]) => {
    const keys = [first, ...others].map(numbers);
    const second = numbers('9 6 0 4 7 8');
    return second.map((secondCut, i) => {
      const result = buildUpStack({ cuts: keys.map((key) => key[i]!), secondCut, offset: 10, total: 23 });
      if (result.type === 'error') throw new Error(result.message);
      return result.stack;
    });
  };

  // a maker's technical manual, section 3 p. 19 (manualarchiveguide.com, document 3603228, page 58)
  test.each([
    ['7 4 2 8 3 6', '5 2 2 6 1 4', '2 2 6 2 2 2', '12 12 2 6 14 12'],
    ['1 8 6 2 9 0', '1 2 6 2 1 0', '4 6 2 4 8 4', '14 8 2 8 8 14'],
  ])('master key 5 2 8 6 1 4 and change key %s', (change, bottom, master, buildUp) => {
    const found = stacks('5 2 8 6 1 4', change);
    expect(found.map((each) => each.bottom)).toEqual(numbers(bottom));
    expect(found.flatMap((each) => each.masters)).toEqual(numbers(master));
    expect(found.map((each) => each.buildUp)).toEqual(numbers(buildUp));
    expect(found.map((each) => each.top)).toEqual(numbers('4 7 13 9 6 5'));
  });

  test('master key 5 2 8 6 1 4 only', () => {
    const found = stacks('5 2 8 6 1 4');
    expect(found.map((each) => each.bottom)).toEqual(numbers('5 2 8 6 1 4'));
    expect(found.flatMap((each) => each.masters)).toEqual([]);
    expect(found.map((each) => each.buildUp)).toEqual(numbers('14 14 2 8 16 14'));
    expect(found.map((each) => each.top)).toEqual(numbers('4 7 13 9 6 5'));
  });

  // the same publisher's key system manual 90726:E, 4/30/14, p. 4
  test('a fixed core, total 10, without a second line', () => {
    const found = numbers('1 2 3 4 6 4').map((cut, i) => {
      const change = numbers('3 4 5 2 2 2')[i]!;
      const result = buildUpStack({ cuts: [cut, change], secondCut: null, offset: 0, total: 10 });
      if (result.type === 'error') throw new Error(result.message);
      return result.stack;
    });
    expect(found.map((each) => each.bottom)).toEqual(numbers('1 2 3 2 2 2'));
    expect(found.flatMap((each) => each.masters)).toEqual(numbers('2 2 2 2 4 2'));
    expect(found.map((each) => each.buildUp)).toEqual([null, null, null, null, null, null]);
    expect(found.map((each) => each.top)).toEqual(numbers('7 6 5 6 4 6'));
  });

  // the same page: the sleeve in chambers 3 and 4 only
  test('a large core: offset 6, total 13 where the second line passes, 10 elsewhere', () => {
    const second = numbers('1 5 5 4 3 2');
    const found = numbers('1 5 2 6 3 2').map((cut, i) => {
      const passes = i === 2 || i === 3;
      const result = buildUpStack({
        cuts: [cut, numbers('3 1 4 3 1 5')[i]!],
        secondCut: passes ? second[i]! : null,
        offset: 6,
        total: passes ? 13 : 10,
      });
      if (result.type === 'error') throw new Error(result.message);
      return result.stack;
    });
    expect(found.map((each) => each.bottom)).toEqual(numbers('1 1 2 3 1 2'));
    expect(found.flatMap((each) => each.masters)).toEqual(numbers('2 4 2 3 2 3'));
    expect(found.map((each) => each.buildUp)).toEqual([null, null, 7, 4, null, null]);
    expect(found.map((each) => each.top)).toEqual(numbers('7 5 2 3 7 5'));
  });

  // published-values 7: .125 in between the lines is more than nine steps of .0125 in, so one split serves one line only
  test('from the smallest second cut to the largest first one there is still a pin: offset 10 beats nine steps', () => {
    const all = Array.from({ length: 10 }, (_, cut) =>
      buildUpStack({ cuts: [cut], secondCut: 0, offset: 10, total: 23 }),
    );
    expect(all.every(({ type }) => type === 'stack')).toBe(true);
    const tight = buildUpStack({ cuts: [9], secondCut: 0, offset: 9, total: 23 });
    expect(tight).toMatchObject({ type: 'error' });
    expect(tight.type === 'error' && tight.message).toMatch(/no room for a build-up pin/);
  });
});

describe('what turns, with a sleeve', () => {
  // Matt Blaze, crypto.com, "Best SFIC Core Parts Breakdown": some chambers at one line and some at the other "will not
  // operate the lock at all"; both at once is logic. Lines .0605 in apart, splits .060 apart: at .295 each line has one.
  const sleeve = { outerDiameter: 0.63, clearance: 0.003 };
  const job = keyedJob(
    [
      [1, 5],
      [1, 5],
    ],
    { sleeve },
  );
  const upper = rootDepthOf(5);
  const both = rootDepthOf(1);
  const apart = keyedJob(
    [
      [1, 3],
      [1, 3],
    ],
    { sleeve },
  );
  // the upper split at the outer line: .030 in of master pin, .0605 in from line to line
  const outer = rootDepthOf(1) - 0.03 + 0.0605;

  test.each([
    ['yes', 'no', job, [upper, upper], 'plug'],
    ['no', 'yes', apart, [outer, outer], 'together'],
    ['yes', 'yes', job, [both, both], 'either'],
    ['no, a mixture', 'no, a mixture', apart, [both, outer], 'nothing'],
    ['no', 'no', apart, [0.28, 0.28], 'nothing'],
  ] as const)(
    'all split at the plug line: %s, at the sleeve line: %s',
    (inner, _, cylinder, roots, turns) => {
      const keyed = withKey(cylinder, 'tried', roots);
      const outcome = keyOutcomes(keyed, { cylinder: 'cylinder', plan: 'plan' }, (selection) =>
        evaluate(keyed, selection),
      ).find(({ key }) => key === 'tried');
      expect(outcome?.does).toBe(turns);
      expect(outcome?.isMixed).toBe(inner === 'no, a mixture');
    },
  );

  // the same source: one line in all chambers 1 time in 64 with six, in 128 with seven, each split found by chance
  test.each([
    [6, 64n],
    [7, 128n],
  ])('%d chambers, each by chance at one line or the other: one in %d', (chambers, all) => {
    const system: KeySystem = {
      columns: Array.from({ length: chambers }, () => ({ marks: [INNER, OUTER], isNextToBefore: true })),
      stepCount: 2,
      largestStep: null,
    };
    expect(countKeys(system)).toEqual({ plugAlone: 1n, together: 1n, either: 0n, all });
  });
});

function numbers(text: string): number[] {
  return text.split(' ').map(Number);
}
