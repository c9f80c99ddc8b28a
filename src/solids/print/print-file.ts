/** Makes the solids of a print and writes them as a file. */
import type { ManifoldToplevel } from 'manifold-3d';
import { assert } from '../../model/assert.ts';
import { dropPointTriangles } from '../drop-points.ts';
import { SolidsKernel } from '../manifold-kernel.ts';
import { type BedPiece, type BedSize, layOut } from './laid-out.ts';
import type { PrintOrder } from './print-order.ts';
import { type PrintPiece, turnedOver } from './print-piece.ts';
import { stlFile } from './stl-file.ts';
import { threeMfFile } from './three-mf-file.ts';

export type PrintForm = '3mf' | 'stl';

export type PrintedFile = {
  readonly bytes: Uint8Array;
  /** What the pieces need of a bed, mm. */
  readonly size: BedSize;
  readonly largest: BedSize;
  readonly pieceCount: number;
};

/** mm of the cylinder. Far below what any printer shows, far above what single precision loses at the size of a bed. */
const MERGED_MM = 1e-4;

/** @param title as the file calls itself */
export function printFile(
  library: ManifoldToplevel,
  order: PrintOrder,
  form: PrintForm,
  title: string,
): PrintedFile {
  const kernel = new SolidsKernel(library);
  try {
    const { pieces, size, largest } = layOut(order.pieces.map((piece) => made(kernel, piece, order.factor)));
    const sound = pieces.map(withoutPoints);
    const bytes = form === '3mf' ? threeMfFile(sound, title) : stlFile(sound);
    return { bytes, size, largest, pieceCount: pieces.length };
  } finally {
    kernel.keepOnly(new Set());
  }
}

function made(kernel: SolidsKernel, { name, recipe, cut, lie }: PrintPiece, factor: number): BedPiece {
  const { positions, triangles } = kernel.closed(kernel.make(recipe), cut, MERGED_MM);
  assert(triangles.length > 0, `nothing is left of ${name}`);
  return { name, mesh: { positions: turnedOver(positions, lie, factor), triangles } };
}

function withoutPoints({ name, mesh }: BedPiece): BedPiece {
  const { positions, triangles } = mesh;
  const isGone = dropPointTriangles(mesh);
  const kept = isGone === null ? triangles : triangles.filter((_, i) => isGone[Math.floor(i / 3)] !== 1);
  return { name, mesh: { positions, triangles: kept } };
}
