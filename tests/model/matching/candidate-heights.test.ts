/** What is said of a part before it is in the plan is what the evaluation says once it is. */
import { describe, expect, test } from 'vitest';
import { evaluate } from '../../../src/model/evaluate/evaluate.ts';
import { alternativesFor } from '../../../src/model/matching/alternatives.ts';
import { assign } from '../../../src/model/matching/assign.ts';
import { prepareMatch } from '../../../src/model/matching/match.ts';
import { rowsOf } from '../../../src/model/matching/pair-to-fill.ts';
import type { Job } from '../../../src/model/schema/job-schema.ts';
import { loose, type LooseOptions, withBag, withLowerStack } from '../../support/bag-job.ts';
import { buildJob, changed, type JobOptions } from '../../support/job-builder.ts';
import { seededRandom } from '../../support/random-job.ts';
import { type EndOptions, inches } from '../../support/values.ts';

const SELECTION = { cylinder: 'cylinder', key: 'key', plan: 'plan' };
const TOPS: readonly EndOptions[] = [
  { kind: 'dome' },
  { kind: 'flat' },
  { kind: 'bevel', width: 0.012, angleDeg: 45 },
  { kind: 'dome', radius: 0.2 },
];

function bagOf(
  seed: number,
  count: number,
  more: (random: () => number, i: number) => LooseOptions = () => ({}),
) {
  const random = seededRandom(seed);
  return Array.from({ length: count }, (_, i) =>
    loose(`loose-${i}`, {
      length: Math.round((0.12 + 0.1 * random()) * 2000) / 2000,
      top: TOPS[Math.floor(random() * TOPS.length)] ?? { kind: 'dome' },
      ...more(random, i),
    }),
  );
}

/** Compares every alternative of every chamber with the evaluation of the plan it makes; gives how many. */
function compared(job: Job): number {
  const { pair, filling } = prepareMatch(job, SELECTION);
  const assignment = assign(rowsOf(pair, filling), (part) => filling.copies[part] ?? 0);
  let count = 0;
  for (const { place } of pair.toFill) {
    for (const { standing } of alternativesFor(pair, filling, assignment, place.chamber, 6)) {
      const planned = withLowerStack(job, 'plan', place.chamber, standing);
      const result = evaluate(planned, SELECTION).chambers.find((each) => each.chamber === place.chamber);
      const split = result?.splits[0];
      expect(split?.offset).toBeCloseTo(standing.offset, 9);
      expect(split?.window.lowest).toBeCloseTo(standing.lowest, 9);
      expect(split?.window.highest).toBeCloseTo(standing.highest, 9);
      expect(split?.margin).toBeCloseTo(standing.margin, 9);
      expect(result?.lowerStack).toBeCloseTo(standing.height, 9);
      count += 1;
    }
  }
  return count;
}

const job = (options: JobOptions = {}) => buildJob({ chambers: 3, ...options });

describe('offset, window and to spare agree with the evaluation of the finished plan', () => {
  test('by subtraction alone, pins of all shapes and diameters', () => {
    const bag = bagOf(1, 120, (random) => ({
      diameter: [0.114, 0.115, 0.116][Math.floor(random() * 3)] ?? 0.116,
    }));
    expect(compared(withBag(job(), bag))).toBeGreaterThan(9);
  });

  test('with a caliper that errs, cuts measured over the ball as well, a worn crest', () => {
    const base = changed(job({ instrumentError: 'default' }), (copy) => {
      copy.cylinders[0]!.bodies[0]!.crestDrop = inches(0.0015);
      copy.keys[0]!.cuts[0]!.overBall = { reading: inches(0.36), ball: inches(0.1) };
      copy.keys[0]!.cuts[1]!.overBall = { reading: inches(0.401), ball: inches(0.1) };
    });
    expect(compared(withBag(base, bagOf(2, 120)))).toBeGreaterThan(9);
  });

  test('by what stood up, by a set known to work, and by a pinned route', () => {
    const base = changed(job({ instrumentError: 'default' }), (copy) => {
      const seating = copy.seatings[0]!;
      const items = [{ part: 'bottom-pin-1' }];
      seating.standsUpBy = [{ chamber: 'chamber-1', items, stack: inches(0.2), reading: inches(0.0275) }];
      copy.plans.push({ ...structuredClone(copy.plans[0]!), id: 'worked', kind: 'as found' });
      seating.knownSets = ['worked'];
      seating.pinnedRoutes = { 'chamber-2': 'known set' };
    });
    expect(compared(withBag(base, bagOf(3, 120)))).toBeGreaterThan(9);
  });

  test('with what was felt and tried on the bench', () => {
    const base = changed(job({ instrumentError: 'default' }), (copy) => {
      const items = [{ part: 'bottom-pin-1' }];
      copy.seatings[0]!.felt = [{ chamber: 'chamber-1', items, is: 'above' }];
      const tested = { plan: 'plan', key: 'key', chamber: 'chamber-2', turned: true, at: '' };
      copy.benchResults = [{ ...tested, items: [{ part: 'bottom-pin-2' }, { part: 'driver-2' }] }];
    });
    expect(compared(withBag(base, bagOf(4, 120)))).toBeGreaterThan(9);
  });

  test('on loose balls, in dimples and measured together', () => {
    const ball = 0.115;
    const base = job({
      chambers: [
        { ball, rootDepth: 0.24 },
        { ball, rootDepth: 0.26 },
        { ball, rootDepth: 0.22 },
      ],
    });
    const pins = bagOf(5, 150, (random, i) => ({
      length: Math.round((0.04 + 0.1 * random()) * 2000) / 2000,
      foot: i % 2 ? { kind: 'flat' } : { kind: 'cup', mouthDiameter: 0.06, includedAngleDeg: 118 },
    }));
    const balls = [
      loose('small', { kind: 'ball', diameter: 0.112, quantity: 2 }),
      loose('large', { kind: 'ball', diameter: 0.115, quantity: 9 }),
    ];
    const bagged = changed(withBag(base, [...pins, ...balls]), (copy) => {
      copy.groups.push(
        ...pins.slice(0, 40).map((pin, i) => ({
          id: `together-${i}`,
          parts: ['large', pin.id],
          height: inches(0.17 + i * 0.0015),
        })),
      );
    });
    expect(compared(bagged)).toBeGreaterThan(9);
  });

  test('at the inner line of a cylinder with a sleeve', () => {
    const base = job({ sleeve: { outerDiameter: 0.63, clearance: 0.003 } });
    expect(compared(withBag(base, bagOf(6, 120)))).toBeGreaterThan(9);
  });

  test('with parts whose diameter and ends nobody noted, in a chamber nobody measured', () => {
    const bag = bagOf(7, 120, () => ({ diameter: null }));
    for (const part of bag) delete part.ends;
    const base = changed(job(), (copy) => {
      for (const chamber of copy.cylinders[0]!.chambers)
        for (const hole of chamber.holes) delete hole.diameter;
    });
    expect(compared(withBag(base, bag))).toBeGreaterThan(9);
  });
});
