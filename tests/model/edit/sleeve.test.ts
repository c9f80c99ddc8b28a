/** Edits of the sleeve and the master pins: what they add, what goes with them, and that the file still takes the job. */
import { describe, expect, test } from 'vitest';
import {
  addMasterPin,
  masterEndSeen,
  masterPinsIn,
  MOST_MASTER_PINS,
  moveMasterPin,
  removeMasterPin,
  setMasterEnd,
} from '../../../src/model/edit/edit-master-pins.ts';
import {
  addSleeve,
  removeSleeve,
  setSleeveDiameter,
  setSleeveMouths,
  sleeveDiameter,
  sleeveMouthsSeen,
} from '../../../src/model/edit/edit-sleeve.ts';
import { setPlugDiameter } from '../../../src/model/edit/edit-cylinder.ts';
import { setPinDiameter } from '../../../src/model/edit/edit-stack.ts';
import { evaluate } from '../../../src/model/evaluate/evaluate.ts';
import { setIntent } from '../../../src/model/keying/intent.ts';
import { lengthOf } from '../../../src/model/measured/part-ends.ts';
import type { Cylinder } from '../../../src/model/schema/cylinder-schema.ts';
import type { Job } from '../../../src/model/schema/job-schema.ts';
import { parseJob } from '../../../src/model/schema/parse-job.ts';
import { buildJob, changed } from '../../support/job-builder.ts';
import { countingIds, emptyBench, inches } from './edit-support.ts';

const problemsOf = (job: Job) => {
  const parsed = parseJob(JSON.parse(JSON.stringify(job)));
  return parsed.type === 'error' ? parsed.problems : [];
};
const cylinderOf = (job: Job): Cylinder => job.cylinders[0]!;

