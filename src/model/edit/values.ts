/**
 * Entered values: from what a person typed, or from a usual value with its range, to what the job keeps. mm.
 *
 * A new reading replaces the old one, as on paper; a repeat is added on purpose. What is assumed gives way to the first
 * reading.
 */
import { zeroOf } from '../estimate/read-value.ts';
import type { Session } from '../schema/cylinder-schema.ts';
import type { AngleValue, Id, LengthValue, Reading } from '../schema/leaf.ts';
import { inchesToMm, type JobUnit, type LengthUnit, toStoredMm } from '../units/length-unit.ts';

export type Estimator = LengthValue['estimator'];

/** A reading that was just taken. */
export type TakenReading = { readonly mm: number; readonly unit: LengthUnit; readonly typed: string };

/** What it was taken with: an instrument and the zero check in force. */
export type TakenWith = { readonly instrument: Id | null; readonly session: Id | null };

/** Makes the value of one fresh reading. */
export function measuredValue(
  reading: TakenReading,
  takenWith: TakenWith,
  estimator: Estimator = 'mean',
): LengthValue {
  return { readings: [readingOf(reading, takenWith)], estimator, basis: 'measured' };
}

/** Adds a repeat to a measured value; an assumed or stated one is replaced. */
export function withRepeat(
  value: LengthValue | undefined,
  reading: TakenReading,
  takenWith: TakenWith,
  estimator: Estimator = 'mean',
): LengthValue {
  if (value === undefined || value.basis !== 'measured') return measuredValue(reading, takenWith, estimator);
  return { ...value, readings: [...value.readings, readingOf(reading, takenWith)] };
}

/** Takes the last repeat away; the first reading stays. */
export function withoutLastRepeat(value: LengthValue): LengthValue {
  return value.readings.length < 2 ? value : { ...value, readings: value.readings.slice(0, -1) };
}

/** Makes an assumed value from plain numbers as typed in the job's unit: the usual one, and from where to where it may be. */
export function assumedValue(
  usual: readonly [value: string, from: string, to: string],
  unit: JobUnit,
): LengthValue {
  const [value, from, to] = usual;
  return {
    readings: [readingOf({ mm: mmOf(value, unit), unit, typed: value }, NO_INSTRUMENT)],
    estimator: 'mean',
    basis: 'assumed',
    range: { from: mmOf(from, unit), to: mmOf(to, unit) },
  };
}

/** Makes a value that is taken as said, without doubt. */
export function statedValue(text: string, unit: JobUnit): LengthValue {
  return {
    readings: [readingOf({ mm: mmOf(text, unit), unit, typed: text }, NO_INSTRUMENT)],
    estimator: 'mean',
    basis: 'stated',
  };
}

/** Makes an assumed angle with its range. Degrees. */
export function assumedAngle(degrees: number, from: number, to: number): AngleValue {
  return {
    readings: [{ typed: String(degrees), unit: 'deg', value: degrees, instrument: null, session: null }],
    estimator: 'mean',
    basis: 'assumed',
    range: { from, to },
  };
}

/** Makes an angle that a person gave. Degrees. */
export function statedAngle(degrees: number, typed = String(degrees)): AngleValue {
  return {
    readings: [{ typed, unit: 'deg', value: degrees, instrument: null, session: null }],
    estimator: 'mean',
    basis: 'stated',
  };
}

/** How far another piece of the same make may differ. Common practice, no source. mm. */
const ANOTHER_OF_ITS_MAKE_MM = 0.05;

/**
 * What was read on one thing, taken over for another like it: no longer measured, but assumed to within .002 in. What the
 * instrument read when closed is taken off, as no zero check goes with it.
 */
export function assumedLike(value: LengthValue, sessions: readonly Session[]): LengthValue {
  if (value.basis !== 'measured') return value;
  const measuring = { instruments: new Map(), sessions: new Map(sessions.map((each) => [each.id, each])) };
  const counted = value.readings.filter((reading) => reading.left !== 'out');
  const all = counted.map((reading) => reading.value - zeroOf(reading, measuring));
  const sum = all.reduce((total, each) => total + each, 0);
  const mm = toStoredMm(value.estimator === 'minimum' ? Math.min(...all) : sum / all.length);
  return {
    readings: counted
      .slice(0, 1)
      .map(({ unit }) => ({ unit, value: mm, typed: typedFor(mm, unit), instrument: null, session: null })),
    estimator: 'mean',
    basis: 'assumed',
    range: { from: mm - ANOTHER_OF_ITS_MAKE_MM, to: mm + ANOTHER_OF_ITS_MAKE_MM },
  };
}

/** Moves every reading of a length by the same amount, and its range with it. mm. */
export function movedValue(value: LengthValue, byMm: number): LengthValue {
  const moved: LengthValue = {
    ...value,
    readings: value.readings.map((reading) => {
      const mm = toStoredMm(reading.value + byMm);
      return { ...reading, value: mm, typed: typedFor(mm, reading.unit) };
    }),
  };
  if (value.range === undefined) return moved;
  return { ...moved, range: { from: value.range.from + byMm, to: value.range.to + byMm } };
}

const NO_INSTRUMENT: TakenWith = { instrument: null, session: null };

function readingOf(reading: TakenReading, takenWith: TakenWith): Reading {
  return {
    typed: reading.typed,
    unit: reading.unit,
    value: reading.mm,
    instrument: takenWith.instrument,
    session: takenWith.session,
  };
}

function mmOf(text: string, unit: JobUnit): number {
  return unit === 'in' ? inchesToMm(Number(text)) : toStoredMm(Number(text));
}

/** What a person would have typed for a length that was worked out: to 1e-5 in or 1e-4 mm, with its unit. */
function typedFor(mm: number, unit: string): string {
  if (unit === 'mm') return `${Number(mm.toFixed(4))} mm`;
  if (unit === 'thou') return `${Number((mm / 0.0254).toFixed(2))} thou`;
  return `${Number((mm / 25.4).toFixed(5))} in`;
}
