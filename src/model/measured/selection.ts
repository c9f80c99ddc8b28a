/** What is looked at: one cylinder with one plan, and a key or none. Everything else is found from the job by id. */
import { known } from '../assert.ts';
import type { Measuring } from '../estimate/read-value.ts';
import type { Cylinder } from '../schema/cylinder-schema.ts';
import type { Job } from '../schema/job-schema.ts';
import type { Item, Key, Seating } from '../schema/key-schema.ts';
import type { Id } from '../schema/leaf.ts';
import type { Group, Part, Plan } from '../schema/parts-schema.ts';
import type { MeasuredStack } from './measured-stack.ts';

export type Selection = { readonly cylinder: Id; readonly key: Id | null; readonly plan: Id };

/** A selection with everything it refers to at hand. */
export type Bench = {
  readonly job: Job;
  readonly measuring: Measuring;
  readonly cylinder: Cylinder;
  readonly key: Key | null;
  readonly seating: Seating | null;
  readonly plan: Plan;
  readonly parts: ReadonlyMap<Id, Part>;
  readonly groups: readonly Group[];
  /** Stacks already measured on this bench, by their list of items and the chamber's radius. */
  readonly stacks: Map<readonly Item[], { readonly holeRadius: number; readonly stack: MeasuredStack }>;
};

/** Lays out everything a selection refers to. The selection must exist in the job. */
export function layOut(job: Job, selection: Selection): Bench {
  const cylinder = known(
    job.cylinders.find((each) => each.id === selection.cylinder),
    `cylinder ${selection.cylinder}`,
  );
  const plan = known(
    job.plans.find((each) => each.id === selection.plan),
    `plan ${selection.plan}`,
  );
  const key = job.keys.find((each) => each.id === selection.key) ?? null;
  const seating =
    job.seatings.find((each) => each.cylinder === cylinder.id && each.key === selection.key) ?? null;
  return {
    job,
    measuring: {
      instruments: new Map(job.instruments.map((each) => [each.id, each])),
      sessions: new Map(job.sessions.map((each) => [each.id, each])),
    },
    cylinder,
    key,
    seating,
    plan,
    parts: new Map(job.parts.map((each) => [each.id, each])),
    groups: job.groups,
    stacks: new Map(),
  };
}

/** The selections a job can be looked at in: each key with each cylinder it is paired with, plan by plan. */
export function allSelections(job: Job): Selection[] {
  return job.plans.flatMap((plan): Selection[] => {
    const keys = job.seatings.filter((each) => each.cylinder === plan.cylinder).map((each) => each.key);
    const seen: (Id | null)[] = keys.length === 0 ? [null] : keys;
    return seen.map((key) => ({ cylinder: plan.cylinder, key, plan: plan.id }));
  });
}

/** The selection a job opens with: its first one that has a planned or found stack. Null for a job without a plan. */
export function firstSelection(job: Job): Selection | null {
  const all = allSelections(job);
  const kindOf = (plan: Id) => job.plans.find((each) => each.id === plan)?.kind;
  return all.find((each) => each.key !== null && kindOf(each.plan) === 'planned') ?? all[0] ?? null;
}
