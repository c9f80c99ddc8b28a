/** What is added beside what was measured claims no reading of its own, is sized for its plug, and leaves what stands there alone. */
import { describe, expect, test } from 'vitest';
import { addChamber, removeChamber } from '../../../src/model/edit/chamber-count.ts';
import { setPlugDiameter } from '../../../src/model/edit/edit-cylinder.ts';
import { addCylinderLike } from '../../../src/model/edit/edit-cylinders.ts';
import { addKey } from '../../../src/model/edit/edit-keys.ts';
import { spaceChambers } from '../../../src/model/edit/spacing.ts';
import { lengthOf } from '../../../src/model/measured/part-ends.ts';
import type { Job } from '../../../src/model/schema/job-schema.ts';
import type { LengthValue } from '../../../src/model/schema/leaf.ts';
import { parseJob } from '../../../src/model/schema/parse-job.ts';
import { buildJob, changed } from '../../support/job-builder.ts';
import { pairedJob } from '../../support/paired-job.ts';
import { inches } from '../../support/values.ts';
import { countingIds, emptyBench } from './edit-support.ts';

const newId = countingIds();
const where = { cylinder: 'cylinder', key: 'key' };
const isWhole = (job: Job) => parseJob(JSON.parse(JSON.stringify(job))).type === 'success';
/** Large: its usual sizes differ from the small ones, see usual-values.ts. */
const LARGE = inches(0.65);

describe('a chamber more', () => {
  test('lies a spacing behind the last, and nobody read where', () => {
    const more = addChamber(buildJob({ chambers: 3 }), where, newId);
    for (const { position } of [more.cylinders[0]!.chambers.at(-1)!, more.keys[0]!.cuts.at(-1)!]) {
      expect(position).toMatchObject({ basis: 'assumed', readings: [{ instrument: null, session: null }] });
      expect(lengthOf(position, 0) / 25.4).toBeCloseTo(0.22 + 3 * 0.16, 9);
      // .002 in either way, as one of its make
      expect(position.range!.to - position.range!.from).toBeCloseTo(0.1, 9);
    }
    expect(isWhole(more)).toBe(true);
  });

  test('is stated where even spacing was stated', () => {
    const { job, where: selected, newId: ids } = emptyBench(3);
    const spaced = spaceChambers(job, selected, { first: 0.3, spacing: 0.2 });
    const position = addChamber(spaced, selected, ids).cylinders[0]!.chambers.at(-1)!.position;
    expect(position.basis).toBe('stated');
    expect(lengthOf(position, 0) / 25.4).toBeCloseTo(0.9, 9);
  });

  test('changes nothing that is assumed of the others, in a large cylinder neither', () => {
    const twin = addCylinderLike(buildJob({ plugDiameter: 0.65, chambers: 2 }), 'cylinder', 'Twin', newId);
    const keyed = addKey(twin.job, twin.id, 'Key', newId);
    const before = keyed.job;
    const after = addChamber(before, { cylinder: twin.id, key: keyed.id }, newId);
    expect(after.cylinders[1]!.chambers.slice(0, 2)).toEqual(before.cylinders[1]!.chambers);
    expect(after.parts.slice(0, before.parts.length)).toEqual(before.parts);
    expect(after.keys[1]!.cuts.slice(0, 2)).toEqual(before.keys[1]!.cuts);
    // the new stack is as usual in a plug of this size
    expect(lengthOf(after.parts.at(-2)!.length, 0) / 25.4).toBeCloseTo(0.275, 9);
  });

  test('and one less again leaves no part behind that nobody measured', () => {
    const job = buildJob({ chambers: 3 });
    const back = removeChamber(addChamber(job, where, newId), where);
    expect(back.parts).toEqual(job.parts);
    expect(back.plans).toEqual(job.plans);
    // those that were measured stay on hand
    const less = removeChamber(job, where);
    expect(less.parts).toEqual(job.parts);
    const { job: begun, where: selected } = emptyBench(3);
    const two = removeChamber(begun, selected);
    expect(two.parts).toHaveLength(8);
    expect(isWhole(two)).toBe(true);
  });

  test('one less keeps what another chamber or plan holds', () => {
    const shared = pairedJob((copy) => {
      copy.plans[2]!.stacks[1]!.items.push({ part: 'spring-3' });
      const spring = copy.parts.find(({ id }) => id === 'spring-3')!;
      for (const name of ['diameter', 'solid', 'free', 'wire'] as const) Reflect.deleteProperty(spring, name);
    });
    const less = removeChamber(shared, where);
    expect(less.parts).toEqual(shared.parts);
    const alone = pairedJob((copy) => {
      const spring = copy.parts.find(({ id }) => id === 'spring-3')!;
      for (const name of ['diameter', 'solid', 'free', 'wire'] as const) Reflect.deleteProperty(spring, name);
    });
    expect(removeChamber(alone, where).parts).toEqual(alone.parts.filter(({ id }) => id !== 'spring-3'));
  });
});

