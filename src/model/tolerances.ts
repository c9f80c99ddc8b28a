/**
 * Every numerical tolerance of the model, each with unit, meaning and reason. Nothing here is a workshop tolerance:
 * those are fields of the job.
 */

/** mm. Two lengths closer than this are the same length: a hundred times the rounding of stored values (1e-7 mm). */
export const SAME_LENGTH_MM = 1e-5;

/** mm. Stored lengths are rounded to this, so that 1/128 in (0.1984375 mm) is exact. */
export const STORED_LENGTH_STEP_MM = 1e-7;

/** mm. Two points of the key that hold the foot at heights closer than this hold it together (a bridging ball). */
export const SAME_CONTACT_MM = 1e-9;

/** mm. The ends of a window are found at least this well: a hundredth of the 1e-6 in they are tested to. */
export const WINDOW_MM = 2.5e-7;

/**
 * mm. Radii that geometry can bear. They lie just outside the sizes that are believed (size-trouble.ts), so that a size
 * that cannot be is still told, and yet never makes a number that is none.
 */
export const BEARABLE_RADIUS_MM = { least: 0.02, most: 101 };

/** rad. The same for angles of ends: this far from nothing and from straight. */
export const BEARABLE_ANGLE = 5e-4;
