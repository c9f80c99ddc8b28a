/**
 * Turns arcs and other curves into short straight lines that stay within a stated distance of them. Frame of the
 * outline; the tolerance is in the same unit as the points.
 */
import { type Edge, type Outline, type Path, type Point, type Region, sweepOf } from './outline.ts';

/** Lists the points of a path; the last one is its end. */
export function flattenPath(path: Path, tolerance: number): Point[] {
  const points: Point[] = [path.start];
  let from = path.start;
  for (const edge of path.edges) {
    if (edge.kind === 'arc') points.push(...arcPoints(edge, from, tolerance));
    points.push(edge.to);
    from = edge.to;
  }
  return points;
}

/** Lists the corners of a loop, without repeating the first one at the end. */
export function flattenOutline(outline: Outline, tolerance: number): Point[] {
  const points = flattenPath(outline, tolerance);
  const last = points.at(-1);
  const closes = points.length > 1 && last?.x === outline.start.x && last.y === outline.start.y;
  return closes ? points.slice(0, -1) : points;
}

export function flattenRegion(region: Region, tolerance: number): Point[][] {
  return region.map((outline) => flattenOutline(outline, tolerance));
}

function arcPoints(edge: Extract<Edge, { kind: 'arc' }>, from: Point, tolerance: number): Point[] {
  const sweep = sweepOf(edge, from);
  const steps = arcSteps(edge.radius, Math.abs(sweep), tolerance);
  const start = Math.atan2(from.y - edge.centre.y, from.x - edge.centre.x);
  return Array.from({ length: steps - 1 }, (_, i) => {
    const angle = start + (sweep * (i + 1)) / steps;
    return {
      x: edge.centre.x + edge.radius * Math.cos(angle),
      y: edge.centre.y + edge.radius * Math.sin(angle),
    };
  });
}

/** Counts the chords an arc needs so that none lies further from it than the tolerance. */
export function arcSteps(radius: number, sweep: number, tolerance: number): number {
  if (radius <= tolerance) return 1;
  return Math.max(1, Math.ceil(sweep / (2 * Math.acos(1 - tolerance / radius))));
}

/**
 * Lists points of a smooth curve from t = 0 to t = 1, both ends included, halving where the middle of a chord is off by
 * more than the tolerance. At most 2^10 pieces.
 */
export function sampleCurve(at: (t: number) => Point, tolerance: number): Point[] {
  const points = [at(0)];
  const halve = (from: number, to: number, start: Point, end: Point, depth: number): void => {
    const middle = (from + to) / 2;
    const centre = at(middle);
    const off = distanceToChord(centre, start, end);
    if (depth > 0 && (off > tolerance || depth === 10)) {
      halve(from, middle, start, centre, depth - 1);
      halve(middle, to, centre, end, depth - 1);
    } else points.push(end);
  };
  halve(0, 1, at(0), at(1), 10);
  return points;
}

function distanceToChord(point: Point, start: Point, end: Point): number {
  const x = end.x - start.x;
  const y = end.y - start.y;
  const length = Math.hypot(x, y);
  if (length === 0) return Math.hypot(point.x - start.x, point.y - start.y);
  return Math.abs((point.x - start.x) * y - (point.y - start.y) * x) / length;
}
