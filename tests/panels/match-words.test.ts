/** Choices of parts in words, and how they land in the plan. */
import { describe, expect, test } from 'vitest';
import { toDo } from '../../src/model/edit/edit-note.ts';
import { evaluate } from '../../src/model/evaluate/evaluate.ts';
import { runToEnd } from '../../src/model/matching/match-many.ts';
import { answerRequest, type MatchAnswer } from '../../src/model/matching/matching-request.ts';
import { matchParts } from '../../src/model/matching/match.ts';
import type { Job } from '../../src/model/schema/job-schema.ts';
import { freeName, planNames } from '../../src/panels/bench-choice/plan-names.ts';
import { landChoices } from '../../src/panels/match/land-choice.ts';
import {
  cellWords,
  filingLines,
  isOpen,
  missingWords,
  partWords,
  proofWords,
  spareWords,
  standingNotes,
  standsWords,
  togetherWords,
  untilFiled,
} from '../../src/panels/match/match-words.ts';
import { gaugeScale } from '../../src/panels/match/window-gauge.tsx';
import { lowerStackName, stackName } from '../../src/panels/shared/part-labels.ts';
import { asPlanned, loose, withBag } from '../support/bag-job.ts';
import { buildJob, changed, joinJobs } from '../support/job-builder.ts';

const SELECTION = { cylinder: 'cylinder', key: 'key', plan: 'plan' };
const newId = () => 'new-plan';
/** Calls for pins of .172 and .132 in. */
const two = buildJob({ chambers: [{ rootDepth: 0.26 }, { rootDepth: 0.3 }] });
const ask = (job: Job, mostFiled: number | null = null): MatchAnswer =>
  runToEnd(answerRequest(job, { kind: 'match', selection: SELECTION, ask: { held: [], mostFiled } }));

