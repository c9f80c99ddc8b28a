/**
 * The same error everywhere: every chamber off the same way by about the same amount points at the zero, the plug or the
 * seating, not at six wrong pins. Offsets + high, - low; mm.
 */
import { formatLength } from '../units/format-length.ts';
import type { CommonError } from './evaluation.ts';

/** mm. Offsets this close together count as the same (.002 in). Common practice, no source. */
const SAME_WITHIN_MM = 0.0508;
/** With fewer chambers than this, alike says nothing. */
const ENOUGH_CHAMBERS = 3;

/** Detects a common error; `shopRule` is what still counts as level. */
export function findCommonError(
  offsets: readonly number[],
  shopRule: number,
  unit: 'in' | 'mm',
): CommonError | null {
  if (offsets.length < ENOUGH_CHAMBERS) return null;
  const least = Math.min(...offsets);
  const most = Math.max(...offsets);
  const oneWay = least > shopRule || most < -shopRule;
  if (!oneWay || most - least > SAME_WITHIN_MM) return null;
  const offset = offsets.reduce((sum, each) => sum + each, 0) / offsets.length;
  const way = offset > 0 ? 'high' : 'low';
  return {
    offset,
    message:
      `Every chamber is ${way} by about ${formatLength(Math.abs(offset), { unit, form: 'bench' })}. ` +
      'Check the zero of the caliper, the plug diameter and how the key sits before changing any pin.',
  };
}