describe('what was read under a zero check', () => {
  // closed, the caliper read .001 in: what it read of a thing is that much too large
  const zeroed = (copy: Job) => {
    copy.sessions.push({ id: 'zero', instrument: 'caliper', closedReading: inches(0.001), at: '' });
    const [cylinder] = copy.cylinders;
    for (const value of [
      cylinder!.bodies[0]!.outerDiameter!,
      ...cylinder!.chambers.map(({ position }) => position),
    ])
      value.readings[0]!.session = 'zero';
    copy.keys[0]!.cuts.at(-1)!.position.readings[0]!.session = 'zero';
  };
  const job = changed(buildJob({ chambers: 3 }), zeroed);
  const inInches = (value: LengthValue | undefined) => lengthOf(value, 0) / 25.4;

  test('is taken over without what the instrument read closed', () => {
    const like = addCylinderLike(job, 'cylinder', 'Twin', newId).job.cylinders.at(-1)!;
    expect(inInches(like.bodies[0]!.outerDiameter)).toBeCloseTo(0.511, 9);
    expect(inInches(like.chambers[0]!.position)).toBeCloseTo(0.219, 9);
    const spare = addKey(job, 'cylinder', 'Spare', newId).job.keys.at(-1)!;
    expect(inInches(spare.cuts[0]!.position)).toBeCloseTo(0.219, 9);
    const more = addChamber(job, where, newId);
    expect(inInches(more.cylinders[0]!.chambers.at(-1)!.position)).toBeCloseTo(0.699, 9);
    expect(inInches(more.keys[0]!.cuts.at(-1)!.position)).toBeCloseTo(0.699, 9);
  });
});

describe('in a large cylinder', () => {
  test('another key is as usual there', () => {
    const large = buildJob({ plugDiameter: 0.65, chambers: 2 });
    const key = addKey(large, 'cylinder', 'Spare', newId).job.keys.at(-1)!;
    const usual = setPlugDiameter(emptyBench(2).job, 'id4', LARGE).keys[0]!;
    for (const name of ['bladeHeight', 'bladeThickness', 'rootFlat'] as const)
      expect(key[name]).toEqual(usual[name]);
    expect(key.tip!.noseHeight).toEqual(usual.tip!.noseHeight);
    // 1.4 spacings of a large one behind the last cut
    expect(lengthOf(key.tip!.position, 0) / 25.4).toBeCloseTo(0.38 + 1.4 * 0.25, 9);
    const small = addKey(buildJob({ chambers: 2 }), 'cylinder', 'Spare', newId).job.keys.at(-1)!;
    expect(lengthOf(small.bladeHeight, 0) / 25.4).toBeCloseTo(0.335, 9);
  });

  test('another like it without stacks gets parts as usual there', () => {
    const bare = pairedJob((copy) => {
      copy.plans = copy.plans.filter(({ cylinder }) => cylinder !== 'b-cylinder');
      copy.benchResults.pop();
    });
    const { parts } = addCylinderLike(bare, 'b-cylinder', 'Twin', newId).job;
    expect(lengthOf(parts.at(-1)!.free, 0) / 25.4).toBeCloseTo(0.7, 9);
  });
});
