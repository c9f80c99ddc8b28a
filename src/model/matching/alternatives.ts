/**
 * What else could stand in a chamber, best first: not best for that chamber alone, but by what the whole cylinder comes to
 * when the others make do with what is left. Where another chamber has to give a part up, that is told.
 */
import type { Id } from '../schema/leaf.ts';
import { assign, type Assignment } from './assign.ts';
import type { Candidate } from './candidate-heights.ts';
import { copiesTaken } from './copies-taken.ts';
import { compareScores, type Score, scoreOf } from './levels.ts';
import type { IsLeft, Row } from './option.ts';
import { type Filling, type PairToFill, rowsOf } from './pair-to-fill.ts';
import { type Standing, standingOf } from './standing.ts';

export type Alternative = {
  readonly standing: Standing;
  readonly isChosen: boolean;
  /** Of the whole choice with this one in it. */
  readonly whole: Score;
  /** Other chambers that get something else then, or nothing. */
  readonly changes: readonly Id[];
};

/** So many are worth showing. */
const MOST_SHOWN = 12;

/** Lists what could stand in a chamber to fill. Empty for a locked one. `rows`: of all chambers to fill, others perhaps held. */
export function alternativesFor(
  pair: PairToFill,
  filling: Filling,
  assignment: Assignment<Candidate>,
  chamber: Id,
  most = MOST_SHOWN,
  rows: readonly Row<Candidate>[] = rowsOf(pair, filling),
): Alternative[] {
  const at = pair.toFill.findIndex(({ place }) => place.chamber === chamber);
  const row = rowsOf(pair, filling)[at];
  if (row === undefined) return [];
  const others = rows.filter((_, i) => i !== at);
  const isLeft = (part: number) => (filling.copies[part] ?? 0) > 0;
  const found = poolOf(row, most + rows.length, isLeft).map((candidate): Alternative => {
    const left = (part: number) => (filling.copies[part] ?? 0) - copiesTaken(candidate, part);
    const rest = assign(others, left).chosen;
    const chosen = [...rest.slice(0, at), candidate, ...rest.slice(at)];
    return {
      standing: standingOf(candidate, pair.keyIn.site.stock, filling.step),
      isChosen: isSame(candidate, assignment.chosen[at] ?? null),
      whole: scoreOf(chosen),
      changes: pair.toFill.flatMap(({ place }, i) =>
        i === at || isSame(chosen[i] ?? null, assignment.chosen[i] ?? null) ? [] : [place.chamber],
      ),
    };
  });
  // among equals the chosen one first: the list starts with what is shown in the chamber
  const order = (one: Alternative, other: Alternative) =>
    compareScores(one.whole, other.whole) ||
    Number(other.isChosen) - Number(one.isChosen) ||
    one.changes.length - other.changes.length;
  return found.sort(order).slice(0, most);
}

/** The roomiest and the closest, each once. */
function poolOf(row: Row<Candidate>, count: number, isLeft: IsLeft): Candidate[] {
  const pool: Candidate[] = [];
  for (const candidate of [...row.closest(count, isLeft, 0), ...row.roomiest(count, isLeft)]) {
    if (!pool.some((each) => isSame(each, candidate))) pool.push(candidate);
  }
  return pool;
}

function isSame(one: Candidate | null, other: Candidate | null): boolean {
  if (one === null || other === null) return one === other;
  return one.part === other.part && ballOf(one) === ballOf(other) && one.filed === other.filed;
}

function ballOf({ span, at }: Candidate): number {
  return span.batch.balls[at] ?? -1;
}
