/**
 * Writes ranges of lengths that do, to what a caliper shows: half thousandths, or 0.01 mm. Rounded inwards, so that no figure
 * that is told lies outside what is meant: the smaller end up, the larger one down. Lengths in mm.
 */
import { formatLength } from './format-length.ts';
import type { JobUnit } from './length-unit.ts';

/** mm. What a caliper shows. */
const STEP_MM: Readonly<Record<JobUnit, number>> = { in: 0.0127, mm: 0.01 };

/** Of a step: an end this close to a whole step is on it. Stored lengths are whole 1e-7 mm. */
const ON_STEP = 1e-4;

/** Both ends without unit. A range that holds no whole step is written as it is. */
export function formatRange(
  fromMm: number,
  toMm: number,
  unit: JobUnit,
): readonly [from: string, to: string] {
  const step = STEP_MM[unit];
  const from = Math.ceil(fromMm / step - ON_STEP) * step;
  const to = Math.floor(toMm / step + ON_STEP) * step;
  if (from > to + step / 2) return [plain(fromMm, unit), plain(toMm, unit)];
  return [benchText(from, unit), benchText(to, unit)];
}

/** The larger end alone, rounded down. */
export function formatAtMost(mm: number, unit: JobUnit): string {
  return benchText(Math.floor(mm / STEP_MM[unit] + ON_STEP) * STEP_MM[unit], unit);
}

/** One length of a range, no further out than the ends that `formatRange` writes. */
export function formatWithin(mm: number, fromMm: number, toMm: number, unit: JobUnit): string {
  const step = STEP_MM[unit];
  const from = Math.ceil(fromMm / step - ON_STEP);
  const to = Math.floor(toMm / step + ON_STEP);
  if (from > to) return plain(mm, unit);
  return benchText(Math.min(Math.max(Math.round(mm / step), from), to) * step, unit);
}

function benchText(mm: number, unit: JobUnit): string {
  return formatLength(mm, { unit, form: 'bench', keepsPlaces: true });
}

function plain(mm: number, unit: JobUnit): string {
  return formatLength(mm, { unit, keepsPlaces: true });
}
