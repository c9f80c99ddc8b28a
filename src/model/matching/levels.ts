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
  const ties: number[] = [];
  let filled = 0;
  let filed = 0;
  let smallestToSpare = Infinity;
  let squares = 0;
  let filedOff = 0;
  for (const option of chosen) {
    if (option === null) continue;
    filled += 1;
    if (option.filed > 0) filed += 1;
    smallestToSpare = Math.min(smallestToSpare, option.spare);
    squares += option.squares;
    filedOff += option.filed;
    for (let i = 0; i < option.ties.length; i++) ties[i] = (ties[i] ?? 0) + (option.ties[i] ?? 0);
  }
  return { filled, filed, smallestToSpare, squares, filedOff, ties };
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
  const roomiest = rows.map((row) => row.roomiest(count, isLeft));
  const roomy = tableOf(roomiest, copiesOf);
  const spare = largestSmallestToSpare(roomy);
  if (spare === null) return rows.map(() => null);
  const closest = rows.map((row) => row.closest(count, isLeft, spare));
  const isSame = closest.every((list, row) => list === roomiest[row]);
  const table = isSame ? roomy : tableOf(closest, copiesOf);
  const filter = { value: table.spare, atLeast: spare };
  const edges = leastCost(table, weighted(table.options, rows.length), filter);
  return edges.map((edge) => table.options[edge] ?? null);
}

type OptionTable<T extends Option> = EdgeTable & {
  readonly options: readonly T[];
  readonly spare: readonly number[];
};

/** Numbers the parts that occur, so that a large bag does not make large tables. */
function tableOf<T extends Option>(lists: readonly (readonly T[])[], copiesOf: CopiesOf): OptionTable<T> {
  const options: T[] = [];
  const start = [0];
  const spare: number[] = [];
  for (const list of lists) {
    for (const option of list) {
      options.push(option);
      spare.push(option.spare);
    }
    start.push(options.length);
  }
  const column: number[] = [];
  const copies: number[] = [];
  const numbers = new PartNumbers(options.length);
  for (const { part } of options) {
    const number = numbers.of(part);
    column.push(number);
    if (number === copies.length) copies.push(copiesOf(part));
  }
  return { rowCount: lists.length, start, column, copies, options, spare };
}

/** Numbers parts in the order they turn up. A table of its own, for speed: this is asked for often. */
class PartNumbers {
  private readonly mask: number;
  private readonly parts: number[];
  private readonly numbers: number[];
  private count = 0;

  constructor(most: number) {
    let places = 16;
    while (places < 2 * most) places *= 2;
    this.mask = places - 1;
    this.parts = new Array<number>(places).fill(0);
    // 0 marks an open place
    this.numbers = new Array<number>(places).fill(0);
  }

  of(part: number): number {
    let at = Math.imul(part, 0x9e3779b1) & this.mask;
    for (;;) {
      const number = this.numbers[at] ?? 0;
      if (number === 0) break;
      if (this.parts[at] === part) return number - 1;
      at = (at + 1) & this.mask;
    }
    this.parts[at] = part;
    this.count += 1;
    this.numbers[at] = this.count;
    return this.count - 1;
  }
}

/** The most that the tightest of as many places as possible can have to spare; null when none can be filled. */
function largestSmallestToSpare(table: OptionTable<Option>): number | null {
  const { options, spare } = table;
  for (const { filed } of options) if (filed > 0) return tightestWithFewFiled(table);
  return tightestOf(table, spare);
}

/** The same where filing comes in: only choices with as few filed as possible count, so each level is solved for that. */
function tightestWithFewFiled(table: OptionTable<Option>): number | null {
  const { options, spare: value } = table;
  const filing = options.map(({ filed }) => (filed > 0 ? 1 : 0));
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

/**
 * One whole number for the last levels (filed, squared deviation, filed off, ties): each weighs more than all the next ones
 * of all rows together. Should that outgrow what is added exactly (some hundred chambers at once, every tie-breaker in use),
 * the least weighty tie-breakers go.
 */
function weighted(options: readonly Option[], rowCount: number): number[] {
  let isFiled = 0;
  let mostSquares = 0;
  let mostFiled = 0;
  const mostTied: number[] = [];
  for (const { filed, squares, ties } of options) {
    if (filed > 0) isFiled = 1;
    if (filed > mostFiled) mostFiled = filed;
    if (squares > mostSquares) mostSquares = squares;
    for (let i = 0; i < ties.length; i++) mostTied[i] = Math.max(mostTied[i] ?? 0, ties[i] ?? 0);
  }
  const most = [isFiled, mostSquares, mostFiled, ...mostTied];
  while (largestPath(most, rowCount) > Number.MAX_SAFE_INTEGER && most.length > 3) most.pop();
  // each step up by more than the sum of a level over all rows
  const steps = most.map((largest) => largest * rowCount + 1);
  const [, perSquare = 1, perFiledOff = 1] = steps;
  const cost: number[] = [];
  for (const { filed, squares, ties } of options) {
    let sum = ((filed > 0 ? 1 : 0) * perSquare + squares) * perFiledOff + filed;
    for (let level = 3; level < steps.length; level++)
      sum = sum * (steps[level] ?? 1) + (ties[level - 3] ?? 0);
    cost.push(sum);
  }
  return cost;
}

/** More than any sum of costs along a path with a row left empty. */
function largestPath(most: readonly number[], rowCount: number): number {
  const one = most.reduce((sum, largest) => sum * (largest * rowCount + 1) + largest, 0);
  return (one + 1) * (rowCount + 1) * (rowCount + 1);
}
