/**
 * Polygons: loops of straight lines, for what arcs cannot do exactly (hatching, lines drawn inside an edge, cutting off).
 * Even-odd, like regions. The frame and unit are the caller's.
 */
import type { Point } from './outline.ts';

/** Points in order; the last one joins the first. */
export type Polygon = readonly Point[];

/** Measures the area a loop encloses; positive when it runs anticlockwise with y up. */
export function polygonArea(polygon: Polygon): number {
  return polygon.reduce((sum, { x, y }, i) => {
    const next = polygon[(i + 1) % polygon.length] ?? { x, y };
    return sum + (x * next.y - next.x * y) / 2;
  }, 0);
}

/** Says whether a point lies in an odd number of loops. A point on an edge may count either way. */
export function isInside(polygons: readonly Polygon[], { x, y }: Point): boolean {
  let crossings = 0;
  for (const polygon of polygons) {
    for (const [from, to] of sidesOf(polygon)) {
      if (from.y <= y === to.y <= y) continue;
      if (from.x + ((y - from.y) / (to.y - from.y)) * (to.x - from.x) > x) crossings++;
    }
  }
  return crossings % 2 === 1;
}

export function sidesOf(polygon: Polygon): [Point, Point][] {
  return polygon.map((from, i) => [from, polygon[(i + 1) % polygon.length] ?? from]);
}

/** Keeps what lies above a level. New corners lie on it exactly. */
export function clipAbove(polygon: Polygon, level: number): Point[] {
  return sidesOf(polygon).flatMap(([from, to]) => {
    const kept = from.y >= level ? [from] : [];
    if (from.y >= level === to.y >= level) return kept;
    const share = (level - from.y) / (to.y - from.y);
    return [...kept, { x: from.x + share * (to.x - from.x), y: level }];
  });
}

/** Keeps what lies between two levels. */
export function clipToBand(polygon: Polygon, low: number, high: number): Point[] {
  const upsideDown = clipAbove(polygon, low).map(({ x, y }) => ({ x, y: -y }));
  return clipAbove(upsideDown, -high).map(({ x, y }) => ({ x, y: -y }));
}

/**
 * Draws a loop inside a loop of a region at this distance from it, so that a line twice as wide as the distance, drawn on
 * it, lies inside the metal and never eats the gap beside it. Sharp corners are cut off at twice the distance.
 *
 * @param metalOnLeft whether the metal lies on the left, walking along the loop with y up
 */
export function insetLoop(polygon: Polygon, distance: number, metalOnLeft: boolean): Point[] {
  const corners = withoutRepeats(polygon);
  const count = corners.length;
  return corners.map((corner, i) => {
    const before = corners[(i + count - 1) % count] ?? corner;
    const after = corners[(i + 1) % count] ?? corner;
    const one = leftNormal(before, corner);
    const other = leftNormal(corner, after);
    const x = one.x + other.x;
    const y = one.y + other.y;
    const square = (x ** 2 + y ** 2) / 2; // 1 + cos of the bend: 2 where straight
    const reach =
      (metalOnLeft ? 1 : -1) *
      distance *
      Math.min(1 / Math.max(square, 1e-9), 2 / Math.sqrt(2 * Math.max(square, 1e-9)));
    return { x: corner.x + x * reach, y: corner.y + y * reach };
  });
}

function leftNormal(from: Point, to: Point): Point {
  const length = Math.hypot(to.x - from.x, to.y - from.y) || 1;
  return { x: -(to.y - from.y) / length, y: (to.x - from.x) / length };
}

function withoutRepeats(polygon: Polygon): Point[] {
  return polygon.filter((point, i) => {
    const before = polygon[(i + polygon.length - 1) % polygon.length];
    return before === undefined || Math.hypot(point.x - before.x, point.y - before.y) > 1e-9;
  });
}

/** Says for each loop of a region whether the metal lies on its left. */
export function metalSides(polygons: readonly Polygon[]): boolean[] {
  return polygons.map((polygon, i) => {
    const first = polygon[0];
    const others = polygons.filter((_, j) => j !== i);
    const isHole = first !== undefined && isInside(others, first);
    return polygonArea(polygon) > 0 !== isHole;
  });
}
