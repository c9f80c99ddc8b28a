/**
 * Where a plane along the plug cuts something that has turned. The plane stands still at a distance across (`offset`);
 * a body turns in it about its own axis.
 *
 *          y |   plane            Seen along the plug. A point of the plane at height y lies, in the turned body's own
 *            |   |                upright frame, at
 *         .--+---|-.                across(y) =  offset cos + (y - axis) sin
 *        /   |   |  \               height(y) = -offset sin + (y - axis) cos + axis
 *       |    +---|---|-- x
 *
 * mm, radians; a positive turn moves what is on top towards negative x.
 */
import { LEAST_TURN_COSINE } from './tolerances.ts';

export type TurnedPlane = {
  readonly offset: number;
  readonly axisY: number;
  readonly cos: number;
  readonly sin: number;
  /** The body stands on its head: its section is that of `cos`, `sin` mirrored at its axis. */
  readonly isUpsideDown: boolean;
};

/** Places the plane. A turn beyond a quarter is the same as one from upside down. */
export function turnedPlane(offset: number, axisY: number, turn: number): TurnedPlane {
  const isUpsideDown = Math.cos(turn) < 0;
  const cos = Math.max(LEAST_TURN_COSINE, Math.abs(Math.cos(turn)));
  const sin = Math.sign(Math.sin(turn)) * Math.sqrt(1 - cos ** 2) * (isUpsideDown ? -1 : 1);
  return turn === 0
    ? { offset, axisY, cos: 1, sin: 0, isUpsideDown: false }
    : { offset: isUpsideDown ? -offset : offset, axisY, cos, sin, isUpsideDown };
}

export function isUpright(plane: TurnedPlane): boolean {
  return plane.sin === 0 && !plane.isUpsideDown;
}

/** Distance across, in the body's own frame, of the plane's point at this height. */
export function acrossAt(plane: TurnedPlane, y: number): number {
  return plane.offset * plane.cos + (y - plane.axisY) * plane.sin;
}

/** Height in the plane of what lies at `ownHeight` in the body's own frame. */
export function heightInPlane(plane: TurnedPlane, ownHeight: number): number {
  return plane.axisY + (ownHeight - plane.axisY + plane.offset * plane.sin) / plane.cos;
}

/** Heights between which the plane passes within `halfWidth` of the body's middle plane. */
export function heightsWithin(plane: TurnedPlane, halfWidth: number): { low: number; high: number } | null {
  const { offset, axisY, cos, sin } = plane;
  if (sin === 0) return Math.abs(offset * cos) <= halfWidth ? { low: -Infinity, high: Infinity } : null;
  const one = axisY + (halfWidth - offset * cos) / sin;
  const other = axisY + (-halfWidth - offset * cos) / sin;
  return { low: Math.min(one, other), high: Math.max(one, other) };
}
