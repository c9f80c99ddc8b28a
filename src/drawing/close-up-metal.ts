/** The end view around a line, drawn in a window: metal, what crosses the line, the line itself. */
import type { Assembly } from '../model/assembly/assembly.ts';
import type { CutPart } from '../geometry/cut-parts.ts';
import { cutAcross, placeAcross } from '../geometry/end-cut-parts.ts';
import { crossHatch } from '../geometry/hatch.ts';
import { arcTo, type Path, rectangle, type Region } from '../geometry/outline.ts';
import { sidewaysOf, turnOf } from '../geometry/cut-parts.ts';
import { moved } from '../geometry/outline.ts';
import type { Box } from './close-up-frame.ts';
import { crossingRegion } from './crossing-region.ts';
import { hatchFor } from './hatch-styles.ts';
import { springNode } from './long-section-metal.ts';
import { edgeNode, metalNode } from './metal.ts';
import { type DrawingNode, node } from './node.ts';
import { numberText } from './number-text.ts';
import type { StackSplit } from './stack-split.ts';
import { symbolOf } from './split-words.ts';
import {
  pathData,
  pointsData,
  pointText,
  regionData,
  regionPolygons,
  shownBounds,
  toPx,
  type View,
} from './view.ts';

/** Draws everything the window shows, clipped to it. Without a ground, what lies outside the shell stays bare. */
export function closeUpMetal(
  assembly: Assembly,
  split: StackSplit,
  view: View,
  box: Box,
  edges: 'medium' | 'narrow',
  ground: 'hollow' | 'no ground' = 'hollow',
): DrawingNode {
  const parts = cutAcross(assembly, split.pose, split.chamber.id);
  const behind = ground === 'hollow' ? [rectangle(shownBounds(view, box))] : shellInside(parts);
  const isAtSplit = (part: CutPart): boolean => part.chamber !== null;
  const children = [
    node('path', { class: 'fill fill-hollow', d: regionData(view, behind) }),
    ...parts.map((part) => metalNode(part, view, { hatch: hatchOf(part), edge: edges })),
    ...springsAcross(assembly, split, view),
    ...crossing(split, view),
    ...(isTurned(assembly, split)
      ? []
      : parts.filter(isAtSplit).map((part) => edgeNode(part.region, view, edges))),
    ...lineArcs(assembly, split, view),
  ];
  return clipped(children, box);
}

/** The outside of the shell alone: what of it no metal covers is hollow. */
function shellInside(parts: readonly CutPart[]): Region {
  const outside = parts.find((part) => part.role === 'shell')?.region[0];
  return outside === undefined ? [] : [outside];
}

function hatchOf(part: CutPart): ReturnType<typeof hatchFor> {
  return hatchFor(part.role, 0, 'bodies');
}

/** A window is an SVG in the SVG: it cuts off what reaches beyond it, without names that could clash in a page. */
export function clipped(children: readonly DrawingNode[], box: Box): DrawingNode {
  const width = box.right - box.left;
  const height = box.bottom - box.top;
  const viewBox = [box.left, box.top, width, height].map(numberText).join(' ');
  return node('svg', { class: 'window', x: box.left, y: box.top, width, height, viewBox }, children);
}

function springsAcross(assembly: Assembly, split: StackSplit, view: View): DrawingNode[] {
  const stack = split.pose.stacks.find((each) => each.chamber === split.chamber.id);
  return (stack?.parts ?? [])
    .filter(({ part }) => part.role === 'spring')
    .map((posed) => springNode(posed, placeAcross(assembly, split.pose, split.chamber, posed), view, {}));
}

/** What stands across the line, hatched both ways: metal that would have to pass through metal. */
function crossing(split: StackSplit, view: View): DrawingNode[] {
  const hasTurned = [...split.pose.turns.values()].some((turn) => turn !== 0);
  if (hasTurned || split.verdict === 'level') return [];
  const sideways = split.above === null ? 0 : sidewaysOf(split.chamber, split.above);
  const region: Region = crossingRegion(split).map((outline) =>
    moved(outline, split.offset < 0 ? sideways : 0, 0),
  );
  const lines = crossHatch(regionPolygons(view, region, 0.1), { angle: Math.PI / 4, pitch: 4 });
  if (lines.length === 0) return [];
  const d = lines.map(({ from, to }) => `M${pointText(from)}L${pointText(to)}`).join('');
  return [
    node('path', { class: 'fill crossing', d: regionData(view, region) }),
    node('path', { class: `crossing-hatch verdict-${symbolOf(split.verdict)}`, d }),
  ];
}

/** The lines as arcs: the one looked at dash-dotted, the others pale. */
function lineArcs(assembly: Assembly, split: StackSplit, view: View): DrawingNode[] {
  return assembly.lines.map((line) => {
    const centre = { x: 0, y: line.innerAxisY };
    const start = { x: -line.radius, y: line.innerAxisY };
    const end = { x: line.radius, y: line.innerAxisY };
    const path: Path = { start, edges: [arcTo(end, centre, true)] };
    const isOwn = line.id === split.line.id;
    return node('path', { class: isOwn ? 'shear-line' : 'shear-line is-other', d: pathData(view, path) });
  });
}

/** Says whether anything in the picture has turned. */
export function isTurned(assembly: Assembly, split: StackSplit): boolean {
  return assembly.bodies.some((body) => turnOf(split.pose, body.id) !== 0);
}

/** Where a turn binds: a cross in a circle on the contact. */
export function contactMark(
  contact: { readonly x: number; readonly y: number } | null,
  view: View,
  box: Box,
): DrawingNode[] {
  if (contact === null) return [];
  const { x, y } = toPx(view, contact);
  if (x < box.left || x > box.right || y < box.top || y > box.bottom) return [];
  const arm = 4.5;
  const d = [
    pointsData(
      [
        { x: x - arm, y: y - arm },
        { x: x + arm, y: y + arm },
      ],
      false,
    ),
    pointsData(
      [
        { x: x - arm, y: y + arm },
        { x: x + arm, y: y - arm },
      ],
      false,
    ),
  ].join('');
  return [
    node('circle', { class: 'contact-ring', cx: x, cy: y, r: 9 }),
    node('path', { class: 'symbol verdict-stops', d, 'data-mark': 'contact' }),
  ];
}
