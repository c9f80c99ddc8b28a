/**
 * Loose parts: put into the bag, one or many as one step, and copied. A pin measured standing on a ball keeps no length of its
 * own: the height of both is kept with the pair. Lengths mm.
 */
import { known } from '../assert.ts';
import type { Job } from '../schema/job-schema.ts';
import type { Id, LengthValue } from '../schema/leaf.ts';
import type { Group, Part } from '../schema/parts-schema.ts';
import { type EndName, endForm } from './end-forms.ts';
import { freshLabels, labelsOf, sameLabel } from './labels.ts';

/** Parts and pairs a job may hold, as in the job file. */
export const MOST_PARTS = 20_000;

export type NewPart = {
  readonly kind: Part['kind'];
  /** Null: made by counting on. */
  readonly label: string | null;
  /** Of a pin its length, of a spring the length squeezed solid; a ball has its diameter alone. */
  readonly length: LengthValue | null;
  /** The ball it stood on when it was measured: then `length` is the height of both. */
  readonly onBall: Id | null;
  readonly diameter: LengthValue | null;
  readonly lower: EndName | null;
  readonly upper: EndName | null;
  readonly quantity: number;
  readonly from: string;
  readonly original: boolean;
  readonly condition: Part['condition'] | null;
};

/** How many more parts a job has room for. */
export function roomForParts(job: Job): number {
  return Math.max(0, MOST_PARTS - Math.max(job.parts.length, job.groups.length));
}

/** Puts parts into the bag, as many as there is room for. */
export function addParts(job: Job, parts: readonly NewPart[], newId: () => Id): Job {
  const room = roomForParts(job);
  const taken = labelsOf(job.parts);
  for (const { label } of parts) if (label !== null) taken.add(sameLabel(label));
  const counting = new Map<Part['kind'], Generator<string, never, void>>();
  const labelFor = (kind: Part['kind']) => {
    const labels = counting.get(kind) ?? freshLabels(kind, taken);
    counting.set(kind, labels);
    return labels.next().value;
  };
  const added: Part[] = [];
  const groups: Group[] = [];
  for (const part of parts.slice(0, room)) {
    const id = newId();
    added.push(partOf(part, id, part.label?.trim() ?? labelFor(part.kind), job));
    if (part.onBall !== null && part.length !== null)
      groups.push({ id: newId(), parts: [part.onBall, id], height: part.length });
  }
  if (added.length === 0) return job;
  return {
    ...job,
    parts: [...job.parts, ...added],
    groups: groups.length === 0 ? job.groups : [...job.groups, ...groups],
  };
}

function partOf(part: NewPart, id: Id, label: string, job: Job): Part {
  const { kind, length, diameter, quantity, original, condition, onBall } = part;
  const { unit } = job.settings;
  const from = part.from.trim();
  return {
    id,
    label,
    kind,
    quantity,
    original,
    ...(diameter === null || kind === 'spring' ? {} : { diameter }),
    ...(length === null || onBall !== null || kind === 'ball'
      ? {}
      : kind === 'spring'
        ? { solid: length }
        : { length }),
    ...(kind !== 'pin' || (part.lower === null && part.upper === null)
      ? {}
      : {
          ends: [
            part.lower === null ? NOT_LOOKED_AT : endForm(part.lower, unit),
            part.upper === null ? TOP_NOT_LOOKED_AT : endForm(part.upper, unit),
          ],
        }),
    ...(from === '' ? {} : { from }),
    ...(condition == null ? {} : { condition }),
  };
}

const NOT_LOOKED_AT: NonNullable<Part['ends']>[0] = { kind: 'flat', basis: 'assumed' };
/** What the top of a bottom pin usually is, with what else it could be. */
const TOP_NOT_LOOKED_AT: NonNullable<Part['ends']>[1] = {
  kind: 'dome',
  basis: 'assumed',
  alternatives: [{ kind: 'bevel' }, { kind: 'flat' }],
};

/** Puts another part like this one into the bag, right behind it, under a label of its own; what it was measured with too. */
export function copyPart(job: Job, id: Id, newId: () => Id): Job {
  if (roomForParts(job) < 1) return job;
  const at = job.parts.findIndex((each) => each.id === id);
  const part = known(job.parts[at], `part ${id}`);
  const label = freshLabels(part.kind, labelsOf(job.parts)).next().value;
  const copy: Part = { ...part, id: newId(), label };
  const groups = job.groups
    .filter((group) => group.parts.includes(id) && group.parts.length === 2)
    .map((group) => ({
      ...group,
      id: newId(),
      parts: group.parts.map((each) => (each === id ? copy.id : each)),
    }));
  return {
    ...job,
    parts: [...job.parts.slice(0, at + 1), copy, ...job.parts.slice(at + 1)],
    groups: [...job.groups, ...groups],
  };
}
