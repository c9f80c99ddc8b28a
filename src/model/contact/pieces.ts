/**
 * A height over a distance, in pieces that are straight or part of a circle's upper half (a crest). The key's profile is
 * made of straight pieces, the curve a foot follows on it of both. Frame of the user; lengths mm; slopes are rise per run.
 *
 *        crest                 straight
 *       .-+-.                     _/|
 *     .'  |  '.                 _/  | slope
 *    |  height |              _/____|
 *         at                  at, height
 *
 * A list of pieces is sorted and never overlaps itself; it may have gaps, where there is no height.
 */
import { assert } from '../assert.ts';

export type Straight = {
  readonly kind: 'straight';
  readonly at: number;
  readonly height: number;
  readonly slope: number;
};
/** `height` is that of the highest point, which lies at `at`. */
export type Crest = {
  readonly kind: 'crest';
  readonly at: number;
  readonly height: number;
  readonly radius: number;
};
export type Curve = Straight | Crest;

/** A stretch of a curve; `mark` says what made it. `from` may be -Infinity and `to` Infinity on straight curves. */
export type Piece<Mark> = {
  readonly from: number;
  readonly to: number;
  readonly curve: Curve;
  readonly mark: Mark;
};

/** Measures the height of a curve; a crest is cut off level with its centre. */
export function heightOn(curve: Curve, x: number): number {
  const along = x - curve.at;
  if (curve.kind === 'straight') return curve.height + curve.slope * along;
  return curve.height - curve.radius + Math.sqrt(Math.max(0, curve.radius ** 2 - along ** 2));
}

/** Measures the slope of a curve; at the foot of a crest it is infinite. */
export function slopeOn(curve: Curve, x: number): number {
  if (curve.kind === 'straight') return curve.slope;
  const along = x - curve.at;
  const below = Math.sqrt(Math.max(0, curve.radius ** 2 - along ** 2));
  return along === 0 ? 0 : -along / below;
}

/**
 * Takes the higher (or the lower) of two heights everywhere; where only one of them has a height, that one. Where both
 * are the same the first one is kept.
 */
export function envelope<Mark>(
  first: readonly Piece<Mark>[],
  second: readonly Piece<Mark>[],
  keep: 'higher' | 'lower',
): Piece<Mark>[] {
  const result: Piece<Mark>[] = [];
  let inFirst = 0;
  let inSecond = 0;
  let from = Math.min(first[0]?.from ?? Infinity, second[0]?.from ?? Infinity);
  while (inFirst < first.length || inSecond < second.length) {
    const one = first[inFirst];
    const other = second[inSecond];
    const to = Math.min(nextBound(one, from), nextBound(other, from));
    assert(to >= from, `pieces end at ${to} mm after ${from} mm`); // not a number would never end
    const oneHere = one && one.from <= from;
    const otherHere = other && other.from <= from;
    if (oneHere && otherHere) appendBetter(result, one, other, { from, to, keep });
    else if (oneHere) append(result, one, from, to);
    else if (otherHere) append(result, other, from, to);
    if (one && one.to <= to) inFirst++;
    if (other && other.to <= to) inSecond++;
    from = to;
  }
  return result;
}

/** Takes the envelope of many lists, by halves so that the cost stays near the number of pieces. */
export function envelopeOfAll<Mark>(
  lists: readonly (readonly Piece<Mark>[])[],
  keep: 'higher' | 'lower',
): Piece<Mark>[] {
  if (lists.length <= 1) return [...(lists[0] ?? [])];
  const middle = lists.length >> 1;
  return envelope(
    envelopeOfAll(lists.slice(0, middle), keep),
    envelopeOfAll(lists.slice(middle), keep),
    keep,
  );
}

/** Keeps the stretch of the pieces between two distances. */
export function clipPieces<Mark>(pieces: readonly Piece<Mark>[], from: number, to: number): Piece<Mark>[] {
  return pieces
    .filter((piece) => piece.to > from && piece.from < to)
    .map((piece) => ({ ...piece, from: Math.max(piece.from, from), to: Math.min(piece.to, to) }));
}

/** Moves the pieces along. */
export function shiftPieces<Mark>(pieces: readonly Piece<Mark>[], by: number): Piece<Mark>[] {
  return pieces.map((piece) => ({
    from: piece.from + by,
    to: piece.to + by,
    curve: { ...piece.curve, at: piece.curve.at + by },
    mark: piece.mark,
  }));
}

