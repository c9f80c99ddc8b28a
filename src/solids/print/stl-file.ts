/**
 * Pieces as one binary STL file: 80 bytes of words, the number of triangles, then for each its normal, three corners and two
 * bytes of nothing; little-endian. The form has no unit; it is read as millimetres by custom.
 */
import type { BedPiece } from './laid-out.ts';

/** Must not begin with "solid", by which the written-out form is told. */
const WORDS = 'Shearsight, binary STL, millimetres';
const HEAD_BYTES = 84;
const TRIANGLE_BYTES = 50;

export function stlFile(pieces: readonly BedPiece[]): Uint8Array {
  const count = pieces.reduce((sum, { mesh }) => sum + mesh.triangles.length / 3, 0);
  const bytes = new Uint8Array(HEAD_BYTES + count * TRIANGLE_BYTES);
  bytes.set(new TextEncoder().encode(WORDS));
  const view = new DataView(bytes.buffer);
  view.setUint32(80, count, true);
  let at = HEAD_BYTES;
  for (const { mesh } of pieces) {
    const { positions, triangles } = mesh;
    for (let i = 0; i < triangles.length; i += 3) {
      const corners = [0, 1, 2].flatMap((k) => {
        const place = 3 * (triangles[i + k] ?? 0);
        return [positions[place] ?? 0, positions[place + 1] ?? 0, positions[place + 2] ?? 0];
      });
      for (const [k, value] of [...normalOf(corners), ...corners].entries())
        view.setFloat32(at + 4 * k, value, true);
      at += TRIANGLE_BYTES;
    }
  }
  return bytes;
}

function normalOf(corners: readonly number[]): number[] {
  const [ax = 0, ay = 0, az = 0, bx = 0, by = 0, bz = 0, cx = 0, cy = 0, cz = 0] = corners;
  const [ux, uy, uz, vx, vy, vz] = [bx - ax, by - ay, bz - az, cx - ax, cy - ay, cz - az];
  const normal = [uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx];
  const length = Math.hypot(...normal) || 1;
  return normal.map((value) => value / length);
}
