/**
 * Taking parts out of the job. Nothing may point at a part that is gone, so what was measured with it goes too; what that is
 * can be told before, in words, so that nobody loses a reading unasked.
 */
import { sayUse } from '../matching/used-parts.ts';
import type { Job } from '../schema/job-schema.ts';
import type { Item } from '../schema/key-schema.ts';
import type { Id } from '../schema/leaf.ts';
import type { Plan } from '../schema/parts-schema.ts';

/** Takes parts out, and with them what was read with them in place. */
export function removeParts(job: Job, ids: ReadonlySet<Id>): Job {
  const holds = holding(ids);
  return {
    ...job,
    parts: job.parts.filter((part) => !ids.has(part.id)),
    groups: job.groups.filter((group) => !group.parts.some((part) => ids.has(part))),
    plans: job.plans.map((plan) => (isInPlan(plan, holds) ? withoutItems(plan, ids) : plan)),
    seatings: job.seatings.map((seating) => {
      if (![...seating.standsUpBy, ...seating.felt].some((entry) => holds(entry.items))) return seating;
      return {
        ...seating,
        standsUpBy: seating.standsUpBy.filter((entry) => !holds(entry.items)),
        felt: seating.felt.filter((entry) => !holds(entry.items)),
      };
    }),
    benchResults: job.benchResults.filter((result) => !holds(result.items)),
  };
}

function isInPlan({ stacks }: Plan, holds: Holds): boolean {
  return stacks.some((stack) => holds(stack.items) || holds(stack.rest?.items ?? []));
}

function withoutItems(plan: Plan, ids: ReadonlySet<Id>): Plan {
  const holds = holding(ids);
  return {
    ...plan,
    stacks: plan.stacks.map((stack) => {
      if (!holds(stack.items) && !holds(stack.rest?.items ?? [])) return stack;
      const { rest, ...others } = stack;
      const items = stack.items.filter((item) => !ids.has(item.part));
      return rest === undefined || holds(rest.items) ? { ...others, items } : { ...stack, items };
    }),
  };
}

type Holds = (items: readonly Item[]) => boolean;

function holding(ids: ReadonlySet<Id>): Holds {
  return (items) => items.some((item) => ids.has(item.part));
}

/**
 * Says where parts stand and what goes with them, a sentence each. Empty when they are loose and nothing else is known by
 * them: then they may go without a question, as undo brings them back.
 */
export function whatGoesWith(job: Job, ids: ReadonlySet<Id>): string[] {
  const holds = holding(ids);
  const planWords = { 'as found': 'as it was found', planned: 'in the plan', 'as built': 'as it was built' };
  const places = new Map<string, string[]>();
  for (const plan of job.plans) {
    for (const { chamber, items } of plan.stacks) {
      if (!holds(items)) continue;
      const where = sayUse(job, { cylinder: plan.cylinder, chamber });
      places.set(where, [...(places.get(where) ?? []), planWords[plan.kind]]);
    }
  }
  const said = [...places].map(([where, plans]) => `In use: ${where}, ${plans.join(' and ')}.`);
  const counts = [
    ...count(job.groups.filter((group) => isOthersToo(group.parts, ids)).length, 'height measured together'),
    ...count(
      job.plans.flatMap(({ stacks }) => stacks).filter(({ rest }) => holds(rest?.items ?? [])).length,
      'rest depth',
    ),
    ...count(
      job.seatings.flatMap(({ standsUpBy }) => standsUpBy).filter(({ items }) => holds(items)).length,
      'reading of how far it stood up',
    ),
    ...count(
      job.seatings.flatMap(({ felt }) => felt).filter(({ items }) => holds(items)).length,
      'note of what was felt',
    ),
    ...count(job.benchResults.filter(({ items }) => holds(items)).length, 'bench test'),
  ];
  return counts.length === 0 ? said : [...said, `With it goes: ${counts.join(', ')}.`];
}

/** A height that also belongs to a pin that stays: a ball that goes takes the readings of the pins that stood on it along. */
function isOthersToo(parts: readonly Id[], ids: ReadonlySet<Id>): boolean {
  const gone = parts.filter((part) => ids.has(part)).length;
  return gone > 0 && gone < parts.length && !ids.has(parts.at(-1) ?? '');
}

function count(number: number, what: string): string[] {
  if (number === 0) return [];
  return [number === 1 ? `one ${what}` : `${number} ${plural(what)}`];
}

function plural(what: string): string {
  const [first = '', ...rest] = what.split(' ');
  const ends = rest.length === 0 || first === 'height' || first === 'reading' || first === 'note';
  return ends ? [`${first}s`, ...rest].join(' ') : `${what}s`;
}
