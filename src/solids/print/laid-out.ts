/**
 * The pieces of a print side by side on a bed, in rows about as long as all of them are deep. The same pieces always lie the
 * same way. mm of the print, see print-piece.ts.
 */
import { known } from '../../model/assert.ts';
import type { ClosedMesh } from '../closed-mesh.ts';

export type BedPiece = { readonly name: string; readonly mesh: ClosedMesh };
export type BedSize = { readonly width: number; readonly depth: number; readonly height: number };

/** mm between pieces: room for a scraper. */
const GAP_MM = 4;
/** Rows this much longer than a square would have them: beds are wide rather than deep. */
const WIDE = 1.15;

/** Moves every piece to its place: all corners at or above 0, the lowest at the bed. The deepest stand in the first row. */
export function layOut(pieces: readonly BedPiece[]): {
  readonly pieces: readonly BedPiece[];
  readonly size: BedSize;
  /** Of the piece that takes most of a bed. */
  readonly largest: BedSize;
} {
  const boxes = pieces.map(({ mesh }) => boxOf(mesh.positions));
  const area = boxes.reduce((sum, { size }) => sum + (size.width + GAP_MM) * (size.depth + GAP_MM), 0);
  const longest = Math.max(WIDE * Math.sqrt(area), ...boxes.map(({ size }) => size.width + GAP_MM));
  const order = boxes.map((_, i) => i).sort((a, b) => depthOf(boxes[b]) - depthOf(boxes[a]) || a - b);
  const corners: { x: number; y: number }[] = [];
  let [x, y, rowDepth, width] = [0, 0, 0, 0];
  for (const i of order) {
    const { size } = known(boxes[i], 'box of a piece');
    if (x > 0 && x + size.width > longest) {
      x = 0;
      y += rowDepth + GAP_MM;
      rowDepth = 0;
    }
    corners[i] = { x, y };
    x += size.width + GAP_MM;
    rowDepth = Math.max(rowDepth, size.depth);
    width = Math.max(width, x - GAP_MM);
  }
  const placed = pieces.map(({ name, mesh }, i): BedPiece => {
    const { low } = known(boxes[i], 'box of a piece');
    const to = known(corners[i], 'place of a piece');
    return { name, mesh: movedBy(mesh, [to.x - low[0], to.y - low[1], -low[2]]) };
  });
  const sizes = boxes.map(({ size }) => size);
  const height = Math.max(0, ...sizes.map((size) => size.height));
  const none: BedSize = { width: 0, depth: 0, height: 0 };
  const largest = sizes.reduce(
    (most, each) => (each.width * each.depth > most.width * most.depth ? each : most),
    none,
  );
  return { pieces: placed, size: { width, depth: y + rowDepth, height }, largest };
}

type Box = { readonly low: readonly [number, number, number]; readonly size: BedSize };

function depthOf(box: Box | undefined): number {
  return box?.size.depth ?? 0;
}

function boxOf(positions: Float32Array): Box {
  const low: [number, number, number] = [Infinity, Infinity, Infinity];
  const high: [number, number, number] = [-Infinity, -Infinity, -Infinity];
  for (let i = 0; i < positions.length; i += 3)
    for (const axis of [0, 1, 2] as const) {
      const value = positions[i + axis] ?? 0;
      low[axis] = Math.min(low[axis], value);
      high[axis] = Math.max(high[axis], value);
    }
  const size = { width: high[0] - low[0], depth: high[1] - low[1], height: high[2] - low[2] };
  return { low, size };
}

function movedBy({ positions, triangles }: ClosedMesh, by: readonly number[]): ClosedMesh {
  return { positions: positions.map((value, i) => value + (by[i % 3] ?? 0)), triangles };
}
