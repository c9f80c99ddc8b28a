/**
 * The key where a plane along the plug cuts it, at any travel and turn. Frame of the long section. mm.
 */
import type { AssemblyKey } from '../model/assembly/assembly.ts';
import { profileHeightAt } from '../model/contact/key-profile.ts';
import { flattenOutline } from './flatten.ts';
import { placedKey } from './key-outline.ts';
import { mirroredUpsideDown, type Outline, polygonOutline, rectangle } from './outline.ts';
import { clipToBand } from './polygon.ts';
import { CURVE_TOLERANCE_MM } from './tolerances.ts';
import { heightInPlane, heightsWithin, isUpright, turnedPlane } from './turned-plane.ts';

/** Cuts the key with the plane at distance `offset` across; empty where it is not thick enough to be met. */
export function keySection(
  key: AssemblyKey,
  at: { readonly travel: number; readonly offset: number; readonly turn: number },
): Outline[] {
  if (!Number.isFinite(at.travel)) return [];
  const plane = turnedPlane(at.offset, 0, at.turn);
  const within = heightsWithin(plane, key.thickness / 2);
  if (within === null) return [];
  const upright = placedKey(key, at.travel);
  if (isUpright(plane)) return upright;
  const own = (y: number): number => -plane.offset * plane.sin + y * plane.cos;
  const loops = upright.map((outline) => {
    const band = clipToBand(
      flattenOutline(outline, CURVE_TOLERANCE_MM * 10),
      own(within.low),
      own(within.high),
    );
    return polygonOutline(band.map(({ x, y }) => ({ x, y: heightInPlane(plane, y) })));
  });
  const met = loops.filter((loop) => loop.edges.length > 1);
  return plane.isUpsideDown ? met.map((loop) => mirroredUpsideDown(loop, 0)) : met;
}

/** The key cut across at a place along the plug; null where there is no key. */
export function keyAcross(key: AssemblyKey, z: number, travel: number): Outline | null {
  const height = Number.isFinite(travel) ? profileHeightAt(key.profile, z + travel) : 0;
  if (height <= 0) return null;
  const half = key.thickness / 2;
  return rectangle({ left: -half, right: half, bottom: key.bottomY, top: key.bottomY + height });
}
