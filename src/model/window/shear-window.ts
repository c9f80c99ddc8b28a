/**
 * The window of one split at one line: the offsets between which the line turns. Frame: see `window-input.ts`. mm.
 *
 *   lowest     below it the upper part stops the turn (`lowest.ts`)
 *   no touch   up to it the lower part turns without touching the bore (`no-touch.ts`)
 *   highest    above it the lower part stops the turn; in between it rubs (`highest.ts`)
 *
 * The window is empty when lowest lies above highest: then no length of the lower part ever turns.
 */
import { asRadians, type Radians } from '../radians.ts';
import { WINDOW_MM } from '../tolerances.ts';
import { findRoot } from './find-root.ts';
import { mostRoom } from './highest.ts';
import { lastTooSteep, type SteepEnd } from './lowest.ts';
import { mouthOf } from './mouth-edge.ts';
import { tightestUpTo } from './no-touch.ts';
import { heldByLower } from './own-lift.ts';
import { ridingEnd } from './riding-end.ts';
import type { Room } from './room-under-bore.ts';
import type { WindowInput } from './window-input.ts';

/** Where the top of the lower part touches the bore, in the frame of the inner body before turning. */
export type TopContact = {
  readonly across: number;
  readonly up: number;
  /** Angle of the contact from the chamber's axis, towards +x. */
  readonly angle: Radians;
};

export type ShearWindow = {
  readonly lowest: number;
  readonly noTouch: number;
  readonly highest: number;
  readonly empty: boolean;
  /** Turn, height of the upper part and contact at the lowest offset; null if the upper part cannot hang in at all. */
  readonly lowestAt: SteepEnd | null;
  /** The first touch when the offset grows past `noTouch`. */
  readonly noTouchAt: TopContact;
  /** The contact at the highest offset, and where the bore's axis stands against the body's then. */
  readonly highestAt: TopContact & { readonly boreAxis: { readonly across: number; readonly up: number } };
};

/** Finds the window. A limit that does not exist because the upper part is wider than the hole is minus the radius. */
export function shearWindow(input: WindowInput): ShearWindow {
  const steepEnd = lastTooSteep({
    mouth: mouthOf(input),
    end: ridingEnd(input.upper),
    lineRadius: input.lineRadius,
    steepestRamp: input.steepestRamp,
  });
  const lowest = steepEnd === null ? -input.lineRadius : offsetHolding(input, steepEnd);
  const touch = tightestUpTo(input, input.turn.angle);
  const most = mostRoom(input);
  const highest = most.room.topHeight - input.lineRadius;
  return {
    lowest,
    noTouch: touch.topHeight - input.lineRadius,
    highest,
    empty: lowest > highest,
    lowestAt: steepEnd,
    noTouchAt: contactOf(touch),
    highestAt: { ...contactOf(most.room), boreAxis: most.boreAxis },
  };
}

/** Gives the offset of a lower part whose own top holds the upper part as high as it must be at that moment. */
function offsetHolding(input: WindowInput, { height, turn }: SteepEnd): number {
  const held = heldByLower(input);
  // a tilted top, or a dimple, cannot make more difference than this
  const reach = 2 * (input.lower.radius + input.upper.radius);
  const short = (topHeight: number): number => held(topHeight, turn) - height;
  return findRoot(short, height - reach, height + reach, WINDOW_MM * 1e-2) - input.lineRadius;
}

function contactOf({ across, up }: Room): TopContact {
  return { across, up, angle: asRadians(Math.atan2(across, up)) };
}
