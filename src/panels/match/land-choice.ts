/** Puts choices into plans as one change, unless that would use a part more often than there is of it. */
import { addToDo } from '../../model/edit/edit-note.ts';
import { putInPlan } from '../../model/edit/edit-plans.ts';
import type { Match } from '../../model/matching/match.ts';
import { usedTooOften } from '../../model/matching/used-parts.ts';
import type { Job } from '../../model/schema/job-schema.ts';
import type { Id } from '../../model/schema/leaf.ts';
import { filingLines } from './match-words.ts';

export type Landing =
  | { readonly type: 'landed'; readonly job: Job; readonly plans: readonly Id[] }
  /** One sentence that says where. */
  | { readonly type: 'refused'; readonly message: string };

/** Lands all of them. What has to be filed first is noted as work to do. */
export function landChoices(job: Job, matches: readonly Match[], newId: () => Id): Landing {
  const before = new Set(usedTooOften(job).map(({ message }) => message));
  const plans: Id[] = [];
  let next = job;
  for (const match of matches) {
    const landings = match.chambers.flatMap(({ chamber, isLocked, standing }) =>
      isLocked || standing === null ? [] : [{ chamber, items: standing.items }],
    );
    const landed = putInPlan(next, match.plan, landings, newId);
    plans.push(landed.plan);
    next = filingLines(job, match).reduce(addToDo, landed.job);
  }
  const double = usedTooOften(next).find(({ message }) => !before.has(message));
  if (double === undefined) return { type: 'landed', job: next, plans };
  return { type: 'refused', message: `${double.message} Nothing was changed: choose again.` };
}
