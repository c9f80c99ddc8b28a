import { describe, expect, test } from 'vitest';
import { addChamber } from '../../../src/model/edit/chamber-count.ts';
import {
  addCylinder,
  addCylinderLike,
  removeCylinder,
  renameCylinder,
  sayCylinderGoes,
} from '../../../src/model/edit/edit-cylinders.ts';
import { addKey, removeKey, renameKey, sayKeyGoes } from '../../../src/model/edit/edit-keys.ts';
import { addToDo, toDo } from '../../../src/model/edit/edit-note.ts';
import { planToBuild, putInPlan, setLocked } from '../../../src/model/edit/edit-plans.ts';
import { setBottomEdge } from '../../../src/model/edit/edit-seating.ts';
import { evaluate } from '../../../src/model/evaluate/evaluate.ts';
import { lengthOf } from '../../../src/model/measured/part-ends.ts';
import type { Job } from '../../../src/model/schema/job-schema.ts';
import { parseJob } from '../../../src/model/schema/parse-job.ts';
import { loose } from '../../support/bag-job.ts';
import { buildJob, changed, joinJobs } from '../../support/job-builder.ts';
import { countingIds, emptyBench, inches } from './edit-support.ts';

/** Read back from text, so that every reference is checked by the reader of files. */
const isWhole = (job: Job) => parseJob(JSON.parse(JSON.stringify(job))).type === 'success';
const newId = countingIds();

