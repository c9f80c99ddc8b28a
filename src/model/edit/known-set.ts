/**
 * A set known to work: a plan "as found" whose stacks turned with this key. It has parts of its own, so that a new pin in
 * the plan never changes what the old one told.
 */
import type { Job } from '../schema/job-schema.ts';
import type { Seating } from '../schema/key-schema.ts';
import type { Id, LengthValue } from '../schema/leaf.ts';
import type { Part, Plan } from '../schema/parts-schema.ts';
import { changeSeating } from './edit-seating.ts';
import { lowerStackValue, setLowerStack } from './edit-stack.ts';
import { heldParts } from './loose-ends.ts';
import { newParts } from './new-parts.ts';
import { stackParts } from './stack-parts.ts';

type Where = { readonly cylinder: Id; readonly key: Id };

/** The plan that holds the set known to work with this key; null when none was entered. */
export function knownSet(job: Job, { cylinder, key }: Where): Plan | null {
  const seating = job.seatings.find((each) => each.cylinder === cylinder && each.key === key);
  return job.plans.find((plan) => seating?.knownSets.includes(plan.id) === true) ?? null;
}

/** Ball + bottom pin that worked in one chamber. */
export function knownStack(job: Job, where: Where, chamber: Id): LengthValue | undefined {
  const plan = knownSet(job, where);
  const parts = plan === null ? null : stackParts(job, plan, chamber);
  return parts === null ? undefined : lowerStackValue(parts);
}

/** Sets the ball + bottom pin that worked in one chamber; the set is begun with its first stack and ends with its last. */
export function setKnownStack(
  job: Job,
  where: Where,
  chamber: Id,
  value: LengthValue | undefined,
  newId: () => Id,
): Job {
  const plan = knownSet(job, where);
  if (plan === null) return value === undefined ? job : beginSet(job, where, chamber, value, newId);
  if (value === undefined) return withoutStack(job, plan, chamber);
  if (stackParts(job, plan, chamber) !== null) return setLowerStack(job, plan.id, chamber, value, newId);
  return withStack(job, plan, chamber, value, newId);
}

function beginSet(job: Job, where: Where, chamber: Id, value: LengthValue, newId: () => Id): Job {
  const plan: Plan = { id: newId(), cylinder: where.cylinder, kind: 'as found', stacks: [] };
  const withPlan = changeSeating(
    { ...job, plans: [...job.plans, plan] },
    where.cylinder,
    where.key,
    (seating) => ({ ...seating, knownSets: [...seating.knownSets, plan.id] }),
  );
  return withStack(withPlan, plan, chamber, value, newId);
}

function withStack(job: Job, plan: Plan, chamber: Id, value: LengthValue, newId: () => Id): Job {
  const lower = oldParts(job, plan, chamber, newId);
  const added: Job = {
    ...job,
    parts: [...job.parts, ...lower],
    plans: job.plans.map((each) =>
      each.id === plan.id
        ? {
            ...each,
            stacks: [...each.stacks, { chamber, items: lower.map((part) => ({ part: part.id })) }],
          }
        : each,
    ),
  };
  return setLowerStack(added, plan.id, chamber, value, newId);
}

/** Ball and pin of the old set, as thick as those that are in the chamber in another plan. */
function oldParts(job: Job, plan: Plan, chamber: Id, newId: () => Id): Part[] {
  const other = job.plans.find((each) => each.cylinder === plan.cylinder && each.id !== plan.id);
  const parts = other === undefined ? null : stackParts(job, other, chamber);
  const lower = newParts(newId, job.settings.unit).slice(0, 2);
  return lower
    .filter((part) => part.kind !== 'ball' || parts === null || parts.ball !== null)
    .map((part) => {
      const like = part.kind === 'ball' ? parts?.ball : parts?.bottomPin;
      const diameter = like?.diameter ?? part.diameter;
      return {
        ...part,
        ...(diameter !== undefined && { diameter }),
        ...(like?.ends !== undefined && { ends: like.ends }),
      };
    });
}

function withoutStack(job: Job, plan: Plan, chamber: Id): Job {
  const gone = new Set(
    plan.stacks
      .filter((stack) => stack.chamber === chamber)
      .flatMap((stack) => stack.items.map((i) => i.part)),
  );
  const isLast = plan.stacks.every((stack) => stack.chamber === chamber);
  const cleared: Job = {
    ...job,
    groups: job.groups.filter((group) => !group.parts.some((id) => gone.has(id))),
    plans: job.plans.flatMap((each) => {
      if (each.id !== plan.id) return [each];
      return isLast ? [] : [{ ...each, stacks: each.stacks.filter((stack) => stack.chamber !== chamber) }];
    }),
    // Nothing may speak of a plan that is gone.
    seatings: isLast ? job.seatings.map((seating) => withoutSet(seating, plan.id)) : job.seatings,
    benchResults: isLast ? job.benchResults.filter((test) => test.plan !== plan.id) : job.benchResults,
  };
  const held = heldParts(cleared);
  return { ...cleared, parts: cleared.parts.filter(({ id }) => !gone.has(id) || held.has(id)) };
}

function withoutSet(seating: Seating, plan: Id): Seating {
  if (!seating.knownSets.includes(plan)) return seating;
  return { ...seating, knownSets: seating.knownSets.filter((id) => id !== plan) };
}
