/**
 * Helical compression springs of round wire. Lengths mm, forces N, rates N/mm, modulus GPa. Source of the formulas:
 * Shigley's Mechanical Engineering Design, chapter on mechanical springs.
 *
 *    |o  o  o  o  o|    rate  = G d^4 / (8 D^3 Na)         d wire, D mean diameter of the coil, Na coils that work
 *    | o  o  o  o  |    force = rate (free - length), 0 when it is not pressed at all
 */
export type CoilEnds = 'closed and ground' | 'closed' | 'open';

/** Counts the coils that work: the closed ones at the ends do not. */
export function activeCoils(coils: number, ends: CoilEnds): number {
  return ends === 'open' ? coils : coils - 2;
}

/** Measures how long a spring is, squeezed solid. mm. */
export function solidLength(wire: number, coils: number, ends: CoilEnds): number {
  return wire * (ends === 'closed and ground' ? coils : coils + 1);
}

export type SpringForm = {
  /** Thickness of the wire, mm. */
  readonly wire: number;
  /** Across the middle of the wire, mm. */
  readonly meanDiameter: number;
  readonly activeCoils: number;
  readonly shearModulusGPa: number;
};

/** Measures the rate from the spring's form, N/mm; null for a form that is no spring. */
export function springRate({
  wire,
  meanDiameter,
  activeCoils: active,
  shearModulusGPa,
}: SpringForm): number | null {
  if (!(wire > 0 && meanDiameter > 0 && active > 0)) return null;
  return (shearModulusGPa * 1000 * wire ** 4) / (8 * meanDiameter ** 3 * active);
}

export type PressedReading = { readonly length: number; readonly force: number };

/** Measures the rate from two readings, N/mm; null when they do not tell one: same length, or longer and stronger. */
export function rateFromTwo(one: PressedReading, other: PressedReading): number | null {
  const rate = (one.force - other.force) / (other.length - one.length);
  return Number.isFinite(rate) && rate > 0 ? rate : null;
}

/** Measures the force at a length, N. */
export function springForce(rate: number, free: number, length: number): number {
  return rate * Math.max(0, free - length);
}
