/** Edits where two things are alike and only one is meant, where something is not there, and at the very edge. */
import { describe, expect, test } from 'vitest';
import { addChamber, removeChamber } from '../../../src/model/edit/chamber-count.ts';
import { chamberRows } from '../../../src/model/edit/chamber-rows.ts';
import { withOptional } from '../../../src/model/edit/change.ts';
import { setPlugDiameter } from '../../../src/model/edit/edit-cylinder.ts';
import { addCylinder, addCylinderLike } from '../../../src/model/edit/edit-cylinders.ts';
import { addKey } from '../../../src/model/edit/edit-keys.ts';
import { addMasterPin, masterPinsIn, moveMasterPin } from '../../../src/model/edit/edit-master-pins.ts';
import { changeSeating, setFelt } from '../../../src/model/edit/edit-seating.ts';
import { setKeyFoot } from '../../../src/model/edit/edit-shapes.ts';
import { addSleeve, setSleeveMouths } from '../../../src/model/edit/edit-sleeve.ts';
import {
  changePart,
  eachStack,
  lowerStackValue,
  setLowerStack,
  setPinDiameter,
} from '../../../src/model/edit/edit-stack.ts';
import { setCrestDrop, setLooseness } from '../../../src/model/edit/edit-thresholds.ts';
import { keepPlanAs } from '../../../src/model/edit/keep-plan.ts';
import { knownSet, knownStack, setKnownStack } from '../../../src/model/edit/known-set.ts';
import { addParts, copyPart, MOST_PARTS } from '../../../src/model/edit/loose-parts.ts';
import { removeParts, whatGoesWith } from '../../../src/model/edit/remove-parts.ts';
import { spaceChambers } from '../../../src/model/edit/spacing.ts';
import { evenPositions } from '../../../src/model/edit/usual-positions.ts';
import { measuredValue, withoutLastRepeat } from '../../../src/model/edit/values.ts';
import { lengthOf } from '../../../src/model/measured/part-ends.ts';
import type { Job } from '../../../src/model/schema/job-schema.ts';
import { changed } from '../../support/job-builder.ts';
import { FIRST, pairedJob } from '../../support/paired-job.ts';
import { assumedInches, inches } from '../../support/values.ts';
import { countingIds, emptyBench } from './edit-support.ts';

const job = pairedJob();
const newId = countingIds();
const partIn = (from: Job, id: string) => from.parts.find((part) => part.id === id);
const stated = (mm: number) =>
  measuredValue({ mm, unit: 'mm', typed: `${mm}` }, { instrument: null, session: null });
const EVEN = { first: 0.2, spacing: 0.15 };

/** The first key with a tip of which less is known. */
const tipped = (tip: Job['keys'][number]['tip']) =>
  pairedJob((copy) => {
    const [key] = copy.keys;
    delete key!.tip;
    if (tip !== undefined) key!.tip = tip;
    for (const cut of key!.cuts) cut.position = assumedInches(0.3, 0.3, 0.3);
  });

