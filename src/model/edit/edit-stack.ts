/** Edits of what is in the holes: the parts of each stack and their lengths. Each gives a new job. Lengths mm. */
import { assert } from '../assert.ts';
import type { Job } from '../schema/job-schema.ts';
import type { Id, LengthValue } from '../schema/leaf.ts';
import type { Part, Plan, Stack } from '../schema/parts-schema.ts';
import { changeById, sameIds, withOptional } from './change.ts';
import { type StackParts, stackParts } from './stack-parts.ts';

type PartLength = 'diameter' | 'length' | 'solid' | 'free' | 'wire';

/** Changes one plan. */
export function changePlan(job: Job, id: Id, change: (plan: Plan) => Plan): Job {
  return { ...job, plans: changeById(job.plans, id, change) };
}

/** Changes the stack of one chamber. */
export function changeStack(job: Job, plan: Id, chamber: Id, change: (stack: Stack) => Stack): Job {
  return changePlan(job, plan, (each) => ({
    ...each,
    stacks: each.stacks.map((stack) => (stack.chamber === chamber ? change(stack) : stack)),
  }));
}

/** Changes one part. */
export function changePart(job: Job, id: Id, change: (part: Part) => Part): Job {
  return { ...job, parts: changeById(job.parts, id, change) };
}

/** Sets one length of one part. */
export function setPartLength(job: Job, part: Id, name: PartLength, value: LengthValue | undefined): Job {
  return changePart(job, part, (each) => withOptional(each, name, value));
}

/**
 * Sets the height of ball + bottom pin read together, seated. With no ball in the hole it is the pin's own length.
 * Taking it away leaves the parts' own lengths to count.
 */
export function setLowerStack(
  job: Job,
  plan: Id,
  chamber: Id,
  value: LengthValue | undefined,
  newId: () => Id,
): Job {
  const { lower, bottomPin, ball, together } = partsIn(job, plan, chamber);
  if (ball === null) {
    return bottomPin === null ? job : setPartLength(job, bottomPin.id, 'length', value);
  }
  const ids = lower.map((item) => item.part);
  if (ids.length < 2) return setPartLength(job, ball.id, 'diameter', value);
  if (value === undefined)
    return { ...job, groups: job.groups.filter((group) => !sameIds(group.parts, ids)) };
  if (together !== null)
    return {
      ...job,
      groups: changeById(job.groups, together.id, (group) => ({ ...group, height: value })),
    };
  return { ...job, groups: [...job.groups, { id: newId(), parts: ids, height: value }] };
}

/** The height of ball + bottom pin as it was entered: read together, or the length of a pin that has no ball. */
export function lowerStackValue(parts: StackParts): LengthValue | undefined {
  if (parts.ball === null) return parts.bottomPin?.length;
  if (parts.bottomPin === null) return parts.ball.diameter;
  return parts.together?.height;
}

/** Sets the same diameter for every ball of a plan. */
export function setBallDiameter(job: Job, plan: Id, value: LengthValue): Job {
  const balls = new Set(eachStack(job, plan).flatMap((parts) => parts.ball?.id ?? []));
  return {
    ...job,
    parts: job.parts.map((part) => (balls.has(part.id) ? { ...part, diameter: value } : part)),
  };
}

/** Sets the same diameter for every pin of a plan. */
export function setPinDiameter(job: Job, plan: Id, value: LengthValue): Job {
  const pins = new Set(
    eachStack(job, plan).flatMap(({ bottomPin, masterPins, driver }) =>
      [bottomPin, ...masterPins, driver].map((pin) => pin?.id),
    ),
  );
  return {
    ...job,
    parts: job.parts.map((part) =>
      part.kind === 'pin' && pins.has(part.id) ? { ...part, diameter: value } : part,
    ),
  };
}

/** Sets how far ball + bottom pin sink below the line with the key out. It belongs to the parts it was read with. */
export function setRest(job: Job, plan: Id, chamber: Id, value: LengthValue | undefined): Job {
  const { lower } = partsIn(job, plan, chamber);
  return changeStack(job, plan, chamber, (stack) =>
    withOptional(
      stack,
      'rest',
      value === undefined ? undefined : { items: lower.map((item) => ({ ...item })), belowLine: value },
    ),
  );
}

/** The rest depth, if it was read with the parts that are in the hole now. */
export function restValue(parts: StackParts): LengthValue | undefined {
  const rest = parts.stack.rest;
  if (rest === undefined) return undefined;
  const isSame = sameIds(
    rest.items.map((item) => item.part),
    parts.lower.map((item) => item.part),
  );
  return isSame ? rest.belowLine : undefined;
}

/** The stacks of a plan by role. */
export function eachStack(job: Job, planId: Id): StackParts[] {
  const plan = job.plans.find((each) => each.id === planId);
  assert(plan !== undefined, `no plan ${planId}`);
  return plan.stacks.flatMap((stack) => stackParts(job, plan, stack.chamber) ?? []);
}

function partsIn(job: Job, planId: Id, chamber: Id): StackParts {
  const parts = eachStack(job, planId).find((each) => each.stack.chamber === chamber);
  assert(parts !== undefined, `plan ${planId} has no stack in chamber ${chamber}`);
  return parts;
}
