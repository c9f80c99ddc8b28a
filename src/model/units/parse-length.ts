/**
 * Reads a length that a person typed, an instrument typed for them, or a spreadsheet held.
 *
 * The answer is a length in mm on the step of stored values, a question, a sentence, or "nothing there". A value that
 * the caller's range makes implausible is never given as a length: it comes back as a question whose choices a person
 * must pick from, or as a sentence. That catches the four usual slips: inch and mm, thou and inch, comma and point,
 * and a value sent twice. They are caught only as far as the range is narrow: a range that reaches over less than a
 * factor of 25.4 tells inches from mm for certain.
 *
 * A number without a unit has the unit of the job; a fraction without a unit is in inches. All arithmetic is exact
 * until the one rounding to the stored step. Any string is answered: nothing is thrown, nothing given is non-finite.
 */
import { assert } from '../assert.ts';
import { cleanTypedText, halfOfRepeated, MAX_TYPED_LENGTH } from './clean-typed-text.ts';
import { leadingUnit, lengthMeanings, meaningSteps, type LengthMeaning } from './length-meanings.ts';
import {
  askSentence,
  lengthSentence,
  sayLength,
  type LengthAsk,
  type LengthRange,
} from './length-sentences.ts';
import { storedSteps, STORED_STEPS_PER_MM, type JobUnit, type LengthUnit } from './length-unit.ts';

export type LengthChoice = { readonly mm: number; readonly unit: LengthUnit; readonly says: string };

export type LengthReading =
  | { readonly type: 'length'; readonly mm: number; readonly unit: LengthUnit; readonly typed: string }
  | {
      readonly type: 'ask';
      readonly typed: string;
      /** never empty; likeliest first; none may be stored before a person picked it */
      readonly choices: readonly LengthChoice[];
      readonly reason: LengthAsk;
      readonly message: string;
    }
  | { readonly type: 'error'; readonly typed: string; readonly message: string }
  | { readonly type: 'empty' };

export type LengthOptions = {
  /** unit of a number typed without one */
  readonly unit: JobUnit;
  /** both ends belong to it; by default anything that can be on a cylinder or a key */
  readonly plausible?: LengthRange;
  /** takes "=.363+.002" and ".363 in - .05 mm"; by default not */
  readonly allowSum?: boolean;
  /** takes a minus, for what may lie on either side of a zero; by default not */
  readonly allowNegative?: boolean;
};

/** mm. Nothing measured on a cylinder or a key is longer than five inches. */
const LONGEST_MM = 127;

/** A value up to this many times beyond the range is offered as it stands: an odd lock rather than a slip. */
const ODD_LOCK_FACTOR = 2;

/** In this order other units are offered for a number that does not fit in its own. */
const OTHER_UNITS: Readonly<Record<LengthUnit, readonly LengthUnit[]>> = {
  in: ['thou', 'mm'],
  thou: ['in', 'mm'],
  mm: ['in', 'thou'],
};

/** A reading before it is put into words. */
type Candidate = { readonly mm: number; readonly unit: LengthUnit; readonly isOdd: boolean };

type Settings = {
  readonly unit: JobUnit;
  readonly range: LengthRange;
  readonly allowSum: boolean;
  readonly allowNegative: boolean;
};

/** Reads a typed length; see the head of this file. The caller's range must be finite. */
export function parseLength(text: string, options: LengthOptions): LengthReading {
  const settings = settingsOf(options);
  const clean = cleanTypedText(text);
  if (clean === undefined) {
    const typed = cleanTypedText(text.slice(0, MAX_TYPED_LENGTH))?.typed ?? '';
    return { type: 'error', typed, message: lengthSentence('tooLong', typed, settings) };
  }
  const { typed, plain } = clean;
  if (plain === '') return { type: 'empty' };

  const read = lengthMeanings(plain, settings);
  const meanings = read.type === 'wrong' ? [] : read.meanings;
  const open = read.type === 'wrong' ? undefined : read.open;
  const plausible = meanings.flatMap((meaning) => choiceAs(meaning, settings));
  const [only] = plausible;
  if (open === undefined && only !== undefined) {
    return { type: 'length', mm: only.mm, unit: only.unit, typed };
  }

  const asWhole = plausible.length > 0 ? plausible : inOtherUnits(meanings, settings);
  const asHalf = halfChoices(plain, settings, asWhole.length === 0);
  const candidates = distinct([...asWhole, ...asHalf, ...oddChoices(meanings, settings)]);
  if (candidates.length > 0) {
    const choices = candidates.map((candidate) => inWords(candidate, settings.unit));
    const reason = open ?? (asWhole.length === 0 && asHalf.length > 0 ? 'doubled' : 'out-of-range');
    const says = choices.map((choice) => choice.says);
    return { type: 'ask', typed, choices, reason, message: askSentence(reason, typed, says, settings) };
  }
  if (read.type === 'wrong') {
    return { type: 'error', typed, message: lengthSentence(read.why, read.part, settings) };
  }
  const isNegative = meanings.every((meaning) => isBelowZero(meaning, settings));
  const why = isNegative && !settings.allowNegative ? 'negative' : 'outside';
  return { type: 'error', typed, message: lengthSentence(why, typed, settings) };
}

