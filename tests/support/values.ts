/** Entered values for jobs made in tests: as if typed in inches (or degrees), stored in mm as the job file wants it. */
import type { AngleValue, LengthValue } from '../../src/model/schema/leaf.ts';
import type { EndForm, EndSizes } from '../../src/model/schema/parts-schema.ts';

/** The id of the instrument that `buildJob` puts into its jobs. */
export const CALIPER = 'caliper';

/** Inches to the mm of the file: a hundred-millionth of an inch is dropped, as on entry. */
export function inchesToMm(inches: number): number {
  return Math.round(inches * 25.4 * 1e7) / 1e7;
}

/** A length read once, or several times, with the caliper. */
export function inches(...values: readonly [number, ...number[]]): LengthValue {
  return { readings: values.map(inchReading), estimator: 'mean', basis: 'measured' };
}

/** A length that is known, not measured. */
export function statedInches(value: number): LengthValue {
  return { readings: [{ ...inchReading(value), instrument: null }], estimator: 'mean', basis: 'stated' };
}

/** A length that is guessed, within a range. */
export function assumedInches(value: number, from: number, to: number): LengthValue {
  return { ...statedInches(value), basis: 'assumed', range: { from: inchesToMm(from), to: inchesToMm(to) } };
}

/** An angle that is known. */
export function degrees(value: number): AngleValue {
  const typed = String(value);
  const reading = { typed, unit: 'deg', value, instrument: null, session: null };
  return { readings: [reading], estimator: 'mean', basis: 'stated' };
}

/** An angle that is guessed, within a range. */
export function assumedDegrees(value: number, from: number, to: number): AngleValue {
  return { ...degrees(value), basis: 'assumed', range: { from, to } };
}

/** The end of a pin in inches and degrees. A dome without a radius is domed to the plug. */
export type EndOptions =
  | { kind: 'flat' }
  | { kind: 'sphere' }
  | { kind: 'bevel'; width: number; angleDeg: number }
  | { kind: 'radius'; radius: number }
  | { kind: 'dome'; radius?: number }
  | { kind: 'cone'; tipFlatDiameter: number; includedAngleDeg: number }
  | { kind: 'cup'; mouthDiameter: number; includedAngleDeg: number };

/** An end as seen; `alternatives` makes it an assumed one. */
export function endForm(options: EndOptions, alternatives: readonly EndOptions[] = []): EndForm {
  const sizes = endSizes(options);
  if (alternatives.length === 0) return { ...sizes, basis: 'seen' };
  return { ...sizes, basis: 'assumed', alternatives: alternatives.map(endSizes) };
}

function endSizes(options: EndOptions): EndSizes {
  switch (options.kind) {
    case 'flat':
    case 'sphere':
      return { kind: options.kind };
    case 'bevel':
      return { kind: 'bevel', width: inches(options.width), angle: degrees(options.angleDeg) };
    case 'radius':
      return { kind: 'radius', radius: inches(options.radius) };
    case 'dome':
      return options.radius === undefined
        ? { kind: 'dome' }
        : { kind: 'dome', radius: inches(options.radius) };
    case 'cone': {
      const tipFlatDiameter = inches(options.tipFlatDiameter);
      return { kind: 'cone', tipFlatDiameter, includedAngle: degrees(options.includedAngleDeg) };
    }
    case 'cup': {
      const mouthDiameter = inches(options.mouthDiameter);
      return { kind: 'cup', mouthDiameter, includedAngle: degrees(options.includedAngleDeg) };
    }
  }
}

function inchReading(value: number): LengthValue['readings'][number] {
  const typed = String(value);
  return { typed, unit: 'in', value: inchesToMm(value), instrument: CALIPER, session: null };
}
