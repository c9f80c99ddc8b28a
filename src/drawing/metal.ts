/**
 * One cut part as drawing nodes: its cut face filled to the true edge, its hatching, and its outline. Outlines lie
 * inside the metal (insetLoop), so that neither they nor their width ever eat the gap beside a part.
 */
import type { CutPart } from '../geometry/cut-parts.ts';
import { type HatchLine, type HatchStyle, hatchLines } from '../geometry/hatch.ts';
import { insetLoop, metalSides, type Polygon } from '../geometry/polygon.ts';
import type { Bounds, Outline, Point, Region } from '../geometry/outline.ts';
import type { Box } from './label.ts';
import { type DrawingNode, group, node } from './node.ts';
import { EDGE_PX, type EdgeWeight } from './line-weights.ts';
import { regionData, regionPolygons, roughPoint, toPx, type View } from './view.ts';

/** px. Curves of hatched areas and outlines are off by no more. */
const CURVE_TOLERANCE_PX = 0.04;

export type MetalStyle = {
  readonly hatch: HatchStyle | null;
  /** null: no outline. */
  readonly edge: EdgeWeight | null;
  /** The box of the drawing that is shown; what lies outside needs neither hatching nor outline. */
  readonly shown?: Box;
};

/** Draws a part; `data-part` carries its key. */
export function metalNode(part: CutPart, view: View, style: MetalStyle): DrawingNode {
  const { role, region, partKey, chamber } = part;
  const children = [
    node('path', { class: `fill fill-${role}`, d: regionData(view, region), 'fill-rule': 'evenodd' }),
  ];
  const polygons = regionPolygons(view, region, CURVE_TOLERANCE_PX);
  if (style.hatch !== null)
    children.push(...hatchNodes(polygons, style.hatch, `hatch hatch-${role}`, style.shown));
  if (style.edge !== null) children.push(edgeOf(polygons, style.edge, style.shown));
  const data =
    chamber === null ? { 'data-part': partKey } : { 'data-part': partKey, 'data-chamber': chamber };
  return group(`part part-${role}`, children, data);
}

/** Draws hatching as one path. */
function hatchNodes(
  polygons: readonly Polygon[],
  style: HatchStyle,
  className: string,
  shown: Box | undefined,
): DrawingNode[] {
  const lines = hatchLines(polygons, style, shown === undefined ? undefined : asBounds(shown));
  return lines.length === 0 ? [] : [node('path', { class: className, d: linesData(lines) })];
}

/** Path data of separate lines. */
export function linesData(lines: readonly HatchLine[]): string {
  return lines.map(({ from, to }) => `M${roughPoint(from)}L${roughPoint(to)}`).join('');
}

/** A box of the drawing as bounds: with y down, its upper edge has the smaller y. */
export function asBounds({ left, right, top, bottom }: Box): Bounds {
  return { left, right, bottom: top, top: bottom };
}

/** Draws the outline of a region inside its metal. */
export function edgeNode(region: Region, view: View, weight: EdgeWeight, shown?: Box): DrawingNode {
  return edgeOf(regionPolygons(view, region, CURVE_TOLERANCE_PX), weight, shown);
}

function edgeOf(polygons: readonly Polygon[], weight: EdgeWeight, shown: Box | undefined): DrawingNode {
  const sides = metalSides(polygons);
  const d = polygons
    .map((polygon, i) => insetLoop(polygon, EDGE_PX[weight] / 2, sides[i] ?? true))
    .map((loop) => (shown === undefined ? roughLoop(loop) : shownPieces(loop, shown)))
    .join('');
  return node('path', { class: `edge edge-${weight}`, d });
}

/** Path data of the outlines of many parts of one form, each in its place. */
export function repeatedEdgeData(outlines: readonly Outline[], view: View, weight: EdgeWeight): string {
  const [first] = outlines;
  if (first === undefined) return '';
  const polygons = regionPolygons(view, [first], CURVE_TOLERANCE_PX);
  const side = metalSides(polygons)[0] ?? true;
  const loop = polygons.flatMap((polygon) => insetLoop(polygon, EDGE_PX[weight] / 2, side));
  const [start] = loop;
  if (start === undefined) return '';
  const form = loop
    .slice(1)
    .map((point, i) => {
      const before = loop[i] ?? start;
      return `l${roughPoint({ x: point.x - before.x, y: point.y - before.y })}`;
    })
    .join('');
  const from = toPx(view, first.start);
  return outlines
    .map((outline) => {
      const to = toPx(view, outline.start);
      return `M${roughPoint({ x: start.x + to.x - from.x, y: start.y + to.y - from.y })}${form}Z`;
    })
    .join('');
}

function roughLoop(loop: readonly Point[]): string {
  return loop.length === 0 ? '' : `M${loop.map(roughPoint).join('L')}Z`;
}

/** The pieces of a loop that come near the box. */
function shownPieces(loop: readonly Point[], { left, right, top, bottom }: Box): string {
  const isNear = (a: Point, b: Point): boolean =>
    Math.max(a.x, b.x) > left - 3 &&
    Math.min(a.x, b.x) < right + 3 &&
    Math.max(a.y, b.y) > top - 3 &&
    Math.min(a.y, b.y) < bottom + 3;
  let d = '';
  let isDrawing = false;
  loop.forEach((from, i) => {
    const to = loop[(i + 1) % loop.length] ?? from;
    if (isNear(from, to)) d += isDrawing ? `L${roughPoint(to)}` : `M${roughPoint(from)}L${roughPoint(to)}`;
    isDrawing = isNear(from, to);
  });
  return d;
}
