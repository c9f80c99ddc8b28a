/**
 * Up to which height the lower part turns without touching the bore at all. Frame: see `window-input.ts`. mm, radians.
 *
 * A body that lies away from the drivers has all its play at the top: its axis is half the clearance from the bore's,
 * and the room over the lower part shrinks as it turns, until the part points to where the body lies. The lower part
 * stands where its sideways play leaves it the least room (room is concave in the play: one of the two sides).
 */
import { asRadians, type Radians } from '../radians.ts';
import { WINDOW_MM } from '../tolerances.ts';
import { outlineOf } from './end-outline.ts';
import { findRoot } from './find-root.ts';
import { type Bore, type Room, roomUnderBore } from './room-under-bore.ts';
import type { WindowInput } from './window-input.ts';

/** Gives the offset up to which the lower part is clear of the bore while it stands at this turn angle. */
export function noTouchAt(input: WindowInput, turn: Radians): number {
  return tightestAt(input, turn).topHeight - input.lineRadius;
}

/** Finds the room at one turn angle, and the point of the top that touches there. */
export function tightestAt(input: WindowInput, turn: Radians): Room {
  return tightest(input, boreAt(input, turn));
}

/** Gives the offset up to which the lower part stays clear of the bore all the way from upright to this turn angle. */
export function noTouchUpTo(input: WindowInput, turn: Radians): number {
  return tightestUpTo(input, turn).topHeight - input.lineRadius;
}

/** Finds the room that decides over a turn from upright: at its end, or where a corner passed the tightest place. */
export function tightestUpTo(input: WindowInput, turn: Radians): Room {
  const atEnd = tightestAt(input, asRadians(Math.min(turn, Math.PI)));
  if (input.innerLies === 'centred') return atEnd;
  // the tightest place of all is opposite to the play, at the line's radius
  const closest: Bore = { radius: input.lineRadius, across: 0, up: 0 };
  const passed = tightest(input, closest, Math.PI - Math.min(turn, Math.PI));
  return passed.topHeight < atEnd.topHeight ? passed : atEnd;
}

/** Gives the first turn angle at which a lower part at this offset touches the bore; null if it never does. */
export function rubsFrom(input: WindowInput, offset: number): Radians | null {
  const end = Math.min(input.turn.angle, Math.PI);
  if (offset <= noTouchUpTo(input, asRadians(end))) return null;
  if (offset > noTouchUpTo(input, asRadians(0))) return asRadians(0);
  const spare = (turn: number): number => noTouchUpTo(input, asRadians(turn)) - offset;
  return asRadians(findRoot(spare, 0, end, WINDOW_MM / input.lineRadius));
}

/** The bore as the turned body sees it. */
function boreAt(input: WindowInput, turn: Radians): Bore {
  const radius = input.lineRadius + input.clearance / 2;
  const off = input.innerLies === 'centred' ? 0 : input.clearance / 2;
  return { radius, across: off * Math.sin(turn), up: off * Math.cos(turn) };
}

const FREE: Room = { topHeight: Infinity, across: 0, up: Infinity };

function tightest({ lower }: WindowInput, bore: Bore, leastLead = -Infinity): Room {
  const top = outlineOf(lower.top, lower.radius);
  const onOneSide = roomUnderBore(top, lower.sideways, bore, leastLead) ?? FREE;
  if (lower.sideways === 0) return onOneSide;
  const onOther = roomUnderBore(top, -lower.sideways, bore, leastLead) ?? FREE;
  return onOther.topHeight < onOneSide.topHeight ? onOther : onOneSide;
}