describe('what is not there', () => {
  test('is said by its id, and never made up', () => {
    expect(() => changePart(job, 'none', (part) => part)).toThrow('nothing with the id none');
    expect(() => changeSeating(job, 'nowhere', 'b-key', (each) => each)).toThrow(
      'key b-key and cylinder nowhere are in the job',
    );
    expect(() => changeSeating(job, 'b-cylinder', 'none', (each) => each)).toThrow('none');
    expect(() => eachStack(job, 'none')).toThrow('no plan none');
    expect(() => setLowerStack(job, 'found', 'chamber-3', inches(0.1), newId)).toThrow(
      'plan found has no stack in chamber chamber-3',
    );
    expect(() => addMasterPin(job, 'found', 'chamber-3', undefined, newId)).toThrow(
      'plan found has no stack in chamber chamber-3',
    );
    expect(masterPinsIn(job, 'plan', 'none')).toEqual([]);
  });

  test('leaves no empty member, and the very same thing where nothing is taken away', () => {
    const [part] = job.parts;
    expect(withOptional(part!, 'wire', undefined)).toBe(part);
    const open = withOptional(job.cylinders[0]!.chambers[1]!, 'closed', undefined);
    expect(Object.keys(open)).toEqual(Object.keys(job.cylinders[0]!.chambers[0]!));
    const loose = setLooseness(job, 'cylinder', 'endPlay', undefined).cylinders[0]!;
    expect('endPlay' in loose).toBe(false);
    expect('crestDrop' in setCrestDrop(job, 'cylinder', undefined).cylinders[0]!.bodies[0]!).toBe(false);
    const like = addCylinderLike(job, 'cylinder', 'Third', newId).job.cylinders.at(-1)!;
    expect(like.chambers.map((chamber) => 'closed' in chamber)).toEqual([false, true, false]);
  });

  test('a key without a tip, or without its place, gets neither by another chamber or another spacing', () => {
    const nose = { noseHeight: assumedInches(0.04, 0.02, 0.08) };
    for (const tip of [undefined, nose]) {
      const bare = tipped(tip);
      expect(addChamber(bare, FIRST, newId).keys[0]!.tip).toEqual(tip);
      expect(spaceChambers(bare, FIRST, EVEN).keys[0]!.tip).toEqual(tip);
    }
    const large = setPlugDiameter(tipped(nose), 'cylinder', stated(16)).keys[0]!;
    expect(Object.keys(large.tip!)).toEqual(['noseHeight']);
    expect(lengthOf(large.tip!.noseHeight, 0)).toBeCloseTo(0.0625 * 25.4, 9);
    const placed = setPlugDiameter(tipped({ position: assumedInches(1, 0.9, 1.1) }), 'cylinder', stated(16))
      .keys[0]!;
    expect(Object.keys(placed.tip!)).toEqual(['position']);
  });

  test('a stack without a bottom pin, or without a driver, is passed over', () => {
    const bare = pairedJob((copy) => {
      copy.plans[0]!.stacks[0]!.items = [{ part: 'ball-1' }, { part: 'spring-1' }];
      copy.plans[0]!.stacks[1]!.items = [{ part: 'spring-2' }];
    });
    expect(
      setPinDiameter(bare, 'plan', inches(0.1)).parts.filter((part, i) => part !== bare.parts[i]),
    ).toHaveLength(2);
    const pointed = setKeyFoot(bare, 'plan', 'pointed pin', newId);
    expect(pointed.plans[0]!.stacks.map(({ items }) => items.length)).toEqual([1, 1, 3]);
    const balls = setKeyFoot(bare, 'plan', 'ball', newId);
    expect(balls.plans[0]!.stacks.map(({ items }) => items.length)).toEqual([2, 2, 4]);
    expect(lengthOf(balls.parts.at(-2)!.diameter, 0)).toBeCloseTo(0.115 * 25.4, 9);
  });

  test('ball and pin that were not measured together have no height together', () => {
    const apart = pairedJob((copy) => void (copy.groups = []));
    expect(lowerStackValue(eachStack(apart, 'plan')[0]!)).toBeUndefined();
    expect(knownStack(apart, { cylinder: 'cylinder', key: 'key' }, 'chamber-1')).toBeUndefined();
  });

  test('a part of a stack that the job has not is no pin', () => {
    const lost = pairedJob((copy) => void copy.plans[0]!.stacks[0]!.items.splice(3, 0, { part: 'lost' }));
    const moved = moveMasterPin(lost, 'plan', 'chamber-1', 'master-pin-1-1', 'up');
    expect(moved.plans[0]!.stacks[0]!.items).toEqual(lost.plans[0]!.stacks[0]!.items);
  });

  test('edges of a sleeve that is not there stay unsaid', () => {
    expect(setSleeveMouths(job, 'b-cylinder', 'innerMouth', 'sharp')).toEqual(job);
  });
});

