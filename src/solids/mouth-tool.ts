/**
 * The tool that breaks or countersinks the mouth of a chamber. The shapes are those of model/window/window-input.ts: a
 * deburred edge has the same size everywhere along the edge, a countersink is a 45 degree cone about the hole's axis,
 * `size` deep at the wall measured from the crest. Frame and units of assembly.ts.
 *
 *      outer mouth                        inner mouth (bore below)
 *      \__________/  beyond the surface     |          |  wall
 *       \        /   surface                |          |
 *        |      |    wall                  /            \  surface
 *        |______|    inside the hole      /______________\ beyond it
 */
import type { MouthShape } from '../model/window/window-input.ts';
import type { ProfilePoint } from './lathe-mesh.ts';
import type { Lathe } from './recipe.ts';

/** The tool reaches this many times its size beyond the surface and down into the hole. */
const REACH = 2;

/** mm. A smaller mouth is sharp. */
const LEAST_MOUTH_MM = 1e-4;

/** Builds the tool; none for a sharp mouth. `surfaceRadius` is that of the round or the bore it opens in. */
export function mouthTool(
  mouth: MouthShape,
  holeRadius: number,
  place: { readonly x: number; readonly z: number },
  surfaceRadius: number,
  axisY: number,
  surface: 'outer' | 'inner',
): Lathe[] {
  if (mouth.kind === 'sharp' || mouth.size < LEAST_MOUTH_MM) return [];
  const { size } = mouth;
  const isDraped = mouth.kind === 'deburred along';
  // Under the crest of a bore a cone reaches down the flanks until it has left the metal.
  const flank = surface === 'inner' && !isDraped ? flankDrop(surfaceRadius, holeRadius + 2 * size) : 0;
  const beyond = REACH * size + flank;
  const outwards = [
    { r: 0, y: -REACH * size },
    { r: holeRadius, y: -REACH * size },
    { r: holeRadius, y: -size },
    { r: holeRadius + size + beyond, y: beyond },
    { r: 0, y: beyond },
  ];
  const profile = surface === 'outer' ? outwards : mirrored(outwards);
  const base = isDraped ? 0 : axisY + surfaceRadius;
  return [
    {
      kind: 'lathe',
      profile,
      isRing: false,
      axis: 'y',
      at: { x: place.x, y: base, z: place.z },
      drape: isDraped ? { radius: surfaceRadius, axisY } : null,
    },
  ];
}

/** How far a round has fallen away at this distance from its crest. */
function flankDrop(radius: number, across: number): number {
  return across >= radius ? radius : radius - Math.sqrt(radius ** 2 - across ** 2);
}

/** Upside down, run through the other way so that the metal stays on its left. */
function mirrored(profile: readonly ProfilePoint[]): ProfilePoint[] {
  return profile.map(({ r, y }) => ({ r, y: -y })).reverse();
}
