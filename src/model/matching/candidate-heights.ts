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
import type { Item } from '../schema/key-schema.ts';
import type { Group, Part } from '../schema/parts-schema.ts';
import type { KeyInSite } from './needed-height.ts';
import { Best, byDeviation, bySpare, type IsLeft, kindOf, type Option, type Row } from './option.ts';
import { stepsApart, stepsToSpare, stepsToTakeOff } from './resolution.ts';
import type { ChamberPlace, Fit } from './site.ts';
import type { Batch, Stock } from './stock.ts';
import type { TieBreaks } from './tie-breaks.ts';

export type Candidate = Option & {
  readonly pin: Part;
  readonly ball: Part | null;
  /** Measured together as this group. */
  readonly group: Group | null;
  /** Of the lower stack as measured, and how much to file off its pin (whole steps). */
  readonly height: number;
  readonly filedOff: number;
  /** Once filed. */
  readonly offset: number;
  readonly lowest: number;
  readonly highest: number;
  /** Distance to the nearer end of the window. */
  readonly margin: number;
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
  const maker = new CandidateMaker(stock, place, rules);
  const collect = (
    count: number,
    isLeft: IsLeft,
    order: typeof bySpare,
    offer: (span: Span, lists: Lists) => void,
  ) => {
    const lists = new Lists(count, isLeft, order);
    for (const span of spans) offer(span, lists);
    return lists.all();
  };
  const canRunShort = spans.some(({ batch }) => batch.ballKinds.some((ball) => maker.isShort(ball)));
  return {
    others: canRunShort ? 1 : 0,
    mayBeMain: (part) => stock.parts[part]?.kind === 'pin',
    roomiest: (count, isLeft) =>
      collect(count, isLeft, bySpare, (span, lists) => maker.offerRoomiest(span, lists)),
    closest: (count, isLeft, leastSpare) =>
      collect(count, isLeft, byDeviation, (span, lists) => maker.offerClosest(span, leastSpare, lists)),
  };
}

/** The best candidates of each kind. */
class Lists {
  private readonly count: number;
  private readonly isLeft: IsLeft;
  private readonly order: (one: Candidate, other: Candidate) => number;
  private readonly kinds = new Map<string, Best<Candidate>>();

  constructor(count: number, isLeft: IsLeft, order: (one: Candidate, other: Candidate) => number) {
    this.count = count;
    this.isLeft = isLeft;
    this.order = order;
  }

  has({ pins, balls }: Batch, i: number): boolean {
    const ball = balls[i] ?? -1;
    return this.isLeft(pins[i] ?? 0) && (ball < 0 || this.isLeft(ball));
  }

  offer(candidate: Candidate): void {
    const kind = kindOf(candidate);
    const best = this.kinds.get(kind) ?? new Best<Candidate>(this.count, this.order);
    this.kinds.set(kind, best);
    best.offer(candidate);
  }

  /** The last one of a full list; what is worse does not get in. */
  last(kind: string): Candidate | null {
    return this.kinds.get(kind)?.last() ?? null;
  }

  all(): Candidate[] {
    return [...this.kinds.values()].flatMap((best) => best.list);
  }
}

class CandidateMaker {
  private readonly stock: Stock;
  private readonly place: ChamberPlace;
  private readonly rules: CandidateRules;

  constructor(stock: Stock, place: ChamberPlace, rules: CandidateRules) {
    this.stock = stock;
    this.place = place;
    this.rules = rules;
  }

  isShort(ball: number): boolean {
    return ball >= 0 && (this.rules.copies[ball] ?? 0) < this.rules.placeCount;
  }

  /** Offers from the middle of the window outwards: what comes later has no more to spare. */
  offerRoomiest(span: Span, lists: Lists): void {
    const { lowest, highest } = span.fit;
    const kind = this.onlyKind(span.batch);
    this.outwards(
      span,
      (lowest + highest) / 2,
      0,
      (spare) => {
        const last = kind === null ? null : lists.last(kind);
        return last === null || spare > last.spare;
      },
      lists,
    );
    this.offerFiled(span, 0, lists);
  }

  /** Offers from the best height outwards, among those that have enough to spare. */
  offerClosest(span: Span, leastSpare: number, lists: Lists): void {
    const { lowest, highest } = span.fit;
    const kind = this.onlyKind(span.batch);
    const best = bestOffset(span.fit);
    const room = leastSpare * this.rules.step;
    const from = Math.max(lowest + room, Math.min(best, highest - room));
    this.outwards(
      span,
      from,
      leastSpare,
      (_, offset) => {
        const last = kind === null ? null : lists.last(kind);
        // equally near ones still have to be looked at: other things settle between them
        return last === null || stepsApart(offset - best, this.rules.step) <= last.deviation;
      },
      lists,
    );
    this.offerFiled(span, leastSpare, lists);
  }

