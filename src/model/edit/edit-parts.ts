/** Edits of parts in the bag, one property at a time. Each gives a new job. Lengths mm. */
import type { Job } from '../schema/job-schema.ts';
import type { Id, LengthValue } from '../schema/leaf.ts';
import type { EndForm, Group, Part } from '../schema/parts-schema.ts';
import { changeById, sameIds, withOptional } from './change.ts';
import { changePart } from './edit-stack.ts';
import { type EndName, endForm } from './end-forms.ts';

/** Sets a label that is free (see `labelTrouble`). */
export function setPartLabel(job: Job, part: Id, label: string): Job {
  return changePart(job, part, (each) => ({ ...each, label: label.trim() }));
}

export function setPartQuantity(job: Job, part: Id, quantity: number): Job {
  return changePart(job, part, (each) => ({ ...each, quantity }));
}

export function setPartOriginal(job: Job, part: Id, original: boolean): Job {
  return changePart(job, part, (each) => ({ ...each, original }));
}

export function setPartCondition(job: Job, part: Id, condition: Part['condition'] | null): Job {
  return changePart(job, part, (each) => withOptional(each, 'condition', condition ?? undefined));
}

/** Sets where a part came from; an empty text takes it away. */
export function setPartFrom(job: Job, part: Id, from: string): Job {
  const text = from.trim();
  return changePart(job, part, (each) => withOptional(each, 'from', text === '' ? undefined : text));
}

/** Sets one end of a pin, as seen: 0 the lower, 1 the upper. The other one stays, or is assumed flat. */
export function setPartEnd(job: Job, part: Id, which: 0 | 1, name: EndName): Job {
  const form = endForm(name, job.settings.unit);
  return changePart(job, part, (each) => {
    const [lower, upper] = each.ends ?? [ASSUMED_FLAT, ASSUMED_FLAT];
    return { ...each, ends: which === 0 ? [form, upper] : [lower, form] };
  });
}

const ASSUMED_FLAT: EndForm = { kind: 'flat', basis: 'assumed' };

/** Sets how wide the dimple in a pin's lower end is. */
export function setDimpleMouth(job: Job, part: Id, value: LengthValue | undefined): Job {
  return changePart(job, part, (each) => {
    const lower = each.ends?.[0];
    if (each.ends === undefined || lower?.kind !== 'cup') return each;
    return { ...each, ends: [withOptional(lower, 'mouthDiameter', value), each.ends[1]] };
  });
}

/** The height of a pin measured standing on a ball, and which; null for a pin measured alone or not at all. */
export function measuredOnBall(job: Job, part: Id): Group | null {
  return job.groups.find((group) => group.parts.length === 2 && group.parts[1] === part) ?? null;
}

/** Sets the height of a pin standing on a ball; undefined takes it away, and the pin's own length counts again. */
export function setHeightOnBall(
  job: Job,
  part: Id,
  ball: Id,
  value: LengthValue | undefined,
  newId: () => Id,
): Job {
  const ids = [ball, part];
  const before = job.groups.find((group) => sameIds(group.parts, ids));
  if (value === undefined)
    return before === undefined ? job : { ...job, groups: job.groups.filter((group) => group !== before) };
  if (before !== undefined)
    return {
      ...job,
      groups: changeById(job.groups, before.id, (group) => ({ ...group, height: value })),
    };
  return { ...job, groups: [...job.groups, { id: newId(), parts: ids, height: value }] };
}
