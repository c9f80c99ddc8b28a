/**
 * Keeps what is in the holes now as a record: as found, before anything is changed, or as built, when it is together. The
 * record has parts of its own, so that a pin measured again, or another one chosen later, does not rewrite it.
 */
import { known } from '../assert.ts';
import type { Job } from '../schema/job-schema.ts';
import type { Id } from '../schema/leaf.ts';
import type { Group, Part, Plan } from '../schema/parts-schema.ts';

/** Copies a plan with its parts under another kind. */
export function keepPlanAs(job: Job, planId: Id, kind: 'as found' | 'as built', newId: () => Id): Job {
  const plan = known(
    job.plans.find(({ id }) => id === planId),
    `plan ${planId}`,
  );
  const copies = new Map<Id, Id>();
  const held = new Set(plan.stacks.flatMap(({ items }) => items.map(({ part }) => part)));
  const parts = job.parts.flatMap((part): Part[] => {
    if (!held.has(part.id)) return [];
    const id = newId();
    copies.set(part.id, id);
    return [{ ...part, id, quantity: 1 }];
  });
  const groups = job.groups.flatMap((group): Group[] =>
    group.parts.every((id) => copies.has(id))
      ? [{ ...group, id: newId(), parts: group.parts.map((id) => copies.get(id) ?? id) }]
      : [],
  );
  const copied = <T extends { readonly part: Id }>(items: readonly T[]): T[] =>
    items.map((item) => ({ ...item, part: copies.get(item.part) ?? item.part }));
  const record: Plan = {
    id: newId(),
    cylinder: plan.cylinder,
    kind,
    stacks: plan.stacks.map((stack) => ({
      ...stack,
      items: copied(stack.items),
      ...(stack.rest === undefined ? {} : { rest: { ...stack.rest, items: copied(stack.rest.items) } }),
    })),
  };
  return {
    ...job,
    parts: [...job.parts, ...parts],
    groups: [...job.groups, ...groups],
    plans: [...job.plans, record],
  };
}
