/**
 * Plug, sleeve and shell cut across, through the axis of one chamber. Frame of the end view: x across, y up from the
 * plug's axis, both as in the model. mm. Arcs are true arcs.
 *
 *            ____________
 *           |    |  |    |      tower of the shell with the chamber in it
 *          .'    |  |    '.
 *         /   .--'  '--.   \    bore
 *        |   /  _|  |_  \   |   mouths
 *        |  |  | |  | |  |  |   chamber, then keyway, in the plug
 *         \  \   |__|   /  /
 *          '. '--------' .'
 *            '----------'
 */
import { known } from '../model/assert.ts';
import type { Assembly, AssemblyBody, AssemblyChamber, AssemblyHole } from '../model/assembly/assembly.ts';
import { chamberFloorY, crestDropAt, shellShape, slotOf } from './body-sizes.ts';
import { mouthAcross, type MouthCorner } from './mouth-curve.ts';
import {
  arcTo,
  circle,
  type Edge,
  lineTo,
  moved,
  type Outline,
  type Point,
  rectangle,
  turned,
} from './outline.ts';

const AXIS: Point = { x: 0, y: 0 };

/** Cuts a body across at a chamber; `turn` is how far it has turned, radians. */
export function bodyEndView(
  assembly: Assembly,
  bodyIndex: number,
  chamber: AssemblyChamber,
  turn: number,
): Outline[] {
  const body = known(assembly.bodies[bodyIndex], `body ${bodyIndex}`);
  const hole = known(chamber.holes[bodyIndex], `hole ${bodyIndex} of chamber ${chamber.number}`);
  const crest = body.outerRadius - crestDropAt(assembly, bodyIndex, chamber);
  const upright =
    bodyIndex === 0
      ? plugLoops(assembly, body, chamber, hole, crest)
      : bodyIndex === assembly.bodies.length - 1
        ? shellLoops(assembly, body, chamber, hole)
        : sleeveLoops(body, chamber, hole, crest);
  const about = { x: 0, y: body.axisY };
  return upright.map((outline) => turned(moved(outline, 0, body.axisY), turn, about));
}

/** What follows is about the body's own axis. A side runs from the surface down: mouth, wall, ledge, keyway. */
type Side = { readonly surface: Point; readonly down: readonly Point[] };

function plugLoops(
  assembly: Assembly,
  body: AssemblyBody,
  chamber: AssemblyChamber,
  hole: AssemblyHole,
  crest: number,
): Outline[] {
  const slot = slotOf(assembly);
  const half = slot.halfWidth;
  const bottom = slot.bottomY - body.axisY;
  const top = slot.topY - body.axisY;
  const foot = -Math.sqrt(body.outerRadius ** 2 - half ** 2);
  const isOpenBelow = bottom <= foot;
  const floor = chamberFloorY(assembly, chamber) - body.axisY;
  if (chamber.closed) return solidPlug(body.outerRadius, half, { bottom, top, foot, isOpenBelow });
  const sideOf = (side: 1 | -1): Side => {
    const { wall, surface } = mouthAcross(hole.outerMouth, hole, crest, 'outer', side);
    const ledge = side * wall.x > half ? floor : top;
    const down = [wall, { x: wall.x, y: ledge }, { x: side * half, y: ledge }];
    return { surface, down: [...down, { x: side * half, y: isOpenBelow ? foot : bottom }] };
  };
  const [right, left] = [sideOf(1), sideOf(-1)];
  const worn = { crest, radius: body.outerRadius };
  if (!isOpenBelow) {
    const around = [
      ...wornStep(worn, 1),
      ...arcFromWorn(worn, 1, wornEdge(worn, -1)),
      ...wornStepBack(worn, -1, left.surface),
    ];
    return [
      {
        start: right.surface,
        edges: [...around, ...toLines(left.down), ...toLines([...right.down].reverse()), line(right.surface)],
      },
    ];
  }
  return [right, left].map((side, i): Outline => {
    const sign = i === 0 ? 1 : -1;
    const around = [...wornStep(worn, sign), ...arcFromWorn(worn, sign, { x: sign * half, y: foot })];
    return {
      start: side.surface,
      edges: [...around, ...toLines([...side.down].reverse().slice(1)), line(side.surface)],
    };
  });
}

type SlotReach = {
  readonly bottom: number;
  readonly top: number;
  readonly foot: number;
  readonly isOpenBelow: boolean;
};

