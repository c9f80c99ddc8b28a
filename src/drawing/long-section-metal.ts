/** What the long section's plane cuts, drawn: hollow spaces, bodies, key broken off, springs, stacks. */
import { known } from '../model/assert.ts';
import type { Assembly } from '../model/assembly/assembly.ts';
import type { Pose, PosedPart } from '../model/assembly/pose.ts';
import { bodySpans, chamberFloorY, shellShape, slotOf } from '../geometry/body-sizes.ts';
import { brokenOff } from '../geometry/broken-off.ts';
import {
  type CutPart,
  cutAlong,
  cutBodies,
  cutKey,
  cutStacks,
  sidewaysOf,
  stackPartKey,
  turnOf,
} from '../geometry/cut-parts.ts';
import { moved, type Outline, rectangle, type Region } from '../geometry/outline.ts';
import { perObject } from '../geometry/per-object.ts';
import { springOutline } from '../geometry/spring-outline.ts';
import { hatchFor, type HatchUse } from './hatch-styles.ts';
import type { LongSectionFrame } from './long-section-frame.ts';
import { metalNode, type MetalStyle, repeatedEdgeData } from './metal.ts';
import { type DrawingNode, group, node } from './node.ts';
import type { EdgeWeight } from './line-weights.ts';
import { pointsData, regionData, repeatedData, toPx, type View } from './view.ts';

/** px. The wave of a broken-off key. */
const BREAK_WAVE = { amplitude: 2.6, wavelength: 46 } as const;

/** Draws the metal; bodies first, so that what stands in them lies over them. */
export function longSectionMetal(
  assembly: Assembly,
  pose: Pose,
  frame: LongSectionFrame,
  planeOffset: number,
  hatch: HatchUse,
): DrawingNode[] {
  const { view } = frame;
  const draw = (part: CutPart): DrawingNode => metalNode(part, view, styleOf(part, hatch, frame.isNarrow));
  const key = cutKey(assembly, pose, planeOffset).map((part) => broken(part, frame));
  return [
    ...stillMetal(assembly, pose, frame, planeOffset, hatch),
    ...key.map(draw),
    ...stacksInPlace(assembly, pose, 'springs', frame, planeOffset, hatch, (one) =>
      springs(assembly, one, view, planeOffset),
    ),
    ...stacksInPlace(assembly, pose, 'parts', frame, planeOffset, hatch, (one) =>
      cutStacks(assembly, one, planeOffset).map(draw),
    ),
  ];
}

/** Draws stack by stack; a stack that stands as it stood in the picture before comes back as the same nodes. */
function stacksInPlace(
  assembly: Assembly,
  pose: Pose,
  what: string,
  { view, isNarrow }: LongSectionFrame,
  planeOffset: number,
  hatch: HatchUse,
  draw: (one: Pose) => DrawingNode[],
): DrawingNode[] {
  const drawn = stacksDrawn(assembly);
  const turns = assembly.bodies.map((body) => turnOf(pose, body.id));
  const look = [view.scaleX, view.originX, view.originY, planeOffset, hatch, isNarrow, ...turns].join(' ');
  return pose.stacks.flatMap((stack) => {
    const heights = stack.parts.map(({ y, topY, turnsWith }) => `${y} ${topY} ${turnsWith}`).join(' ');
    const name = `${what} ${stack.chamber}`;
    const before = drawn.get(name);
    if (before?.look === `${look} ${heights}`) return before.nodes;
    const nodes = draw({ ...pose, stacks: [stack] });
    drawn.set(name, { look: `${look} ${heights}`, nodes });
    return nodes;
  });
}

type DrawnStack = { readonly look: string; readonly nodes: readonly DrawingNode[] };
const stacksDrawn = perObject<Assembly, Map<string, DrawnStack>>(() => new Map());

/**
 * What does not move while the key does: the hollow, the bodies, their far edges. The same nodes come back while nothing
 * about them changes, so that a moving picture draws only what moves.
 */
function stillMetal(
  assembly: Assembly,
  pose: Pose,
  frame: LongSectionFrame,
  planeOffset: number,
  hatch: HatchUse,
): readonly DrawingNode[] {
  const { view, isNarrow } = frame;
  const turns = assembly.bodies.map((body) => turnOf(pose, body.id));
  const look = [view.scaleX, view.originX, view.originY, planeOffset, hatch, isNarrow, ...turns].join(' ');
  const drawn = stillDrawn(assembly);
  const before = drawn.get(look);
  if (before !== undefined) return before;
  const nodes = [
    node('path', { class: 'fill fill-hollow', d: regionData(view, hollow(assembly, planeOffset)) }),
    ...cutBodies(assembly, pose, planeOffset).map((part) =>
      metalNode(part, view, styleOf(part, hatch, isNarrow)),
    ),
    ...behind(assembly, pose, view, planeOffset),
  ];
  if (drawn.size >= MOST_LOOKS) drawn.clear();
  drawn.set(look, nodes);
  return nodes;
}

/** A turning plug gives a new look each frame: only so many are kept. */
const MOST_LOOKS = 8;
const stillDrawn = perObject<Assembly, Map<string, readonly DrawingNode[]>>(() => new Map());

