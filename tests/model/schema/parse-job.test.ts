import { describe, expect, it } from 'vitest';
import type { Job } from '../../../src/model/schema/job-schema.ts';
import { parseJob } from '../../../src/model/schema/parse-job.ts';
import type { BenchResult } from '../../../src/model/schema/parts-schema.ts';
import { known } from '../../../src/model/assert.ts';
import { buildJob, changed, joinJobs } from '../../support/job-builder.ts';
import { assumedInches, inches, inchesToMm } from '../../support/values.ts';

/** What is said about a job after writing anything into it. */
function problemsAfter(change: (job: Job) => void): string[] {
  const job = changed(buildJob(), change);
  const parsed = parseJob(job);
  return parsed.type === 'success' ? [] : parsed.problems.map(({ field, message }) => `${field}: ${message}`);
}

function first<T>(list: readonly T[]): T {
  return known(list[0], 'first member');
}

/** A test on the bench that refers to what `buildJob` makes, but for what is given. */
function benchTest(given: Partial<BenchResult>): BenchResult {
  return {
    plan: 'plan',
    key: 'key',
    chamber: 'chamber-1',
    items: [{ part: 'bottom-pin-1' }],
    turned: true,
    at: '2026-03-04T10:00:00Z',
    ...given,
  };
}

describe('parseJob', () => {
  it('gives back a sound job, unchanged', () => {
    const job = buildJob();
    expect(parseJob(structuredClone(job))).toEqual({ type: 'success', job });
  });

  it.each([
    ['text', 'hello'],
    ['nothing', null],
    ['a list', []],
  ])('says that %s is no job', (_, data) => {
    expect(parseJob(data)).toEqual({
      type: 'error',
      problems: [
        { field: 'file', message: 'This is not a Shearsight job: a job file holds one JSON object.' },
      ],
    });
  });

  it('says that another format is no job', () => {
    expect(problemsAfter((job) => Object.assign(job, { format: 'recipe' }))).toEqual([
      'format: This is not a Shearsight job: its format is not "shearsight-job".',
    ]);
  });

  it('says that a newer version is newer, not broken', () => {
    expect(problemsAfter((job) => Object.assign(job, { schemaVersion: 2, unheardOf: true }))).toEqual([
      'schemaVersion: This job was saved by a newer Shearsight (file version 2; this one reads up to 1).',
    ]);
  });

  it('names the place as a person would count it, and what is missing there', () => {
    const problems = problemsAfter((job) => {
      const chamber = known(first(job.cylinders).chambers[2], 'chamber 3');
      Object.assign(chamber, { position: undefined });
    });
    expect(problems).toEqual(['cylinders 1 › chambers 3 › position: is missing (expected object).']);
  });

  it.each<[string, (job: Job) => void, string]>([
    [
      'an unknown field',
      (job) => Object.assign(job, { colour: 'red' }),
      'file: has a field that does not belong here: colour.',
    ],
    [
      'a word that is none of the choices',
      (job) => Object.assign(job.settings, { unit: 'ft' }),
      'settings › unit: should be one of: in, mm.',
    ],
    [
      'a number out of range',
      (job) => Object.assign(job.settings, { steepestRampDeg: 90 }),
      'settings › steepestRampDeg: is too large or too long (at most 89).',
    ],
    [
      'a negative number where none can be',
      (job) => Object.assign(job.settings, { friction: -1 }),
      'settings › friction: is too small or too short (at least 0).',
    ],
    [
      'a long unknown field with a line break and a mark that turns the reading direction',
      (job) => Object.assign(job, { [`col\nour\u202e${'x'.repeat(100)}`]: 'red' }),
      `file: has a field that does not belong here: col\uFFFDour\uFFFD${'x'.repeat(52)}….`,
    ],
    [
      'characters in an id that do not belong there',
      (job) => Object.assign(job, { id: '../etc' }),
      'id: has characters that do not belong there.',
    ],
    [
      'a value without a reading',
      (job) => Object.assign(job.settings.shopRule, { readings: [] }),
      'settings › shopRule › readings: is too small or too short (at least 1).',
    ],
  ])('says one sentence for %s', (_, change, sentence) => {
    expect(problemsAfter(change)).toEqual([sentence]);
  });

  it.each<[string, (job: Job) => void, string]>([
    ['a wrong type', (job) => Object.assign(job, { title: 7 }), 'title: should be a string.'],
    [
      'a number that no file can hold',
      (job) => Object.assign(first(job.settings.shopRule.readings), { value: Number.NaN }),
      'settings › shopRule › readings 1 › value: should be a number.',
    ],
  ])('says one sentence for %s', (_, change, sentence) => {
    expect(problemsAfter(change)).toEqual([sentence]);
  });

  it.each<[string, (job: Job) => void, string]>([
    [
      'a part that is not there',
      (job) => Object.assign(first(first(first(job.plans).stacks).items), { part: 'lost' }),
      'plans › stacks: refers to a part "lost", which is not in this file.',
    ],
    [
      'a chamber of another cylinder',
      (job) => Object.assign(first(first(job.plans).stacks), { chamber: 'elsewhere' }),
      'plans › stacks: refers to a chamber "elsewhere", which is not in this file.',
    ],
    [
      'two stacks in one chamber',
      (job) => first(job.plans).stacks.push(structuredClone(first(first(job.plans).stacks))),
      'plans › stacks: has two stacks in one chamber.',
    ],
    [
      'parts of a bench test that are not there',
      (job) => job.benchResults.push(benchTest({ items: [{ part: 'lost' }] })),
      'benchResults: refers to a part "lost", which is not in this file.',
    ],
    [
      'a chamber of a bench test that is not in the cylinder of its plan',
      (job) => job.benchResults.push(benchTest({ chamber: 'elsewhere' })),
      'benchResults: refers to a chamber "elsewhere", which is not in this file.',
    ],
    [
      'a shear line that the cylinder has not',
      (job) => job.intents.push({ key: 'key', cylinder: 'cylinder', line: 'outer-line', turns: true }),
      'intents: refers to a shear line "outer-line", which is not in this file.',
    ],
    [
      'a crest of a chamber that the cylinder has not',
      (job) => Object.assign(first(first(job.cylinders).bodies), { crestDropAt: { lost: inches(0.01) } }),
      'cylinder Cylinder › bodies: refers to a chamber "lost", which is not in this cylinder.',
    ],
    [
      'an id that is there twice',
      (job) => job.keys.push(structuredClone(first(job.keys))),
      'keys: has the id "key" twice.',
    ],
    [
      'a key paired twice with a cylinder',
      (job) => job.seatings.push(structuredClone(first(job.seatings))),
      'seatings: has the same key and cylinder paired twice.',
    ],
    [
      'a line between bodies that are not neighbours',
      (job) => Object.assign(first(first(job.cylinders).lines), { outer: 'plug' }),
      'cylinder Cylinder › lines 1: should lie between neighbouring bodies, inside to outside.',
    ],
    [
      'something in a cylinder whose name holds a line break',
      (job) => {
        Object.assign(first(job.cylinders), { label: 'Back\u2028door' });
        first(job.cylinders).bodies.reverse();
      },
      'cylinder Back\uFFFDdoor › bodies: should run inside to outside: plug, shell, or plug, sleeve, shell.',
    ],
    [
      'bodies in the wrong order',
      (job) => first(job.cylinders).bodies.reverse(),
      'cylinder Cylinder › bodies: should run inside to outside: plug, shell, or plug, sleeve, shell.',
    ],
    [
      'an instrument that is not there',
      (job) => Object.assign(first(job.settings.shopRule.readings), { instrument: 'lost' }),
      'settings › shopRule: was read with an instrument "lost", which is not in this file.',
    ],
    [
      'something assumed without a range',
      (job) => Object.assign(first(job.keys), { rootFlat: { ...inches(0.05), basis: 'assumed' } }),
      'keys › 1 › rootFlat: is assumed, so it needs a range.',
    ],
    [
      'a range that runs backwards',
      (job) => Object.assign(first(job.keys), { rootFlat: assumedInches(0.05, 0.06, 0.04) }),
      'keys › 1 › rootFlat: has a range that runs backwards.',
    ],
    [
      'only readings that were left out',
      (job) => Object.assign(first(job.settings.shopRule.readings), { left: 'out' }),
      'settings › shopRule: has no reading left that counts.',
    ],
  ])('says what refers to %s', (_, change, sentence) => {
    expect(problemsAfter(change)).toContain(sentence);
  });

  it('takes bench tests of one chamber and of all of them', () => {
    expect(
      problemsAfter((job) => job.benchResults.push(benchTest({}), benchTest({ chamber: 'all', items: [] }))),
    ).toEqual([]);
  });

  it('tells forty problems and counts the rest', () => {
    const problems = problemsAfter((job) => {
      for (const part of job.parts) Object.assign(part, { kind: 'screw', quantity: -1, original: 'yes' });
    });
    expect(problems).toHaveLength(41);
    expect(problems.at(-1)).toMatch(/^file: And \d+ more problems/);
  });
});

