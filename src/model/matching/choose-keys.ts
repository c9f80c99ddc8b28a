/**
 * Which key for which cylinder, when several cylinders are built at the same time from one bag and their keys are free to
 * choose. The levels are those of `assign`, over all chambers together, without what settles ties.
 *
 * Cases fix the key of some cylinders. What a case can reach at most is the worse of two bounds that are both sure:
 *   shared   one choice over all chambers, parts used once, but every chamber of an open cylinder may take any of the keys
 *   alone    every cylinder by itself with the whole bag, open ones for their best key
 * The most promising case is split first, by the keys of its next cylinder, until none promises more than the best choice
 * found. That is exact, however long it takes. Up to six cylinders it is left to run; above that it stops after so many
 * cases and says what no choice can beat.
 */
import type { Job } from '../schema/job-schema.ts';
import type { Id } from '../schema/leaf.ts';
import { assign } from './assign.ts';
import type { Candidate } from './candidate-heights.ts';
import { compareScores, type Score } from './levels.ts';
import type { ManyAsk } from './match-many.ts';
import { measuringOf } from './match.ts';
import type { Row } from './option.ts';
import { fillingOf, pairToFill, rowsOf } from './pair-to-fill.ts';
import { type CylinderWithPlan, layOutSite } from './site.ts';
import { takeStock } from './stock.ts';

export type KeyChoiceAsk = ManyAsk & {
  /** A key opens at most one of the cylinders. By default one key may open several. */
  readonly eachKeyOnce?: boolean;
  /** Cases looked at before it stops, when there are more than six cylinders. */
  readonly mostCases?: number;
};

export type KeyChoice = {
  /** The key of each cylinder; null only when there are not enough keys. */
  readonly keys: readonly (CylinderWithPlan & { readonly key: Id | null })[];
  readonly score: Score;
  readonly isProved: boolean;
  readonly bound: Score;
};

export type KeyChoiceProgress = { readonly cases: number; readonly best: KeyChoice };

/** So many cylinders are solved to the end. */
export const EXACT_UP_TO = 6;
const MOST_CASES = 300;

/** Chooses keys; yields the best so far and the bound after every case. */
export function* chooseKeys(job: Job, ask: KeyChoiceAsk): Generator<KeyChoiceProgress, KeyChoice, void> {
  const { cylinders, keys, eachKeyOnce = false, mostCases = MOST_CASES } = ask;
  const search = new KeySearch(job, ask);
  const isExact = cylinders.length <= EXACT_UP_TO;
  const result = (best: Found, bound: Score): KeyChoice => {
    const isProved = compareScores(best.score, bound) <= 0;
    const chosen = cylinders.map((each, i) => ({ ...each, key: keys[best.picks[i] ?? -1] ?? null }));
    return { keys: chosen, score: best.score, isProved, bound: isProved ? best.score : bound };
  };
  const root: KeyCase = { picks: [], bound: search.boundOf([]) };
  let best = search.completed(root.picks, eachKeyOnce);
  // what a finished case might still reach, where its own choice could not be proved
  let unproved = best.bound;
  const open: KeyCase[] = [root];
  let cases = 0;
  for (;;) {
    open.sort((one, other) => compareScores(other.bound, one.bound));
    const next = open.at(-1);
    if (next === undefined || compareScores(best.score, next.bound) <= 0)
      return result(best, better(best.score, unproved));
    if (!isExact && cases >= mostCases) return result(best, better(next.bound, unproved));
    open.pop();
    for (const picks of search.split(next.picks, eachKeyOnce)) {
      const found: KeyCase = { picks, bound: search.boundOf(picks) };
      cases += 1;
      if (compareScores(best.score, found.bound) > 0) {
        const completed = search.completed(picks, eachKeyOnce);
        if (!completed.isProved) unproved = better(unproved, completed.bound);
        if (compareScores(completed.score, best.score) < 0) best = completed;
        if (picks.length < cylinders.length) open.push(found);
      }
      yield { cases, best: result(best, next.bound) };
    }
  }
}

