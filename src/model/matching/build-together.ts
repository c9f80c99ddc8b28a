/**
 * Several cylinders built at the same time from one bag, each for a key that a person chose: one choice over all their
 * chambers, exact like that for one cylinder, each part used once.
 */
import { assert } from '../assert.ts';
import type { Job } from '../schema/job-schema.ts';
import { assign } from './assign.ts';
import type { Candidate } from './candidate-heights.ts';
import { type Score, scoreOf } from './levels.ts';
import { type Match, matchOf, type MatchSelection, measuringOf } from './match.ts';
import type { Row } from './option.ts';
import { fillingOf, pairToFill, rowsOf } from './pair-to-fill.ts';
import { layOutSite } from './site.ts';
import { takeStock } from './stock.ts';

export type Together = {
  /** For each pair, in the order given. */
  readonly matches: readonly Match[];
  /** Cylinders with every chamber filled. */
  readonly complete: number;
  readonly score: Score;
  readonly isProved: boolean;
  readonly bound: Score;
};

/** Builds these pairs at the same time. No cylinder twice; all must exist in the job. */
export function buildTogether(
  job: Job,
  selections: readonly MatchSelection[],
  mostFiled: number | null = null,
): Together {
  const cylinders = new Set(selections.map((each) => each.cylinder));
  assert(cylinders.size === selections.length, 'a cylinder can be built for one key at a time');
  const stock = takeStock(job, measuringOf(job));
  const pairs = selections.map((each) => pairToFill(layOutSite(job, each, stock), each.key));
  const places = pairs.reduce((sum, pair) => sum + pair.toFill.length, 0);
  const filling = fillingOf(
    job,
    pairs.map((pair) => pair.keyIn.site),
    places,
    mostFiled,
  );
  const rows = pairs.flatMap((pair): Row<Candidate>[] => rowsOf(pair, filling));
  const assignment = assign(rows, (part) => filling.copies[part] ?? 0);
  let from = 0;
  const matches = pairs.map((pair) => {
    const chosen = assignment.chosen.slice(from, from + pair.toFill.length);
    from += pair.toFill.length;
    return matchOf(pair, filling, { ...assignment, chosen, score: scoreOf(chosen) });
  });
  return {
    matches,
    complete: matches.filter((match) => match.filled === match.of).length,
    score: assignment.score,
    isProved: assignment.isProved,
    bound: assignment.bound,
  };
}
