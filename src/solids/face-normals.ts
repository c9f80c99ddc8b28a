/**
 * The true outward normals of a cut or joined solid. Booleans leave long thin triangles whose own normals are useless for
 * shading, but every triangle remembers the blank and the face it came from: a turned face is smooth around its axis, any
 * other face is flat and takes the common normal of all its triangles.
 *
 * Frame: of the part. Lengths mm.
 */
import { known } from '../model/assert.ts';
import { latheFacets, type ProfileNormal, profileNormals } from './lathe-mesh.ts';
import type { Lathe, Prism } from './recipe.ts';
import type { ClosedMesh } from './closed-mesh.ts';

/** For each triangle: the blank it came from, its face there, and whether it is the inside of a hole. */
export type FaceSources = {
  readonly blankOf: (triangle: number) => Lathe | Prism | undefined;
  /** A number of the blank. */
  readonly sourceOf: (triangle: number) => number;
  readonly faceOf: (triangle: number) => number;
  readonly isBackside: (triangle: number) => boolean;
};

export type FaceNormals = {
  /** Writes the normals of a triangle's three corners at their places in the list. */
  write(triangle: number, cornerNormals: Float32Array): void;
  /** Whether a tool left this face, rather than the blank's own making. */
  isInside(triangle: number): boolean;
};

/** More faces than any blank has. */
const MOST_FACES = 2 ** 24;

type Stretch = {
  readonly r: number;
  readonly y: number;
  readonly dr: number;
  readonly dy: number;
  readonly from: ProfileNormal;
  readonly to: ProfileNormal;
};
type Turned = {
  readonly lathe: Lathe;
  readonly facets: number;
  readonly stretches: readonly Stretch[];
};

/** Prepares the normals of one mesh. */
export function buildFaceNormals(mesh: ClosedMesh, sources: FaceSources): FaceNormals {
  const turned = new Map<Lathe, Turned>();
  const flat = flatNormals(mesh, sources);
  return {
    isInside: sources.isBackside,
    write(triangle, cornerNormals) {
      const blank = sources.blankOf(triangle);
      if (blank?.kind !== 'lathe' || blank.drape !== null) {
        const normal = known(flat.get(flatKey(sources, triangle)), 'normal of a flat face');
        for (let corner = 0; corner < 3; corner++) cornerNormals.set(normal, 9 * triangle + 3 * corner);
        return;
      }
      const surface = turned.get(blank) ?? describeTurned(blank);
      turned.set(blank, surface);
      const stretch = known(
        surface.stretches[Math.floor(sources.faceOf(triangle) / surface.facets)],
        'stretch of a turned face',
      );
      const sign = sources.isBackside(triangle) ? -1 : 1;
      writeTurned(mesh, triangle, surface.lathe, stretch, sign, cornerNormals);
    },
  };
}

function describeTurned(lathe: Lathe): Turned {
  const normals = profileNormals(lathe.profile, lathe.isRing);
  const stretches = normals.map(({ from, to }, i): Stretch => {
    const start = known(lathe.profile[i], 'profile point');
    const end = known(lathe.profile[(i + 1) % lathe.profile.length], 'profile point');
    return { r: start.r, y: start.y, dr: end.r - start.r, dy: end.y - start.y, from, to };
  });
  return { lathe, facets: latheFacets(lathe.profile), stretches };
}

function writeTurned(
  mesh: ClosedMesh,
  triangle: number,
  lathe: Lathe,
  stretch: Stretch,
  sign: number,
  cornerNormals: Float32Array,
): void {
  const middle = centreAcross(mesh, triangle, lathe);
  for (let corner = 3 * triangle; corner < 3 * triangle + 3; corner++) {
    const place = at(mesh.triangles, corner);
    const { first, second, along } = aboutAxis(mesh, place, lathe);
    const r = Math.hypot(first, second);
    // On the axis itself a corner leans the way its triangle lies.
    const direction = r > 1e-6 ? [first / r, second / r] : middle;
    const normal = normalAt(stretch, r, along);
    const out = [sign * normal.r * at(direction, 0), sign * normal.r * at(direction, 1), sign * normal.y];
    // About y the pair is (z, x); about z it is (x, y), see aboutAxis.
    if (lathe.axis === 'y') cornerNormals.set([at(out, 1), at(out, 2), at(out, 0)], 3 * corner);
    else cornerNormals.set(out, 3 * corner);
  }
}