/** Picks: for the first so many cylinders, the place of their key in the list. -1: none. */
type Picks = readonly number[];
type KeyCase = { readonly picks: Picks; readonly bound: Score };
type Found = KeyCase & { readonly score: Score; readonly isProved: boolean };

class KeySearch {
  /** By cylinder and key. */
  private readonly rows: readonly (readonly (readonly Row<Candidate>[])[])[];
  private readonly alone: readonly (readonly Score[])[];
  private readonly open: readonly (readonly Row<Candidate>[])[];
  private readonly copiesOf: (part: number) => number;
  private readonly capped = new Map<string, number>();

  constructor(job: Job, { cylinders, keys, mostFiled = null }: KeyChoiceAsk) {
    const stock = takeStock(job, measuringOf(job));
    const sites = cylinders.map((each) => layOutSite(job, each, stock));
    const places = sites.reduce(
      (sum, site) => sum + site.places.filter((place) => !place.isLocked).length,
      0,
    );
    const filling = fillingOf(job, sites, places, mostFiled);
    this.copiesOf = (part) => filling.copies[part] ?? 0;
    this.rows = sites.map((site) =>
      keys.map((key) => rowsOf(pairToFill(site, key), filling).map((row) => remembered(withoutTies(row)))),
    );
    this.alone = this.rows.map((ofKeys) => ofKeys.map((rows) => assign(rows, this.copiesOf).score));
    this.open = this.rows.map((ofKeys) => unionOf(ofKeys));
  }

  boundOf(picks: Picks): Score {
    const rows = this.rows.flatMap((ofKeys, i) =>
      i < picks.length ? (ofKeys[picks[i] ?? -1] ?? []) : (this.open[i] ?? []),
    );
    const shared = comparable(assign(rows, this.copiesOf).bound);
    const alone = this.aloneBound(picks);
    return compareScores(shared, alone) >= 0 ? shared : alone;
  }

  /** Every open cylinder gets the key that is best for it alone, then all are filled together. */
  completed(picks: Picks, eachKeyOnce: boolean): Found {
    const all = [...picks];
    for (const scores of this.alone.slice(picks.length)) {
      const inOrder = [...scores.keys()].sort((one, other) => compareAt(scores, one, other));
      all.push(inOrder.find((key) => !eachKeyOnce || !all.includes(key)) ?? -1);
    }
    const rows = this.rows.flatMap((ofKeys, i) => ofKeys[all[i] ?? -1] ?? []);
    const { score, bound, isProved } = assign(rows, this.copiesOf);
    return { picks: all, score: comparable(score), bound: comparable(bound), isProved };
  }

  split(picks: Picks, eachKeyOnce: boolean): Picks[] {
    const scores = this.alone[picks.length] ?? [];
    const keys = [...scores.keys()].filter((key) => !eachKeyOnce || !picks.includes(key));
    if (keys.length === 0) return [[...picks, -1]];
    const inOrder = keys.sort((one, other) => compareAt(scores, one, other));
    // with each key once, going without one may leave it to a cylinder that needs it more
    return [...inOrder, ...(eachKeyOnce ? [-1] : [])].map((key) => [...picks, key]);
  }

  private aloneBound(picks: Picks): Score {
    const allowed = this.alone.map((scores, i): readonly (readonly [number, Score])[] => {
      const all = [...scores.entries()];
      return i < picks.length ? all.filter(([key]) => key === picks[i]) : all;
    });
    let filled = 0;
    let filed = 0;
    let smallestToSpare = Infinity;
    const kept = allowed.map((list) => {
      const most = Math.max(0, ...list.map(([, score]) => score.filled));
      const fullest = list.filter(([, score]) => score.filled === most);
      const fewest = Math.min(...fullest.map(([, score]) => score.filed), Infinity);
      const best = fullest.filter(([, score]) => score.filed === fewest);
      filled += most;
      filed += best.length === 0 ? 0 : fewest;
      if (best.length > 0) {
        const roomiest = Math.max(...best.map(([, score]) => score.smallestToSpare));
        smallestToSpare = Math.min(smallestToSpare, roomiest);
      }
      return best;
    });
    let squares = 0;
    for (const [i, list] of kept.entries()) {
      const able = list.filter(([, score]) => score.smallestToSpare >= smallestToSpare);
      if (able.length > 0) {
        squares += Math.min(...able.map(([key]) => this.squaresAt(i, key, smallestToSpare)));
      }
    }
    return { filled, filed, smallestToSpare, squares, filedOff: 0, ties: [] };
  }

