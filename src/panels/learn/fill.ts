/**
 * Figures put into the words of a lesson, with their unit. Lengths come in mm. What is given is written as on a drawing;
 * what came of it as in the pictures, to the half thousandth or 0.01 mm, every place kept. The decimal sign is that of the
 * language; English writes inches the trade's way, without a leading zero.
 */
import { formatLength } from '../../model/units/format-length.ts';
import type { JobUnit } from '../../model/units/length-unit.ts';
import { type LengthOptions, type LengthReading, parseLength } from '../../model/units/parse-length.ts';
import type { Facts } from '../../model/learning/lesson.ts';

/** What lengths are written in. */
export type Ruler = {
  readonly unit: JobUnit;
  /** BCP 47 tag of the language. */
  readonly tongue: string;
};

const PLACE = /\{([\w-]+)\}/gu;

/** Puts figures into a text: `{name}` becomes the figure of that name; a name without one stays as it is. */
export function fill(text: string, facts: Facts, ruler: Ruler): string {
  return text.replace(PLACE, (whole, name: string) => {
    const value = facts[name];
    return value === undefined ? whole : typeof value === 'number' ? givenText(value, ruler) : value;
  });
}

/** A length that a question gives. */
export function givenText(mm: number, ruler: Ruler): string {
  const { unit } = ruler;
  return inTongue(formatLength(Math.abs(mm), { unit, form: 'screen', hasUnit: true }), ruler.tongue);
}

/** An amount that the engine found. */
export function lengthText(mm: number, ruler: Ruler): string {
  const { unit } = ruler;
  const text = formatLength(Math.abs(mm), { unit, form: 'bench', keepsPlaces: true, hasUnit: true });
  return inTongue(text, ruler.tongue);
}

/** The same with its sign. */
export function signedLength(mm: number, ruler: Ruler): string {
  const amount = lengthText(mm, ruler);
  return /[1-9]/u.test(amount) ? `${mm < 0 ? '−' : '+'}${amount}` : amount;
}

/** A text of ours with lengths in it, its numbers written as the language has them. */
export function inTongue(text: string, tongue: string): string {
  const sign = decimalSign(tongue);
  if (sign === '.') return text;
  return text.replace(/(\d*)\.(\d)/gu, (_, whole: string, next: string) => `${whole || '0'}${sign}${next}`);
}

/** A count with its noun, as the language counts. */
export function countText(count: number, forms: { one: string; other: string }, tongue: string): string {
  const form = new Intl.PluralRules(tongue).select(count) === 'one' ? forms.one : forms.other;
  return form.replaceAll('{count}', new Intl.NumberFormat(tongue).format(count));
}

/** Reads a length as it is typed in a language: where the comma is the decimal sign, one comma is that. */
export function readTyped(text: string, tongue: string, options: LengthOptions): LengthReading {
  const isDecimal = decimalSign(tongue) === ',' && /^[^.,]*,[^.,]*$/u.test(text);
  return parseLength(isDecimal ? text.replace(',', '.') : text, options);
}

const signs = new Map<string, string>();

function decimalSign(tongue: string): string {
  const parts = signs.has(tongue) ? [] : new Intl.NumberFormat(tongue).formatToParts(1.5);
  const sign = signs.get(tongue) ?? parts.find(({ type }) => type === 'decimal')?.value ?? '.';
  signs.set(tongue, sign);
  return sign;
}