/** Measures the height of the pieces; at a jump the higher one, -Infinity outside all pieces. */
export function heightOfPieces<Mark>(pieces: readonly Piece<Mark>[], x: number): number {
  const i = indexAt(pieces, x);
  const [before, piece] = [pieces[i - 1], pieces[i]];
  const here = piece && piece.from <= x && x <= piece.to ? heightOn(piece.curve, x) : -Infinity;
  return before?.to === x ? Math.max(here, heightOn(before.curve, x)) : here;
}

/** Index of the last piece that begins before x, by halving. */
function indexAt<Mark>(pieces: readonly Piece<Mark>[], x: number): number {
  let low = 0;
  let high = pieces.length - 1;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if ((pieces[middle]?.from ?? Infinity) <= x) low = middle;
    else high = middle - 1;
  }
  return low;
}

function nextBound<Mark>(piece: Piece<Mark> | undefined, from: number): number {
  if (!piece) return Infinity;
  return piece.from <= from ? piece.to : piece.from;
}

/** A crossing that is not one (on the lower half of a circle) only splits a stretch, which `append` joins again. */
function appendBetter<Mark>(
  result: Piece<Mark>[],
  one: Piece<Mark>,
  other: Piece<Mark>,
  { from, to, keep }: { from: number; to: number; keep: 'higher' | 'lower' },
): void {
  const side = keep === 'higher' ? 1 : -1;
  const { low, high } = crossings(one.curve, other.curve);
  let start = from;
  for (const end of [low, high, to]) {
    if (!(end > start && end <= to)) continue;
    const x = between(start, end);
    const otherWins = (heightOn(other.curve, x) - heightOn(one.curve, x)) * side > 0;
    append(result, otherWins ? other : one, start, end);
    start = end;
  }
}

function append<Mark>(result: Piece<Mark>[], piece: Piece<Mark>, from: number, to: number): void {
  const last = result.at(-1);
  if (last?.to === from && last.curve === piece.curve) {
    result[result.length - 1] = { from: last.from, to, curve: piece.curve, mark: piece.mark };
  } else if (from < to) result.push({ from, to, curve: piece.curve, mark: piece.mark });
}

function between(from: number, to: number): number {
  if (from === -Infinity) return to === Infinity ? 0 : to - 1;
  return to === Infinity ? from + 1 : (from + to) / 2;
}

/** Up to two, in order; NaN where there is none. */
type Crossings = { readonly low: number; readonly high: number };
const NO_CROSSINGS: Crossings = { low: Number.NaN, high: Number.NaN };

function crossings(one: Curve, other: Curve): Crossings {
  if (one.kind === 'straight') {
    return other.kind === 'straight' ? straightWithStraight(one, other) : straightWithCrest(one, other);
  }
  return other.kind === 'straight' ? straightWithCrest(other, one) : crestWithCrest(one, other);
}

function straightWithStraight(one: Straight, other: Straight): Crossings {
  if (one.slope === other.slope) return NO_CROSSINGS;
  const x = other.at + (heightOn(one, other.at) - other.height) / (other.slope - one.slope);
  return { low: x, high: Number.NaN };
}

function straightWithCrest(line: Straight, crest: Crest): Crossings {
  const over = heightOn(line, crest.at) - (crest.height - crest.radius); // above the circle's centre
  const stretch = 1 + line.slope ** 2;
  const room = crest.radius ** 2 * stretch - over ** 2;
  if (room < 0) return NO_CROSSINGS;
  const half = Math.sqrt(room) / stretch;
  const middle = crest.at - (line.slope * over) / stretch;
  return { low: middle - half, high: middle + half };
}

function crestWithCrest(one: Crest, other: Crest): Crossings {
  const across = other.at - one.at;
  const up = other.height - other.radius - (one.height - one.radius);
  const apart = across ** 2 + up ** 2;
  if (apart === 0) return NO_CROSSINGS;
  const share = (apart + one.radius ** 2 - other.radius ** 2) / (2 * apart);
  const room = one.radius ** 2 / apart - share ** 2;
  if (room < 0) return NO_CROSSINGS;
  const half = Math.sqrt(room) * Math.abs(up);
  const middle = one.at + share * across;
  return { low: middle - half, high: middle + half };
}
