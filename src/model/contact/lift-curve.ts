/**
 * How high a stack is lifted over the whole way of the key: by the key where it is higher than the rest, else not.
 *
 * Frame: distance = travel, how far the key is still out (0: fully in); heights above the key's bottom edge. mm, radians.
 * Going in, travel falls and the stack climbs where the curve falls with growing travel; coming out, the other way.
 *
 *   height         _.-._     _.-._
 *       |    \   .'     \   /     '.
 *       |     '-'        '-'        \________ rest
 *       0 ---------------------------------- travel
 *       fully in        <- going in
 */
import { assert } from '../assert.ts';
import { asRadians, type Radians } from '../radians.ts';
import { SAME_CONTACT_MM } from '../tolerances.ts';
import { type ContactCurve, type CurveMark, curveEnd } from './contact-curve.ts';
import type { KeyFeature } from './key-profile.ts';
import {
  clipPieces,
  type Curve,
  envelope,
  heightOn,
  type Piece,
  heightOfPieces,
  shiftPieces,
  slopeOn,
} from './pieces.ts';

export type LiftMark = CurveMark | 'rest';

/** Pieces over travel, smallest travel first, without gaps from `toTravel` to `fromTravel`. */
export type LiftCurve = {
  readonly fromTravel: number;
  readonly toTravel: number;
  readonly rest: number;
  readonly pieces: readonly Piece<LiftMark>[];
};

export type LiftRange = {
  /** Contact height at which the stack stops when no key holds it. */
  readonly rest: number;
  /** The larger travel: where going in begins. */
  readonly fromTravel: number;
  /** The smaller one, 0 for a key pushed home. */
  readonly toTravel: number;
};

/** Builds the lift curve of a chamber at z. */
export function liftCurve(contact: ContactCurve, z: number, range: LiftRange): LiftCurve {
  const { rest, fromTravel, toTravel } = range;
  assert(fromTravel > toTravel, `travel from ${fromTravel} to ${toTravel} mm`);
  assert(Number.isFinite(rest), `rest height ${rest} mm`);
  const curve: Curve = { kind: 'straight', at: 0, height: rest, slope: 0 };
  const resting: Piece<LiftMark>[] = [{ from: toTravel, to: fromTravel, curve, mark: 'rest' }];
  const held: Piece<LiftMark>[] = clipPieces(shiftPieces(contact.pieces, -z), toTravel, fromTravel);
  const pieces = envelope(resting, held, 'higher');
  return { fromTravel, toTravel, rest, pieces };
}

/** Measures the lift; beyond the curve's ends that at the end. */
export function liftAt(curve: LiftCurve, travel: number): number {
  return heightOfPieces(curve.pieces, Math.max(curve.toTravel, Math.min(curve.fromTravel, travel)));
}

/** The travel at which the key's tip first comes under a foot in the chamber at z. */
export function firstTouchTravel(contact: ContactCurve, z: number): number {
  return curveEnd(contact) - z;
}

/** The largest lift: `travel` is where it is first reached going in, `until` where it ends. */
export type Highest = { readonly height: number; readonly travel: number; readonly until: number };

/** Finds the largest lift over the whole way. */
export function highestOn(curve: LiftCurve): Highest {
  const peaks = curve.pieces.map(peakOf);
  const height = peaks.reduce((best, peak) => Math.max(best, peak.height), -Infinity);
  const top = peaks.filter((peak) => peak.height >= height - SAME_CONTACT_MM);
  const travel = Math.max(...top.map(({ to }) => to));
  return { height, travel, until: plateauEnd(top, travel) };
}

export type Steepest = {
  readonly angle: Radians;
  readonly travel: number;
  readonly height: number;
  /** The side of the key being climbed. */
  readonly from: KeyFeature;
};

/** The steepest climb each way; left out where the stack never climbs that way. */
export type SteepestClimbs = { readonly goingIn?: Steepest; readonly comingOut?: Steepest };

