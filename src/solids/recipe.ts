/**
 * How a solid is made, as plain data: turned and extruded blanks, joined and cut. One description feeds the booleans, the
 * cache (its text is its identity) and any other geometry library in a comparison.
 *
 * Frame: of the part itself: x across, y up, z inwards along the plug. Lengths mm.
 */
import type { ProfilePoint } from './lathe-mesh.ts';

export type PlanePoint = { readonly x: number; readonly y: number };

export type Lathe = {
  readonly kind: 'lathe';
  readonly profile: readonly ProfilePoint[];
  readonly isRing: boolean;
  /** Which way the profile's y points. */
  readonly axis: 'y' | 'z';
  /** The profile's origin. */
  readonly at: { readonly x: number; readonly y: number; readonly z: number };
  /**
   * The profile's heights count outwards from this round surface, which runs along z, instead of up from a level: what a
   * tool does that follows the edge of a hole. Axis y only.
   */
  readonly drape: { readonly radius: number; readonly axisY: number } | null;
};

export type Prism = {
  readonly kind: 'prism';
  /** The outside, then holes in it, in any sense: (z, y) for an extrusion along x, (x, y) for one along z. */
  readonly loops: readonly (readonly PlanePoint[])[];
  readonly along: 'x' | 'z';
  readonly from: number;
  readonly to: number;
};

export type Recipe =
  | Lathe
  | Prism
  | { readonly kind: 'union'; readonly of: readonly Recipe[] }
  | { readonly kind: 'difference'; readonly from: Recipe; readonly take: readonly Recipe[] };

/**
 * Makes the identity of a recipe from its numbers: equal numbers, equal key. Rounded to 1e-6 mm, so that noise rebuilds
 * nothing. 106 bits: two recipes of one session never meet.
 */
export function recipeKey(recipe: Recipe): string {
  return textKey(
    JSON.stringify(recipe, (_, value: unknown) =>
      typeof value === 'number' ? Math.round(value * 1e6) / 1e6 + 0 : value,
    ),
  );
}

/** Makes a short key of a text. */
export function textKey(text: string): string {
  return `${hash53(text, 1)}${hash53(text, 2)}`;
}

/** Two multiplicative hashes of 32 bits, mixed at the end; public domain arithmetic, nothing secret about it. */
function hash53(text: string, seed: number): string {
  let low = 0xdeadbeef ^ seed;
  let high = 0x41c6ce57 ^ seed;
  for (let i = 0; i < text.length; i++) {
    const code = text.charCodeAt(i);
    low = Math.imul(low ^ code, 2654435761);
    high = Math.imul(high ^ code, 1597334677);
  }
  low = Math.imul(low ^ (low >>> 16), 2246822507) ^ Math.imul(high ^ (high >>> 13), 3266489909);
  high = Math.imul(high ^ (high >>> 16), 2246822507) ^ Math.imul(low ^ (low >>> 13), 3266489909);
  return (4294967296 * (2097151 & high) + (low >>> 0)).toString(36).padStart(11, '0');
}

/** Lists the blanks of a recipe in the order in which they are written. */
export function blanksOf(recipe: Recipe): readonly (Lathe | Prism)[] {
  switch (recipe.kind) {
    case 'lathe':
    case 'prism':
      return [recipe];
    case 'union':
      return recipe.of.flatMap(blanksOf);
    case 'difference':
      return [recipe.from, ...recipe.take].flatMap(blanksOf);
  }
}