describe('what stands in a chamber', () => {
  test('offset and to spare, in the unit of the job', () => {
    const job = withBag(two, [loose('L1', { length: 0.17 })]);
    const standing = ask(job).match.chambers[0]!.standing!;
    const at = (offset: number, spare = 3) => standsWords({ ...standing, offset, spare }, job.settings);
    expect(standsWords(standing, job.settings)).toEqual({ words: 'low .0020', symbol: 'turns' });
    // the shop rule of the job is .001 in, like the verdicts'
    expect([0, -0.0254, 0.0254].map((offset) => at(offset).words)).toEqual(['level', 'level', 'level']);
    expect(at(0.0381)).toEqual({ words: 'high, rubs .0015', symbol: 'rubs' });
    expect(at(-0.3, -2)).toEqual({ words: 'low .0120', symbol: 'stops' });
    expect(standsWords({ ...standing, offset: -0.05 }, { ...job.settings, unit: 'mm' }).words).toBe(
      'low 0.05',
    );
    expect(spareWords(standing, 'in')).toMatch(/^\.00\d+ to spare$/);
    expect(spareWords({ ...standing, spare: -3, margin: -0.0381, offset: 1 }, 'in')).toBe('.0015 too high');
    expect(spareWords({ ...standing, spare: -3, margin: -0.0381, offset: -1 }, 'in')).toBe('.0015 too low');
  });

  test('what has less to spare than the ± is open, as in the table', () => {
    const chambers = [{ rootDepth: 0.26 }, { rootDepth: 0.3 }];
    const job = buildJob({ chambers, instrumentError: 'default' });
    const range = evaluate(job, SELECTION).chambers[0]!;
    // What the caliper leaves open lies between the end of the window and the sure range.
    const at = (length: number) => {
      const { standing } = ask(withBag(job, [loose('L1', { length })])).match.chambers[0]!;
      const made = buildJob({
        chambers: [{ rootDepth: 0.26, bottomPin: length }, { rootDepth: 0.3 }],
        instrumentError: 'default',
      });
      const { verdict } = evaluate(made, SELECTION).chambers[0]!.splits[0]!;
      return [isOpen(standing!, range), verdict] as const;
    };
    const lowest = range.useFrom! / 25.4;
    const highest = 0.172 + (range.splits[0]!.window.highest - range.splits[0]!.toHighest) / 25.4;
    expect(at((lowest + highest) / 2)[0]).toBe(false);
    expect(at(lowest + 0.0002)).toEqual([false, 'low, turns']);
    expect(at(lowest - 0.0002)).toEqual([true, "can't say yet"]);
    expect(at(highest - 0.0002)[0]).toBe(false);
    expect(at(highest + 0.0002)).toEqual([true, "can't say yet"]);
  });

  test('parts by their labels, a ball after what stands on it', () => {
    const job = withBag(two, [loose('pin', { label: 'L07' }), loose('ball', { kind: 'ball', label: ' ' })]);
    expect(partWords(job, [{ part: 'ball' }, { part: 'pin' }])).toBe('L07 on a part without a label');
  });

  test('a pin to be filed says by how much, and that it is measured again', () => {
    const job = withBag(two, [loose('L1', { length: 0.182 })]);
    const { match } = ask(job, 0.254);
    const [first] = match.chambers;
    expect(first?.standing?.filedOff).toBeCloseTo(0.254, 6);
    expect(standingNotes(first!, { reason: 'Because.', isHeld: true }, 'in')).toEqual([
      'Your choice: it stays, the others are chosen around it.',
      'File .010 in off its crown, then measure it again.',
      'Because.',
    ]);
    expect(filingLines(job, match)).toEqual([
      'File .010 in off the crown of L1 (chamber 1 of Cylinder), then measure it again.',
    ]);
    expect(untilFiled(match)).toBe('Until filed and measured again, chamber 1 stands high in the section.');
    expect(untilFiled(ask(job).match)).toBeNull();
  });

  test('the gauges of a choice share one scale that holds them and the line', () => {
    const standings = ask(withBag(two, [loose('L1', { length: 0.166 })])).match.chambers.flatMap(
      ({ standing }) => standing ?? [],
    );
    const { from, to } = gaugeScale(standings);
    for (const { lowest, highest, offset } of standings)
      for (const mm of [lowest, highest, offset, 0]) expect(mm > from && mm < to).toBe(true);
    expect(gaugeScale([]).to).toBeGreaterThan(gaugeScale([]).from);
  });
});

test('the one part that would complete it, and what would do instead', () => {
  const one = ask(withBag(two, [loose('L1', { length: 0.172 })]));
  expect(missingWords(one.missing, 'in')).toMatch(
    /^One part would complete it: a bottom pin of \.1\d+ in to \.1\d+ in, best \.1320 in, in chamber 2\.$/,
  );
  const twins = buildJob({ chambers: [{ rootDepth: 0.26 }, { rootDepth: 0.26 }] });
  const either = ask(withBag(twins, [loose('L1', { length: 0.172 })]));
  expect(missingWords(either.missing, 'in')).toMatch(
    /in chamber \d\. Or instead a bottom pin .*, in chamber \d\.$/,
  );
  expect(missingWords([], 'in')).toBeNull();
});

test('cells, keys chosen, several cylinders', () => {
  const cell = {
    cylinder: 'c',
    plan: 'p',
    key: 'k',
    filled: 5,
    of: 6,
    filed: 1,
    smallestToSpare: 0.0635,
    smallestSteps: 5,
    squares: 3,
    missing: ask(withBag(two, [loose('L1', { length: 0.172 })])).missing,
    isProved: true,
  };
  expect(cellWords(cell, 'in')).toEqual({
    filled: '5 of 6',
    detail: '.0025 to spare, 1 to file, chamber 2 lacks .1320 in',
  });
  expect(cellWords({ ...cell, filled: 0, filed: 0, smallestToSpare: null, missing: [] }, 'in')).toEqual({
    filled: '0 of 6',
    detail: '',
  });
  const score = { filled: 34, filed: 0, smallestToSpare: 4, squares: 90, filedOff: 0, ties: [] };
  const choice = { keys: [], score, isProved: false, bound: { ...score, filled: 36, squares: 60 } };
  expect(proofWords(choice, 'in')).toMatch(
    /^The best found; not every choice was looked at\. None can beat 36 chambers filled, \.002 in to spare at the tightest, .*; this one has 34 chambers filled/,
  );
  expect(proofWords({ ...choice, isProved: true }, 'in')).toBe('No other choice of keys is better.');
  expect([togetherWords(3, 3), togetherWords(1, 3), togetherWords(0, 3), togetherWords(1, 1)]).toEqual([
    'All 3 cylinders can be built at the same time from this bag.',
    '1 of 3 cylinders can be built whole, when they share this bag.',
    'None of the 3 cylinders can be built whole, when they share this bag.',
    'The cylinder can be built.',
  ]);
});

