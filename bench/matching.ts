/**
 * Parts on hand: one cylinder against solvers from the registry, and the whole table of keys and cylinders.
 *
 * Against the solvers, all get the same question as matrices of a 7-chamber cylinder and 200 loose parts: ours answers all
 * levels (most filled, largest smallest to spare, least squares, ties); the others only the last one, with the threshold
 * given to them. The optimum has to be equal or the benchmark breaks off. All times are the processor's.
 */
import { strict as assert } from 'node:assert';
import { assign } from '../src/model/matching/assign.ts';
import { pairTable, runToEnd } from '../src/model/matching/match-many.ts';
import { matchParts } from '../src/model/matching/match.ts';
import { listRow, type Option } from '../src/model/matching/option.ts';
import {
  byMunkres,
  byShortestPaths,
  type Costs,
  linearProgramSolver,
} from '../tests/support/assignment-solvers.ts';
import { manyJob } from '../tests/support/many-job.ts';
import { seededRandom } from '../tests/support/random-job.ts';
import { type Bench, type BenchRow, median } from './support/bench.ts';

const CHAMBERS = 7;
const PARTS = 200;
const INSTANCES = 20;

type Instance = { readonly options: readonly (readonly (Option | null)[])[] };

/** Offsets in half thousandths: a window of -.0077 to +.0040 in, parts spread over .200 in as in a mixed bag. */
function instance(seed: number): Instance {
  const random = seededRandom(seed);
  const [lowest, highest, reach] = [-15.4, 8, 400];
  const heights = Array.from({ length: CHAMBERS }, () => random() * reach);
  const lengths = Array.from({ length: PARTS }, () => random() * reach);
  return {
    options: heights.map((height) =>
      lengths.map((length, part): Option | null => {
        const offset = length - height;
        const spare = Math.floor(Math.min(offset - lowest, highest - offset));
        const squares = Math.round(Math.abs(offset)) ** 2;
        return spare < 0 ? null : { part, also: [], filed: 0, spare, squares, ties: [1, 1, 1] };
      }),
    ),
  };
}

/** Time the processor spent on this program: what else runs on the machine counts for nobody. ms. */
function processorMs(): number {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
}

function timeOf(call: () => unknown): number {
  const started = processorMs();
  call();
  return processorMs() - started;
}

/** Median over the instances of the time of one answer, each after a warm-up of its own. */
function medianOf(calls: readonly (() => unknown)[], repeats: number): number {
  const times = calls.map((call) => {
    call();
    return (
      timeOf(() => {
        for (let i = 0; i < repeats; i++) call();
      }) / repeats
    );
  });
  return median(times);
}

async function oneCylinder(): Promise<BenchRow[]> {
  const byLinearProgram = await linearProgramSolver();
  const instances = Array.from({ length: INSTANCES }, (_, i) => instance(i + 1));
  const rows = instances.map(({ options }) =>
    options.map((row) => listRow(row.filter((option) => option !== null))),
  );
  const answers = rows.map((each) => assign(each, () => 1).score);
  const costs = instances.map(({ options }, i): Costs => {
    const least = answers[i]?.smallestToSpare ?? 0;
    return options.map((row) =>
      row.map((option) => (option === null || option.spare < least ? null : option.squares)),
    );
  });
  for (const solve of [byMunkres, byShortestPaths, byLinearProgram]) {
    const found = costs.map((each) => solve(each));
    assert.deepEqual(
      found,
      answers.map(({ filled, squares }) => ({ filled, cost: squares })),
    );
  }
  for (let i = 0; i < 200; i++) for (const each of rows) assign(each, () => 1);
  const ours = medianOf(
    rows.map((each) => () => assign(each, () => 1)),
    50,
  );
  const timed = (solve: (costs: Costs) => unknown, repeats: number) =>
    medianOf(
      costs.map((each) => () => solve(each)),
      repeats,
    );
  const theirs = [
    { name: 'munkres-js', ms: timed(byMunkres, 3) },
    { name: 'highs', ms: timed(byLinearProgram, 3) },
    { name: 'linear-sum-assignment', ms: timed(byShortestPaths, 10) },
  ];
  const note = `${INSTANCES} cases, equal optimum`;
  return [
    { what: `${CHAMBERS} chambers × ${PARTS} parts, all levels: ours`, measured: ours, unit: 'ms', note },
    ...theirs.flatMap(({ name, ms }): BenchRow[] => [
      { what: `the last level alone: ${name}`, measured: ms, unit: 'ms' },
      {
        what: `${name} against ours`,
        measured: ms / ours,
        unit: '×',
        ...(name === 'linear-sum-assignment' ? {} : { aim: { atLeast: 100 } }),
      },
    ]),
  ];
}

function wholeJobs(): BenchRow[] {
  const one = manyJob({ keys: 1, cylinders: 1, chambers: CHAMBERS, parts: PARTS, seed: 1 });
  const selection = { cylinder: 'c1-cylinder', key: 'c1-key', plan: 'c1-plan' };
  const ofOne = Array.from({ length: 15 }, () => timeOf(() => matchParts(one, selection)));
  const many = manyJob({ keys: 12, cylinders: 20, chambers: CHAMBERS, parts: 10000, seed: 1 });
  const ask = {
    cylinders: many.plans.map(({ id, cylinder }) => ({ cylinder, plan: id })),
    keys: many.keys.map((key) => key.id),
  };
  let longestStep = 0;
  const ofMany = Array.from({ length: 3 }, () =>
    timeOf(() => {
      const steps = pairTable(many, ask);
      for (;;) {
        const started = processorMs();
        const { done } = steps.next();
        longestStep = Math.max(longestStep, processorMs() - started);
        if (done === true) return;
      }
    }),
  );
  const complete = runToEnd(pairTable(many, ask)).filter(({ filled, of }) => filled === of).length;
  return [
    { what: 'one match from the job: windows, heights, choice, words', measured: median(ofOne), unit: 'ms' },
    {
      what: '12 keys × 20 cylinders × 10,000 parts: the table',
      measured: median(ofMany),
      unit: 'ms',
      aim: { atMost: 1000 },
      note: `${complete} of 240 pairs complete`,
    },
    { what: 'longest step between two chances to stop', measured: longestStep, unit: 'ms' },
  ];
}

export const bench: Bench = {
  title: 'Parts on hand',
  run: async () => [...(await oneCylinder()), ...wholeJobs()],
};
