/** What is known of a spring, and what is not. Nothing is guessed: a missing size is named. mm, N/mm. */
import { lengthOf } from '../measured/part-ends.ts';
import type { LengthValue } from '../schema/leaf.ts';
import type { Part } from '../schema/parts-schema.ts';
import { activeCoils, rateFromTwo, solidLength, springRate } from './spring-formulas.ts';

export type MeasuredSpring = {
  readonly solid: number | null;
  readonly free: number | null;
  readonly rate: number | null;
  /** What would have to be measured, as a person says it. */
  readonly missing: readonly string[];
};

/** Reads a spring. */
export function measureSpring(part: Part): MeasuredSpring {
  const solid = solidOf(part);
  const free = given(part.free);
  const rate = rateOf(part);
  const missing = [
    ...(solid === null ? ['the spring squeezed solid between the jaws'] : []),
    ...(free === null ? ['the spring free'] : []),
    ...(rate === null ? ["the spring's force at two lengths, or its wire, coils, ends and material"] : []),
  ];
  return { solid, free, rate, missing };
}

function solidOf(part: Part): number | null {
  const { coils, coilEnds } = part;
  const read = given(part.solid);
  const wire = given(part.wire);
  if (read !== null || wire === null || coils === undefined || coilEnds === undefined) return read;
  return solidLength(wire, coils, coilEnds);
}

function rateOf(part: Part): number | null {
  const [one, other] = part.pressed ?? [];
  if (one !== undefined && other !== undefined) {
    const read = ({ length, newtons }: typeof one) => ({ length: lengthOf(length, 0), force: newtons });
    return rateFromTwo(read(one), read(other));
  }
  const wire = given(part.wire);
  const outside = given(part.diameter);
  const { coils, coilEnds, shearModulusGPa } = part;
  if (wire === null || outside === null) return null;
  if (coils === undefined || coilEnds === undefined || shearModulusGPa === undefined) return null;
  return springRate({
    wire,
    meanDiameter: outside - wire,
    activeCoils: activeCoils(coils, coilEnds),
    shearModulusGPa,
  });
}

/** A length that makes sense for a spring; null for none. */
function given(value: LengthValue | undefined): number | null {
  const length = lengthOf(value, 0);
  return length > 0 ? length : null;
}
