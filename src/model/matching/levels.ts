/**
 * The levels a choice of parts is made by, one after the other, without looking at parts that two places share besides
 * their main one (see assign.ts for those):
 *
 *   1  as many places filled as can be          3  the largest smallest to spare
 *   2  as few parts filed as that allows        4  the least sum of squared deviations, then least filed off, then ties
 */
import { type EdgeTable, leastCost } from './least-cost.ts';
import type { Option, Row } from './option.ts';
import { tightestOf } from './tightest.ts';

/** How good a choice is. Compared in this order; see `compareScores`. */
export type Score = {
  readonly filled: number;
  /** Parts that must be filed. */
  readonly filed: number;
  /** Steps; Infinity when nothing is filled. */
  readonly smallestToSpare: number;
  /** Sum of squared deviations, in steps. */
  readonly squares: number;
  /** Steps filed off in all. */
  readonly filedOff: number;
  /** Sums of what settles ties. */
  readonly ties: readonly number[];
};

/** Negative when the first is the better one. */
export function compareScores(one: Score, other: Score): number {
  if (one.filled !== other.filled) return other.filled - one.filled;
  if (one.filed !== other.filed) return one.filed - other.filed;
  // Infinity less Infinity is no number
  if (one.smallestToSpare !== other.smallestToSpare) return other.smallestToSpare - one.smallestToSpare;
  if (one.squares !== other.squares) return one.squares - other.squares;
  if (one.filedOff !== other.filedOff) return one.filedOff - other.filedOff;
  for (let i = 0; i < Math.max(one.ties.length, other.ties.length); i++) {
    const difference = (one.ties[i] ?? 0) - (other.ties[i] ?? 0);
    if (difference !== 0) return difference;
  }
  return 0;
}

export function scoreOf(chosen: readonly (Option | null)[]): Score {
  const taken = chosen.filter((option) => option !== null);
  const ties: number[] = [];
  for (const option of taken) option.ties.forEach((tie, i) => (ties[i] = (ties[i] ?? 0) + tie));
  return {
    filled: taken.length,
    filed: taken.filter((option) => option.filed > 0).length,
    smallestToSpare: taken.reduce((least, option) => Math.min(least, option.spare), Infinity),
    squares: taken.reduce((sum, option) => sum + option.deviation ** 2, 0),
    filedOff: taken.reduce((sum, option) => sum + option.filed, 0),
    ties,
  };
}

/** How many parts of each kind there are, by the number options name them with. */
export type CopiesOf = (part: number) => number;

/** Chooses for every row by all levels. Exact as far as each option's main part goes. */
export function chooseByLevels<T extends Option>(
  rows: readonly Row<T>[],
  copiesOf: CopiesOf,
  count: number,
): (T | null)[] {
  const isLeft = (part: number) => copiesOf(part) > 0;
  const roomy = tableOf(
    rows.map((row) => row.roomiest(count, isLeft)),
    copiesOf,
  );
  const spare = largestSmallestToSpare(roomy);
  if (spare === null) return rows.map(() => null);
  const close = tableOf(
    rows.map((row) => row.closest(count, isLeft, spare)),
    copiesOf,
  );
  const edges = leastCost(close, weighted(close.options, rows.length), null);
  return Array.from(edges, (edge) => close.options[edge] ?? null);
}

type OptionTable<T extends Option> = EdgeTable & { readonly options: readonly T[] };

/** Numbers the parts that occur, so that a large bag does not make large tables. */
function tableOf<T extends Option>(lists: readonly (readonly T[])[], copiesOf: CopiesOf): OptionTable<T> {
  const options: T[] = [];
  const start = new Int32Array(lists.length + 1);
  for (let row = 0; row < lists.length; row++) {
    for (const option of lists[row] ?? []) options.push(option);
    start[row + 1] = options.length;
  }
  const column = new Int32Array(options.length);
  const numbers = new Map<number, number>();
  const copies: number[] = [];
  for (let edge = 0; edge < options.length; edge++) {
    const part = options[edge]?.part ?? 0;
    let number = numbers.get(part);
    if (number === undefined) {
      number = copies.length;
      numbers.set(part, number);
      copies.push(copiesOf(part));
    }
    column[edge] = number;
  }
  return { rowCount: lists.length, start, column, copies, options };
}

/** The most that the tightest of as many places as possible can have to spare; null when none can be filled. */
function largestSmallestToSpare(table: OptionTable<Option>): number | null {
  const { options } = table;
  const value = new Float64Array(options.length);
  const filing = new Float64Array(options.length);
  let isFiled = false;
  for (let edge = 0; edge < options.length; edge++) {
    const option = options[edge];
    if (option === undefined) continue;
    value[edge] = option.spare;
    if (option.filed === 0) continue;
    filing[edge] = 1;
    isFiled = true;
  }
  return isFiled ? tightestWithFewFiled(table, value, filing) : tightestOf(table, value);
}

/** The same where filing comes in: only choices with as few filed as possible count, so each level is solved for that. */
function tightestWithFewFiled(table: EdgeTable, value: Float64Array, filing: Float64Array): number | null {
  const reach = (atLeast: number) => {
    let filled = 0;
    let filed = 0;
    for (const edge of leastCost(table, filing, { value, atLeast })) {
      if (edge < 0) continue;
      filled += 1;
      filed += filing[edge] ?? 0;
    }
    return { filled, filed };
  };
  const wanted = reach(0);
  if (wanted.filled === 0) return null;
  const levels = [...new Set(value)].sort((one, other) => one - other);
  // the lowest level always reaches it; search for the last that does
  let good = 0;
  let bad = levels.length;
  while (bad - good > 1) {
    const middle = (good + bad) >> 1;
    const { filled, filed } = reach(levels[middle] ?? 0);
    if (filled === wanted.filled && filed === wanted.filed) good = middle;
    else bad = middle;
  }
  return levels[good] ?? null;
}

/** The places of the levels that settle the last choice, weightiest first: filed, deviation squared, filed off, ties. */
const FIXED_LEVELS = 3;

function levelOf(option: Option, which: number): number {
  if (which === 0) return option.filed > 0 ? 1 : 0;
  if (which === 1) return option.deviation * option.deviation;
  return which === 2 ? option.filed : (option.ties[which - FIXED_LEVELS] ?? 0);
}

/**
 * One whole number for the last levels: each weighs more than all the next ones of all rows together. Should that outgrow
 * what is added exactly (some hundred chambers at once, every tie-breaker in use), the least weighty tie-breakers go.
 */
function weighted(options: readonly Option[], rowCount: number): Float64Array {
  const most: number[] = [0, 0, 0];
  for (const option of options) {
    for (let which = 0; which < FIXED_LEVELS + option.ties.length; which++) {
      most[which] = Math.max(most[which] ?? 0, levelOf(option, which));
    }
  }
  while (largestPath(most, rowCount) > Number.MAX_SAFE_INTEGER && most.length > 2) most.pop();
  const cost = new Float64Array(options.length);
  for (let edge = 0; edge < options.length; edge++) {
    const option = options[edge];
    let sum = 0;
    for (let which = 0; which < most.length && option !== undefined; which++) {
      const largest = most[which] ?? 0;
      if (largest > 0) sum = sum * (largest * rowCount + 1) + levelOf(option, which);
    }
    cost[edge] = sum;
  }
  return cost;
}

/** More than any sum of costs along a path with a row left empty. */
function largestPath(most: readonly number[], rowCount: number): number {
  const one = most.reduce((sum, largest) => sum * (largest * rowCount + 1) + largest, 0);
  return (one + 1) * (rowCount + 1) * (rowCount + 1);
}