/** Only faces, one colour each, nothing else: for comparing with another rendering of the same section. */
export function flatMetal(
  assembly: Assembly,
  pose: Pose,
  view: View,
  planeOffset: number,
  colourOf: (partKey: string) => string,
): DrawingNode[] {
  return cutAlong(assembly, pose, planeOffset).map((part) =>
    node('path', {
      fill: colourOf(part.partKey),
      'fill-rule': 'evenodd',
      'shape-rendering': 'crispEdges',
      d: regionData(view, part.region),
      'data-part': part.partKey,
    }),
  );
}

function broken(part: CutPart, { view, breakZ }: LongSectionFrame): CutPart {
  if (part.role !== 'key') return part;
  const scale = view.scaleX;
  const region = brokenOff(part.region, {
    x: breakZ,
    amplitude: BREAK_WAVE.amplitude / scale,
    wavelength: BREAK_WAVE.wavelength / scale,
    tolerance: 0.04 / scale,
  });
  return { ...part, region };
}

function styleOf(part: CutPart, hatch: HatchUse, isNarrow: boolean): MetalStyle {
  const place = Number(part.partKey.split(' ').at(-1)) || 0;
  const isBody = part.chamber === null && part.role !== 'key';
  return { hatch: hatchFor(part.role, place, hatch), edge: edgeWeight(isBody, isNarrow) };
}

function edgeWeight(isBody: boolean, isNarrow: boolean): EdgeWeight {
  if (isNarrow) return isBody ? 'medium' : 'narrow';
  return isBody ? 'wide' : 'medium';
}

/**
 * Edges that are seen behind the plane through the keyway: the plug's end faces, and where the chambers are drilled into
 * the keyway's wall down to their ledges. Nothing while the plug is turned, when the plane passes the keyway by.
 */
function behind(assembly: Assembly, pose: Pose, view: View, planeOffset: number): DrawingNode[] {
  const plug = known(assembly.bodies[0], 'plug');
  const slot = slotOf(assembly);
  if (turnOf(pose, plug.id) !== 0 || Math.abs(planeOffset) >= slot.halfWidth) return [];
  const { front, back } = known(bodySpans(assembly)[0], 'span of the plug');
  const upright = (x: number, from: number, to: number): string =>
    pointsData([toPx(view, { x, y: from }), toPx(view, { x, y: to })], false);
  const ends = [front, back].map((z) => upright(z, slot.bottomY, slot.topY));
  const drilled = assembly.chambers.flatMap((chamber) => {
    const { radius } = known(chamber.holes[0], 'hole in the plug');
    if (chamber.closed || radius <= slot.halfWidth) return [];
    const half = Math.sqrt(radius ** 2 - slot.halfWidth ** 2);
    const floor = Math.max(slot.bottomY, chamberFloorY(assembly, chamber));
    const corners = [
      { x: chamber.z - half, y: slot.topY },
      { x: chamber.z - half, y: floor },
      { x: chamber.z + half, y: floor },
      { x: chamber.z + half, y: slot.topY },
    ];
    return [
      pointsData(
        corners.map((corner) => toPx(view, corner)),
        false,
      ),
    ];
  });
  return [node('path', { class: 'behind', d: [...ends, ...drilled].join('') })];
}

/** Everything inside the outlines of shell, sleeve and plug: hollow where no metal is drawn over it. */
function hollow(assembly: Assembly, planeOffset: number): Region {
  const spans = bodySpans(assembly);
  const shell = shellShape(assembly);
  const half = (radius: number): number => Math.sqrt(Math.max(0, radius ** 2 - planeOffset ** 2));
  const boxes = assembly.bodies.map((body, i): Outline => {
    const { front, back } = known(spans[i], `span ${i}`);
    const isShell = i === assembly.bodies.length - 1;
    const reach = half(isShell ? shell.barrelRadius : body.outerRadius);
    const isUnderTower = Math.abs(planeOffset) <= shell.towerHalfWidth;
    const top = isShell && isUnderTower ? shell.topY : body.axisY + reach;
    return rectangle({ left: front, right: back, bottom: body.axisY - reach, top });
  });
  return boxes;
}

function springs(assembly: Assembly, pose: Pose, view: View, planeOffset: number): DrawingNode[] {
  return pose.stacks.flatMap((stack) => {
    const chamber = assembly.chambers.find(({ id }) => id === stack.chamber);
    if (chamber === undefined || chamber.closed) return [];
    return stack.parts.flatMap((posed, i) => {
      const beside = planeOffset - sidewaysOf(chamber, posed);
      if (posed.part.role !== 'spring' || Math.abs(beside) >= posed.part.radius) return [];
      const data = { 'data-part': stackPartKey(chamber.id, i), 'data-chamber': chamber.id };
      const radius = Math.sqrt(posed.part.radius ** 2 - beside ** 2);
      const narrowed = { ...posed, part: { ...posed.part, radius } };
      return [springNode(narrowed, (outline) => moved(outline, chamber.z, 0), view, data)];
    });
  });
}

/** Draws a spring; `place` puts its axis where it stands. */
export function springNode(
  posed: PosedPart,
  place: (outline: Outline) => Outline,
  view: View,
  data: Readonly<Record<string, string>>,
): DrawingNode {
  const { wires, halves, isSolid } = springOutline(posed);
  const far = halves.map(place);
  const children = [
    node('path', { class: 'fill fill-spring-far', d: repeatedData(view, far) }),
    node('path', { class: 'edge edge-fine', d: repeatedEdgeData(far, view, 'fine') }),
    node('path', { class: 'fill fill-spring', d: repeatedData(view, wires.map(place)) }),
  ];
  return group(`part part-spring${isSolid ? ' is-solid' : ''}`, children, data);
}
