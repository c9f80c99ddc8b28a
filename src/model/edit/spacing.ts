/** Lays chambers or cuts out evenly. What a person says about spacing is stated, not measured. Numbers in the job's unit. */
import { lengthOf } from '../measured/part-ends.ts';
import type { Job } from '../schema/job-schema.ts';
import type { Id, LengthValue } from '../schema/leaf.ts';
import { changeCylinder } from './edit-cylinder.ts';
import { changeKey } from './edit-key.ts';
import { assumedKeyEnd, evenPositions } from './usual-positions.ts';
import { assumedValue, statedValue } from './values.ts';

export type EvenSpacing = { readonly first: number; readonly spacing: number };

/**
 * Lays the chambers out evenly, from the plug's front face. Cuts whose places were only assumed stay under their chambers;
 * so does a tip that was assumed.
 */
export function spaceChambers(
  job: Job,
  { cylinder, key }: { readonly cylinder: Id; readonly key: Id | null },
  { first, spacing }: EvenSpacing,
): Job {
  const { unit } = job.settings;
  const spaced = changeCylinder(job, cylinder, (each) => {
    const places = evenPositions(each.chambers.length, first, spacing, unit);
    return { ...each, chambers: placed(each.chambers, places, (place) => statedValue(place, unit)) };
  });
  const before = job.keys.find((each) => each.id === key);
  const isFree = before?.cuts.every((cut) => cut.position.basis === 'assumed') === true;
  if (before === undefined || !isFree || before.stop.kind === 'tip') return spaced;
  return changeKey(spaced, before.id, (each) => {
    const places = evenPositions(each.cuts.length, first, spacing, unit);
    const cuts = placed(each.cuts, places, (place) => assumedValue([place, place, place], unit));
    const end = assumedKeyEnd(places, unit, null);
    return each.tip?.position?.basis === 'assumed'
      ? { ...each, cuts, tip: { ...each.tip, position: end.position } }
      : { ...each, cuts };
  });
}

/** Lays the cuts out evenly, from the stop. */
export function spaceCuts(job: Job, key: Id, { first, spacing }: EvenSpacing): Job {
  const { unit } = job.settings;
  return changeKey(job, key, (each) => {
    const places = evenPositions(each.cuts.length, first, spacing, unit);
    return { ...each, cuts: placed(each.cuts, places, (place) => statedValue(place, unit)) };
  });
}

/** How the places lie: the first, and the mean distance from one to the next, in the unit of a person. */
export function spacingOf(places: readonly LengthValue[], unit: 'in' | 'mm'): EvenSpacing | null {
  const numbers = places
    .map((place) => lengthOf(place, 0) / (unit === 'in' ? 25.4 : 1))
    .sort((a, b) => a - b);
  const [first] = numbers;
  const last = numbers[numbers.length - 1];
  if (first === undefined || last === undefined) return null;
  return { first, spacing: numbers.length < 2 ? 0 : (last - first) / (numbers.length - 1) };
}

/** Gives each item its place in the order the items lie; the list keeps its order. */
function placed<T extends { readonly id: Id; readonly position: LengthValue }>(
  list: readonly T[],
  places: readonly string[],
  valueAt: (place: string) => LengthValue,
): T[] {
  const order = [...list].sort((a, b) => lengthOf(a.position, 0) - lengthOf(b.position, 0));
  const placeOf = new Map(order.map((item, i) => [item.id, places[i] ?? '0']));
  return list.map((item) => ({ ...item, position: valueAt(placeOf.get(item.id) ?? '0') }));
}