describe('a sleeve', () => {
  test('comes between plug and shell, with a line of its own and a hole in every chamber', () => {
    const { job, where, newId } = emptyBench();
    const before = JSON.stringify(job);
    const next = addSleeve(job, where.cylinder, newId);
    const { bodies, lines, chambers } = cylinderOf(next);
    expect(bodies.map(({ role }) => role)).toEqual(['plug', 'sleeve', 'shell']);
    expect(lines.map(({ inner, outer }) => [inner, outer])).toEqual([
      [bodies[0]?.id, bodies[1]?.id],
      [bodies[1]?.id, bodies[2]?.id],
    ]);
    for (const { holes } of chambers)
      expect(holes.map(({ body }) => body)).toEqual(bodies.map(({ id }) => id));
    expect(problemsOf(next)).toEqual([]);
    expect(JSON.stringify(job)).toBe(before);
    expect(addSleeve(next, where.cylinder, newId)).toEqual(next);
  });

  test('goes with its size, its line, its holes and the keys meant for that line, and nothing else does', () => {
    const { job, where, newId } = emptyBench();
    const plain = setIntent(job, where, 'plug');
    const added = setSleeveDiameter(addSleeve(plain, where.cylinder, newId), where.cylinder, inches(0.625));
    const meant = setIntent(added, where, 'together');
    const removed = removeSleeve(meant, where.cylinder);
    expect(removed).toEqual({ ...job, intents: [{ ...plain.intents[0]!, turns: false }] });
    expect(removeSleeve(added, where.cylinder)).toEqual(plain);
    expect(problemsOf(removed)).toEqual([]);
  });

  test('is assumed a wall thicker than the plug until it is measured, and follows the plug', () => {
    const { job, where, newId } = emptyBench();
    const added = addSleeve(job, where.cylinder, newId);
    expect(sleeveDiameter(cylinderOf(added))).toBeUndefined();
    const small = setPlugDiameter(added, where.cylinder, inches(0.5));
    const large = setPlugDiameter(added, where.cylinder, inches(0.6));
    const assumed = sleeveDiameter(cylinderOf(small));
    expect(assumed?.basis).toBe('assumed');
    expect(assumed?.range!.from).toBeGreaterThan(0.5 * 25.4);
    expect(lengthOf(sleeveDiameter(cylinderOf(large)), 0) - lengthOf(assumed, 0)).toBeCloseTo(2.54, 9);
    const measured = setSleeveDiameter(small, where.cylinder, inches(0.625));
    expect(sleeveDiameter(cylinderOf(measured))?.basis).toBe('measured');
    expect(setSleeveDiameter(measured, where.cylinder, undefined)).toEqual(small);
  });

  test('an assumed size counts in the ± of its line, and only there', () => {
    const built = buildJob();
    const selection = { cylinder: 'cylinder', key: 'key', plan: 'plan' };
    const added = addSleeve(built, 'cylinder', countingIds());
    const measured = setSleeveDiameter(added, 'cylinder', inches(0.637));
    const uncertainties = (job: Job) =>
      cylinderOf(job).lines.map(
        ({ id }) =>
          evaluate(job, selection).chambers[0]!.splits.find(({ line }) => line === id)!.expandedUncertainty,
      );
    const [innerAssumed = 0, outerAssumed = 0] = uncertainties(added);
    const [innerMeasured = 0, outerMeasured = 0] = uncertainties(measured);
    expect(innerAssumed).toBeCloseTo(innerMeasured, 12);
    // Rectangular: half of 2.2 mm of diameter, k = 2 (JCGM 100:2008, 4.3.7), and half of that in radius.
    expect(outerAssumed).toBeGreaterThan((2 * 0.55) / Math.sqrt(3));
    expect(outerMeasured).toBeLessThan(0.2);
  });

  test('remembers how the edges of its chambers were seen to be', () => {
    const { job, where, newId } = emptyBench();
    const added = addSleeve(job, where.cylinder, newId);
    expect(sleeveMouthsSeen(cylinderOf(added), 'outerMouth')).toBeNull();
    const seen = setSleeveMouths(added, where.cylinder, 'outerMouth', 'countersunk');
    expect(sleeveMouthsSeen(cylinderOf(seen), 'outerMouth')).toBe('countersunk');
    expect(sleeveMouthsSeen(cylinderOf(seen), 'innerMouth')).toBeNull();
    expect(problemsOf(seen)).toEqual([]);
  });

  test('says nothing of its edges where they differ, or where nobody looked', () => {
    const { job, where, newId } = emptyBench();
    const added = addSleeve(job, where.cylinder, newId);
    const seen = setSleeveMouths(added, where.cylinder, 'outerMouth', 'sharp');
    expect(sleeveMouthsSeen(cylinderOf(seen), 'outerMouth')).toBe('sharp');
    const withLast = (mouth: { kind: 'sharp' | 'countersunk'; basis: 'seen' | 'assumed' }) =>
      changed(seen, (copy) => (copy.cylinders[0]!.chambers.at(-1)!.holes[1]!.outerMouth = mouth));
    const outer = (job: Job) => sleeveMouthsSeen(cylinderOf(job), 'outerMouth');
    expect(outer(withLast({ kind: 'countersunk', basis: 'seen' }))).toBeNull();
    expect(outer(withLast({ kind: 'sharp', basis: 'assumed' }))).toBeNull();
    const assumed = changed(seen, (copy) => {
      for (const { holes } of copy.cylinders[0]!.chambers) holes[1]!.outerMouth!.basis = 'assumed';
    });
    expect(outer(assumed)).toBeNull();
  });

  test('has holes as wide as the plug has, assumed to a twentieth of a millimetre either way', () => {
    const job = buildJob({ chambers: 2, chamberDiameter: 0.12 });
    const { chambers } = cylinderOf(addSleeve(job, 'cylinder', countingIds()));
    for (const { holes } of chambers) {
      const hole = holes[1]!.diameter!;
      expect(hole.basis).toBe('assumed');
      expect(lengthOf(hole, 0)).toBeCloseTo(0.12 * 25.4, 9);
      expect(hole.range!.from).toBeCloseTo(0.12 * 25.4 - 0.05, 9);
      expect(hole.range!.to).toBeCloseTo(0.12 * 25.4 + 0.05, 9);
      expect(hole.readings[0]).toMatchObject({
        typed: '0.12 in',
        unit: 'in',
        instrument: null,
        session: null,
      });
    }
  });
});

