/**
 * From an entered value (readings, instrument, zero check, or an assumption with a range) to an estimate.
 *
 * Measured: u² = s₀²/n + resolution²/12 + MPE²/3 with the instrument's repeatability s₀, n readings (JCGM 100:2008, 4.2,
 * 4.3; rectangular limits a/√3). Six readings or more: their own standard deviation replaces s₀. The smallest of n counts
 * as one reading. Assumed: the farther end of the range as a rectangular half-width. Stated: without doubt.
 */
import type { Instrument, Session } from '../schema/cylinder-schema.ts';
import type { AngleValue, LengthValue, Reading } from '../schema/leaf.ts';
import { fromDegrees } from '../radians.ts';
import { type Estimate, exact, type FieldRef, type Term } from './estimate.ts';

/** What readings are read against. */
export type Measuring = {
  readonly instruments: ReadonlyMap<string, Instrument>;
  readonly sessions: ReadonlyMap<string, Session>;
};

/** From this many readings on, a person's own spread is known better than the instrument's default. */
const OWN_SPREAD_FROM = 6;
const ROOT_3 = Math.sqrt(3);
const ROOT_12 = Math.sqrt(12);

/** Reads a length. mm. */
export function readLength(value: LengthValue, field: FieldRef, measuring: Measuring): Estimate {
  return readValue(value, field, measuring, 1);
}

/** Reads an angle. Radians; an angle has no instrument, only a range. */
export function readAngle(value: AngleValue, field: FieldRef): Estimate {
  const none: Measuring = { instruments: new Map(), sessions: new Map() };
  return readValue(value, field, none, fromDegrees(1));
}

/** The zero that the instrument showed when closed under the reading's zero check; 0 without one. mm. */
export function zeroOf(reading: Pick<Reading, 'session'>, measuring: Measuring): number {
  if (reading.session === null) return 0;
  return measuring.sessions.get(reading.session)?.closedReading?.readings[0]?.value ?? 0;
}

type AnyValue = Pick<LengthValue, 'estimator' | 'basis' | 'range'> & {
  readonly readings: readonly Pick<Reading, 'value' | 'instrument' | 'session' | 'left'>[];
};

function readValue(value: AnyValue, field: FieldRef, measuring: Measuring, unit: number): Estimate {
  const counted = value.readings.filter((reading) => reading.left !== 'out');
  const used = counted.length > 0 ? counted : value.readings;
  const numbers = used.map((reading) => (reading.value - zeroOf(reading, measuring)) * unit);
  const middle = value.estimator === 'minimum' ? Math.min(...numbers) : mean(numbers);
  if (value.basis === 'stated')
    return value.range === undefined ? exact(middle) : assumed(middle, value.range, field, unit);
  if (value.basis === 'assumed') return assumed(middle, value.range, field, unit);
  const first = used[0];
  const instrument = first?.instrument == null ? undefined : measuring.instruments.get(first.instrument);
  if (instrument === undefined || first === undefined) {
    return value.range === undefined ? exact(middle) : assumed(middle, value.range, field, unit);
  }
  return {
    value: middle,
    terms: measuredTerms(numbers, middle, value.estimator, instrument, first.session, field),
  };
}

function measuredTerms(
  numbers: readonly number[],
  middle: number,
  estimator: 'mean' | 'minimum',
  instrument: Instrument,
  session: string | null,
  field: FieldRef,
): Term[] {
  const name = `${field.owner}/${field.id}/${field.name}`;
  const own = numbers.length >= OWN_SPREAD_FROM && estimator === 'mean';
  const spread = own ? standardDeviation(numbers) : instrument.repeatabilityMm;
  const count = estimator === 'mean' ? numbers.length : 1;
  const terms: Term[] = [
    { cause: { id: `${name}#repeat`, kind: 'repeatability', field }, weight: spread / Math.sqrt(count) },
    {
      cause: { id: `${name}#resolution`, kind: 'resolution', field },
      weight: instrument.resolutionMm / ROOT_12,
    },
    {
      cause: {
        id: `${instrument.id}@${middle}`,
        kind: 'scale',
        instrument: instrument.id,
        at: middle,
        field,
      },
      weight: instrument.maxPermissibleErrorMm / ROOT_3,
    },
  ];
  if (session !== null) {
    const zero: FieldRef = { owner: 'session', id: session, name: 'closedReading' };
    const weight = -Math.hypot(instrument.repeatabilityMm, instrument.resolutionMm / ROOT_12);
    terms.push({ cause: { id: `session/${session}#zero`, kind: 'zero', field: zero }, weight });
  }
  return terms.filter((term) => term.weight !== 0);
}

function assumed(value: number, range: LengthValue['range'], field: FieldRef, unit: number): Estimate {
  if (range === undefined) return exact(value);
  const half = Math.max(Math.abs(value - range.from * unit), Math.abs(range.to * unit - value));
  if (half === 0) return exact(value);
  const id = `${field.owner}/${field.id}/${field.name}#assumed`;
  return { value, terms: [{ cause: { id, kind: 'assumed', field }, weight: half / ROOT_3 }] };
}

function mean(numbers: readonly number[]): number {
  return numbers.reduce((sum, number) => sum + number, 0) / numbers.length;
}

function standardDeviation(numbers: readonly number[]): number {
  const middle = mean(numbers);
  return Math.sqrt(numbers.reduce((sum, number) => sum + (number - middle) ** 2, 0) / (numbers.length - 1));
}
