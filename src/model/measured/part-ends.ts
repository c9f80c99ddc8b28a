/**
 * From the recorded form of a part's end to its shape in numbers. An end that nobody looked at has the shape people
 * usually find there, marked as assumed, with the other usual shapes as alternatives.
 */
import type { EndShape } from '../end-shape.ts';
import { asRadians, fromDegrees, type Radians } from '../radians.ts';
import type { AngleValue, LengthValue } from '../schema/leaf.ts';
import type { EndForm, EndSizes, Part } from '../schema/parts-schema.ts';
import { BEARABLE_ANGLE } from '../tolerances.ts';

/** mm. A driver's edge is usually broken this much. Common practice, no source. */
export const BROKEN_EDGE_MM = 0.127;

export type MeasuredEnd = {
  readonly shape: EndShape;
  readonly basis: 'seen' | 'assumed';
  readonly alternatives: readonly EndShape[];
};

export type EndPlace = 'top of the lower stack' | 'bottom of a driver' | 'foot' | 'other';

/**
 * Reads the end of a part.
 *
 * @param which 0: lower end as it stands when not turned over, 1: upper end
 * @param lineRadius radius a crown is turned to when nothing says otherwise, mm
 * @param partRadius mm
 */
export function readEnd(
  part: Part,
  which: 0 | 1,
  place: EndPlace,
  lineRadius: number,
  partRadius: number,
): MeasuredEnd {
  if (part.kind === 'ball') return { shape: { kind: 'sphere' }, basis: 'seen', alternatives: [] };
  const form = part.ends?.[which];
  if (form === undefined) return usualEnd(place, lineRadius, partRadius);
  return {
    shape: readForm(form, lineRadius, partRadius),
    basis: form.basis,
    alternatives: (form.alternatives ?? []).map((each) => readForm(each, lineRadius, partRadius)),
  };
}

/** The shape people usually find, and what else it could be. */
function usualEnd(place: EndPlace, lineRadius: number, partRadius: number): MeasuredEnd {
  const flat: EndShape = { kind: 'flat' };
  const broken: EndShape = {
    kind: 'bevel',
    width: Math.min(BROKEN_EDGE_MM, partRadius / 2),
    angle: fromDegrees(45),
  };
  const domed: EndShape = { kind: 'dome', radius: Math.max(lineRadius, partRadius) };
  switch (place) {
    case 'top of the lower stack':
      return { shape: domed, basis: 'assumed', alternatives: [broken, flat] };
    case 'bottom of a driver':
      return { shape: broken, basis: 'assumed', alternatives: [flat] };
    case 'foot':
    case 'other':
      return { shape: flat, basis: 'assumed', alternatives: [] };
  }
}

function readForm(form: EndSizes | EndForm, lineRadius: number, partRadius: number): EndShape {
  switch (form.kind) {
    case 'flat':
      return { kind: 'flat' };
    case 'sphere':
      return { kind: 'sphere' };
    case 'bevel':
      return {
        kind: 'bevel',
        width: clamp(lengthOf(form.width, BROKEN_EDGE_MM), 0, partRadius),
        angle: bearable(angleOf(form.angle, 45), Math.PI / 2),
      };
    case 'radius':
      return { kind: 'radius', radius: clamp(lengthOf(form.radius, BROKEN_EDGE_MM), 0, partRadius) };
    case 'dome':
      return { kind: 'dome', radius: Math.max(partRadius, lengthOf(form.radius, lineRadius)) };
    case 'cone':
      return {
        kind: 'cone',
        tipFlatDiameter: clamp(lengthOf(form.tipFlatDiameter, partRadius / 2), 0, 2 * partRadius),
        includedAngle: bearable(angleOf(form.includedAngle, 90), Math.PI),
      };
    case 'cup':
      return {
        kind: 'cup',
        mouthDiameter: clamp(lengthOf(form.mouthDiameter, partRadius), 0, 2 * partRadius),
        includedAngle: bearable(angleOf(form.includedAngle, 118), Math.PI),
      };
  }
}

/** Plain middle of a value's readings, for sizes whose doubt does not count in the ±. */
export function lengthOf(value: LengthValue | undefined, otherwise: number): number {
  return value === undefined ? otherwise : middle(value, otherwise);
}

export function angleOf(value: AngleValue | undefined, otherwiseDeg: number): Radians {
  return fromDegrees(value === undefined ? otherwiseDeg : middle(value, otherwiseDeg));
}

function middle(value: LengthValue | AngleValue, otherwise: number): number {
  const counted = value.readings.filter((reading) => reading.left !== 'out').map((reading) => reading.value);
  if (counted.length === 0) return otherwise;
  if (value.estimator === 'minimum') return Math.min(...counted);
  return counted.reduce((sum, number) => sum + number, 0) / counted.length;
}

function bearable(angle: Radians, below: number): Radians {
  return asRadians(clamp(angle, BEARABLE_ANGLE, below - BEARABLE_ANGLE));
}

function clamp(value: number, least: number, most: number): number {
  return Math.min(most, Math.max(least, value));
}