  /** Least squares of one cylinder when no more than this is asked to be spare. */
  private squaresAt(cylinder: number, key: number, spare: number): number {
    const name = `${cylinder} ${key} ${spare}`;
    const before = this.capped.get(name);
    if (before !== undefined) return before;
    const rows = (this.rows[cylinder]?.[key] ?? []).map((row) => cappedAt(row, spare));
    const { squares } = assign(rows, this.copiesOf).score;
    this.capped.set(name, squares);
    return squares;
  }
}

function compareAt(scores: readonly Score[], one: number, other: number): number {
  const [first, second] = [scores[one], scores[other]];
  return first === undefined || second === undefined ? 0 : compareScores(first, second) || one - other;
}

/** Keys are chosen by the levels up to squares. */
function comparable(score: Score): Score {
  return { ...score, filedOff: 0, ties: [] };
}

function better(one: Score, other: Score): Score {
  return compareScores(one, other) <= 0 ? one : other;
}

function withoutTies(row: Row<Candidate>): Row<Candidate> {
  const plain = (list: readonly Candidate[]) => list.map((each) => ({ ...each, ties: NONE }));
  return {
    ...row,
    roomiest: (count, isLeft) => plain(row.roomiest(count, isLeft)),
    closest: (count, isLeft, leastSpare) => plain(row.closest(count, isLeft, leastSpare)),
  };
}

const NONE: readonly number[] = [];

function cappedAt(row: Row<Candidate>, spare: number): Row<Candidate> {
  const cap = (list: readonly Candidate[]) =>
    list.map((each) => ({ ...each, spare: Math.min(each.spare, spare) }));
  return {
    ...row,
    roomiest: (count, isLeft) => cap(row.roomiest(count, isLeft)),
    closest: (count, isLeft, leastSpare) => cap(row.closest(count, isLeft, leastSpare)),
  };
}

/** The same lists are asked for again and again, always of the same bag. */
function remembered(row: Row<Candidate>): Row<Candidate> {
  const lists = new Map<string, readonly Candidate[]>();
  const recall = (name: string, make: () => readonly Candidate[]): readonly Candidate[] => {
    const before = lists.get(name);
    if (before !== undefined) return before;
    const list = make();
    lists.set(name, list);
    return list;
  };
  return {
    ...row,
    roomiest: (count, isLeft) => recall(`${count}`, () => row.roomiest(count, isLeft)),
    closest: (count, isLeft, leastSpare) =>
      recall(`${count} ${leastSpare}`, () => row.closest(count, isLeft, leastSpare)),
  };
}

/** The rows of a cylinder whose key is open: each chamber may take what any of the keys lets it take. */
function unionOf(ofKeys: readonly (readonly Row<Candidate>[])[]): Row<Candidate>[] {
  return (ofKeys[0] ?? []).map((first, place): Row<Candidate> => {
    const same = ofKeys.flatMap((rows) => rows.slice(place, place + 1));
    return {
      others: Math.max(...same.map((row) => row.others)),
      mayBeMain: first.mayBeMain,
      roomiest: (count, isLeft) => same.flatMap((row) => row.roomiest(count, isLeft)),
      closest: (count, isLeft, leastSpare) => same.flatMap((row) => row.closest(count, isLeft, leastSpare)),
    };
  });
}
