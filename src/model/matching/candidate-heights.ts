/**
 * What could stand in each chamber: for a key in a cylinder and the batches of the bag, the offset of every lower stack that
 * is of use, how much it has to spare and how far it is from the best height, in whole steps. Only the few around the height
 * a chamber needs are ever looked at. Offsets + high, - low; mm.
 *
 *      level + lowest        level + best          level + highest
 *   --------|---------------------|---------------------|--------------> height of a lower stack
 *           |<- to spare ->x      |                     |   could be filed:
 *           |              |<---->| deviation           |   shorten to the best height
 *
 * The best height stands level, or as high as its window goes where that is lower. A pin too long may be filed at its crown
 * when that is asked for: a loose one that is not an original, by no more than was said, down to the best height and keeping
 * the shape of its end. Only the pin; the plug is never filed.
 */
import type { KeyInSite } from './needed-height.ts';
import { Best, byDeviation, bySpare, type IsLeft, kindOf, type Option, type Row } from './option.ts';
import { leastMargin, stepsApart, stepsToSpare, stepsToTakeOff } from './resolution.ts';
import type { ChamberPlace, Fit } from './fits.ts';
import type { Batch, Stock } from './stock.ts';
import type { TieBreaks } from './tie-breaks.ts';

/** One lower stack in one chamber; `standing.ts` tells it at length. */
export type Candidate = Option & {
  readonly span: Span;
  /** Its place in the batch. */
  readonly at: number;
};

/** One batch in one chamber. */
export type Span = {
  readonly batch: Batch;
  readonly fit: Fit;
  /** Height that stands level. */
  readonly level: number;
};

export type CandidateRules = {
  readonly step: number;
  /** The most that may be filed off a loose pin. Null: nothing is filed. */
  readonly mostFiled: number | null;
  /** Copies that are left of each part. */
  readonly copies: Int32Array;
  /** Places filled at the same time: a ball of which there are so many cannot run short. */
  readonly placeCount: number;
  readonly tieBreaks: TieBreaks;
};

/** Finds the batches that can turn in a chamber at some height. */
export function spansOf({ site, levelOf }: KeyInSite, place: ChamberPlace): Span[] {
  return site.stock.batches.flatMap((batch): Span[] => {
    if (batch.hasBall !== site.takesBall) return [];
    const fit = site.fitOf(place, batch);
    if (fit === null || fit.barred !== null) return [];
    const level = levelOf(place, fit);
    return level === null ? [] : [{ batch, fit, level }];
  });
}

/** The row of one chamber. */
export function chamberRow(
  spans: readonly Span[],
  stock: Stock,
  place: ChamberPlace,
  rules: CandidateRules,
): Row<Candidate> {
  const isShort = (ball: number) => (rules.copies[ball] ?? 0) < rules.placeCount;
  const search = (count: number, isLeft: IsLeft, what: 'spare' | 'deviation', leastSpare: number) =>
    new Search({ stock, place, rules, count, isLeft, what, leastSpare }).among(spans);
  return {
    others: spans.some(({ batch }) => batch.ballKinds.some(isShort)) ? 1 : 0,
    mayBeMain: (part) => stock.parts[part]?.kind === 'pin',
    roomiest: (count, isLeft) => search(count, isLeft, 'spare', 0),
    closest: (count, isLeft, leastSpare) => search(count, isLeft, 'deviation', leastSpare),
  };
}

type SearchInput = {
  readonly stock: Stock;
  readonly place: ChamberPlace;
  readonly rules: CandidateRules;
  readonly count: number;
  readonly isLeft: IsLeft;
  /** The best by to spare, or by deviation among those with so much to spare. */
  readonly what: 'spare' | 'deviation';
  readonly leastSpare: number;
};

/** One look through the batches for the best candidates of each kind. */
class Search {
  private readonly input: SearchInput;
  private readonly kinds = new Map<string, Best<Candidate>>();

  constructor(input: SearchInput) {
    this.input = input;
  }

  among(spans: readonly Span[]): Candidate[] {
    for (const span of spans) {
      this.goThrough(span);
      if (this.input.rules.mostFiled !== null) this.goThroughTooLong(span, this.input.rules.mostFiled);
    }
    return [...this.kinds.values()].flatMap((best) => best.list);
  }

  /** Goes up and down from the best place, each way until there is too little to spare or nothing to gain. */
  private goThrough(span: Span): void {
    const { batch, level } = span;
    const kind = this.kindOfAll(batch);
    const start = firstFrom(batch.lengths, level + this.startAt(span.fit) - batch.added);
    for (let i = start; i < batch.lengths.length; i++) if (!this.tries(span, i, kind)) break;
    for (let i = start - 1; i >= 0; i--) if (!this.tries(span, i, kind)) break;
  }