describe('buildJob', () => {
  it.each([
    ['as it comes', {}],
    ['with seven chambers', { chambers: 7 }],
    ['with one', { chambers: 1 }],
    [
      'with a sleeve and master pins',
      {
        sleeve: { outerDiameter: 0.65, clearance: 0.003 },
        chambers: [{ masterPins: [0.03, 0.05] }, { masterPins: [0.04] }],
      },
    ],
    [
      'with balls measured together with their pins',
      {
        chambers: [
          { ball: 0.109, lowerStack: 0.19, restDepth: 0.1 },
          { ball: 0.109, bottomPin: 0.08 },
        ],
      },
    ],
    [
      'read over a ball, with a cut off its chamber and a chamber without one',
      {
        chambers: [
          { overBall: { reading: 0.371, ball: 0.109 } },
          { cutPosition: 0.385 },
          { cutPosition: null, bottomPin: null, driver: null, isSprung: false },
        ],
      },
    ],
  ] as const)('makes a valid job %s', (_, options) => {
    expect(parseJob(buildJob(options))).toMatchObject({ type: 'success' });
  });

  it('reaches the line by subtraction when no pin is given', () => {
    const job = buildJob({ chambers: [{ rootDepth: 0.25 }] });
    const pin = known(job.parts.find(({ id }) => id === 'bottom-pin-1')?.length, 'bottom pin');
    expect(first(pin.readings).value).toBe(inchesToMm(0.512 - 0.08 - 0.25));
  });

  it('joins jobs whose ids differ by their prefix', () => {
    const joined = joinJobs(buildJob(), buildJob({ prefix: 'b-', chambers: 3 }));
    expect(parseJob(joined)).toMatchObject({ type: 'success' });
    expect(joined.cylinders.map(({ id }) => id)).toEqual(['cylinder', 'b-cylinder']);
  });
});
