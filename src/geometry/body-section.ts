/**
 * Plug, sleeve and shell where a plane along the plug cuts them. Frame of the long section: x along the plug from its
 * front face, y up from the plug's axis. mm.
 *
 * A body is an upper and a lower piece with the bore (or the keyway) between them; where the plane passes beside bore
 * and keyway they are one piece. Chambers are cut out of them (piece-with-holes.ts). A body that has turned is cut
 * where the plane then lies (turned-plane.ts): its chambers leave the plane as it turns.
 *
 *        ____________   ___   ______
 *   ____|   upper    |_|   |_|      |
 *  |_________________________________|   bore or keyway
 *   _________________________________
 *  |____   lower                 _____|
 */
import { known } from '../model/assert.ts';
import type { Assembly, AssemblyChamber } from '../model/assembly/assembly.ts';
import {
  bodySpans,
  chamberFloorY,
  crestDropAt,
  flangeRadius,
  retainers,
  shellShape,
  slotOf,
} from './body-sizes.ts';
import { chamberRows, type HoleReach } from './chamber-rows.ts';
import { mirroredUpsideDown, type Outline } from './outline.ts';
import { type Hole, pieceOutlines, type Step } from './piece-with-holes.ts';
import { heightInPlane, heightsWithin, type TurnedPlane, turnedPlane } from './turned-plane.ts';

type Gap = { readonly low: number; readonly high: number };

/** Cuts a body with the plane at distance `offset` across; `turn` is how far the body has turned, radians. */
export function bodySection(assembly: Assembly, bodyIndex: number, offset: number, turn: number): Outline[] {
  const body = known(assembly.bodies[bodyIndex], `body ${bodyIndex}`);
  const plane = turnedPlane(offset, body.axisY, turn);
  const upper = edgeSteps(assembly, bodyIndex, plane, 1);
  if (upper.length === 0) return [];
  const lower = edgeSteps(assembly, bodyIndex, plane, -1);
  const gap = gapOf(assembly, bodyIndex, plane);
  const high = gap === null ? null : level(upper, gap.high);
  const low = gap === null ? null : level(lower, gap.low);
  const whole = { lower, upper };
  const parts =
    high === null || low === null
      ? [whole]
      : [
          { lower: high, upper },
          { lower: notAbove(lower, gap?.low ?? 0), upper: low },
        ];
  const outlines = parts.flatMap((part) => {
    const isUpper = part.upper === upper;
    if (!isUpper && part.lower.every(({ y }) => y >= (part.upper[0]?.y ?? y))) return [];
    const holes = isUpper
      ? holesOf(assembly, bodyIndex, plane, part.lower[0]?.y ?? 0, part.lower === lower)
      : [];
    return pieceOutlines({ ...part, holes });
  });
  return plane.isUpsideDown ? outlines.map((outline) => mirroredUpsideDown(outline, body.axisY)) : outlines;
}

/** Cuts the rings that hold the inner bodies. */
export function retainerSection(assembly: Assembly, lineIndex: number, offset: number): Outline[] {
  const ring = known(retainers(assembly)[lineIndex], `retainer ${lineIndex}`);
  const outer = halfChord(ring.outerRadius, offset);
  if (outer === null) return [];
  const inner = halfChord(ring.innerRadius, offset) ?? 0;
  const { front, back } = ring.span;
  const y = ring.inner.axisY;
  const side = (from: number, to: number): Outline[] =>
    pieceOutlines({
      lower: [{ from: front, to: back, y: from }],
      upper: [{ from: front, to: back, y: to }],
      holes: [],
    });
  if (inner === 0) return side(y - outer, y + outer);
  return [...side(y + inner, y + outer), ...side(y - outer, y - inner)];
}

/** The outer edge of a body in the plane, front to back; empty when the plane passes the body by. */
function edgeSteps(assembly: Assembly, bodyIndex: number, plane: TurnedPlane, side: 1 | -1): Step[] {
  const isShell = bodyIndex === assembly.bodies.length - 1;
  const span = known(bodySpans(assembly)[bodyIndex], `span ${bodyIndex}`);
  if (isShell) return shellSteps(assembly, span.front, span.back, plane.offset, side);
  const body = known(assembly.bodies[bodyIndex], `body ${bodyIndex}`);
  const outerSpan = known(bodySpans(assembly)[bodyIndex + 1], `span ${bodyIndex + 1}`);
  const ring = known(retainers(assembly)[bodyIndex], `retainer ${bodyIndex}`);
  const stretches: { from: number; to: number; radius: number }[] = [
    { from: span.front, to: outerSpan.front, radius: flangeRadius(assembly, bodyIndex) },
    ...crests(assembly, bodyIndex, outerSpan.front, ring.span.front, side),
    { from: ring.span.front, to: ring.span.back, radius: ring.innerRadius },
    { from: ring.span.back, to: span.back, radius: body.outerRadius },
  ];
  const steps = stretches.flatMap(({ from, to, radius }) => {
    const half = halfChord(radius, plane.offset);
    return half === null || to <= from ? [] : [{ from, to, y: body.axisY + side * half }];
  });
  return steps;
}