describe('of two that are alike', () => {
  test('the chamber that goes takes along what was tried and what stood up in it, and nothing else', () => {
    const said = pairedJob((copy) => {
      const items = [{ part: 'bottom-pin-3' }];
      copy.seatings[0]!.standsUpBy.push({
        chamber: 'chamber-3',
        items,
        stack: inches(0.3),
        reading: inches(0.01),
      });
      copy.benchResults.push({ plan: 'plan', key: 'key', chamber: 'chamber-3', items, turned: true, at: '' });
    });
    const gone = removeChamber(said, FIRST);
    expect(gone.seatings[0]!.standsUpBy).toEqual(job.seatings[0]!.standsUpBy);
    expect(gone.benchResults).toEqual(job.benchResults);
  });

  test('the key that is looked at lies as it lies in this cylinder', () => {
    const short = pairedJob((copy) => {
      copy.seatings[0]!.stopShort = inches(0.05);
      copy.seatings.unshift({
        ...structuredClone(copy.seatings[0]!),
        cylinder: 'b-cylinder',
        stopShort: inches(0.03),
      });
      copy.seatings.at(-1)!.stopShort = inches(0.01);
    });
    const off = (key: string) => chamberRows(short, { ...FIRST, key }).rows[0]!.offBy / 25.4;
    expect(off('key')).toBeCloseTo(-0.05, 9);
    expect(off('spare')).toBeCloseTo(-0.01, 9);
  });

  test('the cut under a chamber is the nearest one; half a spacing off it is under none', () => {
    const at = (...places: readonly number[]) =>
      pairedJob((copy) => {
        copy.cylinders[0]!.chambers.length = 2;
        [10, 14].forEach((place, i) => (copy.cylinders[0]!.chambers[i]!.position = stated(place)));
        copy.keys[0]!.cuts = places.map((place, i) => ({ id: `at-${i + 1}`, position: stated(place) }));
      });
    const under = (...places: readonly number[]) =>
      chamberRows(at(...places), FIRST).rows.map((row) => row.under?.cut.id ?? null);
    expect(under(9, 10.25)).toEqual(['at-2', null]);
    expect(under(8.5, 10.5, 12.5, 13.75)).toEqual(['at-2', 'at-4']);
    expect(under(8)).toEqual([null, null]);
    expect(under(8.125)).toEqual(['at-1', null]);
    expect(under(12)).toEqual([null, null]);
    expect(under(15.875)).toEqual([null, 'at-1']);
  });

  test('another cylinder is like the planned one, wherever that stands in the list', () => {
    const found = pairedJob((copy) => void copy.plans.reverse());
    const like = addCylinderLike(found, 'cylinder', 'Third', newId).job.plans.at(-1)!;
    expect(like.stacks.map(({ items }) => items.length)).toEqual([6, 5, 3]);
  });

  test('a key for a single chamber has its tip a spacing behind that one', () => {
    const one = pairedJob((copy) => void (copy.cylinders[1]!.chambers.length = 1));
    const { tip } = addKey(one, 'b-cylinder', 'Third', newId).job.keys.at(-1)!;
    expect(lengthOf(tip!.position, 0) / 25.4).toBeCloseTo(0.22 + 1.4 * 0.25, 9);
  });

  test('what was felt with the same parts in another chamber stays', () => {
    const items = [{ part: 'old-pin-1' }];
    const twice = pairedJob(
      (copy) => void copy.seatings[0]!.felt.push({ chamber: 'chamber-2', items, is: 'above' }),
    );
    const after = setFelt(twice, { cylinder: 'cylinder', key: 'key', chamber: 'chamber-1', items }, 'level');
    expect(after.seatings[0]!.felt.filter((each) => each.items[0]?.part === 'old-pin-1')).toEqual([
      { chamber: 'chamber-2', items, is: 'above' },
      { chamber: 'chamber-1', items, is: 'level' },
    ]);
  });

  test('the hole of a sleeve is as wide as the plug’s, read again or not', () => {
    const two = pairedJob((copy) => {
      const [one, other] = copy.cylinders[1]!.chambers;
      one!.holes.reverse();
      one!.holes[0]!.diameter = inches(0.2);
      other!.holes[0]!.diameter = inches(0.12, 0.124);
    });
    const [first, second] = addSleeve(two, 'b-cylinder', newId).cylinders[1]!.chambers;
    expect(first!.holes.map(({ body }) => body)).toEqual(['b-shell', 'b-plug', second!.holes[1]!.body]);
    expect(first!.holes[2]!.diameter?.readings[0]?.value).toBeCloseTo(0.12 * 25.4, 9);
    expect(second!.holes[1]!.diameter?.readings.map(({ value }) => value)).toEqual([
      expect.closeTo(0.122 * 25.4, 6) as number,
    ]);
    expect(second!.holes[1]!.diameter?.range?.from).toBeCloseTo(0.122 * 25.4 - 0.05, 9);
  });

  test('a record of the stacks takes heights along that are of its parts alone', () => {
    const shared = pairedJob((copy) => {
      copy.groups.push({ id: 'half', parts: ['bottom-pin-3', 'free'], height: inches(0.3) });
    });
    const kept = keepPlanAs(shared, 'plan', 'as built', newId);
    expect(kept.groups.length - shared.groups.length).toBe(2);
  });

  test('a key seated elsewhere keeps what is assumed of it when this plug turns out large', () => {
    const { job: begun, where, newId: ids } = emptyBench(1);
    const { job: two, id: other } = addCylinder(begun, 'Other', 1, ids);
    const { job: keyed, id: key } = addKey(two, other, 'Spare', ids);
    const seated = changeSeating(keyed, other, key, (each) => ({ ...each, bottomEdge: 'level' }));
    const large = setPlugDiameter(seated, where.cylinder, stated(16));
    expect(large.keys[1]).toBe(seated.keys[1]);
    expect(large.keys[0]).not.toEqual(seated.keys[0]);
  });

  test('cuts that were assumed move with the chambers of the key that is meant', () => {
    const assumed = pairedJob((copy) => {
      for (const key of copy.keys) for (const cut of key.cuts) cut.position = assumedInches(0.3, 0.3, 0.3);
    });
    const spaced = spaceChambers(assumed, { cylinder: 'cylinder', key: 'spare' }, EVEN);
    expect(spaced.keys.map((key, i) => key === assumed.keys[i])).toEqual([true, true, false]);
  });

  test('readings are taken back one at a time', () => {
    const three = inches(0.1, 0.2, 0.3);
    expect(withoutLastRepeat(three)).toEqual(inches(0.1, 0.2));
  });

  test('places beyond ten inches keep their figures', () => {
    expect(evenPositions(3, 9.95, 0.1, 'in')).toEqual(['9.95', '10.05', '10.15']);
    expect(evenPositions(2, 0.5, 0.25, 'in')).toEqual(['.5', '.75']);
    expect(evenPositions(2, 0.5, 0.25, 'mm')).toEqual(['0.5', '0.75']);
    expect(evenPositions(0, 1, 1, 'mm')).toEqual([]);
  });
});

