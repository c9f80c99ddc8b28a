/**
 * Turned solids: a profile spun about an axis into a closed mesh of triangles, outward side counter-clockwise.
 *
 * Frame: the axis is the y axis; a profile point is its distance from the axis and its height. The profile runs up the
 * outside, from the axis at the bottom to the axis at the top, with the metal on its left (a ring closes on itself and
 * runs counter-clockwise). Lengths mm.
 *
 *      last .______.
 *           |      |      y
 *      axis |      |      |
 *           |      |      +--- r
 *     first '------'
 */
import { known } from '../model/assert.ts';
import { facetCount, unitCircle } from './facets.ts';

export type ProfilePoint = {
  /** From the axis. */
  readonly r: number;
  readonly y: number;
};

/**
 * A closed mesh before it is cut or joined. Each triangle knows the face it belongs to (stretch of the profile ×
 * facets + place around), so that its true normal can be found again after booleans.
 */
export type SolidMesh = {
  readonly positions: Float32Array;
  readonly triangles: Uint32Array;
  readonly faces: Uint32Array;
};

/** Gives the number of facets a profile is spun with: that of its widest place. */
export function latheFacets(profile: readonly ProfilePoint[]): number {
  return facetCount(Math.max(...profile.map((point) => point.r)));
}

/**
 * Spins a profile about the y axis.
 *
 * @param isRing the last point joins the first; otherwise both lie on the axis
 */
export function latheMesh(profile: readonly ProfilePoint[], isRing = false): SolidMesh {
  const facets = latheFacets(profile);
  const circle = unitCircle(facets);
  const positions: number[] = [];
  const rows = profile.map((point) => pushRow(positions, point, circle));
  const triangles: number[] = [];
  const faces: number[] = [];
  const stretches = isRing ? profile.length : profile.length - 1;
  for (let stretch = 0; stretch < stretches; stretch++) {
    const low = known(rows[stretch], 'row of the lathe');
    const high = known(rows[(stretch + 1) % rows.length], 'row of the lathe');
    for (let i = 0; i < facets; i++) {
      const next = (i + 1) % facets;
      const corners = [at(low, i), at(low, next), at(high, next), at(high, i)] as const;
      if (corners[0] !== corners[1]) triangles.push(corners[0], corners[1], corners[2]);
      if (corners[2] !== corners[3]) triangles.push(corners[0], corners[2], corners[3]);
      const face = stretch * facets + i;
      if (corners[0] !== corners[1]) faces.push(face);
      if (corners[2] !== corners[3]) faces.push(face);
    }
  }
  return {
    positions: Float32Array.from(positions),
    triangles: Uint32Array.from(triangles),
    faces: Uint32Array.from(faces),
  };
}

/** Adds the points of one height; a point on the axis is one point, shared by all facets. */
function pushRow(positions: number[], point: ProfilePoint, circle: Float64Array): number[] {
  const facets = circle.length / 2;
  const first = positions.length / 3;
  if (point.r === 0) {
    positions.push(0, point.y, 0);
    return Array.from({ length: facets }, () => first);
  }
  // Around from +z towards +x: seen from above (+y) that is counter-clockwise.
  for (let i = 0; i < facets; i++) {
    positions.push(point.r * at(circle, 2 * i + 1), point.y, point.r * at(circle, 2 * i));
  }
  return Array.from({ length: facets }, (_, i) => first + i);
}

/** A direction in the profile: outward from the axis, and up. */
export type ProfileNormal = { readonly r: number; readonly y: number };

/** Neighbouring stretches that turn by less than this are one smooth surface. 0.6 rad is about 34 degrees. */
const SMOOTH_TURN = 0.6;

/**
 * Gives each stretch of a profile the outward normals of its two ends: shared with the neighbour where the profile is
 * smooth (a dome cut into short stretches), its own at a corner.
 */
export function profileNormals(
  profile: readonly ProfilePoint[],
  isRing = false,
): readonly { readonly from: ProfileNormal; readonly to: ProfileNormal }[] {
  const stretches = isRing ? profile.length : profile.length - 1;
  const flat = Array.from({ length: stretches }, (_, i) => stretchNormal(profile, i));
  return flat.map((own, i) => ({
    from: blend(own, i > 0 ? flat[i - 1] : isRing ? flat.at(-1) : axisMirror(profile[0], own)),
    to: blend(
      own,
      i + 1 < stretches ? flat[i + 1] : isRing ? flat[0] : axisMirror(profile[profile.length - 1], own),
    ),
  }));
}

function stretchNormal(profile: readonly ProfilePoint[], i: number): ProfileNormal {
  const from = known(profile[i], 'profile point');
  const to = known(profile[(i + 1) % profile.length], 'profile point');
  const length = Math.hypot(to.r - from.r, to.y - from.y) || 1;
  return { r: (to.y - from.y) / length, y: (from.r - to.r) / length };
}

/** On the axis a smooth surface meets its own mirror image. */
function axisMirror(point: ProfilePoint | undefined, own: ProfileNormal): ProfileNormal | undefined {
  return point?.r === 0 ? { r: -own.r, y: own.y } : undefined;
}

function blend(own: ProfileNormal, other: ProfileNormal | undefined): ProfileNormal {
  if (other === undefined || own.r * other.r + own.y * other.y < Math.cos(SMOOTH_TURN)) return own;
  const r = own.r + other.r;
  const y = own.y + other.y;
  const length = Math.hypot(r, y);
  return { r: r / length, y: y / length };
}

function at(list: ArrayLike<number>, place: number): number {
  return known(list[place], `entry ${place}`);
}
