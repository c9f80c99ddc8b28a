/**
 * Where one edge of the mouth carries the upper part at one turn angle, and how steeply it lifts it there.
 *
 * The edge, turned by the angle, is a curve in space. The upper part rests on the point of it that stands highest
 * against the part's end: the greatest y - drop(distance from the part's axis) inside the rim. Going along the edge from
 * z = 0 the surface rises and the end falls away, so that this has one peak: at z = 0, where both balance, in a
 * corner of the end, or where the edge leaves the rim.
 *
 * Slope. With m the slope of the end at the contact (in a corner or at the rim: of the straight edge that would just
 * rest there), turning lifts the part by x + m (x - axis)/distance y per radian (envelope theorem: sliding along the
 * edge changes nothing to first order). In a corner or at the rim m follows from the balance along the edge.
 *
 * Frame: see `window-input.ts`. All lengths mm.
 */
import type { Radians } from '../radians.ts';
import { asRadians } from '../radians.ts';
import { WINDOW_MM } from '../tolerances.ts';
import { outlineDrop, outlineSlope } from './end-outline.ts';
import { findRoot } from './find-root.ts';
import { ceilingReach, edgeDepthRate, edgeDepthSquared, edgeUp, type MouthEdge } from './mouth-edge.ts';
import type { RidingEnd } from './riding-end.ts';
import type { LinePoint } from './window-input.ts';

export type EdgeContact = {
  readonly turn: Radians;
  readonly point: LinePoint;
  /** Height of the part's lowest point, mm above the axis of the inner body. */
  readonly height: number;
  /** Lift per length of turn at the radius 1: mm per radian. Divide by the line's radius for a slope. */
  readonly rise: number;
};

/** mm. Points along an edge are found a thousand times better than the window: heights are up to ten times as sensitive. */
const ACROSS_MM = WINDOW_MM * 1e-3;

/** Finds what the edge carries at this angle; null while no point of the edge is under the part. */
export function edgeContact(edge: MouthEdge, end: RidingEnd, turn: Radians): EdgeContact | null {
  const { outline, axis } = end;
  const rim = outline.partRadius;
  const sin = Math.sin(turn);
  const cos = Math.cos(turn);
  const level = ceilingReach(edge);
  let x = 0;
  let y = 0;
  let distance = 0;
  let yRate = 0; // of y, along the edge, per mm across
  let spread = 0; // half the rate of distance squared, per mm across

  let widest = edge.widest;
  if (spreadAt(widest) > 0) widest = findRoot(spreadAt, 0, widest, ACROSS_MM); // the point furthest under the part
  if (excess(widest) > 0) return null;
  if (gain(widest) >= 0) return contact(widest, outlineSlope(outline, distance));
  let narrowest = 0;
  if (excess(0) > 0) narrowest = findRoot(excess, 0, widest, ACROSS_MM);
  if (gain(narrowest) <= 0) return contact(narrowest, null);
  const peak = findRoot(gain, narrowest, widest, ACROSS_MM);
  const isAtCorner = level > 0 && Math.abs(peak - level) <= 4 * ACROSS_MM;
  place(peak);
  return contact(peak, isAtCorner ? outlineSlope(outline, distance) : null);

  function place(across: number): void {
    const up = edgeUp(edge, across);
    const round = Math.sqrt(edge.bodyRadius ** 2 - across * across);
    const upRate = across < level ? 0 : -across / round;
    x = across * cos - up * sin;
    y = across * sin + up * cos;
    yRate = sin + upRate * cos;
    distance = Math.sqrt(Math.max(0, (x - axis) ** 2 + edgeDepthSquared(edge, across)));
    spread = (x - axis) * (cos - upRate * sin) + edgeDepthRate(edge, across);
  }
  function spreadAt(across: number): number {
    place(across);
    return spread;
  }
  function excess(across: number): number {
    place(across);
    return distance - rim;
  }
  /** Change of y - drop per mm across. */
  function gain(across: number): number {
    place(across);
    return distance > 0 ? yRate - (outlineSlope(outline, distance) * spread) / distance : yRate;
  }
  function contact(across: number, endSlope: number | null): EdgeContact {
    place(across);
    const leverage = distance > 0 ? (x - axis) / distance : 0;
    const slope = endSlope ?? (spread === 0 ? Infinity : Math.max(0, (yRate * distance) / spread));
    return {
      turn: asRadians(turn),
      point: { x, y, z: Math.sqrt(Math.max(0, edgeDepthSquared(edge, across))) },
      height: y - outlineDrop(outline, Math.min(distance, rim)),
      rise: x + (leverage === 0 ? 0 : slope * leverage * y),
    };
  }
}
