/**
 * What could stand in one place to be filled, in the whole numbers that a choice is made by. A place ("row") is a chamber;
 * what stands there takes a part, and perhaps others that can run short (the ball under a pin, a master pin on it).
 *
 * To spare and deviation are whole steps of the shop's resolution: parts closer than that are one and the same length, and
 * the other things settle which is taken.
 */
export type Option = {
  /** The part it takes, by its place in the list of copies. */
  readonly part: number;
  /** Other parts it takes, of those that can run short. */
  readonly also: readonly number[];
  /** Steps to file off; 0: as it is. */
  readonly filed: number;
  /** Steps inside the nearer end of the window; at least 0. */
  readonly spare: number;
  /** Deviation from the best height in steps, squared; the sum of both where two splits count. */
  readonly squares: number;
  /** What settles a tie, the weightier first; each smaller is better and at least 0. */
  readonly ties: readonly number[];
};

/**
 * The options of one row, as far as they can matter. Both lists hold at least the `count` best with different parts, for
 * each set of other parts and for filed and unfiled ones apart (see `assign` for why no more are needed). More do no harm,
 * not even such with too little to spare, or used up.
 */
export type Row<T extends Option> = {
  /** The most other parts an option takes. */
  readonly others: number;
  /** Can this part be the main one of an option? Saying so of too many only costs time. */
  readonly mayBeMain: (part: number) => boolean;
  /** Those with the most to spare. */
  readonly roomiest: (count: number, isLeft: IsLeft) => readonly T[];
  /** Those nearest to the best height that have at least so much to spare. */
  readonly closest: (count: number, isLeft: IsLeft, leastSpare: number) => readonly T[];
};

/** Is there a copy of this part at all? Options with a part that is used up do not count among the best. */
export type IsLeft = (part: number) => boolean;

/** Orders options by how much they have to spare, most first. */
export function bySpare(one: Option, other: Option): number {
  return other.spare - one.spare;
}

/** Orders options by how well they stand: deviation, then least metal filed off, then what settles ties. */
export function byDeviation(one: Option, other: Option): number {
  if (one.squares !== other.squares) return one.squares - other.squares;
  if (one.filed !== other.filed) return one.filed - other.filed;
  for (let i = 0; i < one.ties.length; i++) {
    const difference = (one.ties[i] ?? 0) - (other.ties[i] ?? 0);
    if (difference !== 0) return difference;
  }
  return 0;
}

/** A list up to so many times as long as needed is sooner used as it is than sorted. */
const SHORT = 4;

/** A row whose options are all listed. Of equal options the one listed first goes first. */
export function listRow<T extends Option>(options: readonly T[]): Row<T> {
  const others = options.reduce((most, { also }) => Math.max(most, also.length), 0);
  const isShort = (count: number) => options.length <= SHORT * count;
  return {
    others,
    mayBeMain: (wanted) => options.some(({ part }) => part === wanted),
    roomiest: (count, isLeft) =>
      isShort(count) ? options : bestOfEachKind(options, count, isLeft, bySpare, 0),
    closest: (count, isLeft, leastSpare) =>
      isShort(count) ? options : bestOfEachKind(options, count, isLeft, byDeviation, leastSpare),
  };
}

function bestOfEachKind<T extends Option>(
  options: readonly T[],
  count: number,
  isLeft: IsLeft,
  order: (one: T, other: T) => number,
  leastSpare: number,
): readonly T[] {
  let first: Best<T> | null = null;
  let others: Map<string, Best<T>> | null = null;
  for (const option of options) {
    if (option.spare < leastSpare || !isLeft(option.part)) continue;
    // most options take one part and are not filed: no name is needed for that kind
    if (option.also.length === 0 && option.filed === 0) {
      first ??= new Best(count, order);
      first.offer(option);
      continue;
    }
    if (!option.also.every(isLeft)) continue;
    others ??= new Map();
    const kind = kindOf(option);
    const best = others.get(kind) ?? new Best(count, order);
    others.set(kind, best);
    best.offer(option);
  }
  const lists = others === null ? [] : [...others.values()].map((best) => best.list);
  return first === null ? lists.flat() : lists.length === 0 ? first.list : [first.list, ...lists].flat();
}

/** Options of the same kind take the same other parts, and are filed or not. */
export function kindOf(option: Option): string {
  return `${option.filed > 0 ? 'filed ' : ''}${option.also.join(' ')}`;
}

/** Keeps the best so many options with different parts, best first; what came first wins a tie. */
export class Best<T extends Option> {
  readonly list: T[] = [];
  private readonly count: number;
  private readonly order: (one: T, other: T) => number;

  constructor(count: number, order: (one: T, other: T) => number) {
    this.count = count;
    this.order = order;
  }

  /** The last of a full list. */
  last(): T | null {
    return this.list.length < this.count ? null : (this.list[this.list.length - 1] ?? null);
  }

  offer(option: T): void {
    const { list, order } = this;
    const last = list[list.length - 1];
    if (last !== undefined && list.length >= this.count && order(last, option) <= 0) return;
    let at = this.makeRoom(option);
    if (at < 0) return;
    for (; at > 0; at--) {
      const before = list[at - 1];
      if (before === undefined || order(before, option) <= 0) break;
      list[at] = before;
    }
    list[at] = option;
  }

  /** The place at the end that comes free: of a worse option of the same part, or of the last one. -1: none does. */
  private makeRoom(option: T): number {
    const { list } = this;
    for (let i = 0; i < list.length; i++) {
      const same = list[i];
      if (same?.part !== option.part) continue;
      if (this.order(same, option) <= 0) return -1;
      list.copyWithin(i, i + 1);
      return list.length - 1;
    }
    return list.length < this.count ? list.length : list.length - 1;
  }
}
