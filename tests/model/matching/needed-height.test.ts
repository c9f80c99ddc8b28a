/**
 * What a chamber calls for, by every route and with what was felt and tried, against the evaluation of the plan as it stands: both must
 * name the same height. Two chambers, one change at a time.
 */
import { describe, expect, test } from 'vitest';
import { evaluate } from '../../../src/model/evaluate/evaluate.ts';
import { measuringOf } from '../../../src/model/matching/match.ts';
import { putKeyIn } from '../../../src/model/matching/needed-height.ts';
import { layOutSite } from '../../../src/model/matching/site.ts';
import { takeStock } from '../../../src/model/matching/stock.ts';
import type { Job } from '../../../src/model/schema/job-schema.ts';
import { buildJob, changed, type JobOptions } from '../../support/job-builder.ts';
import { inches, statedInches } from '../../support/values.ts';

const CHAMBERS: JobOptions['chambers'] = [{ rootDepth: 0.26 }, { rootDepth: 0.3 }];
const build = (options: JobOptions = {}) => buildJob({ chambers: CHAMBERS, ...options });

/** The heights of each chamber in inches, of the matching and of the evaluation; null where not known. */
function heights(job: Job): { matching: (number | null)[]; evaluation: (number | null)[] } {
  const selection = { cylinder: 'cylinder', key: 'key', plan: 'plan' };
  const site = layOutSite(job, selection, takeStock(job, measuringOf(job)));
  const keyIn = putKeyIn(site, job.keys.find(({ id }) => id === 'key')!);
  const rounded = (mm: number | null | undefined) => (mm == null ? null : Number((mm / 25.4).toFixed(5)));
  const levels = site.places.map((place) => {
    const fit = site.fitOfStack(place, place.presentStack);
    const level = fit === null ? null : keyIn.levelOf(place, fit);
    // asked once more, it is remembered
    if (fit !== null) expect(keyIn.levelOf(place, fit)).toBe(level);
    return level === null ? null : level - (place.assembled.crestDrops[0] ?? 0);
  });
  const { chambers } = evaluate(job, selection);
  return {
    matching: levels.map(rounded),
    evaluation: chambers.map(({ neededLowerStack }) => rounded(neededLowerStack)),
  };
}

const items = (job: Job, chamber = 0) => structuredClone(job.plans[0]!.stacks[chamber]!.items);
const seating = (job: Job) => job.seatings[0]!;

describe('by one route', () => {
  test('plug less metal under the key less root depth', () => {
    const { matching, evaluation } = heights(build());
    expect(matching).toEqual([0.172, 0.132]);
    expect(evaluation).toEqual(matching);
  });

  test('over a ball', () => {
    // a ball of .109 in in a flat .05 in wide, 90 degrees: stands on the flat, so that the reading is the root and the ball
    const chambers = [
      { rootDepth: 0.26, overBall: { reading: 0.369, ball: 0.109 } },
      { rootDepth: 0.3, overBall: { reading: 0.409, ball: 0.109 } },
    ];
    const { matching, evaluation } = heights(build({ chambers }));
    expect(matching.map((each) => each?.toFixed(3))).toEqual(evaluation.map((each) => each?.toFixed(3)));
    expect(matching[0]).not.toBeNull();
  });
});