/** The round itself, lower where its crest is worn or filed at a chamber. */
function crests(
  assembly: Assembly,
  bodyIndex: number,
  from: number,
  to: number,
  side: 1 | -1,
): { from: number; to: number; radius: number }[] {
  const { outerRadius } = known(assembly.bodies[bodyIndex], `body ${bodyIndex}`);
  if (side < 0 || assembly.chambers.length === 0) return [{ from, to, radius: outerRadius }];
  const { chambers } = assembly;
  return chambers.map((chamber, i) => {
    const [before, after] = [chambers[i - 1], chambers[i + 1]];
    return {
      from: before === undefined ? from : (before.z + chamber.z) / 2,
      to: after === undefined ? to : (chamber.z + after.z) / 2,
      radius: outerRadius - crestDropAt(assembly, bodyIndex, chamber),
    };
  });
}

function shellSteps(assembly: Assembly, from: number, to: number, offset: number, side: 1 | -1): Step[] {
  const { barrelRadius, axisY, towerHalfWidth, topY } = shellShape(assembly);
  const half = halfChord(barrelRadius, offset);
  if (half === null) return [];
  const isUnderTower = Math.abs(offset) <= towerHalfWidth;
  return [{ from, to, y: side > 0 && isUnderTower ? topY : axisY + side * half }];
}

/** The empty space through a body's middle: its bore, or the plug's keyway; null where the plane passes beside it. */
function gapOf(assembly: Assembly, bodyIndex: number, plane: TurnedPlane): Gap | null {
  if (bodyIndex === 0) return keywayGap(assembly, plane);
  const body = known(assembly.bodies[bodyIndex], `body ${bodyIndex}`);
  const half = halfChord(body.boreRadius, plane.offset);
  return half === null ? null : { low: body.axisY - half, high: body.axisY + half };
}

function keywayGap(assembly: Assembly, plane: TurnedPlane): Gap | null {
  const slot = slotOf(assembly);
  const within = heightsWithin(plane, slot.halfWidth);
  if (within === null) return null;
  const low = Math.max(within.low, heightInPlane(plane, slot.bottomY));
  const high = Math.min(within.high, heightInPlane(plane, slot.topY));
  return high > low ? { low, high } : null;
}

function holesOf(
  assembly: Assembly,
  bodyIndex: number,
  plane: TurnedPlane,
  lowerY: number,
  isWhole: boolean,
): Hole[] {
  return assembly.chambers.flatMap((chamber) => {
    const hole = known(chamber.holes[bodyIndex], `hole ${bodyIndex} of chamber ${chamber.number}`);
    const reach = reachOf(assembly, bodyIndex, chamber, plane, isWhole ? null : lowerY);
    if (chamber.closed || reach === null) return [];
    const rows = chamberRows(hole, plane, reach);
    const [first, last] = [rows[0], rows.at(-1)];
    if (first === undefined || last === undefined || rows.length < 2) return [];
    const isShell = bodyIndex === assembly.bodies.length - 1;
    return [
      {
        x: chamber.z,
        rows,
        isOpenBelow: !isWhole && first.y === reach.from && reach.from <= lowerY,
        isOpenAbove: !isShell && last.y === reach.to,
      },
    ];
  });
}

/** From where to where a chamber runs through a body in the plane; `lowerY` is the lower edge of the piece it is in. */
function reachOf(
  assembly: Assembly,
  bodyIndex: number,
  chamber: AssemblyChamber,
  plane: TurnedPlane,
  lowerY: number | null,
): HoleReach | null {
  const body = known(assembly.bodies[bodyIndex], `body ${bodyIndex}`);
  const isShell = bodyIndex === assembly.bodies.length - 1;
  const isPlug = bodyIndex === 0;
  const outerRadius = isShell ? null : body.outerRadius - crestDropAt(assembly, bodyIndex, chamber);
  const half = outerRadius === null ? null : halfChord(outerRadius, plane.offset);
  if (outerRadius !== null && half === null) return null;
  const to = half === null ? chamber.capY : body.axisY + half;
  const floor = isPlug ? heightInPlane(plane, chamberFloorY(assembly, chamber)) : -Infinity;
  const from = Math.max(floor, lowerY ?? -Infinity);
  if (!Number.isFinite(from) || from >= to) return null;
  const innerRadius = isPlug || lowerY === null ? null : body.boreRadius;
  return { from, to, innerRadius, outerRadius };
}

function level(steps: readonly Step[], y: number): Step[] {
  const [first, last] = [steps[0], steps.at(-1)];
  return first === undefined || last === undefined ? [] : [{ from: first.from, to: last.to, y }];
}

/** Where the keyway is cut deeper than the round, no metal is left under it. */
function notAbove(steps: readonly Step[], y: number): Step[] {
  return steps.map((step) => ({ ...step, y: Math.min(step.y, y) }));
}

function halfChord(radius: number, offset: number): number | null {
  return Math.abs(offset) < radius ? Math.sqrt(radius ** 2 - offset ** 2) : null;
}
