/**
 * The units a length is typed and shown in, and the step every stored length lies on.
 *
 * Inside, lengths are mm. One inch is 25.4 mm exactly, a thou is a thousandth of an inch. A stored length is a whole
 * number of steps of 1e-7 mm: 1/128 in is then 1,984,375 steps with nothing lost, and 1e-6 in is 254 steps.
 */
import { assert } from '../assert.ts';
import { STORED_LENGTH_STEP_MM } from '../tolerances.ts';
import type { ExactNumber } from './exact-number.ts';

/** What a length can be typed in. Fractions are inches. */
export type LengthUnit = 'in' | 'thou' | 'mm';

/** What a job is kept in: the unit of a number typed without one. */
export type JobUnit = 'in' | 'mm';

/** mm in one inch, exact since 1959. */
export const MM_PER_INCH = 25.4;

/** Steps of a stored length in one mm. A whole number, to divide by: 1e-7 itself is not exact in binary. */
export const STORED_STEPS_PER_MM = Math.round(1 / STORED_LENGTH_STEP_MM);

/** mm in one of each unit, exact. */
export const EXACT_MM_PER_UNIT: Readonly<Record<LengthUnit, ExactNumber>> = {
  in: { top: 254n, bottom: 10n },
  thou: { top: 254n, bottom: 10_000n },
  mm: { top: 1n, bottom: 1n },
};

/** Gives the whole number of stored steps nearest to a length; ties go away from zero. */
export function storedSteps(mm: number): number {
  assert(Number.isFinite(mm), `a length of ${mm} mm cannot be stored`);
  const steps = Math.round(Math.abs(mm) * STORED_STEPS_PER_MM);
  return mm < 0 && steps > 0 ? -steps : steps;
}

/** Rounds a length in mm to the step of stored values; never gives minus zero. */
export function toStoredMm(mm: number): number {
  return storedSteps(mm) / STORED_STEPS_PER_MM;
}

/** Converts inches to a stored length in mm. */
export function inchesToMm(inches: number): number {
  return toStoredMm(inches * MM_PER_INCH);
}

/** Converts mm to inches; not rounded. */
export function mmToInches(mm: number): number {
  return mm / MM_PER_INCH;
}