const CASES: Readonly<Record<string, (job: Job) => void>> = {
  'the crest is filed': (job) => {
    job.cylinders[0]!.bodies[0]!.crestDrop = inches(0.002);
  },
  'no metal under the key was measured': (job) => {
    delete seating(job).keywayFloorHeight;
  },
  'this key was never seated here': (job) => {
    job.seatings = [];
  },
  'another cylinder and another key are seated first': (job) => {
    const own = job.seatings[0]!;
    const other = { ...structuredClone(own), keywayFloorHeight: inches(0.09) };
    job.seatings = [
      { ...other, cylinder: 'other' },
      { ...other, key: 'other-key' },
      { ...other, cylinder: 'other', key: 'other-key' },
      own,
    ];
    job.keys.push({ ...structuredClone(job.keys[0]!), id: 'other-key' });
    job.cylinders.push({ ...structuredClone(job.cylinders[0]!), id: 'other' });
  },
  'a cut was not measured': (job) => {
    delete job.keys[0]!.cuts[1]!.rootDepth;
  },
  'no cut was measured': (job) => {
    for (const cut of job.keys[0]!.cuts) delete cut.rootDepth;
  },
  'a cut cannot be': (job) => {
    job.keys[0]!.cuts[0]!.rootDepth = inches(0.9);
  },
  'the blade cannot be': (job) => {
    job.keys[0]!.bladeHeight = inches(0.001);
  },
  'the key stops short': (job) => {
    seating(job).stopShort = inches(0.01);
  },
  'one cut is read over a ball as well': (job) => {
    job.keys[0]!.cuts[0]!.overBall = { reading: inches(0.372), ball: inches(0.109) };
  },
  'one cut is read over a ball instead': (job) => {
    const cut = job.keys[0]!.cuts[0]!;
    delete cut.rootDepth;
    cut.overBall = { reading: inches(0.372), ball: inches(0.109) };
  },
  'a pin stood up in chamber 1': (job) => {
    seating(job).standsUpBy.push({
      chamber: 'chamber-1',
      items: items(job),
      stack: inches(0.19),
      reading: inches(0.0155),
    });
  },
  'a pin stood up in chamber 2, and that route was picked there': (job) => {
    seating(job).standsUpBy.push({
      chamber: 'chamber-2',
      items: items(job, 1),
      stack: inches(0.15),
      reading: inches(0.0155),
    });
    seating(job).pinnedRoutes['chamber-2'] = 'stands up by';
  },
  'a known set worked, and that route was picked': (job) => {
    seating(job).knownSets.push('plan');
    seating(job).pinnedRoutes['chamber-1'] = 'known set';
    job.parts.find(({ id }) => id === 'bottom-pin-1')!.length = statedInches(0.1735);
    job.parts.find(({ id }) => id === 'bottom-pin-2')!.length = statedInches(0.1335);
  },
  'a known set worked with an empty chamber in it': (job) => {
    seating(job).knownSets.push('plan', 'gone');
    job.plans[0]!.stacks[1]!.items = [];
    job.parts.find(({ id }) => id === 'bottom-pin-1')!.length = statedInches(0.1735);
  },
  'a known set is of another cylinder, and that route was picked': (job) => {
    job.plans.push({ ...structuredClone(job.plans[0]!), id: 'elsewhere', cylinder: 'other' });
    job.cylinders.push({ ...structuredClone(job.cylinders[0]!), id: 'other' });
    seating(job).knownSets.push('elsewhere');
    seating(job).pinnedRoutes['chamber-1'] = 'known set';
    job.parts.find(({ id }) => id === 'bottom-pin-1')!.length = statedInches(0.1735);
  },
  'the second of two plans worked, and that route was picked': (job) => {
    const other = { ...structuredClone(job.plans[0]!), id: 'worked' };
    job.parts.push({
      ...structuredClone(job.parts.find(({ id }) => id === 'bottom-pin-1')!),
      id: 'longer',
      length: statedInches(0.174),
    });
    other.stacks[0]!.items[0] = { part: 'longer' };
    job.plans.push(other);
    seating(job).knownSets.push('worked');
    seating(job).pinnedRoutes['chamber-1'] = 'known set';
    seating(job).pinnedRoutes['chamber-2'] = 'known set';
  },
  'pins stood up in both chambers by different amounts, and that route was picked': (job) => {
    for (const [i, reading] of [0.012, 0.019].entries()) {
      const chamber = `chamber-${i + 1}`;
      seating(job).standsUpBy.push({
        chamber,
        items: items(job, i),
        stack: inches(0.19),
        reading: inches(reading),
      });
      seating(job).pinnedRoutes[chamber] = 'stands up by';
    }
  },
  'read over a ball as well, and that route was picked': (job) => {
    for (const [i, reading] of [0.372, 0.411].entries())
      job.keys[0]!.cuts[i]!.overBall = { reading: inches(reading), ball: inches(0.109) };
    seating(job).pinnedRoutes['chamber-1'] = 'over the ball';
    seating(job).pinnedRoutes['chamber-2'] = 'subtraction';
  },
  'subtraction was picked beside a pin that stood up': (job) => {
    seating(job).standsUpBy.push({
      chamber: 'chamber-1',
      items: items(job),
      stack: inches(0.19),
      reading: inches(0.0155),
    });
    seating(job).pinnedRoutes['chamber-1'] = 'subtraction';
  },
  'felt level': (job) => {
    seating(job).felt.push({ chamber: 'chamber-1', items: items(job), is: 'level' });
  },
  'felt above': (job) => {
    seating(job).felt.push({ chamber: 'chamber-1', items: items(job), is: 'above' });
  },
  'felt below, in chamber 2': (job) => {
    seating(job).felt.push({ chamber: 'chamber-2', items: items(job, 1), is: 'below' });
  },
  'tried, and it turned': (job) => {
    job.benchResults.push({
      plan: 'plan',
      key: 'key',
      chamber: 'chamber-1',
      items: items(job),
      turned: true,
      at: '',
    });
  },
  'tried, and it did not turn': (job) => {
    job.benchResults.push({
      plan: 'plan',
      key: 'key',
      chamber: 'chamber-1',
      items: items(job),
      turned: false,
      at: '',
    });
  },
  'tried all together, and it turned': (job) => {
    job.benchResults.push({ plan: 'plan', key: 'key', chamber: 'all', items: [], turned: true, at: '' });
  },
  'tried in the empty shell with a longer stack, and it turned': (job) => {
    const [pin] = items(job);
    job.benchResults.push({
      plan: 'plan',
      key: 'key',
      chamber: 'chamber-1',
      items: [pin!],
      turned: true,
      at: '',
    });
    job.parts.find(({ id }) => id === 'bottom-pin-1')!.length = statedInches(0.18);
  },
};

describe('the matching and the evaluation name the same heights where', () => {
  const errors: readonly JobOptions['instrumentError'][] = ['none', 'default'];
  test.each(Object.keys(CASES).flatMap((name) => errors.map((error) => [name, error] as const)))(
    '%s, caliper error: %s',
    (name, instrumentError) => {
      const job = changed(build({ instrumentError: instrumentError! }), CASES[name]!);
      const { matching, evaluation } = heights(job);
      // a chamber left empty has no stack to ask for here
      expect(
        matching.map((each, i) => (job.plans[0]!.stacks[i]!.items.length === 0 ? evaluation[i] : each)),
      ).toEqual(evaluation);
    },
  );

  test.each(Object.keys(CASES))('%s, with a pin that lies off by .006 in, balls under the pins', (name) => {
    const chambers = [
      { rootDepth: 0.26, ball: 0.109, bottomPin: 0.069 },
      { rootDepth: 0.3, ball: 0.109, bottomPin: 0.017 },
    ];
    const job = changed(build({ chambers, instrumentError: 'default' }), CASES[name]!);
    const { matching, evaluation } = heights(job);
    expect(
      matching.map((each, i) => (job.plans[0]!.stacks[i]!.items.length === 0 ? evaluation[i] : each)),
    ).toEqual(evaluation);
  });
});
