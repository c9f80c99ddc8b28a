/**
 * Single precision can bring two corners of a solid to the same place: a triangle between them has shrunk to a line. Such
 * triangles are left out and their corners become one, so that the mesh stays closed.
 */
import type { ClosedMesh } from './closed-mesh.ts';

/** Merges corners in place; gives a mark for each triangle that is gone, or null when none is. */
export function dropPointTriangles({ positions, triangles }: ClosedMesh): Uint8Array | null {
  const isSame = (one: number, two: number): boolean =>
    positions[3 * one] === positions[3 * two] &&
    positions[3 * one + 1] === positions[3 * two + 1] &&
    positions[3 * one + 2] === positions[3 * two + 2];
  const becomes = new Map<number, number>();
  let isGone: Uint8Array | null = null;
  for (let i = 0; i < triangles.length; i += 3) {
    const corners = [triangles[i] ?? 0, triangles[i + 1] ?? 0, triangles[i + 2] ?? 0] as const;
    for (const [one, two] of [
      [corners[0], corners[1]],
      [corners[1], corners[2]],
      [corners[2], corners[0]],
    ] as const) {
      if (!isSame(one, two)) continue;
      isGone ??= new Uint8Array(triangles.length / 3);
      isGone[i / 3] = 1;
      join(becomes, one, two);
    }
  }
  if (isGone !== null) {
    for (let i = 0; i < triangles.length; i++) triangles[i] = endOf(becomes, triangles[i] ?? 0);
  }
  return isGone;
}

function join(becomes: Map<number, number>, one: number, two: number): void {
  const [first, second] = [endOf(becomes, one), endOf(becomes, two)];
  if (first !== second) becomes.set(Math.max(first, second), Math.min(first, second));
}

function endOf(becomes: ReadonlyMap<number, number>, corner: number): number {
  let end = corner;
  for (let next = becomes.get(end); next !== undefined; next = becomes.get(end)) end = next;
  return end;
}
