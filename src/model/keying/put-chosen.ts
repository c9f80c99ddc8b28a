/**
 * Puts parts on hand that were chosen for two keys into the plan: ball, bottom pin and master pin take the place of what stood
 * under the driver. Drivers and springs stay.
 */
import { known } from '../assert.ts';
import { asPlanned, type Landed } from '../edit/edit-plans.ts';
import { changePlan } from '../edit/edit-stack.ts';
import { withoutStandIns } from '../edit/loose-ends.ts';
import type { TwoKeysChamber } from '../matching/two-keys.ts';
import { rolesOf } from '../measured/measured-stack.ts';
import type { Job } from '../schema/job-schema.ts';
import type { Item } from '../schema/key-schema.ts';
import type { Id } from '../schema/leaf.ts';
import type { Stack } from '../schema/parts-schema.ts';
import { withoutPlanned } from './put-plan.ts';

/** Puts in what was found; chambers that are locked, or for which nothing was found, stay. */
export function putChosen(
  job: Job,
  planId: Id,
  chosen: readonly Pick<TwoKeysChamber, 'chamber' | 'isLocked' | 'items'>[],
  newId: () => Id,
): Landed {
  const before = known(
    job.plans.find(({ id }) => id === planId),
    `plan ${planId}`,
  );
  const { job: start, plan } = asPlanned(job, before, newId);
  const put = changePlan(start, plan, (each) => ({
    ...each,
    stacks: chosen.reduce<Stack[]>((stacks, { chamber, isLocked, items }) => {
      if (isLocked || items === null) return stacks;
      const stack = stacks.find((other) => other.chamber === chamber) ?? { chamber, items: [] };
      const filled = { ...stack, items: [...items, ...fromDriverUp(job, stack.items)] };
      return stacks.includes(stack)
        ? stacks.map((other) => (other === stack ? filled : other))
        : [...stacks, filled];
    }, each.stacks),
  }));
  const wasThere = before.stacks.flatMap(({ items }) => items.map(({ part }) => part));
  return { job: withoutStandIns(withoutPlanned(put, wasThere), wasThere), plan };
}

function fromDriverUp(job: Job, items: readonly Item[]): Item[] {
  const found = items.filter(({ part }) => job.parts.some(({ id }) => id === part));
  const roles = rolesOf(found.map(({ part }) => job.parts.find(({ id }) => id === part)?.kind ?? 'spring'));
  return found.filter((_, i) => roles[i] === 'driver' || roles[i] === 'spring');
}
