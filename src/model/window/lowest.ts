/**
 * How low a split may sit before the upper part stops the turn.
 *
 * Below the line the upper part hangs in the hole of the inner body. Turning brings the mouth of the hole under its
 * end and lifts it, as long as the slope is not steeper than the steepest ramp; an edge that comes under the rim out of
 * nothing counts as upright. The slope falls all along the ride of an edge, so the upper part must already stand as high
 * as the last point that is too steep.
 *
 * That point is found along a circle of the end (its rim, unless the end is too steep there itself). Where the circle
 * meets the edge, the turn angle is explicit: theta - asin(x / r), with theta and r the point's angle and distance from
 * the body's axis and x = axis + sqrt(circle^2 - z^2). Resting there, the part is lifted by
 *     x + m (x - axis) / circle y   per radian,     m = circle y' / (half the rate of distance^2),
 * m being the slope of a straight end that would balance on the edge at this point (see `edge-contact.ts`).
 *
 * A broken mouth is a strip of edges. Seen from a ramp of exactly the steepest slope, the strip's points between its two
 * borders are never the last to be too steep (for a fixed point of the part, the advantage of climbing the strip is
 * convex), so the wall edge decides, and the surface edge only where the strip itself is too steep to climb.
 *
 * Left out: tilt of the parts, the keyway, a turn too short to bring the mouth under the part. All lengths mm.
 */
import { asRadians, type Radians } from '../radians.ts';
import { WINDOW_MM } from '../tolerances.ts';
import type { RidingEnd } from './riding-end.ts';
import { outlineDrop, outlineSlope } from './end-outline.ts';
import { findRoot } from './find-root.ts';
import {
  ceilingReach,
  edgeAcrossAtDepth,
  edgeDepthRate,
  edgeDepthSquared,
  edgeUp,
  type Mouth,
  type MouthEdge,
  mouthEdge,
  surfaceEdge,
} from './mouth-edge.ts';
import type { LinePoint } from './window-input.ts';

/** The last moment at which the ride is too steep: the upper part must already be that high when it comes. */
export type SteepEnd = { readonly turn: Radians; readonly height: number; readonly point: LinePoint };

export type SteepQuestion = {
  readonly mouth: Mouth;
  readonly end: RidingEnd;
  readonly lineRadius: number;
  readonly steepestRamp: Radians;
};

/** mm. Points are found a thousand times better than the window: heights are up to ten times as sensitive. */
const ACROSS_MM = WINDOW_MM * 1e-3;

/** Finds the last moment at which the ride is too steep; null if the upper part is too wide to hang into the hole. */
export function lastTooSteep(question: SteepQuestion): SteepEnd | null {
  const { mouth, end } = question;
  if (end.outline.partRadius >= mouth.holeRadius) return null;
  const atWall = steepEndOf(mouthEdge(mouth, 0), question);
  const outer = surfaceEdge(mouth);
  if (outer === null) return atWall;
  const atSurface = steepEndOf(outer, question);
  return atSurface.height > atWall.height && isStripTooSteep(question, outer, atSurface) ? atSurface : atWall;
}

/** Last too steep moment of one edge alone. */
function steepEndOf(edge: MouthEdge, { end, lineRadius, steepestRamp }: SteepQuestion): SteepEnd {
  const { outline, axis } = end;
  const steepest = Math.tan(steepestRamp) * lineRadius; // mm per radian
  const level = ceilingReach(edge);
  let circle = outline.partRadius;
  let x = 0;
  let y = 0;
  let sin = 0; // of the turn
  let cos = 1;
  settle();
  const drop = outlineDrop(outline, circle);
  const depth = Math.max(0, circle * circle - (x - axis) ** 2);
  return { turn: asRadians(Math.atan2(sin, cos)), height: y - drop, point: { x, y, z: Math.sqrt(depth) } };

  /**
   * Chooses the circle: the smallest on which the end is too steep by itself, else the rim. Going inwards the contact
   * moves to z = 0, where a straight or round end is steepest against the turn, and from there the slope only falls.
   */
  function settle(): void {
    const rim = outline.partRadius;
    const steepestOfEnd = axis + rim + outlineSlope(outline, rim) * edge.bodyRadius;
    if (ownExcess(rim) <= 0 && steepestOfEnd <= steepest) return;
    const justOutsideFace = Math.min(rim, outline.faceRadius + ACROSS_MM);
    const worst = Math.max(justOutsideFace, findRoot(excessInMiddle, WINDOW_MM, rim, ACROSS_MM));
    if (ownExcess(worst) <= 0 && ownExcess(rim) <= 0) return;
    const from = ownExcess(worst) > 0 ? WINDOW_MM : worst;
    if (ownExcess(from) > 0) return; // a point that is too steep up to its tip
    ownExcess(findRoot(ownExcess, from, ownExcess(worst) > 0 ? worst : rim, ACROSS_MM));
  }
  /** By how much the ride is too steep where a circle meets the edge at its widest. */
  function excessInMiddle(radius: number): number {
    circle = radius;
    return excess(edge.widest);
  }
  /** By how much the end itself is too steep on a circle, where the ride on that circle stops being too steep. */
  function ownExcess(radius: number): number {
    circle = radius;
    const least = edgeAcrossAtDepth(edge, circle);
    if (excess(edge.widest) > 0) excess(findRoot(excess, least, edge.widest, ACROSS_MM));
    return x + ((outlineSlope(outline, circle) * (x - axis)) / circle) * y - steepest;
  }
  /** By how much the ride is too steep where the circle meets the edge this far across. */
  function excess(across: number): number {
    const up = edgeUp(edge, across);
    const upRate = across < level ? 0 : -across / up;
    x = axis + Math.sqrt(Math.max(0, circle * circle - edgeDepthSquared(edge, across)));
    const reachSquared = across * across + up * up;
    y = Math.sqrt(Math.max(0, reachSquared - x * x));
    cos = (up * y + across * x) / reachSquared;
    sin = (across * y - up * x) / reachSquared;
    const spread = (x - axis) * (cos - upRate * sin) + edgeDepthRate(edge, across);
    if (spread >= 0) return Infinity; // the edge has not come this far: it is met on both flanks first
    return x + Math.max(0, (sin + upRate * cos) / spread) * (x - axis) * y - steepest;
  }
}

/**
 * Tells whether the strip between wall and surface edge is itself steeper than the steepest ramp where the surface edge
 * leaves it: going down the strip below a fixed point of the part then loses more height than it gains turn.
 */
function isStripTooSteep(question: SteepQuestion, edge: MouthEdge, at: SteepEnd): boolean {
  const { x, y, z } = at.point;
  const sin = Math.sin(at.turn);
  const cos = Math.cos(at.turn);
  const across = x * cos + y * sin;
  const up = y * cos - x * sin;
  const lean = across / Math.hypot(across, z);
  // radians of turn that a mm of height on the strip takes, from the strip's equation (radius, or height, minus the
  // distance from the hole's axis is constant)
  const turnPerHeight =
    edge.coneFoot === null
      ? (y / Math.hypot(x, y) - lean * sin) / (lean * up)
      : (cos - lean * sin) / (across + lean * up);
  return turnPerHeight * Math.tan(question.steepestRamp) * question.lineRadius <= 1;
}
