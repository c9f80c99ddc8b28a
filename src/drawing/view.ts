/**
 * From millimetres of a picture plane (y up) to CSS pixels of the drawing (y down), with one scale across and one up,
 * which are the same unless a picture is stretched. A negative scale across mirrors: an end view looks in from the front,
 * where the model's x axis points to the left.
 */
import { flattenOutline } from '../geometry/flatten.ts';
import type { Bounds, Edge, Outline, Path, Point, Region } from '../geometry/outline.ts';
import { sweepOf } from '../geometry/outline.ts';
import type { Polygon } from '../geometry/polygon.ts';
import { numberText, roughText } from './number-text.ts';

/** CSS pixels per mm of paper: 96 to the inch. */
export const PX_PER_MM = 96 / 25.4;

export type View = {
  /** px per mm. */
  readonly scaleX: number;
  readonly scaleY: number;
  /** Where the plane's origin lies, px. */
  readonly originX: number;
  readonly originY: number;
};

export function toPx(view: View, { x, y }: Point): Point {
  return { x: view.originX + view.scaleX * x, y: view.originY - view.scaleY * y };
}

export function xPx(view: View, x: number): number {
  return view.originX + view.scaleX * x;
}

export function yPx(view: View, y: number): number {
  return view.originY - view.scaleY * y;
}

/** The part of the plane that a box of the drawing shows, mm. */
export function shownBounds(
  view: View,
  box: { left: number; right: number; top: number; bottom: number },
): Bounds {
  const one = (box.left - view.originX) / view.scaleX;
  const other = (box.right - view.originX) / view.scaleX;
  return {
    left: Math.min(one, other),
    right: Math.max(one, other),
    bottom: (view.originY - box.bottom) / view.scaleY,
    top: (view.originY - box.top) / view.scaleY,
  };
}

/** Path data of a region: true arcs (of an ellipse when stretched). */
export function regionData(view: View, region: Region): string {
  return region.map((outline) => `${pathData(view, outline)}Z`).join('');
}

/** Path data of one path, left open. */
export function pathData(view: View, path: Path): string {
  const parts = [`M${pointText(toPx(view, path.start))}`];
  let from = path.start;
  for (const edge of path.edges) {
    const to = pointText(toPx(view, edge.to));
    if (edge.kind === 'line') parts.push(`L${to}`);
    else parts.push(`A${arcText(view, edge, from)}${to}`);
    from = edge.to;
  }
  return parts.join('');
}

/** Path data of many outlines of one form, each in its place: the form is written once, from its start on. */
export function repeatedData(view: View, outlines: readonly Outline[]): string {
  const [first] = outlines;
  if (first === undefined) return '';
  const form = formData({ ...view, originX: 0, originY: 0 }, first);
  return outlines.map(({ start }) => `M${pointText(toPx(view, start))}${form}`).join('');
}

/** The edges of an outline as steps from one corner to the next, closed. */
function formData(view: View, outline: Outline): string {
  let from = outline.start;
  const steps = outline.edges.map((edge) => {
    const step = toPx(view, { x: edge.to.x - from.x, y: edge.to.y - from.y });
    const text =
      edge.kind === 'line' ? `l${pointText(step)}` : `a${arcText(view, edge, from)}${pointText(step)}`;
    from = edge.to;
    return text;
  });
  return `${steps.join('')}Z`;
}

/** Radii and flags of an arc, as paths take them before its end. */
function arcText(view: View, edge: Extract<Edge, { kind: 'arc' }>, from: Point): string {
  const rx = numberText(edge.radius * Math.abs(view.scaleX));
  const ry = numberText(edge.radius * Math.abs(view.scaleY));
  const large = Math.abs(sweepOf(edge, from)) > Math.PI ? 1 : 0;
  const sweep = edge.clockwise === view.scaleX > 0 ? 1 : 0;
  return `${rx} ${ry} 0 ${large} ${sweep} `;
}

/** Path data through points that already are pixels. */
export function pointsData(points: readonly Point[], closes: boolean): string {
  const text = points.map((point, i) => `${i === 0 ? 'M' : 'L'}${pointText(point)}`).join('');
  return closes ? `${text}Z` : text;
}

/** Corners of a region in pixels; curves within the tolerance, px. */
export function regionPolygons(view: View, region: Region, tolerancePx: number): Polygon[] {
  const scale = Math.max(Math.abs(view.scaleX), Math.abs(view.scaleY));
  return region.map((outline) => loopPolygon(view, outline, tolerancePx / scale));
}

function loopPolygon(view: View, outline: Outline, tolerance: number): Polygon {
  return flattenOutline(outline, tolerance).map((point) => toPx(view, point));
}

export function pointText({ x, y }: Point): string {
  return `${numberText(x)} ${numberText(y)}`;
}

/** A point that is only looked at. */
export function roughPoint({ x, y }: Point): string {
  return `${roughText(x)} ${roughText(y)}`;
}