describe('another cylinder', () => {
  test('empty: chambers to measure, and nothing of the first one changes', () => {
    const { job, newId: ids } = emptyBench();
    const { job: two, id } = addCylinder(job, 'Back door', 5, ids);
    const added = two.cylinders.find((each) => each.id === id);
    expect(added).toMatchObject({ label: 'Back door', chambers: { length: 5 } });
    expect(added?.bodies[0]?.outerDiameter).toBeUndefined();
    expect(two.plans.filter((plan) => plan.cylinder === id)).toMatchObject([
      { kind: 'planned', stacks: { length: 5 } },
    ]);
    expect(two.cylinders[0]).toBe(job.cylinders[0]);
    expect(isWhole(two)).toBe(true);
  });

  test('like the first: its sizes, but assumed until they are measured, and no pin length', () => {
    const job = buildJob();
    const { job: two, id } = addCylinderLike(job, 'cylinder', 'Twin', newId);
    const [first, twin] = [job.cylinders[0]!, two.cylinders.find((each) => each.id === id)!];
    const plug = twin.bodies[0]!.outerDiameter!;
    expect(plug).toMatchObject({ basis: 'assumed', readings: [{ instrument: null, session: null }] });
    expect(lengthOf(plug, 0)).toBe(lengthOf(first.bodies[0]!.outerDiameter, 0));
    // .002 in, either way
    expect(plug.range!.to - plug.range!.from).toBeCloseTo(0.1, 9);
    expect(twin.chambers.map(({ position }) => lengthOf(position, 0))).toEqual(
      first.chambers.map(({ position }) => lengthOf(position, 0)),
    );
    const plan = two.plans.find((each) => each.cylinder === id)!;
    const stacked = new Set(plan.stacks.flatMap(({ items }) => items.map(({ part }) => part)));
    const parts = two.parts.filter((part) => stacked.has(part.id));
    expect(parts.filter(({ label }) => label === 'bottom pin')).toHaveLength(5);
    for (const part of parts.filter(({ label }) => label === 'bottom pin')) {
      expect(part.length).toBeUndefined();
      expect(part.ends?.map((end) => end.basis)).toEqual(['assumed', 'assumed']);
    }
    expect(isWhole(two)).toBe(true);
    const ids = JSON.stringify(job);
    for (const { id: fresh } of [...twin.bodies, ...twin.lines, ...twin.chambers])
      expect(ids).not.toContain(`"${fresh}"`);
  });

  test('like the first in what is rarely said: slot, end play, depth to the cap, a closed chamber, a length', () => {
    const job = changed(buildJob({ chambers: 3 }), (copy) => {
      const [cylinder] = copy.cylinders;
      cylinder!.keywayWidth = inches(0.08);
      cylinder!.endPlay = inches(0.004);
      cylinder!.bodies[0]!.length = inches(1.1);
      cylinder!.chambers[1]!.closed = true;
      delete cylinder!.chambers[2]!.capDepth;
    });
    const { job: two, id } = addCylinderLike(job, 'cylinder', 'Twin', newId);
    const twin = two.cylinders.find((each) => each.id === id)!;
    expect(lengthOf(twin.keywayWidth, 0)).toBeCloseTo(0.08 * 25.4, 9);
    expect(lengthOf(twin.endPlay, 0)).toBeCloseTo(0.004 * 25.4, 9);
    expect(lengthOf(twin.bodies[0]!.length, 0)).toBeCloseTo(1.1 * 25.4, 9);
    expect(twin.chambers.map(({ closed }) => closed)).toEqual([undefined, true, undefined]);
    expect(twin.chambers.map(({ capDepth }) => lengthOf(capDepth, 0) > 0)).toEqual([true, true, false]);
    expect(isWhole(two)).toBe(true);
    const plain = addCylinderLike(buildJob(), 'cylinder', 'Twin', newId);
    const names = Object.keys(plain.job.cylinders[1]!);
    expect(names).not.toContain('keywayWidth');
    expect(names).not.toContain('endPlay');
  });

  test('like the first in its parts: as thick, as shaped, drivers as long and springs alike, all of it assumed', () => {
    const job = buildJob({ chambers: [{ ball: 0.109, masterPins: [0.03] }] });
    const { job: two, id } = addCylinderLike(job, 'cylinder', 'Twin', newId);
    const stackOf = (from: Job, cylinder: string) =>
      from.plans
        .find((each) => each.cylinder === cylinder)!
        .stacks[0]!.items.map(({ part }) => from.parts.find((each) => each.id === part)!);
    const [own, twin] = [stackOf(job, 'cylinder'), stackOf(two, id)];
    expect(twin.map(({ label }) => label)).toEqual(['ball', 'bottom pin', 'master pin', 'driver', 'spring']);
    twin.forEach((part, i) => {
      const like = own[i]!;
      expect(part).toMatchObject({ kind: like.kind, quantity: 1, original: false });
      for (const name of ['diameter', 'solid', 'free'] as const) {
        expect(lengthOf(part[name], -1)).toBe(lengthOf(like[name], -1));
        if (part[name] !== undefined) expect(part[name].basis).toBe('assumed');
      }
      expect(part.ends?.map(({ kind }) => kind)).toEqual(like.ends?.map(({ kind }) => kind));
      expect(lengthOf(part.length, -1)).toBe(like.id === 'driver-1' ? lengthOf(like.length, 0) : -1);
    });
    expect(two.parts.slice(0, job.parts.length)).toEqual(job.parts);
  });

  test('taken away: what was measured stays on hand, what stood for it goes', () => {
    const job = joinJobs(buildJob(), buildJob({ prefix: 'b-' }));
    const said = sayCylinderGoes(job, 'b-cylinder');
    expect(said).toMatch(
      /5 chambers, 1 plan and what was read of 1 key in it\. Its measured parts stay on hand\.$/,
    );
    const without = removeCylinder(job, 'b-cylinder');
    expect(without.parts.some(({ id }) => id === 'b-bottom-pin-1')).toBe(true);
    expect(JSON.stringify({ ...without, parts: [] })).not.toContain('b-cylinder');
    expect(isWhole(without)).toBe(true);

    const { job: two, id } = addCylinder(job, 'Third', 4, newId);
    expect(removeCylinder(two, id)).toEqual(job);
  });

  test('what another cylinder learned from a plan that goes is let go', () => {
    const job = changed(joinJobs(buildJob(), buildJob({ prefix: 'b-' })), (copy) => {
      copy.seatings[0]!.knownSets = ['b-plan', 'plan'];
      copy.benchResults.push({ plan: 'b-plan', key: 'key', chamber: 'all', items: [], turned: true, at: '' });
    });
    const without = removeCylinder(job, 'b-cylinder');
    expect(without.seatings[0]?.knownSets).toEqual(['plan']);
    expect(without.benchResults).toEqual([]);
    expect(isWhole(without)).toBe(true);
  });

  test('a new name is only a name', () => {
    const job = buildJob();
    const renamed = renameCylinder(job, 'cylinder', 'Boat house');
    expect(renamed.cylinders[0]).toEqual({ ...job.cylinders[0], label: 'Boat house' });
  });
});

