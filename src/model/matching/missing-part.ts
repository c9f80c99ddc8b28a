/**
 * The single part that would complete a cylinder: for every chamber that could be the one left open, what to look for or to
 * make there. A chamber can be left open when the bag fills all others. Heights mm.
 */
import { assign, type Assignment } from './assign.ts';
import type { Candidate } from './candidate-heights.ts';
import { compareScores, type Score } from './levels.ts';
import type { ChamberPlace } from './fits.ts';
import type { Row } from './option.ts';
import type { Filling, PairToFill } from './pair-to-fill.ts';
import { type SureHeight, type WantedHeight, wantedHeight } from './wanted-height.ts';

export type MissingPart = WantedHeight & {
  /** What to look for; not worked out where only the best height is told. */
  readonly sure: SureHeight | null;
  /** Of the choice for the other chambers. */
  readonly rest: Score;
};

/**
 * Lists the parts of which any one would complete the pair, the one that leaves the best choice for the others first. Empty
 * when more than one is missing, or none.
 */
export function missingParts(
  pair: PairToFill,
  filling: Filling,
  rows: readonly Row<Candidate>[],
  { score }: Assignment<Candidate>,
  tellSure: (place: ChamberPlace) => SureHeight | null = () => null,
): MissingPart[] {
  if (score.filled !== rows.length - 1) return [];
  const found = pair.toFill.flatMap(({ place }, open): MissingPart[] => {
    const others = rows.filter((_, row) => row !== open);
    const rest = assign(others, (part) => filling.copies[part] ?? 0).score;
    if (rest.filled !== others.length) return [];
    const wanted = wantedHeight(pair.keyIn, place);
    return wanted === null ? [] : [{ ...wanted, sure: tellSure(place), rest }];
  });
  return found.sort((one, other) => compareScores(one.rest, other.rest));
}
