/**
 * Puts what was planned for several keys into the plan: new parts of the planned lengths, to make or to find. Balls, drivers
 * and springs stay; pins that were measured go back to the parts on hand, pins that were only planned or never measured go. Lengths mm,
 * rounded to what can be read: .0001 in or 0.001 mm.
 */
import { known } from '../assert.ts';
import { asPlanned } from '../edit/edit-plans.ts';
import { changePlan } from '../edit/edit-stack.ts';
import { heldParts, withoutStandIns } from '../edit/loose-ends.ts';
import { newParts } from '../edit/new-parts.ts';
import { statedValue } from '../edit/values.ts';
import { rolesOf } from '../measured/measured-stack.ts';
import type { Job } from '../schema/job-schema.ts';
import type { Item } from '../schema/key-schema.ts';
import type { Id, LengthValue } from '../schema/leaf.ts';
import type { Group, Part, Plan } from '../schema/parts-schema.ts';
import { MM_PER_INCH } from '../units/length-unit.ts';
import type { KeysPlan, PlannedChamber } from './plan-keys.ts';

export type PutPlan = {
  readonly job: Job;
  /** The plan it went into: the one it was made for, or a new one where that tells what was found or built. */
  readonly plan: Id;
};

/** Where planned parts come from, in the words of the parts list. */
export const TO_MAKE = 'planned: to make or find';

/** Puts a plan for several keys into the job. Locked chambers, and chambers with a problem, stay as they are. */
export function putKeysPlan(job: Job, keysPlan: KeysPlan, newId: () => Id): PutPlan {
  const before = known(
    job.plans.find(({ id }) => id === keysPlan.plan),
    `plan ${keysPlan.plan}`,
  );
  const { job: start, plan } = asPlanned(job, before, newId);
  const put = keysPlan.chambers.reduce(
    (now, chamber) => (isToPut(chamber) ? putStack(now, plan, chamber, newId) : now),
    start,
  );
  const wasThere = before.stacks.flatMap(({ items }) => items.map(({ part }) => part));
  return { job: withoutStandIns(withoutPlanned(put, wasThere), wasThere), plan };
}

function isToPut({ isLocked, problem, bottom }: PlannedChamber): boolean {
  return !isLocked && problem === null && bottom !== null;
}

function putStack(job: Job, planId: Id, planned: PlannedChamber, newId: () => Id): Job {
  const { unit } = job.settings;
  const plan = known(
    job.plans.find(({ id }) => id === planId),
    `plan ${planId}`,
  );
  const items = plan.stacks.find(({ chamber }) => chamber === planned.chamber)?.items ?? [];
  const present = standing(job, items);
  const [usualBall, usualPin, usualDriver, usualSpring] = newParts(newId, unit);
  const heights = planned.splits.map(({ height }) => rounded(height, unit));
  const [bottom = 0] = heights;
  const balls = present.filter(({ role }) => role === 'ball').map(({ item }) => item);
  const hasBall = planned.ball !== null;
  const newBall = hasBall && balls.length === 0 ? usualBall : undefined;
  const lowest: readonly Item[] = newBall === undefined ? balls : [{ part: newBall.id }];
  const like = present.find(({ role }) => role === 'bottomPin')?.part ?? usualPin;
  const bottomPin: Part = {
    ...toMake(newId(), 'bottom pin', like),
    ...(like?.ends === undefined ? pointed(hasBall) : { ends: like.ends }),
    ...(!hasBall && { length: lengthValue(bottom, unit) }),
  };
  const masters = heights.slice(1).map(
    (height, i): Part => ({
      ...toMake(newId(), 'master pin', like),
      length: lengthValue(height - (heights[i] ?? 0), unit),
    }),
  );
  const drivers = present.filter(({ role }) => role === 'driver').map(({ item }) => item);
  const springs = present.filter(({ role }) => role === 'spring').map(({ item }) => item);
  const newDriver = drivers.length === 0 ? usualDriver : undefined;
  const newSpring = springs.length === 0 && drivers.length === 0 ? usualSpring : undefined;
  const made = [newBall, bottomPin, ...masters, newDriver, newSpring].flatMap((part) => part ?? []);
  const lower: readonly Item[] = [...lowest, { part: bottomPin.id }];
  const stack: Item[] = [
    ...lower,
    ...masters.map(({ id }) => ({ part: id })),
    ...drivers,
    ...(newDriver === undefined ? [] : [{ part: newDriver.id }]),
    ...springs,
    ...(newSpring === undefined ? [] : [{ part: newSpring.id }]),
  ];
  const together: Group[] = hasBall
    ? [{ id: newId(), parts: lower.map(({ part }) => part), height: lengthValue(bottom, unit) }]
    : [];
  const withParts: Job = {
    ...job,
    parts: [...job.parts, ...made],
    groups: [...job.groups, ...together],
  };
  return changePlan(withParts, planId, (each) => withStack(each, planned.chamber, stack));
}

