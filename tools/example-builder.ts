/** Small makers for the example jobs, as typed at a bench: in inches unless told otherwise. */
import type { Chamber, Cylinder, Instrument } from '../src/model/schema/cylinder-schema.ts';
import type { AngleValue, LengthValue } from '../src/model/schema/leaf.ts';
import type { EndForm, Part, Stack } from '../src/model/schema/parts-schema.ts';
import type { JobUnit } from '../src/model/units/length-unit.ts';
import { parseLength } from '../src/model/units/parse-length.ts';

/** Fixed ids that look like any other: derived from nothing but the order of asking. */
export function idMaker(seed: number): () => string {
  let state = seed >>> 0;
  const letters = 'abcdefghijkmnpqrstuvwxyz23456789';
  return () =>
    Array.from({ length: 12 }, () => {
      state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
      return letters[state >>> 27] ?? 'a';
    }).join('');
}

export function mmOf(typed: string, unit: JobUnit = 'in'): number {
  const read = parseLength(typed, { unit });
  if (read.type !== 'length') throw new Error(`${typed} is no length`);
  return read.mm;
}

export function measured(instrument: string, ...typed: string[]): LengthValue {
  return {
    readings: typed.map((text) => ({
      typed: text,
      unit: 'in',
      value: mmOf(text),
      instrument,
      session: null,
    })),
    estimator: 'mean',
    basis: 'measured',
  };
}

export function stated(typed: string, unit: JobUnit = 'in'): LengthValue {
  return {
    readings: [{ typed, unit, value: mmOf(typed, unit), instrument: null, session: null }],
    estimator: 'mean',
    basis: 'stated',
  };
}

/** Readings taken in mm. */
export function measuredMm(instrument: string, ...typed: string[]): LengthValue {
  return {
    readings: typed.map((text) => ({
      typed: text,
      unit: 'mm',
      value: mmOf(text, 'mm'),
      instrument,
      session: null,
    })),
    estimator: 'mean',
    basis: 'measured',
  };
}

export function angle(degrees: number): AngleValue {
  return {
    readings: [{ typed: String(degrees), unit: 'deg', value: degrees, instrument: null, session: null }],
    estimator: 'mean',
    basis: 'stated',
  };
}

export function caliper(id: string, label: string, errorIn: number, resolutionIn: number): Instrument {
  return {
    id,
    label,
    kind: 'digital caliper',
    resolutionMm: resolutionIn * 25.4,
    maxPermissibleErrorMm: errorIn * 25.4,
    repeatabilityMm: resolutionIn * 25.4,
    source: 'assumed',
  };
}

export const seen = (form: Omit<EndForm, 'basis'>): EndForm => ({ ...form, basis: 'seen' });

export type ChamberSizes = {
  position: LengthValue;
  capDepth: LengthValue;
  hole: LengthValue;
  bodies: readonly string[];
};

export function chamber(id: string, { position, capDepth, hole, bodies }: ChamberSizes): Chamber {
  return { id, position, capDepth, holes: bodies.map((body) => ({ body, diameter: hole })) };
}

export function twoBodies(plug: string, shell: string, diameter: LengthValue): Cylinder['bodies'] {
  return [
    { id: plug, role: 'plug', outerDiameter: diameter },
    { id: shell, role: 'shell' },
  ];
}

export function pin(id: string, label: string, rest: Partial<Part>): Part {
  return { id, label, kind: 'pin', quantity: 1, original: true, ...rest };
}

export function stackOf(
  chamberId: string,
  parts: readonly string[],
  restBelow: LengthValue,
  restCount: number,
): Stack {
  const items = parts.map((part) => ({ part }));
  return { chamber: chamberId, items, rest: { items: items.slice(0, restCount), belowLine: restBelow } };
}
