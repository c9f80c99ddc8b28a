/**
 * Where there is metal, asked point by point in space: a second way to plug, sleeve, shell and turned parts that shares
 * nothing with the outlines but the looks of body-sizes.ts. Frame of assembly.ts; mm, radians.
 */
import {
  bodySpans,
  chamberFloorY,
  flangeRadius,
  retainers,
  shellShape,
  slotOf,
} from '../../src/geometry/body-sizes.ts';
import type {
  Assembly,
  AssemblyChamber,
  AssemblyHole,
  StackPart,
} from '../../src/model/assembly/assembly.ts';
import { endDrop } from '../../src/model/end-shape.ts';

export type SpacePoint = { readonly x: number; readonly y: number; readonly z: number };

/** Says whether a point lies in a body that has turned. */
export function isBodyMetal(assembly: Assembly, bodyIndex: number, at: SpacePoint, turn: number): boolean {
  const body = assembly.bodies[bodyIndex]!;
  const up = at.y - body.axisY;
  const x = at.x * Math.cos(turn) + up * Math.sin(turn);
  const y = -at.x * Math.sin(turn) + up * Math.cos(turn);
  const span = bodySpans(assembly)[bodyIndex]!;
  if (at.z < span.front || at.z > span.back) return false;
  if (!isInBlank(assembly, bodyIndex, { x, y, z: at.z })) return false;
  if (bodyIndex > 0 && Math.hypot(x, y) < body.boreRadius) return false;
  if (bodyIndex === 0) {
    const slot = slotOf(assembly);
    if (Math.abs(x) < slot.halfWidth && y > slot.bottomY && y < slot.topY) return false;
  }
  return !assembly.chambers.some((chamber) => isInChamber(assembly, bodyIndex, chamber, { x, y, z: at.z }));
}

function isInBlank(assembly: Assembly, bodyIndex: number, { x, y, z }: SpacePoint): boolean {
  const body = assembly.bodies[bodyIndex]!;
  if (bodyIndex === assembly.bodies.length - 1) {
    const { barrelRadius, towerHalfWidth, topY } = shellShape(assembly);
    const isInTower = Math.abs(x) < towerHalfWidth && y > 0 && y < topY - body.axisY;
    return isInTower || Math.hypot(x, y) < barrelRadius;
  }
  const outerFront = bodySpans(assembly)[bodyIndex + 1]!.front;
  const ring = retainers(assembly)[bodyIndex]!;
  const radius =
    z < outerFront
      ? flangeRadius(assembly, bodyIndex)
      : z > ring.span.front && z < ring.span.back
        ? ring.innerRadius
        : z < ring.span.front && y > 0
          ? body.outerRadius - (nearest(assembly, z)?.crestDrops[bodyIndex] ?? 0)
          : body.outerRadius;
  return Math.hypot(x, y) < radius;
}

function nearest(assembly: Assembly, z: number): AssemblyChamber | undefined {
  return [...assembly.chambers].sort((a, b) => Math.abs(a.z - z) - Math.abs(b.z - z))[0];
}

function isInChamber(
  assembly: Assembly,
  bodyIndex: number,
  chamber: AssemblyChamber,
  at: SpacePoint,
): boolean {
  if (chamber.closed || at.y < -0.9 * assembly.bodies[0]!.outerRadius) return false;
  const body = assembly.bodies[bodyIndex]!;
  const hole = chamber.holes[bodyIndex]!;
  const isShell = bodyIndex === assembly.bodies.length - 1;
  const around = Math.hypot(at.x - hole.sideways, at.z - chamber.z);
  const floor = bodyIndex === 0 ? chamberFloorY(assembly, chamber) - body.axisY : 0;
  const cap = isShell ? chamber.capY - body.axisY : Infinity;
  if (around < hole.radius) return at.y > floor && at.y < cap;
  const crest = body.outerRadius - (isShell ? 0 : (chamber.crestDrops[bodyIndex] ?? 0));
  const outer = !isShell && at.y > 0 && isAboveOuterMouth(hole, crest, around, at);
  return outer || (bodyIndex > 0 && at.y > 0 && isUnderInnerMouth(hole, body.boreRadius, around, at));
}

function isAboveOuterMouth(hole: AssemblyHole, crest: number, around: number, { x, y }: SpacePoint): boolean {
  const mouth = hole.outerMouth;
  if (mouth.kind === 'sharp') return false;
  const beyond = around - hole.radius;
  if (beyond > mouth.size) return false;
  if (mouth.kind === 'countersunk') return y > crest - mouth.size + beyond;
  return Math.hypot(x, y) > crest - mouth.size + beyond;
}

function isUnderInnerMouth(hole: AssemblyHole, bore: number, around: number, { x, y }: SpacePoint): boolean {
  const mouth = hole.innerMouth;
  if (mouth.kind === 'sharp') return false;
  const beyond = around - hole.radius;
  if (mouth.kind === 'countersunk') return y < bore + mouth.size - beyond;
  return beyond <= mouth.size && Math.hypot(x, y) < bore + mouth.size - beyond;
}

/** Says whether a point lies in a ball, pin or driver that stands on `y` = 0; the axis is x = z = 0. No serrations. */
export function isPartMetal(part: StackPart, { x, y, z }: SpacePoint): boolean {
  const around = Math.hypot(x, z);
  if (around > part.radius) return false;
  if (y < endDrop(part.lower, part.radius, around)) return false;
  if (y > part.length - endDrop(part.upper, part.radius, around)) return false;
  const { waist } = part;
  return waist === null || around < waist.radius || y < waist.from || y > waist.from + waist.length;
}
