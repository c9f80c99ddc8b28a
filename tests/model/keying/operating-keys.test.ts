import { describe, expect, test } from 'vitest';
import { buildUpLengths, buildUpStack } from '../../../src/model/keying/build-up.ts';
import { clears, heightsThatClear, joined } from '../../../src/model/keying/key-heights.ts';
import { keysAtLine, operatingKeys, stepsOfKey } from '../../../src/model/keying/operating-keys.ts';
import { keysWithWear } from '../../../src/model/keying/wear.ts';
import { evaluate } from '../../../src/model/evaluate/evaluate.ts';
import { buildJob, changed } from '../../support/job-builder.ts';
import { evaluatedJob, keyedJob, keysOf, rootDepthOf, tableOf, withKey } from '../../support/keyed-job.ts';
import { inches } from '../../support/values.ts';

const INCH = 25.4;
const known = (result: ReturnType<typeof operatingKeys>) => {
  if (result.type === 'missing') throw new Error(result.message);
  return result.keys;
};

describe('contact heights that clear a line', () => {
  const job = keyedJob([[2, 5], [3]]);
  const { evaluation } = evaluatedJob(job);

  test('one stretch for each split, around the root its cut needs', () => {
    const [first, second] = evaluation.chambers.map(
      (chamber) => heightsThatClear(chamber, 'line', 0.34 * INCH)!,
    );
    expect(first).toHaveLength(2);
    expect(second).toHaveLength(1);
    for (const [range, cut] of [
      [first![0]!, 5],
      [first![1]!, 2],
      [second![0]!, 3],
    ] as const) {
      const level = rootDepthOf(cut) * INCH;
      expect(range.from).toBeLessThan(level);
      expect(range.to).toBeGreaterThan(level);
    }
  });

  test('a key turns up to the very ends of a stretch and not past them', () => {
    const range = heightsThatClear(evaluation.chambers[1]!, 'line', 0.34 * INCH)![0]!;
    const turns = (height: number) =>
      evaluate(withKey(job, 'tried', [rootDepthOf(2), height / INCH]), {
        cylinder: 'cylinder',
        key: 'tried',
        plan: 'plan',
      }).lines[0]?.verdict;
    const inside = 0.0005;
    expect([range.from + inside, range.to - inside].map(turns)).toEqual(['turns', 'turns']);
    expect([range.from - inside, range.to + inside].map(turns)).toEqual(['will not turn', 'will not turn']);
  });

  test('nothing above the blade counts', () => {
    const ranges = heightsThatClear(evaluation.chambers[0]!, 'line', rootDepthOf(3) * INCH)!;
    expect(ranges).toHaveLength(1);
    expect(clears(ranges, rootDepthOf(2) * INCH)).toBe(false);
  });

  test('with the ±, what surely turns is narrower and what possibly does is wider', () => {
    const real = evaluatedJob(keyedJob([[2]], { instrumentError: 'default' })).evaluation.chambers[0]!;
    const [surely, measured, possibly] = (['surely', 'as measured', 'possibly'] as const).map(
      (doubt) => heightsThatClear(real, 'line', 9, { lowered: 0, raised: 0, doubt })![0],
    );
    expect(possibly!.from).toBeLessThan(measured!.from);
    expect(possibly!.to).toBeGreaterThan(measured!.to);
    expect(surely === undefined || surely.from > measured!.from).toBe(true);
  });

  test('overlapping stretches are one', () => {
    expect(
      joined([
        { from: 3, to: 4 },
        { from: 1, to: 2 },
        { from: 1.5, to: 2.5 },
      ]),
    ).toEqual([
      { from: 1, to: 2.5 },
      { from: 3, to: 4 },
    ]);
  });
});

