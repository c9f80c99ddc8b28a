/** Figures put into the words of a lesson. Lengths come in mm and are written to the half thousandth or 0.01 mm, with their unit. */
import { formatLength } from '../../model/units/format-length.ts';
import type { JobUnit } from '../../model/units/length-unit.ts';
import type { Facts } from '../../model/learning/lesson.ts';

const PLACE = /\{([\w-]+)\}/gu;

/** Puts figures into a text: `{name}` becomes the figure of that name; a name without one stays as it is. */
export function fill(text: string, facts: Facts, unit: JobUnit): string {
  return text.replace(PLACE, (whole, name: string) => {
    const value = facts[name];
    return value === undefined ? whole : typeof value === 'number' ? lengthText(value, unit) : value;
  });
}

export function lengthText(mm: number, unit: JobUnit): string {
  return formatLength(Math.abs(mm), { unit, form: 'bench', keepsPlaces: true, hasUnit: true });
}