  /** The middle of the window has most to spare; the best height, or as near as there is enough to spare, deviates least. */
  private startAt(fit: Fit): number {
    const { what, leastSpare, rules } = this.input;
    if (what === 'spare') return (fit.lowest + fit.highest) / 2;
    const room = leastMargin(leastSpare, rules.step);
    return Math.max(fit.lowest + room, Math.min(bestOffset(fit), fit.highest - room));
  }

  /** False when neither this one nor any beyond it is of use. */
  private tries(span: Span, i: number, kind: string | null): boolean {
    const { batch, fit } = span;
    const { what, leastSpare, rules } = this.input;
    const offset = offsetOf(span, i);
    const spare = stepsToSpare(marginAt(offset, fit), rules.step);
    if (spare < leastSpare) return false;
    const last = kind === null ? null : this.kinds.get(kind)?.last();
    if (last !== null && last !== undefined) {
      if (what === 'spare' && spare <= last.spare) return false;
      // equally near ones still have to be looked at: other things settle between them
      if (what === 'deviation' && stepsApart(offset - bestOffset(fit), rules.step) ** 2 > last.squares) {
        return false;
      }
    }
    if (this.isLeft(batch, i)) this.offer(this.make(span, i, 0), kind);
    return true;
  }

  private goThroughTooLong(span: Span, mostFiled: number): void {
    const { rules, stock, leastSpare } = this.input;
    const { batch, fit, level } = span;
    const most = Math.floor(mostFiled / rules.step);
    const longest = level + fit.highest + most * rules.step - batch.added;
    const start = firstFrom(batch.lengths, level + fit.highest - batch.added);
    for (let i = start; i < batch.lengths.length; i++) {
      const length = batch.lengths[i] ?? 0;
      if (length > longest + rules.step) break;
      const isLoose = stock.parts[batch.pins[i] ?? -1]?.original === false;
      if (!isLoose || !this.isLeft(batch, i)) continue;
      const offset = offsetOf(span, i);
      if (stepsToSpare(marginAt(offset, fit), rules.step) >= 0) continue;
      const steps = Math.min(most, stepsToTakeOff(offset - bestOffset(fit), rules.step));
      if (steps * rules.step >= length) continue;
      const filed = this.make(span, i, steps);
      if (filed.spare >= leastSpare) this.offer(filed, null);
    }
  }

  private offer(candidate: Candidate, kindOfAll: string | null): void {
    const kind = kindOfAll ?? kindOf(candidate);
    const best =
      this.kinds.get(kind) ??
      new Best<Candidate>(this.input.count, this.input.what === 'spare' ? bySpare : byDeviation);
    this.kinds.set(kind, best);
    best.offer(candidate);
  }

  /** The kind of all of a batch, unfiled; null when balls that can run short differ. */
  private kindOfAll({ ballKinds }: Batch): string | null {
    let short = '';
    for (const ball of ballKinds) if (this.isShort(ball)) short = `${ball}`;
    return short === '' || ballKinds.length === 1 ? short : null;
  }

  private isShort(ball: number): boolean {
    return (this.input.rules.copies[ball] ?? 0) < this.input.rules.placeCount;
  }

  private isLeft({ pins, balls }: Batch, i: number): boolean {
    const ball = balls[i] ?? -1;
    return this.input.isLeft(pins[i] ?? 0) && (ball < 0 || this.input.isLeft(ball));
  }

  private make(span: Span, i: number, filed: number): Candidate {
    const { place, rules } = this.input;
    const { batch, fit } = span;
    const pin = batch.pins[i] ?? 0;
    const ball = batch.balls[i] ?? -1;
    const offset = offsetOf(span, i) - filed * rules.step;
    return {
      part: pin,
      also: ball >= 0 && this.isShort(ball) ? [ball] : NONE,
      filed,
      spare: stepsToSpare(marginAt(offset, fit), rules.step),
      squares: stepsApart(offset - bestOffset(fit), rules.step) ** 2,
      ties: rules.tieBreaks(place, pin, ball),
      span,
      at: i,
    };
  }
}

const NONE: readonly number[] = [];

/** Offset of a lower stack as it is. */
export function offsetOf({ batch, level }: Span, i: number): number {
  return (batch.lengths[i] ?? 0) + batch.added - level;
}

/** Distance from an offset to the nearer end of a window; negative outside. */
export function marginAt(offset: number, { lowest, highest }: Pick<Fit, 'lowest' | 'highest'>): number {
  return Math.min(offset - lowest, highest - offset);
}

/** The offset to aim at: level, or the highest that turns where that is lower. */
export function bestOffset({ highest }: Pick<Fit, 'highest'>): number {
  return Math.min(0, highest);
}

/** The place of the first number that is not less than this one. */
export function firstFrom(ascending: Float64Array, least: number): number {
  let from = 0;
  let to = ascending.length;
  while (from < to) {
    const middle = (from + to) >> 1;
    if ((ascending[middle] ?? 0) < least) from = middle + 1;
    else to = middle;
  }
  return from;
}
