/**
 * How far a drawn curve may lie from the true one where no circular arc can say it (a bevel or cone cut beside its axis,
 * a turned part). For pictures and solids only: nothing is measured from them.
 */

/** mm. A fiftieth of a thou: a tenth of a pixel at 500 px per mm, the largest scale a close-up has. */
export const CURVE_TOLERANCE_MM = 2e-4;

/** mm. Rows of a turned part lie at most this far apart: a pixel at the scale of the long section. */
export const TURNED_ROW_MM = 0.05;

/** Least cosine of a turn the long section is drawn for: nearer to a quarter turn its rows would run away. */
export const LEAST_TURN_COSINE = 0.02;
