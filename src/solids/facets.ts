/**
 * How finely round things are cut into flat facets, and the exact points of a circle.
 *
 * Facet corners lie on the true circle, so a facet's middle lies inside it by at most the chord error. Corners fall
 * exactly on both planes through the axis: a cut through the axis meets corners, never slivers. Lengths mm.
 */

/** mm. A thirtieth of a play of 0.1 mm, and less than a pixel at any scale the solid view reaches in normal use. */
const CHORD_ERROR_MM = 0.003;

/** Fewest facets of a whole turn: below this a small round part looks like a nut. */
const FEWEST_FACETS = 24;

/** Most facets of a whole turn: above this the eye gains nothing and the booleans slow down. */
const MOST_FACETS = 160;

/** Gives the number of facets for a whole turn, a multiple of four. */
export function facetCount(radius: number): number {
  if (radius <= CHORD_ERROR_MM) return FEWEST_FACETS;
  const exact = Math.PI / Math.acos(1 - CHORD_ERROR_MM / radius);
  const rounded = Math.ceil(exact / 4) * 4;
  return Math.min(MOST_FACETS, Math.max(FEWEST_FACETS, rounded));
}

/**
 * Lists the points of a unit circle, starting at (1, 0) and running towards (0, 1): cosines and sines in turn. The four
 * quarter points are exact and the quarters mirror one another bit for bit.
 *
 * @param facets a multiple of four
 */
export function unitCircle(facets: number): Float64Array {
  const quarter = facets / 4;
  const points = new Float64Array(facets * 2);
  for (let i = 0; i <= quarter; i++) {
    const angle = (Math.PI / 2) * (i / quarter);
    const cosine = i === quarter ? 0 : Math.cos(angle);
    const sine = i === quarter ? 1 : Math.sin(angle);
    put(points, i, cosine, sine);
    put(points, 2 * quarter - i, -cosine, sine);
    put(points, 2 * quarter + i, -cosine, -sine);
    put(points, (4 * quarter - i) % facets, cosine, -sine);
  }
  return points;
}

function put(points: Float64Array, place: number, cosine: number, sine: number): void {
  points[2 * place] = cosine === 0 ? 0 : cosine;
  points[2 * place + 1] = sine === 0 ? 0 : sine;
}
