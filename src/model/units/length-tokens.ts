/**
 * Cuts plain typed text (see clean-typed-text.ts) into the pieces a length is written with. Linear in its length.
 *
 *      = 1 3/8 in - .05 mm        number: run of digits, points, commas
 *      ^ ^ ^^^ ^  ^ ^   ^         unit:   words or inch marks, already looked up; undefined when not a unit
 *      | | ||| |  | |   unit      sign:   one character of + - / =
 *      | | ||| |  | number        break:  a control character stood here: another value begins
 *      | number|  sign            other:  anything else
 *     sign     unit
 */
import type { LengthUnit } from './length-unit.ts';

export type LengthToken = {
  readonly kind: 'number' | 'unit' | 'sign' | 'break' | 'other';
  readonly text: string;
  /** a blank stands before it */
  readonly isApart: boolean;
  readonly unit?: LengthUnit;
};

const UNIT_WORDS: ReadonlyMap<string, LengthUnit> = new Map([
  ...(['in', 'inch', 'inches', 'of an inch', '"'] as const).map((word) => [word, 'in'] as const),
  ...(['thou', 'thous', 'th', 'mil', 'mils', 'thousandth', 'thousandths'] as const).map(
    (word) => [word, 'thou'] as const,
  ),
  ...(['thousandth of an inch', 'thousandths of an inch'] as const).map((word) => [word, 'thou'] as const),
  ...(['mm', 'millimetre', 'millimetres', 'millimeter', 'millimeters'] as const).map(
    (word) => [word, 'mm'] as const,
  ),
]);

const PIECE =
  /(?<number>[0-9.,]+)|(?<words>\p{L}+(?: \p{L}+)*\.?|")|(?<sign>[-+/=])|(?<gap>\n)|(?<other>[^ ])/gu;

/** Cuts the text; blanks are not pieces, but are noted on the piece behind them. */
export function lengthTokens(plain: string): LengthToken[] {
  return [...plain.matchAll(PIECE)].map((match) => {
    const text = match[0];
    const isApart = plain.charAt(match.index - 1) === ' ';
    const { number, words, sign, gap } = match.groups ?? {};
    if (words !== undefined) return unitToken(text, isApart);
    if (number !== undefined) return { kind: 'number', text, isApart };
    if (sign !== undefined) return { kind: 'sign', text, isApart };
    return { kind: gap === undefined ? 'other' : 'break', text, isApart };
  });
}

function unitToken(text: string, isApart: boolean): LengthToken {
  const unit = UNIT_WORDS.get(text.toLowerCase().replace(/\.$/u, ''));
  return unit === undefined ? { kind: 'unit', text, isApart } : { kind: 'unit', text, isApart, unit };
}
