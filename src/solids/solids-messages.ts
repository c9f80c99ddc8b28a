/** What the page and the worker that makes the solids say to each other. */
import type { MeshBuffers } from './mesh-buffers.ts';
import type { Recipe } from './recipe.ts';
import type { SectionPlane } from './section-plane.ts';

/** One mesh wanted: a solid, cut by a plane in its own frame or whole. */
export type MeshOrder = {
  /** Identity of solid and cut together: equal keys, equal buffers. */
  readonly meshKey: string;
  readonly recipeKey: string;
  readonly plane: SectionPlane | null;
};

export type SolidsRequest = {
  readonly kind: 'make';
  readonly request: number;
  readonly orders: readonly MeshOrder[];
  /** Recipes the worker was not told before. */
  readonly recipes: readonly { readonly recipeKey: string; readonly recipe: Recipe }[];
  /** Every solid that may be asked for again; the worker forgets all others. */
  readonly keep: readonly string[];
};

export type MadeMesh = { readonly meshKey: string; readonly buffers: MeshBuffers };

export type SolidsReply =
  /** The library runs; says how long that took, for the details panel. */
  | { readonly kind: 'ready' }
  | {
      readonly kind: 'made';
      readonly request: number;
      readonly meshes: readonly MadeMesh[];
      /** Solids made anew so far. */
      readonly madeCount: number;
    }
  | { readonly kind: 'failed'; readonly stage: 'start' | 'solids'; readonly reason: string };
