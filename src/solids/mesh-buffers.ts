/**
 * What the graphics card is given: plain arrays of one part, its skin apart from the face that the section plane cut.
 *
 * Frame: of the part. Lengths mm. Triangles counter-clockwise from outside. Cut-face coordinates are measured along the
 * plane (see planeAxes), so that hatching stays put when the part moves.
 */
import { known } from '../model/assert.ts';
import type { ClosedMesh } from './closed-mesh.ts';
import { dropPointTriangles } from './drop-points.ts';
import { planeAxes, type SectionPlane, type Triple } from './section-plane.ts';
import type { FaceNormals } from './face-normals.ts';

export type MeshBuffers = {
  readonly positions: Float32Array;
  readonly normals: Float32Array;
  /** For each vertex: 1 on the wall of something drilled, bored or milled out, 0 on the outside. */
  readonly inside: Uint8Array;
  readonly indices: Uint32Array;
  readonly capPositions: Float32Array;
  readonly capIndices: Uint32Array;
  /** Two for each cap position: across and up, mm. */
  readonly capUv: Float32Array;
  /** Pairs of points: sharp edges of the skin. */
  readonly creases: Float32Array;
  /** Pairs of points: where the cut face ends; the face lies on the left, looked at against its normal. */
  readonly capOutline: Float32Array;
};

/** mm. A corner this near the section plane lies in it: single precision at 50 mm is good to 4e-6. */
const IN_PLANE_MM = 2e-5;

/** Cosine of the least turn that is drawn as an edge: 25 degrees, well above the turn from facet to facet. */
const CREASE_COSINE = Math.cos((25 * Math.PI) / 180);

/** Corner normals closer than this share a vertex. */
const SAME_NORMAL_COSINE = 0.9995;

/** Splits a mesh into skin and cut face and finds its drawn edges. Works on the mesh's own arrays. */
export function buildMeshBuffers(
  mesh: ClosedMesh,
  faces: FaceNormals,
  plane: SectionPlane | null,
): MeshBuffers {
  const isGone = dropPointTriangles(mesh);
  const isCap = plane ? markCap(mesh, plane) : new Uint8Array(mesh.triangles.length / 3);
  const skin = new SkinWriter(mesh);
  const cap = new CapWriter(mesh, plane);
  const cornerNormals = new Float32Array(mesh.triangles.length * 3);
  for (let triangle = 0; triangle < isCap.length; triangle++) {
    if (isGone?.[triangle] === 1) continue;
    if (isCap[triangle] === 1) {
      cap.add(triangle);
      continue;
    }
    faces.write(triangle, cornerNormals);
    skin.add(triangle, cornerNormals, faces.isInside(triangle));
  }
  return { ...skin.finish(), ...cap.finish(), ...edgesOf(mesh, isGone, isCap, cornerNormals) };
}

/** Lists every array of a set of buffers that can be handed over to another thread. */
export function transferables(buffers: MeshBuffers): ArrayBuffer[] {
  return Object.values(buffers).map(
    (array: Float32Array | Uint32Array | Uint8Array) => array.buffer as ArrayBuffer,
  );
}

function markCap(mesh: ClosedMesh, plane: SectionPlane): Uint8Array {
  const { positions, triangles } = mesh;
  const [x, y, z] = plane.normal;
  const inPlane = new Uint8Array(positions.length / 3);
  for (let i = 0; i < inPlane.length; i++) {
    const height = x * at(positions, 3 * i) + y * at(positions, 3 * i + 1) + z * at(positions, 3 * i + 2);
    inPlane[i] = Math.abs(height - plane.offset) < IN_PLANE_MM ? 1 : 0;
  }
  const isCap = new Uint8Array(triangles.length / 3);
  for (let i = 0; i < isCap.length; i++) {
    const corners =
      at(inPlane, at(triangles, 3 * i)) +
      at(inPlane, at(triangles, 3 * i + 1)) +
      at(inPlane, at(triangles, 3 * i + 2));
    isCap[i] = corners === 3 ? 1 : 0;
  }
  return isCap;
}

/** Gathers skin triangles; corners with the same place and normal share a vertex. */
class SkinWriter {
  readonly #mesh: ClosedMesh;
  readonly #positions: number[] = [];
  readonly #normals: number[] = [];
  readonly #inside: number[] = [];
  readonly #indices: number[] = [];
  /** Last vertex written for a place, and for each vertex the one written before it at the same place. */
  readonly #latest: Int32Array;
  readonly #previous: number[] = [];

  constructor(mesh: ClosedMesh) {
    this.#mesh = mesh;
    this.#latest = new Int32Array(mesh.positions.length / 3).fill(-1);
  }

