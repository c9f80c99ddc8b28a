/**
 * Everything a plane across the plug through one chamber's axis cuts, with the same keys as cut-parts.ts. Frame of the
 * end view: x across, y up from the plug's axis, both as in the model. mm. Exact at every turn.
 */
import { known } from '../model/assert.ts';
import type { Assembly, AssemblyChamber } from '../model/assembly/assembly.ts';
import type { Pose, PosedPart } from '../model/assembly/pose.ts';
import { bodyEndView } from './body-end-view.ts';
import { bodyPartKey, type CutPart, keyPartKey, sidewaysOf, stackPartKey, turnOf } from './cut-parts.ts';
import { keyAcross } from './key-section.ts';
import { moved, type Outline, turned } from './outline.ts';
import { partProfile } from './part-profile.ts';
import { sectionOfProfile } from './part-section.ts';

/** Plug, sleeve and shell, from the outside in. */
export function bodiesAcross(assembly: Assembly, pose: Pose, chamber: AssemblyChamber): CutPart[] {
  const bodies = assembly.bodies.map(
    (body, i): CutPart => ({
      partKey: bodyPartKey(body.id),
      role: body.role,
      chamber: null,
      region: bodyEndView(assembly, i, chamber, turnOf(pose, body.id)),
    }),
  );
  return bodies.reverse();
}

/** Balls, pins and drivers, from the bottom. */
export function stackAcross(assembly: Assembly, pose: Pose, chamber: AssemblyChamber): CutPart[] {
  const stack = pose.stacks.find((each) => each.chamber === chamber.id);
  const parts = chamber.closed ? [] : (stack?.parts ?? []);
  return parts.flatMap((posed, i): CutPart[] => {
    const { role } = posed.part;
    if (role === 'spring') return [];
    const region = partAcross(assembly, pose, chamber, posed);
    return [{ partKey: stackPartKey(chamber.id, i), role, chamber: chamber.id, region }];
  });
}

/** A part of the stack, turned with its body. */
export function partAcross(
  assembly: Assembly,
  pose: Pose,
  chamber: AssemblyChamber,
  posed: PosedPart,
): Outline[] {
  const place = placeAcross(assembly, pose, chamber, posed);
  return sectionOfProfile(partProfile(posed.part), 0).map((loop) => place(moved(loop, 0, posed.y)));
}

/** Moves what is drawn upright about the chamber's axis to where it has turned. */
export function placeAcross(
  assembly: Assembly,
  pose: Pose,
  chamber: AssemblyChamber,
  posed: PosedPart,
): (outline: Outline) => Outline {
  const body = assembly.bodies.find(({ id }) => id === posed.turnsWith);
  const turn = turnOf(pose, posed.turnsWith);
  const sideways = sidewaysOf(chamber, posed);
  return (outline) => turned(moved(outline, sideways, 0), turn, { x: 0, y: body?.axisY ?? 0 });
}

/** The key, where there is one at this chamber. */
export function keyAcrossParts(assembly: Assembly, pose: Pose, chamber: AssemblyChamber): CutPart[] {
  const { key } = assembly;
  const outline = key === null ? null : keyAcross(key, chamber.z, pose.travel);
  if (key === null || outline === null) return [];
  const turn = turnOf(pose, known(assembly.bodies[0], 'plug').id);
  const region = [turned(outline, turn, { x: 0, y: 0 })];
  return [{ partKey: keyPartKey(key.id), role: 'key', chamber: null, region }];
}
