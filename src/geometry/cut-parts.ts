/**
 * Everything the long section's plane cuts, each with a key that drawing, solids and tests share. Frame of the long
 * section: x along the plug, y up; the plane stands at `planeOffset` across. mm.
 *
 *   body <id>              plug, sleeve, shell
 *   retainer <line id>     the ring that keeps the inner body of a line from coming forward
 *   key <id>               the key
 *   part <chamber> <n>     the part in place n of a stack, from the bottom, counting from 0
 *
 * Springs are not listed: they are drawn by convention (spring-outline.ts), not cut.
 */
import { known } from '../model/assert.ts';
import type { Assembly, AssemblyChamber, PartRole } from '../model/assembly/assembly.ts';
import type { Pose, PosedPart } from '../model/assembly/pose.ts';
import { bodySection, retainerSection } from './body-section.ts';
import { keySection } from './key-section.ts';
import { moved, type Outline, type Region } from './outline.ts';
import { partProfile } from './part-profile.ts';
import { sectionOfProfile } from './part-section.ts';
import { turnedPlane } from './turned-plane.ts';
import { turnedPartSection } from './turned-section.ts';

export type CutRole = 'plug' | 'sleeve' | 'shell' | 'retainer' | 'key' | Exclude<PartRole, 'spring'>;

export type CutPart = {
  readonly partKey: string;
  readonly role: CutRole;
  /** Of the chamber it stands in; null for bodies and key. */
  readonly chamber: string | null;
  readonly region: Region;
};

/** Lists what the plane cuts, bodies first, then key and stacks; what it passes by is left out. */
export function cutAlong(assembly: Assembly, pose: Pose, planeOffset: number): CutPart[] {
  return [
    ...cutBodies(assembly, pose, planeOffset),
    ...cutKey(assembly, pose, planeOffset),
    ...cutStacks(assembly, pose, planeOffset),
  ];
}

/** Bodies from the outside in, then the rings that hold them. */
export function cutBodies(assembly: Assembly, pose: Pose, planeOffset: number): CutPart[] {
  const bodies = assembly.bodies.map(
    (body, i): CutPart => ({
      partKey: bodyPartKey(body.id),
      role: body.role,
      chamber: null,
      region: bodySection(assembly, i, planeOffset, turnOf(pose, body.id)),
    }),
  );
  const rings = assembly.lines.map(
    (line, i): CutPart => ({
      partKey: `retainer ${line.id}`,
      role: 'retainer',
      chamber: null,
      region: retainerSection(assembly, i, planeOffset),
    }),
  );
  return [...bodies.reverse(), ...rings].filter(isMet);
}

export function cutKey(assembly: Assembly, pose: Pose, planeOffset: number): CutPart[] {
  const { key } = assembly;
  if (key === null) return [];
  const turn = turnOf(pose, known(assembly.bodies[0], 'plug').id);
  const region = keySection(key, { travel: pose.travel, offset: planeOffset, turn });
  return [{ partKey: keyPartKey(key.id), role: 'key', chamber: null, region } as const].filter(isMet);
}

/** Balls, pins and drivers, chamber by chamber from the bottom. */
export function cutStacks(assembly: Assembly, pose: Pose, planeOffset: number): CutPart[] {
  const parts = pose.stacks.flatMap((stack) => {
    const chamber = assembly.chambers.find(({ id }) => id === stack.chamber);
    if (chamber === undefined || chamber.closed) return [];
    return stack.parts.flatMap((posed, i): CutPart[] => {
      const { role } = posed.part;
      if (role === 'spring') return [];
      const region = cutPosedPart(assembly, pose, chamber, posed, planeOffset);
      return [{ partKey: stackPartKey(chamber.id, i), role, chamber: chamber.id, region }];
    });
  });
  return parts.filter(isMet);
}

function isMet(part: CutPart): boolean {
  return part.region.length > 0;
}

function cutPosedPart(
  assembly: Assembly,
  pose: Pose,
  chamber: AssemblyChamber,
  posed: PosedPart,
  offset: number,
): Outline[] {
  const body = assembly.bodies.find(({ id }) => id === posed.turnsWith);
  const turn = turnOf(pose, posed.turnsWith);
  const sideways = sidewaysOf(chamber, posed);
  const profile = partProfile(posed.part);
  if (turn === 0)
    return sectionOfProfile(profile, offset - sideways).map((loop) => moved(loop, chamber.z, posed.y));
  const plane = turnedPlane(offset, body?.axisY ?? 0, turn);
  return turnedPartSection(profile, plane, posed.y, sideways).map((loop) => moved(loop, chamber.z, 0));
}

/** How far out of the plug's middle plane a part stands: as far as the hole it is in. */
export function sidewaysOf(chamber: AssemblyChamber, posed: PosedPart): number {
  return chamber.holes.find(({ body }) => body === posed.turnsWith)?.sideways ?? 0;
}

/** How far a body has turned, radians. */
export function turnOf(pose: Pose, body: string): number {
  return pose.turns.get(body) ?? 0;
}

/** The key of a part of a stack in `cutAlong`, for parts that are not cut (springs) as well. */
export function stackPartKey(chamber: string, place: number): string {
  return `part ${chamber} ${place}`;
}

export function bodyPartKey(body: string): string {
  return `body ${body}`;
}

export function keyPartKey(key: string): string {
  return `key ${key}`;
}
