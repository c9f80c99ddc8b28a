/** The end view around a line, drawn in a window: metal, what crosses the line, the line itself. */
import type { Assembly } from '../model/assembly/assembly.ts';
import type { CutPart } from '../geometry/cut-parts.ts';
import { bodiesAcross, keyAcrossParts, placeAcross, stackAcross } from '../geometry/end-cut-parts.ts';
import { crossHatch } from '../geometry/hatch.ts';
import { perObject } from '../geometry/per-object.ts';
import { arcTo, type Path, rectangle, type Region } from '../geometry/outline.ts';
import { sidewaysOf, turnOf } from '../geometry/cut-parts.ts';
import { moved } from '../geometry/outline.ts';
import type { Box } from './close-up-frame.ts';
import { crossingRegion } from './crossing-region.ts';
import { hatchFor } from './hatch-styles.ts';
import { springNode } from './long-section-metal.ts';
import { asBounds, edgeNode, linesData, metalNode } from './metal.ts';
import { type DrawingNode, node } from './node.ts';
import { numberText } from './number-text.ts';
import type { StackSplit } from './stack-split.ts';
import { symbolOf } from './split-words.ts';
import {
  pathData,
  pointsData,
  regionData,
  regionPolygons,
  shownBounds,
  toPx,
  type View,
  yPx,
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
  const moving = [
    ...keyAcrossParts(assembly, split.pose, split.chamber),
    ...stackAcross(assembly, split.pose, split.chamber),
  ];
  const atSplit = isTurned(assembly, split) ? [] : moving.filter((part) => part.chamber !== null);
  const children = [
    ...stillMetal(assembly, split, view, box, edges, ground),
    ...moving.map((part) => metalNode(part, view, { hatch: null, edge: edges, shown: box })),
    ...springsAcross(assembly, split, view, box),
    ...crossing(split, view, box),
    ...atSplit.map((part) => edgeNode(part.region, view, edges, box)),
    ...lineArcs(assembly, split, view),
  ];
  return clipped(children, box);
}

/** The hollow and the bodies: the same nodes come back while nothing about them changes. */
function stillMetal(
  assembly: Assembly,
  split: StackSplit,
  view: View,
  box: Box,
  edges: 'medium' | 'narrow',
  ground: 'hollow' | 'no ground',
): readonly DrawingNode[] {
  const turns = assembly.bodies.map((body) => turnOf(split.pose, body.id));
  const look = [
    ...Object.values(view),
    ...Object.values(box),
    split.chamber.id,
    edges,
    ground,
    ...turns,
  ].join(' ');
  const drawn = stillDrawn(assembly);
  const before = drawn.get(look);
  if (before !== undefined) return before;
  const bodies = bodiesAcross(assembly, split.pose, split.chamber);
  const behind = ground === 'hollow' ? [rectangle(shownBounds(view, box))] : shellInside(bodies);
  const nodes = [
    node('path', { class: 'fill fill-hollow', d: regionData(view, behind) }),
    ...bodies.map((part) =>
      metalNode(part, view, { hatch: hatchFor(part.role, 0, 'bodies'), edge: edges, shown: box }),
    ),
  ];
  if (drawn.size >= MOST_LOOKS) drawn.clear();
  drawn.set(look, nodes);
  return nodes;
}

/** Two rows of windows, whole and stretched; a turning plug gives new looks each frame. */
const MOST_LOOKS = 48;
const stillDrawn = perObject<Assembly, Map<string, readonly DrawingNode[]>>(() => new Map());

/** The outside of the shell alone: what of it no metal covers is hollow. */
function shellInside(parts: readonly CutPart[]): Region {
  const outside = parts.find((part) => part.role === 'shell')?.region[0];
  return outside === undefined ? [] : [outside];
}

/** A window is an SVG in the SVG: it cuts off what reaches beyond it, without names that could clash in a page. */
export function clipped(children: readonly DrawingNode[], box: Box): DrawingNode {
  const width = box.right - box.left;
  const height = box.bottom - box.top;
  const viewBox = [box.left, box.top, width, height].map(numberText).join(' ');
  return node('svg', { class: 'window', x: box.left, y: box.top, width, height, viewBox }, children);
}

function springsAcross(assembly: Assembly, split: StackSplit, view: View, box: Box): DrawingNode[] {
  const stack = split.pose.stacks.find((each) => each.chamber === split.chamber.id);
  return (stack?.parts ?? [])
    .filter(({ part, y }) => part.role === 'spring' && yPx(view, y) > box.top)
    .map((posed) => springNode(posed, placeAcross(assembly, split.pose, split.chamber, posed), view, {}));
}

/** What stands across the line, hatched both ways: metal that would have to pass through metal. */
function crossing(split: StackSplit, view: View, box: Box): DrawingNode[] {
  const hasTurned = [...split.pose.turns.values()].some((turn) => turn !== 0);
  if (hasTurned || split.verdict === 'level') return [];
  const sideways = split.above === null ? 0 : sidewaysOf(split.chamber, split.above);
  const region: Region = crossingRegion(split).map((outline) =>
    moved(outline, split.offset < 0 ? sideways : 0, 0),
  );
  const style = { angle: Math.PI / 4, pitch: 4 };
  const lines = crossHatch(regionPolygons(view, region, 0.1), style, asBounds(box));
  if (lines.length === 0) return [];
  const d = linesData(lines);
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
