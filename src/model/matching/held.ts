/**
 * Choices a person made: their parts stay in their chambers, and the rest is chosen around them with what is left. Exact for
 * the rest, like every choice (see assign.ts).
 */
import type { Item } from '../schema/key-schema.ts';
import type { Id } from '../schema/leaf.ts';
import { assign, type Assignment } from './assign.ts';
import type { Candidate } from './candidate-heights.ts';
import { type Score, scoreOf } from './levels.ts';
import { listRow, type Row } from './option.ts';
import { type Filling, type PairToFill, rowsOf } from './pair-to-fill.ts';

export type Held = {
  readonly chamber: Id;
  /** Ball and pin, bottom to top. */
  readonly items: readonly Item[];
  readonly isFiled: boolean;
};

export type AroundHeld = {
  /** One for each chamber to fill; a held one offers what is held there, and nothing else. */
  readonly rows: readonly Row<Candidate>[];
  readonly assignment: Assignment<Candidate>;
};

/** Chooses around what is held. What can no longer stand where it is held is let go. */
export function assignAround(pair: PairToFill, filling: Filling, held: readonly Held[]): AroundHeld {
  const rows = rowsOf(pair, filling);
  const taken = new Map<number, number>();
  const left = (part: number) => (filling.copies[part] ?? 0) - (taken.get(part) ?? 0);
  const fixed = rows.map((row, at): Candidate | null => {
    const chamber = pair.toFill[at]?.place.chamber;
    const asked = held.find((each) => each.chamber === chamber);
    const found = asked === undefined ? null : candidateFor(pair, row, asked, left);
    if (found === null) return null;
    for (const part of [found.part, ...found.also]) taken.set(part, (taken.get(part) ?? 0) + 1);
    return found;
  });
  const free = rows.flatMap((row, at) => (fixed[at] === null ? [{ row, at }] : []));
  const rest = assign(
    free.map(({ row }) => row),
    left,
  );
  const chosen = [...fixed];
  for (const [i, { at }] of free.entries()) chosen[at] = rest.chosen[i] ?? null;
  const score = scoreOf(chosen);
  return {
    rows: rows.map((row, at) => {
      const one = fixed[at];
      return one == null ? row : listRow([one]);
    }),
    assignment: {
      chosen,
      score,
      isProved: rest.isProved,
      bound: rest.isProved ? score : together(scoreOf(fixed), rest.bound),
    },
  };
}

function candidateFor(
  { keyIn }: PairToFill,
  row: Row<Candidate>,
  { items, isFiled }: Held,
  left: (part: number) => number,
): Candidate | null {
  const { numbers, parts } = keyIn.site.stock;
  const wanted = items.map(({ part }) => numbers.get(part) ?? -1);
  // only the parts asked for count as left, so that one candidate of each kind is enough
  const candidates = row.roomiest(1, (part) => wanted.includes(part) && left(part) > 0);
  const found = candidates.find(({ span, at, filed }) => {
    const ball = span.batch.balls[at] ?? -1;
    const own = ball < 0 ? [span.batch.pins[at]] : [ball, span.batch.pins[at]];
    return (
      filed > 0 === isFiled && own.length === wanted.length && own.every((part, i) => part === wanted[i])
    );
  });
  return found === undefined || parts[found.part] === undefined ? null : found;
}

function together(one: Score, other: Score): Score {
  const ties = Array.from(
    { length: Math.max(one.ties.length, other.ties.length) },
    (_, i) => (one.ties[i] ?? 0) + (other.ties[i] ?? 0),
  );
  return {
    filled: one.filled + other.filled,
    filed: one.filed + other.filed,
    smallestToSpare: Math.min(one.smallestToSpare, other.smallestToSpare),
    squares: one.squares + other.squares,
    filedOff: one.filedOff + other.filedOff,
    ties,
  };
}
