/** Parts that stand for ones nobody measured yet, and what becomes of them when nothing holds them any more. */
import type { Job } from '../schema/job-schema.ts';
import type { Id } from '../schema/leaf.ts';
import type { Part } from '../schema/parts-schema.ts';

/** Takes away those of these parts that nobody measured and nothing refers to any more. Others stay on hand. */
export function withoutStandIns(job: Job, candidates: Iterable<Id>): Job {
  const asked = new Set(candidates);
  if (asked.size === 0) return job;
  const held = heldParts(job);
  const gone = new Set(
    job.parts
      .filter((part) => asked.has(part.id) && !held.has(part.id) && !isMeasured(part))
      .map(({ id }) => id),
  );
  return gone.size === 0 ? job : { ...job, parts: job.parts.filter(({ id }) => !gone.has(id)) };
}

/** The parts that plans, readings and bench tests refer to. */
export function heldParts(job: Job): ReadonlySet<Id> {
  const items = [
    ...job.plans.flatMap(({ stacks }) =>
      stacks.flatMap((stack) => [...stack.items, ...(stack.rest?.items ?? [])]),
    ),
    ...job.seatings.flatMap(({ standsUpBy, felt }) => [...standsUpBy, ...felt].flatMap((each) => each.items)),
    ...job.benchResults.flatMap((result) => result.items),
  ];
  return new Set([...items.map(({ part }) => part), ...job.groups.flatMap((group) => group.parts)]);
}

/** Something about it was read or stated, or it came with more than one. */
export function isMeasured({ diameter, length, solid, free, wire, quantity, from }: Part): boolean {
  const values = [diameter, length, solid, free, wire];
  return (
    quantity > 1 ||
    from !== undefined ||
    values.some((value) => value !== undefined && value.basis !== 'assumed')
  );
}
