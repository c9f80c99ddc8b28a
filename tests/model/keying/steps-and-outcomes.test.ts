/** Steps of a table that a key comes nearest to, what is missing before keys can be counted, who crosses whom. By hand; mm. */
import { describe, expect, test } from 'vitest';
import type { Evaluation, LineResult } from '../../../src/model/evaluate/evaluation.ts';
import { crossings, type KeyOutcome, keyOutcomes } from '../../../src/model/keying/key-outcomes.ts';
import {
  keysAtLine,
  type KeysByTable,
  keysThatTurn,
  operatingKeys,
  stepsOfKey,
} from '../../../src/model/keying/operating-keys.ts';
import { planKeys } from '../../../src/model/keying/plan-keys.ts';
import { putChosen } from '../../../src/model/keying/put-chosen.ts';
import { TO_MAKE, withoutPlanned } from '../../../src/model/keying/put-plan.ts';
import { keysWithWear } from '../../../src/model/keying/wear.ts';
import { buildJob, changed } from '../../support/job-builder.ts';
import { evaluatedJob, keyedJob, keysOf, tableOf, withKey } from '../../support/keyed-job.ts';
import { inches } from '../../support/values.ts';

describe('the step that a cut comes nearest to', () => {
  const steps = (columns: readonly (readonly (number | null)[])[], ...heights: readonly (number | null)[]) =>
    stepsOfKey({ heights: columns } as unknown as KeysByTable, heights);
  const column = [5, 4.6, 4.2];

  test('up to half a step away, whichever way the table runs', () => {
    expect(steps([column, column], 4.95, 4.3)).toEqual([0, 2]);
    expect(steps([[4.2, 4.6, 5]], 4.3)).toEqual([0]);
    expect(steps([column], 5.19)).toEqual([0]);
    expect(steps([column], 5.21)).toBeNull();
    expect(steps([column], 3.99)).toBeNull();
    expect(steps([[6, 4, 2]], 7)).toEqual([0]);
    expect(steps([column, column], 4.6, 6)).toBeNull();
  });

  test('half of the least distance where steps differ; equal steps have none', () => {
    expect(steps([[5, 4.6, 3]], 2.9)).toEqual([2]);
    expect(steps([[5, 4.6, 3]], 2.7)).toBeNull();
    expect(steps([[5, 5, 4.6]], 4.75)).toEqual([2]);
    expect(steps([[5, 3, 4.9]], 3.04)).toEqual([1]);
    expect(steps([[5, 3, 4.9]], 3.06)).toBeNull();
  });

  test('with one step, .005 in to either side', () => {
    expect(steps([[5]], 5.127)).toEqual([0]);
    expect(steps([[5]], 5.128)).toBeNull();
    expect(steps([[5, 5]], 4.9)).toEqual([0]);
  });

  test('steps that are not reached are passed over; no height, no step', () => {
    expect(steps([[null, 4.6, null, 4.2]], 4.25)).toEqual([3]);
    expect(steps([[null, 0.1, null, 0.5]], 0.02)).toEqual([1]);
    expect(steps([[null, null]], 4)).toBeNull();
    expect(steps([column], null)).toBeNull();
    expect(steps([column])).toBeNull();
    expect(steps([[0.1, 0.5]], null)).toBeNull();
    expect(steps([])).toEqual([]);
  });
});