describe('a set known to work', () => {
  const where = { cylinder: 'cylinder', key: 'key' };

  test('is that of the key in this cylinder', () => {
    const other = pairedJob((copy) => {
      copy.seatings.unshift({
        ...structuredClone(copy.seatings[0]!),
        cylinder: 'b-cylinder',
        knownSets: ['b-plan'],
      });
    });
    expect(knownSet(other, where)?.id).toBe('found');
    expect(knownSet(other, { cylinder: 'b-cylinder', key: 'key' })?.id).toBe('b-plan');
    expect(knownSet(other, { cylinder: 'b-cylinder', key: 'spare' })).toBeNull();
  });

  test('has parts like those in the plan, though it comes first in the list', () => {
    const first = pairedJob((copy) => void copy.plans.reverse());
    const set = setKnownStack(first, where, 'chamber-3', inches(0.18), newId);
    expect(set.parts.slice(first.parts.length).map(({ kind }) => kind)).toEqual(['pin']);
  });

  test('that ends takes its own heights and its own place along, no others', () => {
    const shared = pairedJob((copy) => {
      copy.groups.push({ id: 'half', parts: ['old-pin-2', 'free'], height: inches(0.3) });
      copy.plans.push({ id: 'second-set', cylinder: 'cylinder', kind: 'as found', stacks: [] });
      copy.seatings[0]!.knownSets = ['found', 'second-set'];
      copy.seatings[1]!.knownSets = ['second-set'];
      copy.plans[2]!.stacks.shift();
    });
    const gone = setKnownStack(shared, where, 'chamber-2', undefined, newId);
    expect(gone.seatings[0]!.knownSets).toEqual(['second-set']);
    expect(gone.seatings[1]).toBe(shared.seatings[1]);
    expect(gone.groups.some(({ id }) => id === 'half')).toBe(false);
    expect(gone.groups.some(({ id }) => id === 'group-1')).toBe(true);
    expect(gone.plans.map(({ id }) => id)).toEqual(['plan', 'b-plan', 'second-set']);
  });
});

