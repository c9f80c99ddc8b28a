/** What the page and the worker that makes the solids say to each other: meshes for the view, and files to hand out. */
import type { MeshBuffers } from './mesh-buffers.ts';
import type { InsertionOrder } from './print/insertion-order.ts';
import type { BedSize } from './print/laid-out.ts';
import type { PrintForm } from './print/print-file.ts';
import type { PrintOrder } from './print/print-order.ts';
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

/** A file wanted; `title` is what it calls itself. */
export type FileRequest =
  | { readonly kind: 'print'; readonly order: PrintOrder; readonly form: PrintForm; readonly title: string }
  | { readonly kind: 'insertion'; readonly order: InsertionOrder; readonly title: string };

export type FileReply = {
  readonly kind: 'file';
  readonly bytes: Uint8Array<ArrayBuffer>;
  /** Of the piece of a print that takes most of a bed, mm; null for a scene. */
  readonly largest: BedSize | null;
  readonly pieceCount: number;
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
