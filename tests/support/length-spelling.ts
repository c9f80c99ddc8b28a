/** What a corpus of spellings is made of, and the whole-number arithmetic behind its expected values. */

export type LengthSpelling = {
  readonly text: string;
  readonly jobUnit: 'in' | 'mm';
  readonly expected:
    | { readonly type: 'length'; readonly steps: bigint; readonly unit: 'in' | 'thou' | 'mm' }
    /** steps of the choices, in order */
    | { readonly type: 'ask'; readonly reason: string; readonly steps: readonly bigint[] }
    | { readonly type: 'error' }
    | { readonly type: 'empty' };
};

/** Steps of 1e-7 mm: .020 in and 1.500 in. */
export const FROM_STEPS = 5_080_000n;
const TO_STEPS = 381_000_000n;

/** The range every spelling is read in, mm. */
export const CORPUS_RANGE = { fromMm: 0.508, toMm: 38.1 };

export const STEPS_PER_INCH = 254_000_000n;
export const STEPS_PER_MM = 10_000_000n;
export const JOB_UNITS = ['in', 'mm'] as const;

/** Rounds a positive quotient to the nearest whole number, a tie upwards. */
export function nearest(top: bigint, bottom: bigint): bigint {
  const whole = top / bottom;
  return 2n * (top % bottom) >= bottom ? whole + 1n : whole;
}

/** Tells whether a length lies in the range of the corpus. */
export function isPlausible(steps: bigint): boolean {
  return steps >= FROM_STEPS && steps <= TO_STEPS;
}

/** Writes a number of parts with a point so many places from the right: (363, 3) is "0.363". */
export function withPoint(parts: number, places: number): string {
  const digits = String(parts).padStart(places + 1, '0');
  return `${digits.slice(0, -places)}.${digits.slice(-places)}`;
}

/** Steps of a mixed number of inches. */
export function fractionSteps(whole: number, top: number, bottom: number): bigint {
  return nearest(BigInt(whole * bottom + top) * STEPS_PER_INCH, BigInt(bottom));
}

/** Takes one spelling into the corpus. */
export type AddSpelling = (text: string, jobUnit: 'in' | 'mm', expected: LengthSpelling['expected']) => void;
