/**
 * What a picture says about a split: offset and verdict in words, a symbol, and a class for the colour, which comes last.
 * High is never shown as good.
 */
import type { ChamberResult, Evaluation, SplitResult, Verdict } from '../model/evaluate/evaluation.ts';
import { formatLength } from '../model/units/format-length.ts';
import type { JobUnit } from '../model/units/length-unit.ts';

export type VerdictSymbol = 'turns' | 'rubs' | 'unsure' | 'stops' | 'none';

/** Writes an amount to the half thousandth or 0.01 mm, without sign and unit. */
export function amountText(mm: number, unit: JobUnit): string {
  return formatLength(Math.abs(mm), { unit, form: 'bench', keepsPlaces: true });
}

/** "level" within the shop rule or where the amount rounds to nothing, else which way and by how much. */
export function offsetWords(offset: number, verdict: Verdict, unit: JobUnit): string {
  const amount = amountText(offset, unit);
  if (verdict === 'level' || Number(amount) === 0) return 'level';
  return `${offset > 0 ? 'high' : 'low'} ${amount}`;
}

/** Says offset and verdict in one go: "too high .0095", "low .0010, turns", "high .0025, can't say yet". */
export function splitSentence(offset: number, verdict: Verdict, unit: JobUnit): string {
  const words = offsetWords(offset, verdict, unit);
  const more = (what: string): string => (words === 'level' ? words : `${words}, ${what}`);
  switch (verdict) {
    case 'too high':
    case 'too low':
      return `${verdict} ${amountText(offset, unit)}`;
    case 'low, turns':
      return more('turns');
    case 'high, rubs':
      return more('rubs');
    case "can't say yet":
      return `${words}, can't say yet`;
    case 'never turns':
      return 'no length turns';
    case 'level':
    case 'unknown':
      return words;
  }
}

/** Writes an offset with its sign, every place kept; what rounds to nothing has none. */
export function signedText(offset: number, unit: JobUnit): string {
  const amount = amountText(offset, unit);
  const sign = Number(amount) === 0 ? '' : offset > 0 ? '+' : '−';
  return `${sign}${amount}`;
}

export function symbolOf(verdict: Verdict): VerdictSymbol {
  switch (verdict) {
    case 'level':
    case 'low, turns':
      return 'turns';
    case 'high, rubs':
      return 'rubs';
    case "can't say yet":
      return 'unsure';
    case 'too low':
    case 'too high':
    case 'never turns':
      return 'stops';
    case 'unknown':
      return 'none';
  }
}

/** The split of a chamber that matters at a line, with its verdict. */
export function splitAt(
  chamber: ChamberResult,
  line: string,
): { readonly split: SplitResult; readonly verdict: Verdict } | null {
  const found = chamber.verdicts.find((each) => each.line === line);
  const split = found?.split == null ? undefined : chamber.splits[found.split];
  return found === undefined || split === undefined ? null : { split, verdict: found.verdict };
}

/** The result of a chamber; null while nothing was evaluated. */
export function resultOf(evaluation: Evaluation | null, chamber: string): ChamberResult | null {
  return evaluation?.chambers.find((each) => each.chamber === chamber) ?? null;
}

/** The unit as it is said in the name of a picture whose numbers have none. */
export function unitWords(unit: JobUnit): string {
  return unit === 'in' ? 'inches' : 'millimetres';
}

/** Which line it is, in words: a cylinder with one line has just "shear line". */
export function lineWords(index: number, count: number): string {
  if (count < 2) return 'shear line';
  return index === 0 ? 'inner shear line' : 'outer shear line';
}
