/**
 * One cut part as drawing nodes: its cut face filled to the true edge, its hatching, and its outline. Outlines lie
 * inside the metal (insetLoop), so that neither they nor their width ever eat the gap beside a part.
 */
import type { CutPart } from '../geometry/cut-parts.ts';
import { type HatchStyle, hatchLines } from '../geometry/hatch.ts';
import { insetLoop, metalSides } from '../geometry/polygon.ts';
import type { Region } from '../geometry/outline.ts';
import { type DrawingNode, group, node } from './node.ts';
import { EDGE_PX, type EdgeWeight } from './line-weights.ts';
import { pointsData, pointText, regionData, regionPolygons, type View } from './view.ts';

/** px. Curves of hatched areas and outlines are off by no more. */
const CURVE_TOLERANCE_PX = 0.04;

export type MetalStyle = {
  readonly hatch: HatchStyle | null;
  /** null: no outline. */
  readonly edge: EdgeWeight | null;
};

/** Draws a part; `data-part` carries its key. */
export function metalNode(part: CutPart, view: View, style: MetalStyle): DrawingNode {
  const { role, region, partKey, chamber } = part;
  const children = [
    node('path', { class: `fill fill-${role}`, d: regionData(view, region), 'fill-rule': 'evenodd' }),
  ];
  if (style.hatch !== null) children.push(...hatchNodes(region, view, style.hatch, `hatch hatch-${role}`));
  if (style.edge !== null) children.push(edgeNode(region, view, style.edge));
  const data =
    chamber === null ? { 'data-part': partKey } : { 'data-part': partKey, 'data-chamber': chamber };
  return group(`part part-${role}`, children, data);
}

/** Draws hatching as one path. */
export function hatchNodes(region: Region, view: View, style: HatchStyle, className: string): DrawingNode[] {
  const lines = hatchLines(regionPolygons(view, region, CURVE_TOLERANCE_PX), style);
  if (lines.length === 0) return [];
  const d = lines.map(({ from, to }) => `M${pointText(from)}L${pointText(to)}`).join('');
  return [node('path', { class: className, d })];
}

/** Draws the outline of a region inside its metal. */
export function edgeNode(region: Region, view: View, weight: EdgeWeight): DrawingNode {
  const polygons = regionPolygons(view, region, CURVE_TOLERANCE_PX);
  const sides = metalSides(polygons);
  const d = polygons
    .map((polygon, i) => pointsData(insetLoop(polygon, EDGE_PX[weight] / 2, sides[i] ?? true), true))
    .join('');
  return node('path', { class: `edge edge-${weight}`, d });
}
