/** When an edge of the mouth comes under the upper part. Frame: see `window-input.ts`. All lengths mm. */
import { asRadians, type Radians } from '../radians.ts';
import { WINDOW_MM } from '../tolerances.ts';
import type { RidingEnd } from './riding-end.ts';
import { findRoot } from './find-root.ts';
import { edgeDepthSquared, edgeUp, type MouthEdge } from './mouth-edge.ts';
import type { LinePoint } from './window-input.ts';

export type Arrival = { readonly turn: Radians; readonly point: LinePoint };

/** mm across, as for contacts. */
const ACROSS_MM = WINDOW_MM * 1e-6;

/**
 * Finds the turn at which an edge first comes under the rim of the upper part, and the point where it does.
 *
 * A point of the edge reaches the rim at theta - asin(x / r): theta and r its angle and distance from the body's axis,
 * x = axis + sqrt(rim^2 - z^2). That is earliest at z = 0, unless the part leans over so far that the edge meets it on
 * both flanks first. The turn is negative or zero when the part already overlaps the edge in plan at rest.
 */
export function arrivalAt(edge: MouthEdge, end: RidingEnd): Arrival {
  const rim = end.outline.partRadius;
  const least = leastAcross();
  const isFlankFirst = delay(edge.widest) > 0;
  const across = isFlankFirst ? findRoot(delay, least, edge.widest, ACROSS_MM) : edge.widest;
  const up = edgeUp(edge, across);
  const reach = Math.hypot(across, up);
  const depth = Math.max(0, edgeDepthSquared(edge, across));
  const x = end.axis + Math.sqrt(Math.max(0, rim * rim - depth));
  const turn = Math.atan2(across, up) - Math.asin(Math.min(1, x / reach));
  return {
    turn: asRadians(turn),
    point: { x, y: Math.sqrt(Math.max(0, reach * reach - x * x)), z: Math.sqrt(depth) },
  };

  /** Below this across the edge runs past the part's rim along z. */
  function leastAcross(): number {
    if (edgeDepthSquared(edge, 0) <= rim * rim) return 0;
    return findRoot((at) => edgeDepthSquared(edge, at) - rim * rim, 0, edge.widest, ACROSS_MM);
  }
  /** Positive where moving towards z = 0 makes the point arrive later. */
  function delay(at: number): number {
    const height = edgeUp(edge, at);
    const reach = Math.hypot(at, height);
    const fromAxis = Math.sqrt(Math.max(0, rim * rim - edgeDepthSquared(edge, at)));
    const isLevel = height === edge.ceiling;
    const turn = Math.atan2(at, height) - Math.asin(Math.min(1, (end.axis + fromAxis) / reach));
    const upRate = isLevel ? 0 : -at / height;
    const depthRate = edge.coneFoot === null ? -at : -(height - edge.coneFoot) * (at / height) - at;
    return fromAxis * (Math.cos(turn) - upRate * Math.sin(turn)) + depthRate;
  }
}