  /** Goes up and down from an offset, each way until there is too little to spare or nothing to gain. */
  private outwards(
    span: Span,
    from: number,
    leastSpare: number,
    isOfUse: (spare: number, offset: number) => boolean,
    lists: Lists,
  ): void {
    const { batch, fit, level } = span;
    const start = firstFrom(batch.lengths, level + from - batch.added);
    const goesOn = (i: number): boolean => {
      const offset = (batch.lengths[i] ?? 0) + batch.added - level;
      const spare = stepsToSpare(marginAt(offset, fit), this.rules.step);
      if (spare < leastSpare || !isOfUse(spare, offset)) return false;
      if (lists.has(batch, i)) lists.offer(this.make(span, i, 0));
      return true;
    };
    for (let i = start; i < batch.lengths.length && goesOn(i); i++);
    for (let i = start - 1; i >= 0 && goesOn(i); i--);
  }

  /** The kind of all of a batch, unfiled; null when balls that can run short differ. */
  private onlyKind({ ballKinds }: Batch): string | null {
    const short = ballKinds.filter((ball) => this.isShort(ball));
    if (short.length === 0) return '';
    return ballKinds.length === 1 ? `${short[0] ?? ''}` : null;
  }

  private offerFiled(span: Span, leastSpare: number, lists: Lists): void {
    const { mostFiled, step } = this.rules;
    if (mostFiled === null) return;
    const { batch, fit, level } = span;
    const most = Math.floor(mostFiled / step);
    const to = level + fit.highest + most * step - batch.added;
    for (let i = firstFrom(batch.lengths, level + fit.highest - batch.added); i < batch.lengths.length; i++) {
      const length = batch.lengths[i] ?? 0;
      if (length > to + step) break;
      if (!lists.has(batch, i) || this.partAt(batch.pins, i)?.original !== false) continue;
      const asItIs = this.make(span, i, 0);
      if (asItIs.spare >= 0) continue;
      const steps = Math.min(most, stepsToTakeOff(asItIs.offset - bestOffset(fit), step));
      if (steps * step >= length) continue;
      const filed = this.make(span, i, steps);
      if (filed.spare >= leastSpare) lists.offer(filed);
    }
  }

  private partAt(numbers: Int32Array, i: number): Part | undefined {
    return this.stock.parts[numbers[i] ?? -1];
  }

  private make({ batch, fit, level }: Span, i: number, filed: number): Candidate {
    const { step, tieBreaks } = this.rules;
    const number = batch.pins[i] ?? 0;
    const ballNumber = batch.balls[i] ?? -1;
    const height = (batch.lengths[i] ?? 0) + batch.added;
    const offset = height - filed * step - level;
    const margin = marginAt(offset, fit);
    return {
      part: number,
      also: this.isShort(ballNumber) ? [ballNumber] : NONE,
      filed,
      spare: stepsToSpare(margin, step),
      deviation: stepsApart(offset - bestOffset(fit), step),
      ties: tieBreaks(this.place, number, ballNumber),
      pin: this.stock.parts[number] ?? NO_PART,
      ball: this.stock.parts[ballNumber] ?? null,
      group: batch.groups[i] ?? null,
      height,
      filedOff: filed * step,
      offset,
      lowest: fit.lowest,
      highest: fit.highest,
      margin,
    };
  }
}

const NONE: readonly number[] = [];
/** Never used: every number in a batch is that of a part. */
const NO_PART: Part = { id: '', label: '', kind: 'pin', quantity: 0, original: true };

/** Distance from an offset to the nearer end of a window; negative outside. */
export function marginAt(offset: number, { lowest, highest }: Pick<Fit, 'lowest' | 'highest'>): number {
  return Math.min(offset - lowest, highest - offset);
}

/** The offset to aim at: level, or the highest that turns where that is lower. */
export function bestOffset({ highest }: Pick<Fit, 'highest'>): number {
  return Math.min(0, highest);
}

/** As they stand in a plan. */
export function itemsOf({ pin, ball }: Pick<Candidate, 'pin' | 'ball'>): Item[] {
  return ball === null ? [{ part: pin.id }] : [{ part: ball.id }, { part: pin.id }];
}

/** The place of the first number that is not less than this one. */
function firstFrom(ascending: Float64Array, least: number): number {
  let from = 0;
  let to = ascending.length;
  while (from < to) {
    const middle = (from + to) >> 1;
    if ((ascending[middle] ?? 0) < least) from = middle + 1;
    else to = middle;
  }
  return from;
}
