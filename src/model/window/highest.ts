/**
 * How high a split may stand before the lower part stops the turn. Frame: see `window-input.ts`. All lengths mm.
 *
 * The body can move aside by no more than half the clearance. The turn stops when body and top together no longer fit
 * the bore, wherever the body moves: when no bore axis within half the clearance of the body's leaves room for the top.
 * Most room is always at full play. The room is concave in the direction of the play, so it has one peak; it points
 * along the chamber for a top in the middle of it, a little aside for one that stands aside. How the body lies at rest
 * does not matter: it is pushed. The lower part stands at the end of its sideways play (either end is the other's mirror).
 */
import { WINDOW_MM } from '../tolerances.ts';
import { outlineOf } from './end-outline.ts';
import { findPeak } from './find-peak.ts';
import { type Room, roomUnderBore } from './room-under-bore.ts';
import type { WindowInput } from './window-input.ts';

/** The most room, and where the bore's axis then stands against the body's. */
export type MostRoom = {
  readonly room: Room;
  readonly boreAxis: { readonly across: number; readonly up: number };
};

/** The play never turns further aside than this to make room for a top that stands aside. rad. */
const FURTHEST_ASIDE = Math.PI / 2;

export function mostRoom(input: WindowInput): MostRoom {
  const { lower, lineRadius, clearance } = input;
  const top = outlineOf(lower.top, lower.radius);
  const radius = lineRadius + clearance / 2;
  if (lower.sideways === 0 || clearance === 0) return roomTowards(0);
  // half the clearance times this angle is a length: found as well as the window
  const direction = findPeak(
    (angle) => roomTowards(angle).room.topHeight,
    -FURTHEST_ASIDE,
    FURTHEST_ASIDE,
    (WINDOW_MM / clearance) * 1e-3,
  );
  return roomTowards(direction);

  function roomTowards(angle: number): MostRoom {
    const boreAxis = { across: (clearance / 2) * Math.sin(angle), up: (clearance / 2) * Math.cos(angle) };
    const room = roomUnderBore(top, lower.sideways, { radius, ...boreAxis });
    if (room === null) throw new Error('Shearsight bug: a top without a point');
    return { room, boreAxis };
  }
}
