/** Which parts of the job the list shows, and in which order. Lengths mm. */
import { endName } from '../../model/edit/end-forms.ts';
import { lengthOf } from '../../model/measured/part-ends.ts';
import { type PartUse, sayUse, usesOfAll } from '../../model/matching/used-parts.ts';
import type { Job } from '../../model/schema/job-schema.ts';
import type { Id, LengthValue } from '../../model/schema/leaf.ts';
import type { Group, Part } from '../../model/schema/parts-schema.ts';

export type BagSort = 'last entered' | 'label' | 'length';
export type BagPlace = 'loose' | 'in use' | 'all';

export type BagFilter = {
  readonly sort: BagSort;
  readonly place: BagPlace;
  readonly kind: Part['kind'] | 'all';
  /** Part of a label or of where it came from. */
  readonly text: string;
};

export const FIRST_FILTER: BagFilter = { sort: 'last entered', place: 'loose', kind: 'all', text: '' };

export type BagRow = {
  readonly part: Part;
  /** Measured standing on a ball; then its height is of both. */
  readonly together: Group | null;
  readonly uses: readonly PartUse[];
  /** What was read of it, whichever way. */
  readonly reading: LengthValue | undefined;
  readonly length: number | null;
};

/** Everything of every part, looked up once: a bag may hold thousands. */
export function allRows(job: Job): BagRow[] {
  const uses = usesOfAll(job);
  const groups = new Map<Id, Group>();
  for (const group of job.groups) {
    const pin = group.parts[1];
    if (group.parts.length === 2 && pin !== undefined && !groups.has(pin)) groups.set(pin, group);
  }
  return job.parts.map((part) => {
    const together = groups.get(part.id) ?? null;
    const own = part.kind === 'ball' ? part.diameter : part.kind === 'spring' ? part.solid : part.length;
    const reading = together?.height ?? own;
    return {
      part,
      together,
      uses: uses.get(part.id) ?? [],
      reading,
      length: reading === undefined ? null : lengthOf(reading, 0),
    };
  });
}

/** Copies of a part that are in no chamber. */
export function looseCopies({ part, uses }: BagRow): number {
  return Math.max(0, part.quantity - uses.length);
}

/** The rows to show, in order. */
export function shownRows(rows: readonly BagRow[], filter: BagFilter): BagRow[] {
  const text = filter.text.trim().toLowerCase();
  const shown = rows.filter(
    (row) =>
      (filter.kind === 'all' || row.part.kind === filter.kind) &&
      (filter.place === 'all' || (filter.place === 'loose') === isLoose(row)) &&
      (text === '' ||
        row.part.label.toLowerCase().includes(text) ||
        (row.part.from?.toLowerCase().includes(text) ?? false)),
  );
  switch (filter.sort) {
    case 'last entered':
      return shown.reverse();
    case 'label':
      return shown.sort((one, other) => labelOrder.compare(one.part.label, other.part.label));
    case 'length':
      return shown.sort((one, other) => (one.length ?? Infinity) - (other.length ?? Infinity) || 0);
  }
}

/** A part that is used up is where it is used; one that never was, or of which copies are left, is loose. */
export function isLoose(row: BagRow): boolean {
  return row.uses.length === 0 || looseCopies(row) > 0;
}

/** P2 comes before P10. */
const labelOrder = new Intl.Collator('en', { numeric: true });

/** Where it is, what it is and where it came from, in words for the row. */
export function rowWords(job: Job, row: BagRow): string {
  const { part, together, uses } = row;
  const ball = together === null ? undefined : job.parts.find(({ id }) => id === together.parts[0]);
  const words = [
    ...(uses.length === 0 ? [] : [`in ${uses.map((use) => sayUse(job, use)).join(', in ')}`]),
    ...(uses.length > 0 && looseCopies(row) > 0 ? [`${looseCopies(row)} left`] : []),
    ...(part.quantity === 0 ? ['none left'] : []),
    ...(ball === undefined ? [] : [`with ${ball.label} under it`]),
    ...(part.original ? ['original'] : []),
    ...(part.condition === undefined ? [] : [part.condition]),
    ...(part.from === undefined ? [] : [`from ${part.from}`]),
  ];
  return words.join(' · ');
}

/** The ends of a pin as seen. */
export function endsOf(part: Part): {
  readonly lower: ReturnType<typeof endName>;
  readonly upper: ReturnType<typeof endName>;
} {
  return { lower: endName(part.ends?.[0]), upper: endName(part.ends?.[1]) };
}