function withStack(plan: Plan, chamber: Id, items: Item[]): Plan {
  if (!plan.stacks.some((stack) => stack.chamber === chamber))
    return { ...plan, stacks: [...plan.stacks, { chamber, items }] };
  return {
    ...plan,
    stacks: plan.stacks.map((stack) => (stack.chamber === chamber ? { ...stack, items } : stack)),
  };
}

type Standing = {
  readonly item: Item;
  readonly part: Part;
  readonly role: ReturnType<typeof rolesOf>[number];
};

function standing(job: Job, items: readonly Item[]): Standing[] {
  const found = items.flatMap((item) => {
    const part = job.parts.find(({ id }) => id === item.part);
    return part === undefined ? [] : [{ item, part }];
  });
  const roles = rolesOf(found.map(({ part }) => part.kind));
  return found.map((each, i) => ({ ...each, role: roles[i] ?? 'bottomPin' }));
}

function toMake(id: Id, label: string, like: Part | undefined): Part {
  return {
    id,
    label,
    kind: 'pin',
    quantity: 1,
    original: false,
    from: TO_MAKE,
    ...(like?.diameter !== undefined && { diameter: like.diameter }),
  };
}

/** Without a ball a pin is pointed: a flat one would ride on the sides of every cut. */
function pointed(hasBall: boolean): Pick<Part, 'ends'> {
  if (hasBall) return {};
  return {
    ends: [
      { kind: 'cone', basis: 'assumed' },
      { kind: 'dome', basis: 'assumed' },
    ],
  };
}

function rounded(mm: number, unit: Job['settings']['unit']): number {
  return unit === 'in' ? Number((mm / MM_PER_INCH).toFixed(4)) : Number(mm.toFixed(3));
}

/** A length as planned. `amount` is in the job's unit. */
function lengthValue(amount: number, unit: Job['settings']['unit']): LengthValue {
  return statedValue(unit === 'in' ? amount.toFixed(4) : amount.toFixed(3), unit);
}

/** Takes away parts that were only planned and are in no plan any more, with their heights. */
export function withoutPlanned(job: Job, candidates: readonly Id[]): Job {
  const asked = new Set(candidates);
  const inPlans = new Set(
    job.plans.flatMap(({ stacks }) => stacks.flatMap(({ items }) => items.map(({ part }) => part))),
  );
  const dropped = new Set(
    job.parts
      .filter(({ id, from }) => from === TO_MAKE && asked.has(id) && !inPlans.has(id))
      .map(({ id }) => id),
  );
  if (dropped.size === 0) return job;
  const groups = job.groups.filter(({ parts }) => !parts.some((part) => dropped.has(part)));
  const held = heldParts({ ...job, groups });
  return { ...job, groups, parts: job.parts.filter(({ id }) => held.has(id) || !dropped.has(id)) };
}
