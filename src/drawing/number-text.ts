/**
 * Writes a coordinate: at most four decimals, no idle zeros, never minus zero, never an exponent. Four decimals of a CSS
 * pixel are 0.00026 mm on a drawing at true size, and less the larger it is drawn.
 */
import { assert } from '../model/assert.ts';

const STEPS_PER_UNIT = 10_000;

export function numberText(value: number): string {
  assert(Number.isFinite(value), `coordinate ${value}`);
  const steps = Math.round(value * STEPS_PER_UNIT);
  if (steps === 0) return '0';
  return (steps / STEPS_PER_UNIT).toFixed(4).replace(/\.?0+$/, '');
}
