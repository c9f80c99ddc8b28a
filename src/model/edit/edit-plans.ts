/**
 * Plans of a cylinder: the planned one is what choosing parts changes. What lands there takes the place of the lower stacks;
 * drivers, springs and master pins stay.
 */
import { known } from '../assert.ts';
import { rolesOf } from '../measured/measured-stack.ts';
import type { Job } from '../schema/job-schema.ts';
import type { Item } from '../schema/key-schema.ts';
import type { Id } from '../schema/leaf.ts';
import type { Plan, Stack } from '../schema/parts-schema.ts';
import { withOptional } from './change.ts';
import { changePlan, changeStack } from './edit-stack.ts';
import { withoutStandIns } from './loose-ends.ts';

/** Ball and bottom pin, bottom to top, for a chamber. */
export type Landing = { readonly chamber: Id; readonly items: readonly Item[] };

/** The plan that parts are chosen for: the planned one of a cylinder, or the one that is looked at when there is none. */
export function planToBuild(job: Job, cylinder: Id, picked: Id | null): Id | null {
  const plans = job.plans.filter((plan) => plan.cylinder === cylinder);
  const shown = plans.find(({ id }) => id === picked);
  if (shown?.kind === 'planned') return shown.id;
  return (plans.find(({ kind }) => kind === 'planned') ?? shown ?? plans[0])?.id ?? null;
}

export type Landed = { readonly job: Job; readonly plan: Id };

/**
 * Puts lower stacks into the planned plan. Where there is none, what is in the holes is copied to one first, so that what
 * was found stays on record. Stand-ins that nothing holds any more go.
 */
export function putInPlan(job: Job, planId: Id, landings: readonly Landing[], newId: () => Id): Landed {
  const before = known(
    job.plans.find(({ id }) => id === planId),
    `plan ${planId}`,
  );
  const { job: ready, plan } = asPlanned(job, before, newId);
  const displaced: Id[] = [];
  const landed = changePlan(ready, plan, (each) => ({
    ...each,
    stacks: landings.reduce<Stack[]>(
      (stacks, landing) => withLanding(ready, stacks, landing, displaced),
      each.stacks,
    ),
  }));
  return { job: withoutStandIns(landed, displaced), plan };
}

/** Leaves a chamber as it is when parts are chosen, or frees it again. */
export function setLocked(job: Job, plan: Id, chamber: Id, isLocked: boolean): Job {
  return changeStack(job, plan, chamber, (stack) =>
    withOptional(stack, 'locked', isLocked ? true : undefined),
  );
}

/** The plan itself if it is a planned one, else a planned copy of it. */
export function asPlanned(job: Job, plan: Plan, newId: () => Id): Landed {
  if (plan.kind === 'planned') return { job, plan: plan.id };
  const copy: Plan = { ...plan, id: newId(), kind: 'planned' };
  return { job: { ...job, plans: [...job.plans, copy] }, plan: copy.id };
}

function withLanding(
  job: Job,
  stacks: readonly Stack[],
  { chamber, items }: Landing,
  displaced: Id[],
): Stack[] {
  const fresh = items.map((item) => ({ ...item }));
  const stack = stacks.find((each) => each.chamber === chamber);
  if (stack === undefined) return [...stacks, { chamber, items: fresh }];
  const kinds = stack.items.map(({ part }) => job.parts.find(({ id }) => id === part)?.kind ?? 'spring');
  const roles = rolesOf(kinds);
  const isLower = (i: number) => roles[i] === 'ball' || roles[i] === 'bottomPin';
  displaced.push(...stack.items.filter((_, i) => isLower(i)).map(({ part }) => part));
  const above = stack.items.filter((_, i) => !isLower(i));
  return stacks.map((each) => (each === stack ? { ...stack, items: [...fresh, ...above] } : each));
}
