/**
 * One thing to print: how it is made, where it is cut in two, and which way it lies on the bed.
 *
 * The bed: x to the right, y to the back, z up, mm of the print. A piece lies on what of it is flat.
 */
import type { Recipe } from '../recipe.ts';
import type { SectionPlane } from '../section-plane.ts';

/** Which way a piece lies, told by what points up. */
export type Lie =
  /** On the face cut through the axis, or the key on its side: the cylinder's x points up. */
  | 'on its side'
  /** On its front face: inwards points up. */
  | 'on its front'
  /** A pin as it stands in its chamber, or on its head. */
  | 'upright'
  | 'upside down';

export type PrintPiece = {
  /** As in "chamber 2 bottom pin"; no length in it. */
  readonly name: string;
  readonly recipe: Recipe;
  /** In the frame of the part; null: whole. */
  readonly cut: SectionPlane | null;
  readonly lie: Lie;
};

/** For each axis of the bed, which axis of the part points along it (0, 1, 2) and which way. */
type Turned = readonly (readonly [axis: 0 | 1 | 2, sign: 1 | -1])[];

/** Turns without mirroring. */
const TURNED: Readonly<Record<Lie, Turned>> = {
  'on its side': [
    [2, 1],
    [1, -1],
    [0, 1],
  ],
  'on its front': [
    [0, 1],
    [1, 1],
    [2, 1],
  ],
  upright: [
    [2, 1],
    [0, 1],
    [1, 1],
  ],
  'upside down': [
    [0, 1],
    [2, 1],
    [1, -1],
  ],
};

/** Gives corner positions turned as they lie, and enlarged. Single precision, as printed. */
export function turnedOver(positions: Float32Array, lie: Lie, factor: number): Float32Array {
  const turned = new Float32Array(positions.length);
  for (let i = 0; i < positions.length; i += 3)
    for (const [to, [axis, sign]] of TURNED[lie].entries())
      turned[i + to] = (positions[i + axis] ?? 0) * sign * factor;
  return turned;
}
