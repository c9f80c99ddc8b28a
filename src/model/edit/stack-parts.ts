/** What is in one hole of a plan, by role. A role follows from the place in the stack. */
import { rolesOf } from '../measured/measured-stack.ts';
import type { Job } from '../schema/job-schema.ts';
import type { Item } from '../schema/key-schema.ts';
import type { Id } from '../schema/leaf.ts';
import type { Group, Part, Plan, Stack } from '../schema/parts-schema.ts';
import { sameIds } from './change.ts';

export type StackParts = {
  readonly stack: Stack;
  readonly ball: Part | null;
  readonly bottomPin: Part | null;
  /** Between bottom pin and driver, bottom to top. */
  readonly masterPins: readonly Part[];
  readonly driver: Part | null;
  readonly spring: Part | null;
  /** Ball + bottom pin, as they lie in the hole. */
  readonly lower: readonly Item[];
  /** Their height measured together. */
  readonly together: Group | null;
};

/** Looks up the stack of one chamber; null when the plan has none. */
export function stackParts(job: Job, plan: Plan, chamber: Id): StackParts | null {
  const stack = plan.stacks.find((each) => each.chamber === chamber);
  if (stack === undefined) return null;
  const found = stack.items.flatMap((item) => {
    const part = job.parts.find((each) => each.id === item.part);
    return part === undefined ? [] : [{ item, part }];
  });
  const roles = rolesOf(found.map(({ part }) => part.kind));
  const inRole = (role: (typeof roles)[number]) => found[roles.indexOf(role)]?.part ?? null;
  const lower = found
    .filter((_, i) => roles[i] === 'ball' || roles[i] === 'bottomPin')
    .map(({ item }) => item);
  const ids = lower.map((item) => item.part);
  return {
    stack,
    ball: inRole('ball'),
    bottomPin: inRole('bottomPin'),
    masterPins: found.filter((_, i) => roles[i] === 'masterPin').map(({ part }) => part),
    driver: inRole('driver'),
    spring: inRole('spring'),
    lower,
    together: job.groups.find((group) => sameIds(group.parts, ids)) ?? null,
  };
}