describe('master pins', () => {
  const chamberIn = (job: Job) => cylinderOf(job).chambers[2]!.id;

  test('are added under the driver, one above the other, and leave again without a trace', () => {
    const { job, where, newId } = emptyBench();
    const chamber = chamberIn(job);
    const one = addMasterPin(job, where.plan, chamber, inches(0.04), newId);
    const two = addMasterPin(one, where.plan, chamber, inches(0.06), newId);
    const pins = masterPinsIn(two, where.plan, chamber);
    expect(pins.map((pin) => Number((lengthOf(pin.length, 0) / 25.4).toFixed(9)))).toEqual([0.04, 0.06]);
    expect(problemsOf(two)).toEqual([]);
    const removed = removeMasterPin(two, where.plan, chamber, pins[1]!.id);
    expect(removed).toEqual(one);
    expect(removeMasterPin(removed, where.plan, chamber, pins[0]!.id)).toEqual(job);
  });

  test('change places, but never with the bottom pin or the driver', () => {
    const { job, where, newId } = emptyBench();
    const chamber = chamberIn(job);
    const one = addMasterPin(job, where.plan, chamber, inches(0.04), newId);
    const two = addMasterPin(one, where.plan, chamber, inches(0.06), newId);
    const [lower, upper] = masterPinsIn(two, where.plan, chamber).map(({ id }) => id);
    const moved = moveMasterPin(two, where.plan, chamber, lower!, 'up');
    expect(masterPinsIn(moved, where.plan, chamber).map(({ id }) => id)).toEqual([upper, lower]);
    expect(moveMasterPin(moved, where.plan, chamber, lower!, 'up')).toEqual(moved);
    expect(moveMasterPin(two, where.plan, chamber, lower!, 'down')).toEqual(two);
  });

  test('come by themselves, not as parts that were in the lock; one that something speaks of stays on hand', () => {
    const { job, where, newId } = emptyBench();
    const chamber = chamberIn(job);
    const added = addMasterPin(job, where.plan, chamber, undefined, newId);
    const [pin] = masterPinsIn(added, where.plan, chamber);
    expect(pin).toMatchObject({ kind: 'pin', label: 'master pin', quantity: 1, original: false });
    expect(pin).not.toHaveProperty('length');
    const felt = changed(added, ({ seatings }) => {
      seatings[0]!.felt.push({ chamber, items: [{ part: pin!.id }], is: 'above' });
    });
    const removed = removeMasterPin(felt, where.plan, chamber, pin!.id);
    expect(masterPinsIn(removed, where.plan, chamber)).toEqual([]);
    expect(removed.parts.some(({ id }) => id === pin!.id)).toBe(true);
    expect(problemsOf(removed)).toEqual([]);
  });

  test('are as wide as the other pins, and change with them', () => {
    const { job, where, newId } = emptyBench();
    const chamber = chamberIn(job);
    const added = addMasterPin(job, where.plan, chamber, inches(0.04), newId);
    const wide = setPinDiameter(added, where.plan, inches(0.12));
    expect(lengthOf(masterPinsIn(wide, where.plan, chamber)[0]?.diameter, 0)).toBeCloseTo(0.12 * 25.4, 9);
  });

  test('have ends that are told by picture', () => {
    const { job, where, newId } = emptyBench();
    const chamber = chamberIn(job);
    const added = addMasterPin(job, where.plan, chamber, inches(0.04), newId);
    const [pin] = masterPinsIn(added, where.plan, chamber);
    const seen = setMasterEnd(added, pin!.id, 'upper', 'sharp edge');
    const [after] = masterPinsIn(seen, where.plan, chamber);
    expect(masterEndSeen(after!, 'upper')).toBe('sharp edge');
    expect(masterEndSeen(after!, 'lower')).toBeNull();
    expect(problemsOf(seen)).toEqual([]);
  });

  test('a stack takes only so many, and more change nothing', () => {
    const { job, where, newId } = emptyBench();
    const chamber = chamberIn(job);
    let full = job;
    for (let i = 0; i < MOST_MASTER_PINS; i++)
      full = addMasterPin(full, where.plan, chamber, inches(0.03), newId);
    expect(addMasterPin(full, where.plan, chamber, inches(0.03), newId)).toBe(full);
    expect(problemsOf(full)).toEqual([]);
  });

  test('one that is not measured leaves a line open that it could turn, and asks for it', () => {
    const job = buildJob({ chambers: [{ bottomPin: 0.1 }, {}] });
    const selection = { cylinder: 'cylinder', key: 'key', plan: 'plan' };
    const lineOf = (each: Job) => evaluate(each, selection).lines[0]!.verdict;
    expect(lineOf(job)).toBe('will not turn');
    const open = addMasterPin(job, 'plan', 'chamber-1', undefined, countingIds());
    expect(lineOf(open)).toBe('unknown');
    expect(evaluate(open, selection).chambers[0]?.missing).toEqual([
      'Measure the master pin of chamber 1, end to end.',
    ]);
  });
});