describe('another key', () => {
  test('its cuts are assumed under the chambers, and are to be measured', () => {
    const job = buildJob();
    const { job: two, id } = addKey(job, 'cylinder', 'Spare', newId);
    const key = two.keys.find((each) => each.id === id)!;
    const places = job.cylinders[0]!.chambers.map(({ position }) => lengthOf(position, 0));
    expect(key.cuts.map(({ position }) => lengthOf(position, 0))).toEqual(places);
    expect(
      key.cuts.every(({ rootDepth, position }) => rootDepth === undefined && position.basis !== 'measured'),
    ).toBe(true);
    expect(isWhole(two)).toBe(true);
  });

  test('its cuts lie as the chambers lie, however they are spread, and are to be measured there too', () => {
    const job = buildJob({ chambers: [{ position: 0.22 }, { position: 0.45 }, { position: 0.5 }] });
    const { job: two, id } = addKey(job, 'cylinder', 'Spare', newId);
    const cuts = two.keys.find((each) => each.id === id)!.cuts;
    expect(cuts.map(({ position }) => lengthOf(position, 0) / 25.4)).toEqual(
      [0.22, 0.45, 0.5].map((inch) => expect.closeTo(inch, 6) as number),
    );
    expect(cuts.every(({ position }) => position.basis === 'assumed')).toBe(true);
    const single = addKey(buildJob({ chambers: 1 }), 'cylinder', 'Spare', newId);
    expect(single.job.keys[1]!.cuts).toHaveLength(1);
  });

  test('it can be looked at before anything is said about it in this cylinder', () => {
    const { job: two, id } = addKey(buildJob(), 'cylinder', 'Spare', newId);
    const selection = { cylinder: 'cylinder', key: id, plan: 'plan' };
    expect(evaluate(two, selection).lines[0]?.verdict).not.toBe('turns');
    expect(two.seatings).toHaveLength(1);
    const said = setBottomEdge(two, 'cylinder', id, 'level');
    expect(said.seatings).toHaveLength(2);
    expect(said.seatings[1]).toMatchObject({ cylinder: 'cylinder', key: id, bottomEdge: 'level' });
    expect(isWhole(said)).toBe(true);
    expect(() => setBottomEdge(two, 'cylinder', 'nobody', 'level')).toThrow('nobody');
  });

  test('taken away with what was read and felt with it', () => {
    const job = buildJob();
    const { job: two, id } = addKey(job, 'cylinder', 'Spare', newId);
    const said = setBottomEdge(two, 'cylinder', id, 'level');
    expect(sayKeyGoes(said, id)).toBe('With Spare go its 5 cuts and what was read of it in 1 cylinder.');
    expect(removeKey(said, id)).toEqual(job);
    expect(renameKey(said, id, 'Old').keys.at(-1)?.label).toBe('Old');
  });
});

describe('the planned plan', () => {
  const bag = changed(buildJob(), (copy) => {
    copy.parts.push(loose('new', { length: 0.17 }));
  });
  const landing = [{ chamber: 'chamber-1', items: [{ part: 'new' }] }];

  test('what lands takes the place of the lower stack under what stands on it', () => {
    const { job, plan } = putInPlan(bag, 'plan', landing, newId);
    expect(plan).toBe('plan');
    expect(job.plans[0]?.stacks[0]?.items.map(({ part }) => part)).toEqual(['new', 'driver-1', 'spring-1']);
    // a measured pin stays on hand
    expect(job.parts.some(({ id }) => id === 'bottom-pin-1')).toBe(true);
    expect(isWhole(job)).toBe(true);
  });

  test('a stand-in that nobody measured goes with it', () => {
    const { job, where, newId: ids } = emptyBench(2);
    const { instruments } = buildJob();
    const withNew = {
      ...job,
      instruments: [...job.instruments, ...instruments],
      parts: [...job.parts, loose('new', { length: 0.2 })],
    };
    const chamber = job.cylinders[0]!.chambers[0]!.id;
    const { job: landed } = putInPlan(withNew, where.plan, [{ chamber, items: [{ part: 'new' }] }], ids);
    // ball and bottom pin of that chamber are gone, the other chamber's are not
    expect(landed.parts).toHaveLength(withNew.parts.length - 2);
    expect(landed.plans[0]?.stacks[0]?.items).toHaveLength(3);
    expect(isWhole(landed)).toBe(true);
  });

  test('what was found stays on record: the choice goes into a plan beside it', () => {
    const found = changed(bag, (copy) => {
      copy.plans[0]!.kind = 'as found';
    });
    expect(planToBuild(found, 'cylinder', 'plan')).toBe('plan');
    const { job, plan } = putInPlan(found, 'plan', landing, newId);
    expect(job.plans).toHaveLength(2);
    expect(job.plans[0]).toEqual(found.plans[0]);
    expect(job.plans[1]).toMatchObject({ id: plan, kind: 'planned', cylinder: 'cylinder' });
    expect(planToBuild(job, 'cylinder', 'plan')).toBe(plan);
    expect(isWhole(job)).toBe(true);
  });

  test('a chamber is locked and freed', () => {
    const locked = setLocked(bag, 'plan', 'chamber-2', true);
    expect(locked.plans[0]?.stacks.map((stack) => stack.locked === true)).toEqual([
      false,
      true,
      false,
      false,
      false,
    ]);
    expect(setLocked(locked, 'plan', 'chamber-2', false)).toEqual(bag);
  });

  test('a chamber more is one more in every plan of the cylinder', () => {
    const { job } = putInPlan(
      changed(bag, (copy) => {
        copy.plans[0]!.kind = 'as found';
      }),
      'plan',
      landing,
      newId,
    );
    const more = addChamber(job, { cylinder: 'cylinder', key: 'key' }, newId);
    expect(more.plans.map(({ stacks }) => stacks.length)).toEqual([6, 6]);
    expect(isWhole(more)).toBe(true);
  });
});

test('work to do is one line each, never twice', () => {
  const job = buildJob();
  const noted = addToDo(addToDo(addToDo(job, 'File the pin.'), 'File the pin.'), 'Cut the key.');
  expect(toDo(noted)).toEqual(['File the pin.', 'Cut the key.']);
  expect(toDo(job)).toEqual([]);
  expect(isWhole(noted)).toBe(true);
});