/**
 * Finds the steepest side against the foot, both ways. A key that meets the foot above its widest place is a right
 * angle: it can't be climbed.
 */
export function steepestOn(curve: LiftCurve): SteepestClimbs {
  let goingIn: Steepest | undefined;
  let comingOut: Steepest | undefined;
  curve.pieces.forEach(({ mark, from, to, curve: shape }, i) => {
    if (mark === 'rest') return;
    const before = endHeight(curve.pieces[i - 1]);
    const after = startHeight(curve.pieces[i + 1]);
    const [low, high] = [heightOn(shape, from), heightOn(shape, to)];
    const jumpsIn = after !== undefined && high - after > SAME_CONTACT_MM;
    const jumpsOut = before !== undefined && low - before > SAME_CONTACT_MM;
    const climbIn = jumpsIn ? Infinity : -slopeOn(shape, to);
    const climbOut = jumpsOut ? Infinity : slopeOn(shape, from);
    goingIn = steeper(goingIn, climbIn, { travel: to, height: high, from: mark.tip });
    comingOut = steeper(comingOut, climbOut, { travel: from, height: low, from: mark.bow });
  });
  return { ...(goingIn && { goingIn }), ...(comingOut && { comingOut }) };
}

/** Draws the curve as a line of points, smallest travel first; arcs bulge past it by no more than `tolerance` mm. */
export function liftLine(curve: LiftCurve, tolerance: number): { travel: number; height: number }[] {
  const line = curve.pieces.flatMap(({ from, to, curve: shape }) =>
    [from, ...betweenOn(shape, from, to, tolerance), to].map((travel) => ({
      travel,
      height: heightOn(shape, travel),
    })),
  );
  return line.filter(({ travel, height }, i) => {
    const last = line[i - 1];
    return last?.travel !== travel || Math.abs(last.height - height) > SAME_CONTACT_MM;
  });
}

function peakOf({ from, to, curve }: Piece<LiftMark>): { height: number; from: number; to: number } {
  if (curve.kind === 'crest' && curve.at >= from && curve.at <= to) {
    return { height: curve.height, from: curve.at, to: curve.at };
  }
  const [low, high] = [heightOn(curve, from), heightOn(curve, to)];
  if (Math.abs(low - high) <= SAME_CONTACT_MM) return { height: Math.max(low, high), from, to };
  return low > high ? { height: low, from, to: from } : { height: high, from: to, to };
}

/** Walks a level stretch from its outer end to its inner one. */
function plateauEnd(top: readonly { from: number; to: number }[], travel: number): number {
  let until = travel;
  for (const { from, to } of [...top].reverse()) if (to >= until) until = Math.min(until, from);
  return until;
}

function steeper(
  best: Steepest | undefined,
  climb: number,
  place: Omit<Steepest, 'angle'>,
): Steepest | undefined {
  const angle = asRadians(Math.atan(climb));
  return angle > (best?.angle ?? 0) ? { angle, ...place } : best;
}

function startHeight(piece: Piece<LiftMark> | undefined): number | undefined {
  return piece && heightOn(piece.curve, piece.from);
}

function endHeight(piece: Piece<LiftMark> | undefined): number | undefined {
  return piece && heightOn(piece.curve, piece.to);
}

/** Points that part an arc into equal angles, so that no chord is further than the tolerance from it. */
function betweenOn(curve: Curve, from: number, to: number, tolerance: number): number[] {
  if (curve.kind === 'straight') return [];
  const angleAt = (x: number): number => Math.asin(Math.max(-1, Math.min(1, (x - curve.at) / curve.radius)));
  const [start, end] = [angleAt(from), angleAt(to)];
  const widest = 2 * Math.acos(Math.max(0, 1 - tolerance / curve.radius));
  const steps = Math.max(1, Math.ceil((end - start) / widest));
  return Array.from(
    { length: steps - 1 },
    (_, i) => curve.at + curve.radius * Math.sin(start + ((end - start) * (i + 1)) / steps),
  );
}
