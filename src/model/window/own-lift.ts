/**
 * How high the lower part's own top holds the upper part while both tilt against each other.
 *
 * The lower part turns with the inner body, the upper part stays upright. A flat top tilts about the body's axis and
 * lifts the upper part on its rising corner; a top domed to the line's radius hardly moves it. Both ends are convex
 * (a dimple is hidden by its rim), so they touch in the plane z = 0: the greatest
 *     across sin(turn) + up cos(turn) - drop of the upper end      over the lower end's outline,
 * which has one peak. The lower part stands where its sideways play lifts least, on either side: the lift is a concave
 * function of the play, so one of the two ends is the least. Frame: see `window-input.ts`. All lengths mm.
 */
import { endDrop } from '../end-shape.ts';
import { WINDOW_MM } from '../tolerances.ts';
import { outlineDrop, outlineOf, outlineSlope } from './end-outline.ts';
import { findRoot } from './find-root.ts';
import { type RidingEnd, ridingEnd } from './riding-end.ts';
import type { LowerPart, UpperPart } from './window-input.ts';

const ACROSS_MM = WINDOW_MM * 1e-3;

/** The two parts that meet at a split. */
export type Split = { readonly lower: LowerPart; readonly upper: UpperPart };

/**
 * Gives the height of the upper part's lowest point while it stands on the lower part alone, as a function of the
 * height of the lower part's highest point (before turning) and the turn, in either direction. An upper part that sinks
 * into the other end's dimple stands lower, and is given no lift.
 */
export function heldByLower({ lower, upper }: Split): (topHeight: number, turn: number) => number {
  const end = ridingEnd(upper);
  const sunk = nesting(lower, upper);
  if (sunk > 0) return (topHeight) => topHeight - sunk;
  if (lower.sideways === 0) return (topHeight, turn) => heldAt(lower, end, topHeight, Math.abs(turn), 0);
  return (topHeight, turn) =>
    Math.min(
      heldAt(lower, end, topHeight, Math.abs(turn), lower.sideways),
      heldAt(lower, end, topHeight, Math.abs(turn), -lower.sideways),
    );
}

function heldAt(lower: LowerPart, end: RidingEnd, topHeight: number, turn: number, aside: number): number {
  const top = outlineOf(lower.top, lower.radius);
  const sin = Math.sin(turn);
  const cos = Math.cos(turn);
  const rim = end.outline.partRadius;
  const from = aside - lower.radius;
  const to = aside + lower.radius;
  if (gain(to) >= 0) return heightAt(to);
  if (gain(from) <= 0) return heightAt(from);
  return heightAt(findRoot(gain, from, to, ACROSS_MM));

  function gain(across: number): number {
    const fromOwnAxis = across - aside;
    const up = topHeight - outlineDrop(top, Math.min(Math.abs(fromOwnAxis), lower.radius));
    const upRate = -Math.sign(fromOwnAxis) * outlineSlope(top, Math.abs(fromOwnAxis));
    const fromAxis = across * cos - up * sin - end.axis;
    if (fromAxis > rim) return -1; // beyond the upper part: come back
    if (fromAxis < -rim) return 1;
    const endRate = Math.sign(fromAxis) * outlineSlope(end.outline, Math.abs(fromAxis));
    return sin + upRate * cos - endRate * (cos - upRate * sin);
  }
  function heightAt(across: number): number {
    const up = topHeight - outlineDrop(top, Math.min(Math.abs(across - aside), lower.radius));
    const fromAxis = Math.min(rim, Math.abs(across * cos - up * sin - end.axis));
    return across * sin + up * cos - outlineDrop(end.outline, fromAxis);
  }
}

/**
 * Measures how far the two ends sink into each other when a split is closed: more than 0 only where one is dimpled and
 * the other reaches into the dimple. Parts are taken to stand on one axis.
 */
export function nesting(lower: LowerPart, upper: UpperPart): number {
  const lowerMouth = lower.top.kind === 'cup' ? Math.min(lower.top.mouthDiameter / 2, lower.radius) : 0;
  const upperMouth = upper.bottom.kind === 'cup' ? Math.min(upper.bottom.mouthDiameter / 2, upper.radius) : 0;
  const narrower = Math.min(lower.radius, upper.radius);
  const reach = Math.min(narrower, Math.max(lowerMouth, upperMouth));
  if (reach === 0) return 0;
  if (lowerMouth > 0 && upperMouth > 0) return together(reach);
  return together(findRoot(rate, 0, reach, ACROSS_MM));

  function together(distance: number): number {
    return endDrop(lower.top, lower.radius, distance) + endDrop(upper.bottom, upper.radius, distance);
  }
  /** The dimple falls at a constant rate; the other end rises ever faster. */
  function rate(distance: number): number {
    const dimple = lowerMouth > 0 ? lower.top : upper.bottom;
    const fall = dimple.kind === 'cup' ? 1 / Math.tan(dimple.includedAngle / 2) : 0;
    const other = lowerMouth > 0 ? outlineOf(upper.bottom, upper.radius) : outlineOf(lower.top, lower.radius);
    return outlineSlope(other, distance) - fall;
  }
}
