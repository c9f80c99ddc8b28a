/**
 * Where a split that is too low stops the turn. Frame: see `window-input.ts`. Lengths mm, angles radians.
 *
 * The upper part stands on the lower part until the mouth of the hole reaches it. If the edge meets its side, or a
 * place of its end that is too steep to climb, the turn stops there; otherwise the part rides up and the turn stops
 * where the ride becomes too steep.
 */
import { asRadians, type Radians } from '../radians.ts';
import { WINDOW_MM } from '../tolerances.ts';
import { arrivalAt } from './arrival.ts';
import { findRoot } from './find-root.ts';
import { mouthEdge, mouthOf } from './mouth-edge.ts';
import { heldByLower } from './own-lift.ts';
import { mouthContact } from './ride-curve.ts';
import { ridingEnd } from './riding-end.ts';
import type { LinePoint, WindowInput } from './window-input.ts';

/**
 * Finds the stop.
 *
 * @param steepUntil the turn at which the ride is too steep for the last time; the offset is below the lowest
 */
export function upperStops(
  input: WindowInput,
  offset: number,
  steepUntil: Radians,
): { turn: Radians; contact: LinePoint } {
  const mouth = mouthOf(input);
  const end = ridingEnd(input.upper);
  const held = heldByLower(input);
  const step = WINDOW_MM / input.lineRadius;
  const arrival = arrivalAt(mouthEdge(mouth, 0), end);
  const start = arrival.turn + step;
  if (start >= steepUntil || spare(start) <= 0) return { turn: arrival.turn, contact: arrival.point };
  const touch = findRoot(spare, start, steepUntil, step);
  const isSteepAlready = steepness(touch) >= 0;
  const turn = isSteepAlready ? touch : findRoot(steepness, touch, steepUntil - step, step);
  return { turn: asRadians(turn), contact: contactAt(turn)?.point ?? arrival.point };

  function contactAt(turn: number): ReturnType<typeof mouthContact> {
    return mouthContact(mouth, end, asRadians(turn));
  }
  /** How far the lower part holds the upper part above the mouth. */
  function spare(turn: number): number {
    return held(input.lineRadius + offset, turn) - (contactAt(turn)?.height ?? 0);
  }
  function steepness(turn: number): number {
    return (contactAt(turn)?.rise ?? Infinity) - Math.tan(input.steepestRamp) * input.lineRadius;
  }
}
