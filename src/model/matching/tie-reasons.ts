/**
 * Why one of two parts was taken that are the same length for all a caliper can tell. Only said where that decided: the
 * other one is free, fits as well, stands as near to the best height, and would be filed as little.
 */
import type { Candidate } from './candidate-heights.ts';
import { copiesTaken } from './copies-taken.ts';
import type { Row } from './option.ts';
import type { Filling } from './pair-to-fill.ts';
import type { Stock } from './stock.ts';

/** So many equals are looked at: one is enough to say it. */
const EQUALS_LOOKED_AT = 12;

/** In the order of `tieBreaksOf`. */
const REASONS = ['it comes from this cylinder', 'it is in better condition', 'it is in this chamber already'];

/** Says what settled it for one place, as a sentence; null where nothing else was as good. */
export function tieReason(
  row: Row<Candidate>,
  chosen: readonly (Candidate | null)[],
  at: number,
  stock: Stock,
  { copies }: Filling,
): string | null {
  const own = chosen[at];
  if (own == null) return null;
  const leastSpare = Math.min(...chosen.flatMap((each) => (each === null ? [] : [each.spare])));
  const isFree = (part: number) =>
    (copies[part] ?? 0) -
      chosen.reduce((sum, each) => sum + (each === null ? 0 : copiesTaken(each, part)), 0) >
    0;
  const isLeft = (part: number) => own.also.includes(part) || isFree(part);
  const equals = row
    .closest(EQUALS_LOOKED_AT, isLeft, leastSpare)
    .filter(
      (each) =>
        each.part !== own.part &&
        each.spare >= leastSpare &&
        each.squares === own.squares &&
        each.filed === own.filed &&
        isLeft(each.part),
    );
  for (const other of equals) {
    const which = own.ties.findIndex((tie, i) => tie !== other.ties[i]);
    if (which < 0 || (own.ties[which] ?? 0) > (other.ties[which] ?? 0)) continue;
    const label = stock.parts[other.part]?.label ?? '';
    return `Taken before ${label}, as long for all a caliper can tell: ${REASONS[which] ?? ''}.`;
  }
  return null;
}