describe('keys that turn', () => {
  const counts = { plugAlone: 2n, together: 3n, either: 5n, all: 99n };
  const system = { columns: [{ marks: [1, 3, 2], isNextToBefore: false }], stepCount: 3, largestStep: null };
  const keys = { system, counts } as unknown as KeysByTable;

  test('at the inner line, at the outer line, at any', () => {
    expect(keysAtLine(keys, 0)).toEqual({ count: 7n, withoutLimit: 2n });
    expect(keysAtLine(keys, 1)).toEqual({ count: 8n, withoutLimit: 2n });
    expect(
      keysAtLine(
        { ...keys, system: { ...system, columns: [{ marks: [1, 3, 0], isNextToBefore: false }] } },
        1,
      ),
    ).toEqual({
      count: 8n,
      withoutLimit: 1n,
    });
    expect(keysThatTurn(keys)).toBe(10n);
  });

  const job = keyedJob([[2], [3], [2]]);
  const evaluated = evaluatedJob(job);
  const message = (change: Partial<typeof evaluated>) => {
    const result = operatingKeys({ ...evaluated, ...change }, null);
    return result.type === 'missing' ? result.message : 'known';
  };

  test('what is missing is told: a key, a chamber, a cut', () => {
    expect(message({})).toBe('known');
    expect(message({ assembly: { ...evaluated.assembly, key: null } })).toBe(
      'Pair a key with this cylinder first: the heights are those of its blank.',
    );
    const { evaluation } = evaluated;
    expect(message({ evaluation: { ...evaluation, chambers: [] } })).toBe(
      'This cylinder has no open chamber.',
    );
    const [first, ...rest] = evaluation.chambers;
    const open = (missing: readonly string[]) =>
      message({
        evaluation: { ...evaluation, chambers: [...rest, { ...first!, contactHeight: null, missing }] },
      });
    expect(open(['The cut is not measured.', 'Another thing.'])).toBe('The cut is not measured.');
    expect(open([])).toBe('Measure the cut under chamber 1 first.');
  });

  test('without a table, or with an empty one, none are counted', () => {
    for (const table of [null, { rootDepths: [], largestStep: null }]) {
      const result = operatingKeys(evaluated, table);
      expect(result.type === 'known' && result.keys.byTable).toBeNull();
      expect(result.type === 'known' && result.keys.setsOfHeights).toEqual([{ line: 'line', count: 1n }]);
    }
    expect(
      keysWithWear(evaluated, { rootDepths: [], largestStep: null }, { lowered: 1, raised: 1 }),
    ).toBeNull();
    const noKey = { ...evaluated, assembly: { ...evaluated.assembly, key: null } };
    expect(keysWithWear(noKey, tableOf(4), { lowered: 0, raised: 0 })).toBeNull();
  });

  test('a chamber that is closed parts its neighbours: no largest step between them', () => {
    const keys = keysOf(job, tableOf(4, 1, 1));
    expect(keys.system.columns.map(({ isNextToBefore }) => isNextToBefore)).toEqual([false, true, true]);
    const closed = changed(job, (copy) => (copy.cylinders[0]!.chambers[1]!.closed = true));
    const two = keysOf(closed, tableOf(4, 1, 1));
    expect(two.system.columns.map(({ isNextToBefore }) => isNextToBefore)).toEqual([false, false]);
    expect(two.chambers.map(({ number }) => number)).toEqual([1, 3]);
    expect(two.counts).toEqual({ plugAlone: 1n, together: 0n, either: 0n, all: 16n });
    // three cuts of four steps, neighbours one apart at most: 5 + 8 + 8 + 5
    expect(keys.counts.all).toBe(26n);
  });

  test('each chamber is looked at with the foot of its own stack', () => {
    const bare = changed(keyedJob([[2], [2], [2]]), (copy) => {
      copy.plans[0]!.stacks[0]!.items = [];
      copy.parts.find(({ id }) => id === 'bottom-pin-2')!.ends![0] = { kind: 'sphere', basis: 'seen' };
      copy.keys[0]!.rootFlat = inches(0.02);
    });
    const heights = keysOf(keyedJob([[2], [2], [2]], { rootFlat: 0.02 }), tableOf(2)).heights;
    const evaluatedBare = evaluatedJob(bare);
    const result = operatingKeys(
      {
        ...evaluatedBare,
        evaluation: {
          ...evaluatedBare.evaluation,
          chambers: evaluatedBare.evaluation.chambers.map((each) => ({
            ...each,
            splits: evaluatedBare.evaluation.chambers[2]!.splits,
            contactHeight: 5,
          })),
        },
      },
      tableOf(2),
    );
    const own = result.type === 'known' ? result.keys.byTable!.heights : [];
    // pointed on the flat: the root itself; a round end rides on the sides of a cut .02 wide
    expect(own[2]).toEqual(heights[2]);
    expect(own[1]![0]!).toBeGreaterThan(own[2]![0]! + 0.1);
    expect(own[0]).not.toEqual(own[1]);
  });

  test('a key that stops short meets its cuts where they are then', () => {
    const short = changed(job, (copy) => {
      copy.seatings[0]!.stopShort = inches(0.05);
      for (const cut of copy.keys[0]!.cuts)
        cut.position = inches(cut.position.readings[0]!.value / 25.4 + 0.05);
    });
    const one = keysOf(job, tableOf(4)).heights;
    const other = keysOf(short, tableOf(4)).heights;
    one.forEach((column, i) =>
      column.forEach((height, step) => expect(other[i]![step]).toBeCloseTo(height!, 6)),
    );
  });
});