  add(triangle: number, cornerNormals: Float32Array, isInside: boolean): void {
    for (let corner = 3 * triangle; corner < 3 * triangle + 3; corner++) {
      const place = at(this.#mesh.triangles, corner);
      this.#indices.push(
        this.#vertex(
          place,
          isInside ? 1 : 0,
          at(cornerNormals, 3 * corner),
          at(cornerNormals, 3 * corner + 1),
          at(cornerNormals, 3 * corner + 2),
        ),
      );
    }
  }

  #vertex(place: number, inside: number, x: number, y: number, z: number): number {
    let vertex = at(this.#latest, place);
    while (vertex >= 0) {
      const likeness =
        x * at(this.#normals, 3 * vertex) +
        y * at(this.#normals, 3 * vertex + 1) +
        z * at(this.#normals, 3 * vertex + 2);
      if (likeness > SAME_NORMAL_COSINE && at(this.#inside, vertex) === inside) return vertex;
      vertex = at(this.#previous, vertex);
    }
    const { positions } = this.#mesh;
    this.#positions.push(
      at(positions, 3 * place),
      at(positions, 3 * place + 1),
      at(positions, 3 * place + 2),
    );
    this.#normals.push(x, y, z);
    this.#inside.push(inside);
    this.#previous.push(at(this.#latest, place));
    const fresh = this.#previous.length - 1;
    this.#latest[place] = fresh;
    return fresh;
  }

  finish(): Pick<MeshBuffers, 'positions' | 'normals' | 'inside' | 'indices'> {
    return {
      positions: Float32Array.from(this.#positions),
      normals: Float32Array.from(this.#normals),
      inside: Uint8Array.from(this.#inside),
      indices: Uint32Array.from(this.#indices),
    };
  }
}

/** Gathers the cut face. */
class CapWriter {
  readonly #mesh: ClosedMesh;
  readonly #axes: { readonly across: Triple; readonly up: Triple } | null;
  readonly #positions: number[] = [];
  readonly #uv: number[] = [];
  readonly #indices: number[] = [];
  readonly #vertices = new Map<number, number>();

  constructor(mesh: ClosedMesh, plane: SectionPlane | null) {
    this.#mesh = mesh;
    this.#axes = plane ? planeAxes(plane) : null;
  }

  add(triangle: number): void {
    for (let corner = 3 * triangle; corner < 3 * triangle + 3; corner++) {
      const place = at(this.#mesh.triangles, corner);
      const vertex = this.#vertices.get(place) ?? this.#write(place);
      this.#indices.push(vertex);
    }
  }

  #write(place: number): number {
    const { across, up } = known(this.#axes, 'section plane of a cut face');
    const x = at(this.#mesh.positions, 3 * place);
    const y = at(this.#mesh.positions, 3 * place + 1);
    const z = at(this.#mesh.positions, 3 * place + 2);
    const vertex = this.#vertices.size;
    this.#vertices.set(place, vertex);
    this.#positions.push(x, y, z);
    this.#uv.push(across[0] * x + across[1] * y + across[2] * z, up[0] * x + up[1] * y + up[2] * z);
    return vertex;
  }

  finish(): Pick<MeshBuffers, 'capPositions' | 'capUv' | 'capIndices'> {
    return {
      capPositions: Float32Array.from(this.#positions),
      capUv: Float32Array.from(this.#uv),
      capIndices: Uint32Array.from(this.#indices),
    };
  }
}

/** Finds the edges worth drawing: where the skin turns sharply, and where the cut face ends. */
function edgesOf(
  mesh: ClosedMesh,
  isGone: Uint8Array | null,
  isCap: Uint8Array,
  cornerNormals: Float32Array,
): Pick<MeshBuffers, 'creases' | 'capOutline'> {
  const { positions, triangles } = mesh;
  const places = positions.length / 3;
  const firstCorner = new Map<number, number>();
  const creases: number[] = [];
  const capOutline: number[] = [];
  for (let corner = 0; corner < triangles.length; corner++) {
    if (isGone?.[Math.floor(corner / 3)] === 1) continue;
    const next = corner % 3 === 2 ? corner - 2 : corner + 1;
    const from = at(triangles, corner);
    const to = at(triangles, next);
    const key = Math.min(from, to) * places + Math.max(from, to);
    const other = firstCorner.get(key);
    if (other === undefined) {
      firstCorner.set(key, corner);
      continue;
    }
    const capSides = at(isCap, Math.floor(corner / 3)) + at(isCap, Math.floor(other / 3));
    if (capSides === 2) continue;
    // Along the cut face's own triangle, whichever of the two came first.
    if (capSides === 1 && at(isCap, Math.floor(corner / 3)) === 1) pushEdge(capOutline, positions, from, to);
    else if (capSides === 1) pushEdge(capOutline, positions, to, from);
    else if (isCrease(cornerNormals, corner, next, other)) pushEdge(creases, positions, from, to);
  }
  return { creases: Float32Array.from(creases), capOutline: Float32Array.from(capOutline) };
}

/** The neighbour runs along the edge the other way: its first corner is this one's second. */
function isCrease(cornerNormals: Float32Array, corner: number, next: number, other: number): boolean {
  const otherNext = other % 3 === 2 ? other - 2 : other + 1;
  return (
    likenessOf(cornerNormals, corner, otherNext) < CREASE_COSINE ||
    likenessOf(cornerNormals, next, other) < CREASE_COSINE
  );
}

function likenessOf(normals: Float32Array, one: number, two: number): number {
  return (
    at(normals, 3 * one) * at(normals, 3 * two) +
    at(normals, 3 * one + 1) * at(normals, 3 * two + 1) +
    at(normals, 3 * one + 2) * at(normals, 3 * two + 2)
  );
}

function pushEdge(edges: number[], positions: Float32Array, from: number, to: number): void {
  for (const place of [from, to]) {
    edges.push(at(positions, 3 * place), at(positions, 3 * place + 1), at(positions, 3 * place + 2));
  }
}

function at(list: ArrayLike<number>, place: number): number {
  return list[place] ?? Number.NaN;
}