/** Gives what is plausible if the text is one value sent twice; two slips at once only if nothing else explains it. */
function halfChoices(plain: string, settings: Settings, looksFurther: boolean): readonly Candidate[] {
  const half = halfOfRepeated(plain);
  const read = half === undefined ? undefined : lengthMeanings(half, settings);
  if (read?.type !== 'meanings') return [];
  const plausible = read.meanings.flatMap((meaning) => choiceAs(meaning, settings));
  return plausible.length === 0 && looksFurther ? inOtherUnits(read.meanings, settings) : plausible;
}

function inOtherUnits(meanings: readonly LengthMeaning[], settings: Settings): readonly Candidate[] {
  return meanings.flatMap((meaning) =>
    OTHER_UNITS[leadingUnit(meaning, settings.unit)]
      // A fraction of a thou or of a mm is not a slip anyone makes.
      .filter((unit) => unit === 'in' || !meaning.terms.some((term) => term.isFraction))
      .flatMap((unit) => choiceAs(meaning, settings, unit)),
  );
}

/** Gives what lies a little outside the range as it stands. */
function oddChoices(meanings: readonly LengthMeaning[], settings: Settings): readonly Candidate[] {
  const { fromMm, toMm } = settings.range;
  const range = {
    fromMm: fromMm > 0 ? fromMm / ODD_LOCK_FACTOR : fromMm * ODD_LOCK_FACTOR,
    toMm: toMm > 0 ? toMm * ODD_LOCK_FACTOR : toMm / ODD_LOCK_FACTOR,
  };
  return meanings
    .flatMap((meaning) => choiceAs(meaning, { ...settings, range }))
    .map((choice) => ({ ...choice, isOdd: true }));
}

/** Gives one meaning as a choice, or nothing when sign or range forbids it. */
function choiceAs(meaning: LengthMeaning, settings: Settings, insteadUnit?: LengthUnit): Candidate[] {
  const { range, allowNegative } = settings;
  if (!allowNegative && isBelowZero(meaning, settings)) return [];
  const exactSteps = meaningSteps(meaning, settings.unit, insteadUnit);
  const isInside = exactSteps >= storedSteps(range.fromMm) && exactSteps <= storedSteps(range.toMm);
  if (!isInside || (!allowNegative && exactSteps < 0n)) return [];
  const mm = Number(exactSteps) / STORED_STEPS_PER_MM;
  const unit = insteadUnit ?? leadingUnit(meaning, settings.unit);
  return [{ mm, unit, isOdd: false }];
}

function inWords(candidate: Candidate, jobUnit: JobUnit): LengthChoice {
  const { mm, unit, isOdd } = candidate;
  return { mm, unit, says: `${sayLength(mm, unit, jobUnit)}${isOdd ? ' as typed' : ''}` };
}

/** A minus in front of a length is a fault even before a zero. */
function isBelowZero(meaning: LengthMeaning, settings: Settings): boolean {
  const [first, second] = meaning.terms;
  const isMinusAlone = second === undefined && first?.isNegative === true;
  return isMinusAlone || meaningSteps(meaning, settings.unit) < 0n;
}

function distinct(all: readonly Candidate[]): readonly Candidate[] {
  return all.filter((each, at) => all.findIndex((other) => other.mm === each.mm) === at);
}

function settingsOf(options: LengthOptions): Settings {
  const { unit, allowSum = false, allowNegative = false } = options;
  const range = options.plausible ?? { fromMm: allowNegative ? -LONGEST_MM : 0, toMm: LONGEST_MM };
  assert(range.fromMm <= range.toMm, `a range runs from ${range.fromMm} to ${range.toMm} mm`);
  return { unit, range, allowSum, allowNegative };
}