describe('who does what', () => {
  const result = (line: string, verdict: LineResult['verdict'], blockedBy: string[] = []): LineResult => ({
    line,
    verdict,
    lean: null,
    blockedBy,
  });
  const evaluation = (lines: readonly LineResult[], chambers: readonly [string, number][] = []) =>
    ({
      cylinder: 'cylinder',
      lines,
      chambers: chambers.map(([chamber, number]) => ({ chamber, number, splits: [], verdicts: [] })),
    }) as unknown as Evaluation;
  const job = changed(
    withKey(withKey(buildJob({ chambers: 1 }), 'second', [0.2]), 'third', [0.2]),
    (copy) => {
      copy.seatings = copy.seatings.filter(({ key }) => key === 'key');
      copy.seatings.push({ ...copy.seatings[0]!, cylinder: 'other', key: 'third' });
    },
  );
  const where = { cylinder: 'cylinder', plan: 'plan' };
  const keysIn = (intents: typeof job.intents) =>
    keyOutcomes({ ...job, intents }, where, () => evaluation([result('line', 'turns')])).map(
      ({ key }) => key,
    );

  test('keys that sit in the cylinder, or are meant for it, and no others', () => {
    expect(keysIn([])).toEqual(['key']);
    expect(keysIn([{ key: 'second', cylinder: 'cylinder', line: 'line', turns: false }])).toEqual([
      'key',
      'second',
    ]);
    expect(keysIn([{ key: 'third', cylinder: 'other', line: 'line', turns: true }])).toEqual(['key']);
  });

  test('the chambers that hold a line are told by their numbers, unknown ones left out', () => {
    const [outcome] = keyOutcomes(job, where, ({ key, plan, cylinder }) => {
      expect([key, plan, cylinder]).toEqual(['key', 'plan', 'cylinder']);
      return evaluation(
        [result('line', 'will not turn', ['b', 'gone', 'a'])],
        [
          ['a', 4],
          ['b', 7],
        ],
      );
    });
    expect(outcome!.heldBy).toEqual([{ line: 'line', chambers: [7, 4] }]);
  });

  test('crossed are the other keys that are meant to turn the line', () => {
    const outcome = (key: string, meant: KeyOutcome['meant'], ...verdicts: LineResult['verdict'][]) =>
      ({
        key,
        meant,
        lines: verdicts.map((verdict, i) => result(['inner', 'outer'][i]!, verdict)),
      }) as unknown as KeyOutcome;
    const [turns, held] = ['turns', 'will not turn'] as const;
    expect(
      crossings([
        outcome('a', 'plug', turns, turns),
        outcome('b', 'together', held, turns),
        outcome('c', 'either', turns, turns),
        outcome('d', 'nothing', turns, held),
        outcome('e', null, turns, turns),
      ]),
    ).toEqual([
      { key: 'a', line: 'outer', meantFor: ['b', 'c'] },
      { key: 'd', line: 'inner', meantFor: ['a', 'c'] },
    ]);
    expect(crossings([outcome('d', 'nothing', turns, held), outcome('e', null, turns, turns)])).toEqual([
      { key: 'd', line: 'inner', meantFor: [] },
    ]);
  });
});