describe('counts', () => {
  test('without a table, sets of heights: the product of the stretches', () => {
    const { setsOfHeights, byTable } = known(
      operatingKeys(evaluatedJob(keyedJob([[1, 4], [2, 5, 8], [3]])), null),
    );
    expect(setsOfHeights).toEqual([{ line: 'line', count: 6n }]);
    expect(byTable).toBeNull();
  });

  test('a largest step takes keys away from the product', () => {
    const byTable = keysOf(
      keyedJob([
        [1, 8],
        [1, 8],
      ]),
      tableOf(9, 1, 5),
    );
    expect(keysAtLine(byTable, 0)).toEqual({ count: 2n, withoutLimit: 4n });
  });

  test('between chambers that are not neighbours no largest step counts', () => {
    const job = changed(keyedJob([[1, 8], [4], [1, 8]]), (copy) => {
      copy.cylinders[0]!.chambers[1]!.closed = true;
    });
    expect(keysAtLine(keysOf(job, tableOf(9, 1, 5)), 0)).toEqual({ count: 4n, withoutLimit: 4n });
  });

  test('a ball on the sides of narrow cuts: the steps of the table are heights of the ball', () => {
    // a ball of .115 in on cuts without a flat stands .0238 in above their roots (r/sin a - r)
    const job = changed(
      buildJob({ rootFlat: 0, chambers: [{ rootDepth: 0.22, ball: 0.115, bottomPin: 0.05 }] }),
      (copy) => {
        copy.keys[0]!.cuts[0]!.rootDepth = inches(0.22);
      },
    );
    const { heights } = keysOf(job, { rootDepths: [0.22 * INCH, 0.2 * INCH], largestStep: null });
    const lift = 0.0575 / Math.sin(Math.PI / 4) - 0.0575;
    expect(heights[0]![0]! / INCH).toBeCloseTo(0.22 + lift, 6);
    expect(heights[0]![1]! / INCH).toBeCloseTo(0.2 + lift, 6);
  });

  test('a key of the job is found in the table, one off it is not', () => {
    const job = keyedJob([[2, 5], [3]]);
    const byTable = keysOf(job, tableOf(9));
    const { chambers } = evaluatedJob(job).evaluation;
    expect(
      stepsOfKey(
        byTable,
        chambers.map(({ contactHeight }) => contactHeight),
      ),
    ).toEqual([1, 2]);
    expect(stepsOfKey(byTable, [rootDepthOf(12) * INCH, chambers[1]!.contactHeight])).toBeNull();
    expect(stepsOfKey(byTable, [null, chambers[1]!.contactHeight])).toBeNull();
  });

  test('a sleeve: a cut that clears both lines counts as either', () => {
    // splits .06 apart at lines .0605 apart: at cut 1 one split is at each line. At the outer line the lower split would
    // call for a cut higher than the blade.
    const sleeve = { outerDiameter: 0.63, clearance: 0.003 };
    const { counts } = keysOf(keyedJob([[1, 5]], { sleeve }), tableOf(12));
    expect(counts).toEqual({ plugAlone: 1n, together: 0n, either: 1n, all: 12n });
  });

  test('a crest filed by as much as a step lets the next deeper cut turn', () => {
    const job = keyedJob([[3], [4]]);
    const evaluated = evaluatedJob(job);
    const table = tableOf(9);
    expect(keysWithWear(evaluated, table, { lowered: 0, raised: 0 })).toEqual({ now: 1n, worn: 1n });
    expect(keysWithWear(evaluated, table, { lowered: 0.015 * INCH, raised: 0 })).toEqual({
      now: 1n,
      worn: 4n,
    });
    // the same as a job whose plug really has that crest
    const filed = changed(job, (copy) => {
      copy.cylinders[0]!.bodies[0]!.crestDrop = inches(0.015);
    });
    expect(keysOf(filed, table).counts.plugAlone).toBe(4n);
  });

  test('what is not measured yet is said', () => {
    const open = changed(keyedJob([[2], [3]]), (copy) => {
      delete copy.keys[0]!.cuts[1]!.rootDepth;
    });
    expect(operatingKeys(evaluatedJob(open), null)).toEqual({
      type: 'missing',
      message: 'Measure the cut under chamber 2: root depth, or over the ball.',
    });
    expect(operatingKeys(evaluatedJob(open, 'no such key'), null)).toMatchObject({ type: 'missing' });
  });
});

describe('stacks from cut numbers', () => {
  test('lengths, and which discs are too thin', () => {
    const result = buildUpStack({ cuts: [5, 6], secondCut: 9, offset: 10, total: 23 });
    if (result.type === 'error') throw new Error(result.message);
    const lengths = buildUpLengths(result.stack, { increment: 0.3175, bottomAtNone: 2.5, topAtNone: 1 }, 0.5);
    expect(lengths.bottom).toBeCloseTo(2.5 + 5 * 0.3175, 9);
    expect(lengths.masters).toEqual([0.3175]);
    expect(lengths.buildUp).toBeCloseTo(13 * 0.3175, 9);
    expect(lengths.thin).toEqual([0.3175]);
  });

  test.each([
    [{ cuts: [1.5], secondCut: 0, offset: 10, total: 23 }, /whole numbers from 0 up, for example/],
    [{ cuts: [], secondCut: 0, offset: 10, total: 23 }, /at least one key/],
    [{ cuts: [12], secondCut: 0, offset: 10, total: 23 }, /no room for a build-up pin/],
    [{ cuts: [5], secondCut: 9, offset: 10, total: 12 }, /no room for a top pin/],
  ])('%j gives a sentence', (input, sentence) => {
    const result = buildUpStack(input);
    expect(result.type).toBe('error');
    expect(result.type === 'error' && result.message).toMatch(sentence);
  });
});