describe('the bag', () => {
  test('has room for one more, and then for none', () => {
    const [part] = job.parts;
    const nearly = changed(job, (copy) => {
      copy.parts = Array.from({ length: MOST_PARTS - 1 }, (_, i) => ({
        ...part!,
        id: `p${i}`,
        label: `p${i}`,
      }));
      copy.groups = [];
    });
    const full = copyPart(nearly, 'p0', newId);
    expect(full.parts).toHaveLength(MOST_PARTS);
    expect(copyPart(full, 'p0', newId)).toBe(full);
  });

  test('takes a label without the blanks around it, and leaves the pairs alone where none comes', () => {
    const pin = {
      ...({
        kind: 'pin',
        label: ' A 1 ',
        length: inches(0.2),
        onBall: null,
        diameter: null,
        lower: null,
      } as const),
      ...({ upper: null, quantity: 1, from: '', original: false, condition: null } as const),
    };
    const added = addParts(job, [pin], newId);
    expect(added.parts.at(-1)?.label).toBe('A 1');
    expect(added.groups).toBe(job.groups);
  });

  test('what is taken out leaves everything else the very same', () => {
    const gone = removeParts(job, new Set(['driver-1']));
    expect(gone.seatings.map((seating, i) => seating === job.seatings[i])).toEqual([true, true, true]);
    expect(gone.plans[0]!.stacks.map((stack, i) => stack === job.plans[0]!.stacks[i])).toEqual([
      false,
      true,
      true,
    ]);
    expect(gone.plans[1]).toBe(job.plans[1]);
    // a driver lies above what sank, and sinks with it no less
    expect(gone.plans[0]!.stacks[0]!.rest).toEqual(job.plans[0]!.stacks[0]!.rest);
    expect(partIn(gone, 'driver-1')).toBeUndefined();
  });

  test('three measured together are told when their first goes, not when their last does', () => {
    const three = pairedJob((copy) => {
      copy.groups = [{ id: 'three', parts: ['free-ball', 'free', 'stood'], height: inches(0.5) }];
    });
    const said = (...ids: readonly string[]) => whatGoesWith(three, new Set(ids));
    expect(said('free-ball')).toEqual(['With it goes: one height measured together.']);
    expect(said('free')).toEqual(['With it goes: one height measured together.']);
    expect(said('stood')).toEqual([]);
    expect(said('free-ball', 'free', 'stood')).toEqual([]);
  });
});
