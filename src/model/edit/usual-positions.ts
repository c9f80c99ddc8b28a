/**
 * Where chambers and cuts are assumed to lie until somebody measures: evenly spaced, each cut under its chamber. Numbers
 * as a person would type them, in the job's unit, from the plug's front face.
 */
import type { LengthValue } from '../schema/leaf.ts';
import type { JobUnit } from '../units/length-unit.ts';
import { usualSizes } from './usual-values.ts';
import { assumedValue } from './values.ts';

/** Places of so many chambers, as typed numbers. */
export function assumedPositions(count: number, unit: JobUnit, plugDiameterMm: number | null): string[] {
  const { firstChamber, spacing } = usualSizes(plugDiameterMm);
  return evenPositions(count, Number(firstChamber[unit]), Number(spacing[unit]), unit);
}

/** Evenly spaced places, as typed numbers in the unit. */
export function evenPositions(count: number, first: number, spacing: number, unit: JobUnit): string[] {
  return Array.from({ length: count }, (_, i) => plainNumber(first + i * spacing, unit));
}

/** Where the blade is assumed to end, and how high its nose stands: a spacing past the last cut. */
export function assumedKeyEnd(
  positions: readonly string[],
  unit: JobUnit,
  plugDiameterMm: number | null,
): { position: LengthValue; noseHeight: LengthValue } {
  const sizes = usualSizes(plugDiameterMm);
  const spacing = Number(sizes.spacing[unit]);
  const end = Number(positions[positions.length - 1] ?? '0') + 1.4 * spacing;
  const text = (value: number) => plainNumber(value, unit);
  return {
    position: assumedValue([text(end), text(end - spacing / 4), text(end + spacing / 4)], unit),
    noseHeight: assumedValue([text(spacing / 4), text(spacing / 8), text(spacing / 2)], unit),
  };
}

function plainNumber(value: number, unit: JobUnit): string {
  const text = String(Number(value.toFixed(unit === 'in' ? 5 : 4)));
  return unit === 'in' ? text.replace(/^0\./, '.') : text;
}
