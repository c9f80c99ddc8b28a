/**
 * Makes solids from recipes and cuts them with manifold-3d. Solids are kept by the text of their recipe, so that an edit
 * makes only what it changed. Everything in single precision at the border, double inside. Lengths mm.
 */
import type { Manifold as ManifoldSolid, ManifoldToplevel, Mesh } from 'manifold-3d';
import { assert, known } from '../model/assert.ts';
import { buildFaceNormals, type FaceSources } from './face-normals.ts';
import { placedLathe } from './placed-lathe.ts';
import type { ClosedMesh } from './closed-mesh.ts';
import { buildMeshBuffers, type MeshBuffers } from './mesh-buffers.ts';
import type { Lathe, Prism, Recipe } from './recipe.ts';
import { recipeKey } from './recipe.ts';
import type { SectionPlane } from './section-plane.ts';

/** A made solid: to be cut, measured or written out, and forgotten with `SolidsKernel.keepOnly`. */
export type MadeSolid = {
  readonly solid: ManifoldSolid;
  /** The blank of each number that manifold-3d gave. */
  readonly blanks: ReadonlyMap<number, Lathe | Prism>;
};

export class SolidsKernel {
  readonly #library: ManifoldToplevel;
  readonly #made = new Map<string, MadeSolid>();
  #madeCount = 0;

  constructor(library: ManifoldToplevel) {
    this.#library = library;
  }

  /** How many solids were made so far; those found again do not count. */
  get madeCount(): number {
    return this.#madeCount;
  }

  /** Makes the solid of a recipe, or finds it again. */
  make(recipe: Recipe, key = recipeKey(recipe)): MadeSolid {
    const before = this.#made.get(key);
    if (before) return before;
    const blanks = new Map<number, Lathe | Prism>();
    const solid = this.#evaluate(recipe, blanks);
    const status: string = solid.status();
    assert(status === 'NoError', `solid could not be made (${status}): ${key.slice(0, 400)}`);
    const made = { solid, blanks };
    this.#made.set(key, made);
    this.#madeCount += 1;
    return made;
  }

  /**
   * Gives the bare mesh of a solid, cut by a plane in its own frame or whole; the arrays are the caller's. What booleans leave
   * between corners closer than `merged` mm is gone, so that the mesh stays closed when it is written in single precision.
   */
  closed(made: MadeSolid, plane: SectionPlane | null, merged: number): ClosedMesh {
    const cut = plane ? made.solid.trimByPlane([...plane.normal], plane.offset) : made.solid;
    const plain = cut.simplify(merged);
    const { vertProperties, triVerts } = plain.getMesh();
    plain.delete();
    if (cut !== made.solid) cut.delete();
    return { positions: vertProperties, triangles: triVerts };
  }

  /** Gives the buffers of a solid, cut by a plane in its own frame or whole. */
  buffers(made: MadeSolid, plane: SectionPlane | null): MeshBuffers {
    const cut = plane ? made.solid.trimByPlane([...plane.normal], plane.offset) : made.solid;
    const mesh = cut.getMesh();
    const closed: ClosedMesh = { positions: mesh.vertProperties, triangles: mesh.triVerts };
    const buffers = buildMeshBuffers(closed, buildFaceNormals(closed, sourcesOf(mesh, made.blanks)), plane);
    if (cut !== made.solid) cut.delete();
    return buffers;
  }

  /** Forgets every solid whose key is not in the set. */
  keepOnly(keys: ReadonlySet<string>): void {
    for (const [key, made] of this.#made) {
      if (keys.has(key)) continue;
      made.solid.delete();
      this.#made.delete(key);
    }
  }

  #evaluate(recipe: Recipe, blanks: Map<number, Lathe | Prism>): ManifoldSolid {
    switch (recipe.kind) {
      case 'lathe':
        return this.#turn(recipe, blanks);
      case 'prism':
        return this.#extrude(recipe, blanks);
      case 'union':
        return this.#combine(recipe.of, blanks);
      case 'difference': {
        const from = this.#evaluate(recipe.from, blanks);
        if (recipe.take.length === 0) return from;
        const take = this.#combine(recipe.take, blanks);
        const result = from.subtract(take);
        // Booleans are lazy: asking for the count settles them, then the inputs can go.
        result.numTri();
        from.delete();
        take.delete();
        return result;
      }
    }
  }

  #combine(recipes: readonly Recipe[], blanks: Map<number, Lathe | Prism>): ManifoldSolid {
    const solids = recipes.map((each) => this.#evaluate(each, blanks));
    const [first] = solids;
    if (solids.length === 1 && first) return first;
    const result = this.#library.Manifold.union(solids);
    result.numTri();
    for (const each of solids) each.delete();
    return result;
  }

  #turn(lathe: Lathe, blanks: Map<number, Lathe | Prism>): ManifoldSolid {
    const { Manifold, Mesh } = this.#library;
    const blank = placedLathe(lathe);
    const id = Manifold.reserveIDs(1);
    blanks.set(id, lathe);
    return Manifold.ofMesh(
      new Mesh({
        numProp: 3,
        vertProperties: blank.positions,
        triVerts: blank.triangles,
        faceID: blank.faces,
        runOriginalID: Uint32Array.of(id),
        runIndex: Uint32Array.of(0, blank.triangles.length),
      }),
    );
  }

  #extrude(prism: Prism, blanks: Map<number, Lathe | Prism>): ManifoldSolid {
    const along = prism.along;
    // Along x the outline is (z, y): mirrored it extrudes upwards, then a quarter turn lays it along x.
    const loops = prism.loops.map((loop, i) => {
      const points = loop.map((point): [number, number] => [along === 'z' ? point.x : -point.x, point.y]);
      return signedArea(points) > 0 === (i === 0) ? points : points.reverse();
    });
    const upright = this.#library.Manifold.extrude(loops, prism.to - prism.from);
    blanks.set(upright.originalID(), prism);
    const turned = along === 'z' ? upright : upright.rotate([0, 90, 0]);
    const placed = turned.translate(along === 'z' ? [0, 0, prism.from] : [prism.from, 0, 0]);
    if (turned !== upright) turned.delete();
    upright.delete();
    return placed;
  }
}

/** Looks up, for each triangle of a mesh, the run it belongs to. */
function sourcesOf(mesh: Mesh, blanks: ReadonlyMap<number, Lathe | Prism>): FaceSources {
  const runOf = new Uint32Array(mesh.numTri);
  for (let run = 0; run < mesh.numRun; run++) {
    runOf.fill(run, known(mesh.runIndex[run], 'run') / 3, known(mesh.runIndex[run + 1], 'run') / 3);
  }
  const ids = mesh.runOriginalID;
  const flags = mesh.runFlags;
  const faces = mesh.faceID;
  const idOf = (triangle: number): number => ids[runOf[triangle] ?? 0] ?? 0;
  return {
    blankOf: (triangle) => blanks.get(idOf(triangle)),
    sourceOf: idOf,
    faceOf: (triangle) => faces[triangle] ?? 0,
    isBackside: (triangle) => ((flags[runOf[triangle] ?? 0] ?? 0) & 1) === 1,
  };
}

/** Positive for a loop that runs counter-clockwise. */
function signedArea(points: readonly (readonly [number, number])[]): number {
  return points.reduce((sum, [x, y], i) => {
    const [nextX, nextY] = points[(i + 1) % points.length] ?? [x, y];
    return sum + (x * nextY - nextX * y) / 2;
  }, 0);
}
