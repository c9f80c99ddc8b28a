/**
 * The ways to understand one typed length, and what each comes to. Exact; amounts are whole stored steps (1e-7 mm).
 *
 * A text has one meaning, or several where a comma or a hyphen can be read two ways; then `open` names why a person
 * must choose. Range and plausibility are not looked at here.
 */
import { addExact, EXACT_ZERO, multiplyExact, roundedQuotient, type ExactNumber } from './exact-number.ts';
import { EXACT_MM_PER_UNIT, STORED_STEPS_PER_MM, type JobUnit, type LengthUnit } from './length-unit.ts';
import { readLengthText, type LengthFault, type LengthTerm } from './read-length-text.ts';

export type LengthMeaning = {
  readonly terms: readonly LengthTerm[];
  /** commas with two meanings part thousands */
  readonly isGrouped: boolean;
};

export type LengthMeanings =
  | {
      readonly type: 'meanings';
      /** never empty */
      readonly meanings: readonly LengthMeaning[];
      readonly open?: 'ambiguous-comma' | 'mixed-or-minus';
    }
  | { readonly type: 'wrong'; readonly why: LengthFault | 'noSum' | 'mixedUnits'; readonly part: string };

export type MeaningOptions = { readonly unit: JobUnit; readonly allowSum: boolean };

/** Finds the ways to understand a plain text (see clean-typed-text.ts). */
export function lengthMeanings(plain: string, options: MeaningOptions): LengthMeanings {
  const { unit, allowSum } = options;
  const joined = readLengthText(plain, true);
  if (joined.type === 'wrong') return joined;
  const isSum = joined.terms.length > 1 || plain.startsWith('=');
  if (isSum && !allowSum) return { type: 'wrong', why: 'noSum', part: plain };
  const all = [joined.terms];
  const hasOpenHyphen = allowSum && (joined.hyphen === 'spaced' || (joined.hyphen === 'tight' && isSum));
  const parted = hasOpenHyphen ? readLengthText(plain, false) : undefined;
  if (parted?.type === 'terms') all.push(parted.terms);
  const readings = all.filter((terms) => !mixesSystems(terms, unit));
  if (readings.length === 0) return { type: 'wrong', why: 'mixedUnits', part: plain };
  const hasOpenComma = joined.terms.some((term) => term.grouped !== undefined);
  const meanings = readings.flatMap((terms) =>
    (hasOpenComma ? [false, true] : [false]).map((isGrouped) => ({ terms, isGrouped })),
  );
  if (hasOpenHyphen) return { type: 'meanings', meanings, open: 'mixed-or-minus' };
  if (hasOpenComma) return { type: 'meanings', meanings, open: 'ambiguous-comma' };
  return { type: 'meanings', meanings };
}

/** Gives the unit of the first part: what a slip of unit is about. */
export function leadingUnit(meaning: LengthMeaning, jobUnit: JobUnit): LengthUnit {
  const [first] = meaning.terms;
  return first === undefined ? jobUnit : unitOf(first, jobUnit);
}

/** Works out a meaning in stored steps; parts in its leading unit are taken to be in `insteadUnit` if there is one. */
export function meaningSteps(meaning: LengthMeaning, jobUnit: JobUnit, insteadUnit?: LengthUnit): bigint {
  const leading = leadingUnit(meaning, jobUnit);
  let sum: ExactNumber = EXACT_ZERO;
  for (const term of meaning.terms) {
    const stated = unitOf(term, jobUnit);
    const unit = insteadUnit !== undefined && stated === leading ? insteadUnit : stated;
    const amount = meaning.isGrouped ? (term.grouped ?? term.value) : term.value;
    const size = multiplyExact(amount, EXACT_MM_PER_UNIT[unit]);
    sum = addExact(sum, term.isNegative ? { top: -size.top, bottom: size.bottom } : size);
  }
  return roundedQuotient(sum.top * BigInt(STORED_STEPS_PER_MM), sum.bottom);
}

/** In a sum, a part without a unit beside one of the other system could be meant in either. */
function mixesSystems(terms: readonly LengthTerm[], jobUnit: JobUnit): boolean {
  const isBare = (term: LengthTerm): boolean => term.unit === undefined && !term.isFraction;
  const isOther = (term: LengthTerm): boolean => (unitOf(term, jobUnit) === 'mm') !== (jobUnit === 'mm');
  return terms.some(isBare) && terms.some(isOther);
}

function unitOf(term: LengthTerm, jobUnit: JobUnit): LengthUnit {
  return term.unit ?? (term.isFraction ? 'in' : jobUnit);
}
