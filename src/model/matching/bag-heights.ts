/**
 * The loose pins as heights of lower stacks, to be held against the ranges that the chambers want: a pin alone where the
 * cylinder takes no ball, else as measured standing on a ball, or on each kind of ball on hand. mm.
 */
import { known } from '../assert.ts';
import type { Job } from '../schema/job-schema.ts';
import type { Part } from '../schema/parts-schema.ts';
import { firstFrom } from './candidate-heights.ts';
import type { Stock } from './stock.ts';
import { usesOfAll } from './used-parts.ts';

export type BagHeights = {
  /** Ascending. A pin stands here once for each height it can give. */
  readonly heights: Float64Array;
  /** The pin of each height, in the same order. */
  readonly pins: readonly Part[];
  /** Copies that are in no chamber, in the same order. */
  readonly copies: Int32Array;
};

/** Heights closer than this are one and the same: far below what any caliper shows. mm. */
const SAME_HEIGHT_MM = 0.0005;

/** Lists the heights of the loose pins. */
export function bagHeights(job: Job, stock: Stock, takesBall: boolean): BagHeights {
  const uses = usesOfAll(job);
  const left = Int32Array.from(stock.parts, ({ id, quantity }) => quantity - (uses.get(id)?.length ?? 0));
  const given = new Map<number, number[]>();
  const found: { pin: number; height: number }[] = [];
  for (const { hasBall, lengths, added, pins } of stock.batches) {
    if (hasBall !== takesBall) continue;
    for (let i = 0; i < lengths.length; i++) {
      const pin = pins[i] ?? 0;
      if ((left[pin] ?? 0) < 1) continue;
      const height = (lengths[i] ?? 0) + added;
      const before = given.get(pin);
      if (before?.some((each) => Math.abs(each - height) < SAME_HEIGHT_MM) === true) continue;
      if (before === undefined) given.set(pin, [height]);
      else before.push(height);
      found.push({ pin, height });
    }
  }
  found.sort((one, other) => one.height - other.height || one.pin - other.pin);
  return {
    heights: Float64Array.from(found, ({ height }) => height),
    pins: found.map(({ pin }) => known(stock.parts[pin], 'a pin of the stock')),
    copies: Int32Array.from(found, ({ pin }) => left[pin] ?? 0),
  };
}

export type InRange = {
  /** Loose parts, copies counted. */
  readonly count: number;
  /** The pin that misses the range by least, and by how much: + too long. Null when some are inside, or there are none. */
  readonly nearest: { readonly pin: Part; readonly by: number } | null;
};

/** Says how many loose pins lie in a range, both ends counted; when none does, which comes nearest. */
export function inRange(bag: BagHeights, from: number, to: number): InRange {
  const start = firstFrom(bag.heights, from);
  let count = 0;
  let end = start;
  for (; end < bag.heights.length && (bag.heights[end] ?? 0) <= to; end++) count += bag.copies[end] ?? 0;
  if (end > start) return { count, nearest: null };
  const shorter = start > 0 ? from - (bag.heights[start - 1] ?? 0) : Infinity;
  const longer = start < bag.heights.length ? (bag.heights[start] ?? 0) - to : Infinity;
  if (shorter === Infinity && longer === Infinity) return { count, nearest: null };
  const isShorter = shorter <= longer;
  const pin = known(bag.pins[isShorter ? start - 1 : start], 'nearest pin');
  return { count, nearest: { pin, by: isShorter ? -shorter : longer } };
}