/** Splits a point into its two coordinates across the axis and the one along it. */
function aboutAxis(
  mesh: ClosedMesh,
  place: number,
  lathe: Lathe,
): { readonly first: number; readonly second: number; readonly along: number } {
  const x = at(mesh.positions, 3 * place) - lathe.at.x;
  const y = at(mesh.positions, 3 * place + 1) - lathe.at.y;
  const z = at(mesh.positions, 3 * place + 2) - lathe.at.z;
  return lathe.axis === 'y' ? { first: z, second: x, along: y } : { first: x, second: y, along: z };
}

function centreAcross(mesh: ClosedMesh, triangle: number, lathe: Lathe): readonly [number, number] {
  let first = 0;
  let second = 0;
  for (let corner = 3 * triangle; corner < 3 * triangle + 3; corner++) {
    const point = aboutAxis(mesh, at(mesh.triangles, corner), lathe);
    first += point.first;
    second += point.second;
  }
  const length = Math.hypot(first, second) || 1;
  return [first / length, second / length];
}

function normalAt(stretch: Stretch, r: number, along: number): ProfileNormal {
  const { dr, dy, from, to } = stretch;
  if (from === to) return from;
  const t = ((r - stretch.r) * dr + (along - stretch.y) * dy) / (dr * dr + dy * dy || 1);
  const share = Math.min(1, Math.max(0, t));
  const mixed = { r: from.r + (to.r - from.r) * share, y: from.y + (to.y - from.y) * share };
  const length = Math.hypot(mixed.r, mixed.y) || 1;
  return { r: mixed.r / length, y: mixed.y / length };
}

/** Sums the triangles of each flat face (cross products weigh by area), so that a sliver cannot tilt it. */
function flatNormals(mesh: ClosedMesh, sources: FaceSources): Map<number, Float32Array> {
  const sums = new Map<number, Float32Array>();
  for (let triangle = 0; triangle < mesh.triangles.length / 3; triangle++) {
    const blank = sources.blankOf(triangle);
    if (blank?.kind === 'lathe' && blank.drape === null) continue;
    const key = flatKey(sources, triangle);
    const sum = sums.get(key) ?? new Float32Array(3);
    addCross(mesh, triangle, sum);
    sums.set(key, sum);
  }
  for (const sum of sums.values()) {
    const length = Math.hypot(at(sum, 0), at(sum, 1), at(sum, 2)) || 1;
    for (let i = 0; i < 3; i++) sum[i] = at(sum, i) / length;
  }
  return sums;
}

function flatKey(sources: FaceSources, triangle: number): number {
  const side = 2 * sources.sourceOf(triangle) + (sources.isBackside(triangle) ? 1 : 0);
  return side * MOST_FACES + sources.faceOf(triangle);
}

function addCross(mesh: ClosedMesh, triangle: number, sum: Float32Array): void {
  const corner = (i: number, axis: number): number =>
    at(mesh.positions, 3 * at(mesh.triangles, 3 * triangle + i) + axis);
  const one = [0, 1, 2].map((axis) => corner(1, axis) - corner(0, axis));
  const two = [0, 1, 2].map((axis) => corner(2, axis) - corner(0, axis));
  for (let i = 0; i < 3; i++) {
    const next = (i + 1) % 3;
    const last = (i + 2) % 3;
    sum[i] = at(sum, i) + at(one, next) * at(two, last) - at(one, last) * at(two, next);
  }
}

function at(list: ArrayLike<number>, place: number): number {
  return list[place] ?? Number.NaN;
}