describe('planned', () => {
  test('a master pin as thick as the least is not thin, one a hair thinner is', () => {
    const job = withKey(buildJob({ chambers: 1 }), 'second', [0.25]);
    const isThin = (thinnest: number) =>
      planKeys(job, {
        cylinder: 'cylinder',
        plan: 'plan',
        wants: ['key', 'second'].map((key) => ({ key, line: 'line' })),
        thinnest,
      }).chambers[0]!.masters.map((master) => master.isThin);
    // .010 in
    expect(isThin(0.254)).toEqual([false]);
    expect(isThin(0.254 + 5e-6)).toEqual([false]);
    expect(isThin(0.254 + 2e-5)).toEqual([true]);
    expect(isThin(0.25)).toEqual([false]);
  });

  test('only parts that were planned, asked for and in no plan are dropped, with what they were measured in', () => {
    const base = changed(buildJob({ chambers: 1 }), (copy) => {
      const spare = (id: string, from?: string) => ({
        ...structuredClone(copy.parts[0]!),
        id,
        ...(from !== undefined && { from }),
      });
      copy.parts.push(
        spare('made', TO_MAKE),
        spare('other-made', TO_MAKE),
        spare('own'),
        spare('tried', TO_MAKE),
      );
      copy.parts.find(({ id }) => id === 'bottom-pin-1')!.from = TO_MAKE;
      copy.groups = [
        { id: 'gone', parts: ['own', 'made'], height: inches(0.2) },
        { id: 'stays', parts: ['own', 'driver-1'], height: inches(0.2) },
      ];
      copy.benchResults.push({
        plan: 'plan',
        key: 'key',
        chamber: 'all',
        items: [{ part: 'tried' }],
        turned: true,
        at: '',
      });
    });
    const dropped = (candidates: string[]) => {
      const after = withoutPlanned(base, candidates);
      return [
        base.parts.filter((part) => !after.parts.includes(part)).map(({ id }) => id),
        after.groups.map(({ id }) => id),
      ];
    };
    expect(dropped(['made', 'own', 'bottom-pin-1'])).toEqual([['made'], ['stays']]);
    expect(dropped(['made', 'other-made', 'tried'])).toEqual([['made', 'other-made'], ['stays']]);
    expect(withoutPlanned(base, ['own', 'bottom-pin-1'])).toBe(base);
    expect(withoutPlanned(base, [])).toBe(base);
  });
});

test('chosen parts go into the plan that is named, and what was only planned there before is gone', () => {
  const job = changed(buildJob({ chambers: 1 }), (copy) => {
    copy.plans.unshift({ ...structuredClone(copy.plans[0]!), id: 'first' });
    copy.parts.push(
      { ...structuredClone(copy.parts[0]!), id: 'made', from: TO_MAKE },
      { ...structuredClone(copy.parts[0]!), id: 'spare' },
    );
    copy.plans[1]!.stacks[0]!.items[0] = { part: 'made' };
  });
  const chosen = [{ chamber: 'chamber-1', isLocked: false, items: [{ part: 'spare' }] }];
  const put = putChosen(job, 'plan', chosen, () => 'new');
  expect(put.plan).toBe('plan');
  expect(put.job.plans[0]).toEqual(job.plans[0]);
  expect(put.job.plans[1]!.stacks[0]!.items.map(({ part }) => part)).toEqual([
    'spare',
    'driver-1',
    'spring-1',
  ]);
  expect(put.job.parts.some(({ id }) => id === 'made')).toBe(false);
});
