/** How close a prediction has to come. mm. */
import { inchesToMm } from '../units/length-unit.ts';

/** Sums of figures that were given: half a thousandth. */
export const SUM_TOLERANCE_MM = inchesToMm(0.0005);

/** mm. What whoever teaches may ask for instead: a fifth of a thousandth to five. */
export const TOLERANCE_FROM_MM = inchesToMm(0.0002);
export const TOLERANCE_TO_MM = inchesToMm(0.005);

/** Where a split will stand, by eye and by reasoning: a thousandth. */
export const PLACE_TOLERANCE_MM = inchesToMm(0.001);

/** How far a split may be placed from the line. */
export const PLACE_REACH_MM = inchesToMm(0.02);
