/**
 * Figures put into the words of a lesson, with their unit. Lengths come in mm. What is given is written as on a drawing;
 * what came of it as in the pictures, to the half thousandth or 0.01 mm, every place kept.
 */
import { formatLength } from '../../model/units/format-length.ts';
import type { JobUnit } from '../../model/units/length-unit.ts';
import type { Facts } from '../../model/learning/lesson.ts';

const PLACE = /\{([\w-]+)\}/gu;

/** Puts figures into a text: `{name}` becomes the figure of that name; a name without one stays as it is. */
export function fill(text: string, facts: Facts, unit: JobUnit): string {
  return text.replace(PLACE, (whole, name: string) => {
    const value = facts[name];
    return value === undefined ? whole : typeof value === 'number' ? givenText(value, unit) : value;
  });
}

/** A length that a question gives. */
export function givenText(mm: number, unit: JobUnit): string {
  return formatLength(Math.abs(mm), { unit, form: 'screen', hasUnit: true });
}

/** An amount that the engine found. */
export function lengthText(mm: number, unit: JobUnit): string {
  return formatLength(Math.abs(mm), { unit, form: 'bench', keepsPlaces: true, hasUnit: true });
}
