/**
 * How high the lower part may stand inside a round bore, for one position of the bore's axis against the body's.
 *
 * A point of its top at `across` from the body's axis and `drop` below the highest point is inside while
 *     top height <= bore axis up + sqrt(bore radius^2 - (across - bore axis across)^2) + drop.
 * The least over the top is at the axis, at a corner of the outline or at its rim, or where an arc touches the bore
 * from inside: there both centres and the contact are in line. Only the plane z = 0 counts: along z the bore is straight
 * and the top falls away. Frame: see `window-input.ts`. All lengths mm.
 */
import { type EndOutline, outlineDrop } from './end-outline.ts';

export type Bore = { readonly radius: number; readonly across: number; readonly up: number };

/** The height allowed, and the point of the top that touches there, against the body's axis before turning. */
export type Room = { readonly topHeight: number; readonly across: number; readonly up: number };

/**
 * Measures the room of a top whose own axis stands `aside` from the body's.
 *
 * @param leastLead if given, only points that lead the chamber's axis (towards -x) by at least this angle count
 */
export function roomUnderBore(
  top: EndOutline,
  aside: number,
  bore: Bore,
  leastLead = -Infinity,
): Room | null {
  let least: Room | null = null;
  tryPoint(0);
  for (const side of [-1, 1]) {
    tryPoint(side * top.faceRadius);
    tryPoint(side * top.partRadius);
    if (top.arcRadius > 0 && top.arcRadius < bore.radius) tryArc(side);
  }
  return least;

  function tryPoint(fromAxis: number): void {
    const across = aside + fromAxis;
    const room = bore.radius ** 2 - (across - bore.across) ** 2;
    const limit = bore.up + Math.sqrt(Math.max(0, room));
    keep(limit + outlineDrop(top, Math.abs(fromAxis)), across, limit);
  }
  function tryArc(side: number): void {
    const centre = aside + side * top.faceRadius;
    const between = bore.radius - top.arcRadius;
    const offLine = centre - bore.across;
    if (Math.abs(offLine) >= between) return;
    const fromCentre = (top.arcRadius * offLine) / between;
    if (fromCentre * side < 0 || Math.abs(fromCentre) > top.partRadius - top.faceRadius) return;
    const limit = bore.up + Math.sqrt(between ** 2 - offLine ** 2) + top.arcRadius;
    const drop = top.arcRadius - Math.sqrt(top.arcRadius ** 2 - fromCentre ** 2);
    keep(limit, centre + fromCentre, limit - drop);
  }
  function keep(topHeight: number, across: number, up: number): void {
    if (least !== null && topHeight >= least.topHeight) return;
    if (Math.atan2(-across, up) < leastLead) return;
    least = { topHeight, across, up };
  }
}