describe('into the plan', () => {
  const bag = [loose('L1', { length: 0.172 }), loose('L2', { length: 0.132 })];

  test('as the choice says, under the drivers that are there', () => {
    const job = withBag(two, bag);
    const match = matchParts(job, SELECTION);
    const landing = landChoices(job, [match], newId);
    if (landing.type !== 'landed') throw new Error(landing.message);
    expect(landing.job.plans).toEqual(asPlanned(job, match).plans);
    expect(landing.plans).toEqual(['plan']);
  });

  test('what is to be filed is noted as work to do', () => {
    const job = withBag(two, [loose('L1', { length: 0.182 }), loose('L2', { length: 0.132 })]);
    const landing = landChoices(job, [ask(job, 0.254).match], newId);
    expect(landing.type === 'landed' ? toDo(landing.job) : []).toEqual([
      'File .010 in off the crown of L1 (chamber 1 of Cylinder), then measure it again.',
    ]);
  });

  test('refused where a part would be in two cylinders at once, saying where', () => {
    const both = joinJobs(
      two,
      buildJob({ prefix: 'b-', chambers: [{ rootDepth: 0.26 }, { rootDepth: 0.3 }] }),
    );
    const job = changed(withBag(both, bag), (copy) => {
      copy.cylinders[1]!.label = 'Back door';
    });
    const match = matchParts(job, SELECTION);
    // chosen before the other cylinder took the same pin
    const taken = changed(job, (copy) => {
      copy.plans[1]!.stacks[0]!.items[0] = { part: 'L1' };
    });
    const landing = landChoices(taken, [match], newId);
    expect(landing.type === 'refused' ? landing.message : '').toBe(
      'L1 is in chamber 1 of Cylinder and in chamber 1 of Back door, but there is only one. Nothing was changed: choose again.',
    );
  });
});

test('captions name the parts that have a name of their own', () => {
  const job = withBag(two, [loose('x', { label: 'L07', length: 0.172 })]);
  const plan = {
    ...job.plans[0]!,
    stacks: [{ chamber: 'chamber-1', items: [{ part: 'x' }, { part: 'driver-1' }] }],
  };
  const named = changed(job, (copy) => {
    copy.parts.find(({ id }) => id === 'driver-1')!.label = 'driver 1';
  });
  expect(lowerStackName(named, plan, 'chamber-1')).toBe('L07');
  expect(stackName(named, plan, 'chamber-1')).toBe('L07');
  const driver = changed(job, (copy) => {
    copy.parts.find(({ id }) => id === 'driver-1')!.label = 'D3';
  });
  expect(stackName(driver, plan, 'chamber-1')).toBe('L07, under driver D3');
  expect(lowerStackName(job, plan, 'chamber-2')).toBeNull();
});

test('plans of one kind are numbered, new names are free ones', () => {
  const job = changed(two, (copy) => {
    copy.plans.push({ ...copy.plans[0]!, id: 'other' }, { ...copy.plans[0]!, id: 'found', kind: 'as found' });
  });
  expect(planNames(job, 'cylinder').map(({ label }) => label)).toEqual([
    'Planned 1',
    'Planned 2',
    'As found',
  ]);
  expect(freeName('Key', [{ label: 'Key' }, { label: 'Key 3' }])).toBe('Key 4');
});
