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
