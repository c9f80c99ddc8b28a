/**
 * How finely round things are cut into flat facets, and the exact points of a circle.
 *
 * The corners of a body's facets lie on the true circle, so that its crest is exact; those of pins, balls and chambers lie
 * a little outside, so that their volume is. Corners fall exactly on both planes through the axis: a cut through the axis
 * meets corners, never slivers. Lengths mm.
 */

/** mm. A thirtieth of a play of 0.1 mm, and less than a pixel at any scale the solid view reaches in normal use. */
const CHORD_ERROR_MM = 0.003;

/** mm. Pins, balls and chambers are small and stand close: half of it. */
const SMALL_CHORD_ERROR_MM = 0.0015;
const SMALL_RADIUS_MM = 4;

/** Fewest facets of a whole turn: below this a small round part looks like a nut. */
const FEWEST_FACETS = 24;

/** Most facets of a whole turn: above this the eye gains nothing and the booleans slow down. */
const MOST_FACETS = 160;

/** Gives the number of facets for a whole turn, a multiple of four. */
export function facetCount(radius: number): number {
  const chordError = radius <= SMALL_RADIUS_MM ? SMALL_CHORD_ERROR_MM : CHORD_ERROR_MM;
  if (radius <= chordError) return FEWEST_FACETS;
  const exact = Math.PI / Math.acos(1 - chordError / radius);
  const rounded = Math.ceil(exact / 4) * 4;
  return Math.min(MOST_FACETS, Math.max(FEWEST_FACETS, rounded));
}

/**
 * How much wider a circle of facets must be to enclose the area of the true circle. Its facets then lie half outside, half
 * inside, so that a cut beside the axis is as often too wide as too narrow.
 */
export function equalAreaScale(facets: number): number {
  const angle = (2 * Math.PI) / facets;
  return Math.sqrt(angle / Math.sin(angle));
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
