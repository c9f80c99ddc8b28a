/**
 * The ride: how high the upper part must stand, at each turn angle, to clear the inner body. Frame: see
 * `window-input.ts`. All lengths mm, angles radians.
 *
 * Nothing is needed until the mouth comes under the part; then its edge, or the strip of a broken edge, carries it,
 * higher and higher, until the part stands on the crest and the height stays. A lower part that tilts may carry it
 * before that (`own-lift.ts`).
 */
import { asRadians, type Radians } from '../radians.ts';
import { WINDOW_MM } from '../tolerances.ts';
import { arrivalAt } from './arrival.ts';
import { type EdgeContact, edgeContact } from './edge-contact.ts';
import { outlineDrop, outlineSlope } from './end-outline.ts';
import { findPeak } from './find-peak.ts';
import { findRoot } from './find-root.ts';
import { type Mouth, mouthEdge, mouthOf, mouthReach } from './mouth-edge.ts';
import { heldByLower } from './own-lift.ts';
import { type RidingEnd, ridingEnd } from './riding-end.ts';
import type { WindowInput } from './window-input.ts';

export type RideMark = { readonly turn: Radians; readonly height: number };

/**
 * Gives the height needed above the axis of the inner body as a function of the turn angle; null where nothing of the
 * mouth is under the part. With an offset, the lower part at that offset carries too, and there is always a height.
 */
export function rideCurve(input: WindowInput): (turn: Radians) => number | null;
export function rideCurve(input: WindowInput, offset: number): (turn: Radians) => number;
export function rideCurve(input: WindowInput, offset?: number): (turn: Radians) => number | null {
  const mouth = mouthOf(input);
  const end = ridingEnd(input.upper);
  const crest = crestUnder(end, mouth.bodyRadius);
  const passed = Math.asin(mouthReach(mouth) / mouth.bodyRadius) - Math.asin(crest.x / mouth.bodyRadius);
  if (offset === undefined) return neededByMouth;
  const held = heldByLower(input);
  return (turn) => Math.max(held(input.lineRadius + offset, turn), neededByMouth(turn) ?? -Infinity);

  function neededByMouth(turn: Radians): number | null {
    if (Math.abs(turn) >= passed) return crest.height;
    return mouthContact(mouth, end, asRadians(Math.abs(turn)))?.height ?? null;
  }
}

/** Finds what carries the upper part at this angle: the highest contact of all edges of the mouth. */
export function mouthContact(mouth: Mouth, end: RidingEnd, turn: Radians): EdgeContact | null {
  const atWall = edgeContact(mouthEdge(mouth, 0), end, turn);
  if (mouth.kind === 'sharp' || atWall === null) return atWall;
  const nudge = mouth.size * NUDGE;
  if (heightOn(nudge) <= atWall.height) return atWall;
  if (heightOn(mouth.size) > heightOn(mouth.size - nudge))
    return edgeContact(mouthEdge(mouth, mouth.size), end, turn);
  return edgeContact(mouthEdge(mouth, findPeak(heightOn, 0, mouth.size, nudge)), end, turn);

  /** An edge that is not under the part yet counts as lower, the further in it lies: the wall's edge comes first. */
  function heightOn(inward: number): number {
    return edgeContact(mouthEdge(mouth, inward), end, turn)?.height ?? -FAR * (1 + inward);
  }
}

/** Samples the ride from the first contact until the part stands on the crest, for a chart. */
export function rideMarks(input: WindowInput, count: number): RideMark[] {
  const mouth = mouthOf(input);
  const end = ridingEnd(input.upper);
  const needed = rideCurve(input);
  const arrival = Math.max(0, arrivalAt(mouthEdge(mouth, 0), end).turn);
  const passed = Math.asin(mouthReach(mouth) / mouth.bodyRadius);
  const marks: RideMark[] = [];
  for (let i = 0; i < count; i++) {
    // closer together near the first contact, where the ride is steep
    const along = (i / Math.max(1, count - 1)) ** 2;
    const turn = asRadians(arrival + (passed - arrival) * along);
    const height = needed(turn);
    if (height !== null) marks.push({ turn, height });
  }
  return marks;
}

/** Lower than any part of a lock, mm. */
const FAR = 1e6;

/** Of the width of a strip: how near its peak is found. A tenth of a millimetre of strip gives 1e-7 mm. */
const NUDGE = 1e-6;

/** Where a part that is pushed aside stands highest on the crest: between the crest and its own axis. */
function crestUnder(end: RidingEnd, bodyRadius: number): { x: number; height: number } {
  const downhill = (x: number): number =>
    -x / Math.sqrt(bodyRadius ** 2 - x * x) - outlineSlope(end.outline, Math.abs(x - end.axis));
  const x = end.axis === 0 ? 0 : findRoot(downhill, end.axis, 0, WINDOW_MM * 1e-3);
  const drop = outlineDrop(end.outline, Math.min(end.outline.partRadius, Math.abs(x - end.axis)));
  return { x, height: Math.sqrt(bodyRadius ** 2 - x * x) - drop };
}