/** Beside a closed chamber the plug is solid but for its keyway. */
function solidPlug(radius: number, half: number, slot: SlotReach): Outline[] {
  if (!slot.isOpenBelow)
    return [
      circle(AXIS, radius),
      rectangle({ left: -half, right: half, bottom: slot.bottom, top: slot.top }),
    ];
  const end = { x: -half, y: slot.foot };
  const edges = [arcTo(end, AXIS, false), lineTo(-half, slot.top), lineTo(half, slot.top)];
  return [{ start: { x: half, y: slot.foot }, edges: [...edges, lineTo(half, slot.foot)] }];
}

function sleeveLoops(
  body: AssemblyBody,
  chamber: AssemblyChamber,
  hole: AssemblyHole,
  crest: number,
): Outline[] {
  if (chamber.closed) return [circle(AXIS, body.outerRadius), circle(AXIS, body.boreRadius)];
  const corner = (side: 1 | -1): { outer: MouthCorner; inner: MouthCorner } => ({
    outer: mouthAcross(hole.outerMouth, hole, crest, 'outer', side),
    inner: mouthAcross(hole.innerMouth, hole, body.boreRadius, 'inner', side),
  });
  const [right, left] = [corner(1), corner(-1)];
  const worn = { crest, radius: body.outerRadius };
  return [
    {
      start: right.outer.surface,
      edges: [
        ...wornStep(worn, 1),
        ...arcFromWorn(worn, 1, wornEdge(worn, -1)),
        ...wornStepBack(worn, -1, left.outer.surface),
        ...toLines([left.outer.wall, left.inner.wall, left.inner.surface]),
        arcTo(right.inner.surface, AXIS, false),
        ...toLines([right.inner.wall, right.outer.wall, right.outer.surface]),
      ],
    },
  ];
}

function shellLoops(
  assembly: Assembly,
  body: AssemblyBody,
  chamber: AssemblyChamber,
  hole: AssemblyHole,
): Outline[] {
  const { barrelRadius, towerHalfWidth, topY } = shellShape(assembly);
  const top = topY - body.axisY;
  const shoulder = Math.sqrt(barrelRadius ** 2 - towerHalfWidth ** 2);
  const outside: Outline = {
    start: { x: towerHalfWidth, y: top },
    edges: [
      lineTo(-towerHalfWidth, top),
      lineTo(-towerHalfWidth, shoulder),
      arcTo({ x: towerHalfWidth, y: shoulder }, AXIS, false),
      lineTo(towerHalfWidth, top),
    ],
  };
  if (chamber.closed) return [outside, circle(AXIS, body.boreRadius)];
  const [right, left] = ([1, -1] as const).map((side) =>
    mouthAcross(hole.innerMouth, hole, body.boreRadius, 'inner', side),
  );
  const [near, far] = [known(right, 'right mouth'), known(left, 'left mouth')];
  const cap = chamber.capY - body.axisY;
  const inside: Outline = {
    start: { x: near.wall.x, y: cap },
    edges: [
      ...toLines([{ x: far.wall.x, y: cap }, far.wall, far.surface]),
      arcTo(near.surface, AXIS, false),
      ...toLines([near.wall, { x: near.wall.x, y: cap }]),
    ],
  };
  return [outside, inside];
}

/** A crest lower than the round: the upper half is that much smaller, concentric with it. */
type WornCrest = { readonly crest: number; readonly radius: number };

/** From the mouth to where the worn part ends, on the full round. Nothing where nothing is worn. */
function wornStep(worn: WornCrest, side: 1 | -1): Edge[] {
  if (worn.crest === worn.radius) return [];
  const edge = wornEdge(worn, side);
  const share = worn.crest / worn.radius;
  return [arcTo({ x: edge.x * share, y: edge.y * share }, AXIS, side === 1), line(edge)];
}

function wornStepBack(worn: WornCrest, side: 1 | -1, mouth: Point): Edge[] {
  if (worn.crest === worn.radius) return [arcTo(mouth, AXIS, true)];
  const edge = wornEdge(worn, side);
  const share = worn.crest / worn.radius;
  return [lineTo(edge.x * share, edge.y * share), arcTo(mouth, AXIS, side === -1)];
}

function wornEdge({ radius }: WornCrest, side: 1 | -1): Point {
  return { x: side * radius, y: 0 };
}

/** Around the round from one side; where nothing is worn the arc to the far mouth does it all. */
function arcFromWorn(worn: WornCrest, side: 1 | -1, to: Point): Edge[] {
  const endsAtMouth = worn.crest === worn.radius && to.y >= 0;
  return endsAtMouth ? [] : [arcTo(to, AXIS, side === 1)];
}

function toLines(points: readonly Point[]): Edge[] {
  return points.map(line);
}

function line(to: Point): Edge {
  return { kind: 'line', to };
}
