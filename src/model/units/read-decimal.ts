/**
 * Reads one run of digits, points and commas as a number, or as two numbers where it can mean both.
 *
 * A point is always the decimal point. A comma is the decimal mark ("0,363", "9,22"), parts thousands ("1,234.5",
 * "1,234,567"), or cannot be told ("1,234": one comma, one to three digits without a leading zero before it and
 * exactly three behind). No unit, no sign.
 */
import { exactDecimal, type ExactNumber } from './exact-number.ts';

export type DecimalText =
  /** `grouped` is the other meaning, with the comma parting thousands */
  | { readonly type: 'number'; readonly value: ExactNumber; readonly grouped?: ExactNumber }
  | { readonly type: 'wrong'; readonly why: 'noDigits' | 'twoPoints' | 'commas' };

const POINT_ONLY = /^([0-9]*)(?:\.([0-9]*))?$/u;
const ONE_COMMA = /^([0-9]*),([0-9]+)$/u;
const CANNOT_TELL = /^[1-9][0-9]{0,2},[0-9]{3}$/u;
const COMMAS_PART_THOUSANDS = /^([1-9][0-9]{0,2}(?:,[0-9]{3})+)(?:\.([0-9]+))?$/u;
const POINTS_PART_THOUSANDS = /^([1-9][0-9]{0,2}(?:\.[0-9]{3})+),([0-9]+)$/u;

/** Reads a run of digits, points and commas; never throws, whatever the text. */
export function readDecimal(text: string): DecimalText {
  if (!/[0-9]/u.test(text)) return { type: 'wrong', why: 'noDigits' };
  const plain = POINT_ONLY.exec(text);
  if (plain !== null) return { type: 'number', value: exactDecimal(plain[1] ?? '', plain[2] ?? '') };
  const oneComma = ONE_COMMA.exec(text);
  if (oneComma !== null) {
    const [, before = '', behind = ''] = oneComma;
    const value = exactDecimal(before, behind);
    return CANNOT_TELL.test(text)
      ? { type: 'number', value, grouped: exactDecimal(before + behind, '') }
      : { type: 'number', value };
  }
  const grouped = COMMAS_PART_THOUSANDS.exec(text) ?? POINTS_PART_THOUSANDS.exec(text);
  if (grouped !== null) {
    const whole = (grouped[1] ?? '').replaceAll(/[.,]/gu, '');
    return { type: 'number', value: exactDecimal(whole, grouped[2] ?? '') };
  }
  return { type: 'wrong', why: text.includes(',') ? 'commas' : 'twoPoints' };
}
