/**
 * Where a split that is too high stops the turn. Frame: see `window-input.ts`. Lengths mm, angles radians.
 *
 * Upright, the top of the lower part stands in the outer body's hole (if not given: as wide as the upper part and its
 * play). Turning brings its points to the edge of that hole one after the other, the leading ones first: a point at the
 * distance d from the body's axis, which leads the chamber by the angle a, comes there at the turn asin(hole / d) - a. It
 * is stopped if d is greater than the edge's own distance; else it slips under, and may rub from there on. Meanwhile the
 * inner body has moved straight away from the hole as far as its play goes, and the lower part has been pushed back
 * against the turn. All in the plane z = 0, where the hole is widest and the top leads most.
 */
import { asRadians, type Radians } from '../radians.ts';
import { WINDOW_MM } from '../tolerances.ts';
import { outlineDrop, outlineOf } from './end-outline.ts';
import { findRoot } from './find-root.ts';
import type { LinePoint, WindowInput } from './window-input.ts';

/** Finds the stop; null if the whole top slips under. */
export function lowerStops(input: WindowInput, offset: number): { turn: Radians; contact: LinePoint } | null {
  const { lower, upper, outerHole, lineRadius, clearance } = input;
  const top = outlineOf(lower.top, lower.radius);
  const aside = lower.sideways;
  const hole = outerHole?.radius ?? upper.radius + upper.sideways;
  const edgeUp = clearance / 2 + Math.sqrt(Math.max(0, (lineRadius + clearance / 2) ** 2 - hole * hole));
  const edgeSquared = hole * hole + edgeUp * edgeUp;
  const first = firstBeyond();
  if (first === null) return null;
  const across = aside + first;
  const up = upAt(first);
  const turn = Math.asin(Math.min(1, hole / Math.hypot(across, up))) - Math.atan2(-across, up);
  const contactUp = Math.sqrt(Math.max(0, across * across + up * up - hole * hole));
  return { turn: asRadians(Math.max(0, turn)), contact: { x: -hole, y: contactUp, z: 0 } };

  /** The leading-most point beyond the edge: at a candidate, or between it and the one before. */
  function firstBeyond(): number | null {
    let before = -lower.radius;
    for (const candidate of peaks()) {
      if (beyond(candidate) >= 0)
        return candidate === before ? before : findRoot(beyond, before, candidate, WINDOW_MM);
      before = candidate;
    }
    return null;
  }
  /** Where the distance from the body's axis can have a peak: corners, and where an arc is furthest out. In order. */
  function peaks(): number[] {
    const corners = [-lower.radius, -top.faceRadius, top.faceRadius, lower.radius];
    for (const side of [-1, 1]) {
      const centre = side * top.faceRadius;
      const centreUp = lineRadius + offset - top.arcRadius;
      if (top.arcRadius === 0 || centreUp <= 0) continue;
      const furthest = (top.arcRadius * (aside + centre)) / Math.hypot(aside + centre, centreUp);
      if (furthest * side >= 0 && Math.abs(centre + furthest) < lower.radius) corners.push(centre + furthest);
    }
    return corners.sort((one, other) => one - other);
  }
  function upAt(fromAxis: number): number {
    return lineRadius + offset - outlineDrop(top, Math.abs(fromAxis));
  }
  /** More than 0 where the top reaches further from the body's axis than the edge of the outer hole. mm2. */
  function beyond(fromAxis: number): number {
    return (aside + fromAxis) ** 2 + upAt(fromAxis) ** 2 - edgeSquared;
  }
}
