/**
 * Writes a coordinate: never minus zero, never an exponent, no idle zeros. Faces have four decimals of a CSS pixel
 * (0.00026 mm at true size, and less the larger it is drawn); hatching and outlines, which nobody measures, two.
 */
import { assert } from '../model/assert.ts';

/** Writes a coordinate that can be measured from. */
export function numberText(value: number): string {
  return roundedText(value, 10_000);
}

/** Writes a coordinate that is only looked at. */
export function roughText(value: number): string {
  return roundedText(value, 100);
}

function roundedText(value: number, steps: number): string {
  // The sentence is only made when it is wanted: writing the number twice would be most of the work.
  if (!Number.isFinite(value)) assert(false, `coordinate ${value}`);
  const rounded = Math.round(value * steps);
  // A whole number of steps over a power of ten prints its own decimals and no more; at zero the sign would show.
  return rounded === 0 ? '0' : String(rounded / steps);
}
