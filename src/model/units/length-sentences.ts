/**
 * The sentences that answer a typed length which is not taken as it stands. Each says what is wrong and shows a way to
 * write it. Lengths mm; inches are written with a leading zero here, because the place of the point is the question.
 */
import { roundedQuotient } from './exact-number.ts';
import { inchesToMm, storedSteps, type JobUnit, type LengthUnit } from './length-unit.ts';
import { plainDecimal } from './plain-decimal.ts';
import type { LengthFault } from './read-length-text.ts';

export type LengthRange = { readonly fromMm: number; readonly toMm: number };

/** Why a length is asked back. */
export type LengthAsk = 'ambiguous-comma' | 'mixed-or-minus' | 'out-of-range' | 'doubled';

/** Faults of a text that can be read, but not taken. */
export type LengthRefusal = LengthFault | 'tooLong' | 'noSum' | 'mixedUnits' | 'negative' | 'outside';

/** Characters of the typed text that a sentence repeats. */
const QUOTED_LENGTH = 24;

/** Says what is wrong with a typed length, with an example that would be taken. */
export function lengthSentence(
  fault: LengthRefusal,
  part: string,
  settings: { readonly unit: JobUnit; readonly range: LengthRange },
): string {
  const text = quoted(part);
  const example = exampleLength(settings.unit, settings.range);
  const { unit, range } = settings;
  const sentences: Readonly<Record<LengthRefusal, string>> = {
    notALength: `${text} is not a length; write it like ${example}.`,
    noNumber: `${text} has a unit but no number; write it like ${example}.`,
    power: `${text} uses a power of ten; write the number out, like ${example}.`,
    unknownUnit: `${text} is not a unit read here; use in, thou or mm, like ${example}.`,
    feet: `One mark means feet; inches have two marks or in, like .363 in.`,
    twoPoints: `${text} has more than one decimal point; write it like ${example}.`,
    commas: `${text} has a comma where none belongs; write it like ${example}.`,
    twoValues: `${text} holds more than one value; write one, like ${example}.`,
    fraction: `${text} has a fraction that cannot be read; write it like 23/64 or 1 3/8.`,
    signFirst: `A sum that begins with a sign needs = in front, like =.363+.002; a length alone is written like ${example}.`,
    unfinished: `A number is missing at the end; write it like ${example}.`,
    tooLong: `This is too long to be one length; write it like ${example}.`,
    noSum: `One length is asked for here, not a sum; write it like ${example}.`,
    mixedUnits: `Inches and mm are mixed here; give every part its unit, like .363 in - .05 mm.`,
    negative: `${text} is below zero, which this length cannot be; write it like ${example}.`,
    outside: `${text} is outside ${sayRange(range, unit)}; write it like ${example}.`,
  };
  return sentences[fault];
}

/** Asks whether one of some readings was meant. */
export function askSentence(
  reason: LengthAsk,
  typed: string,
  choices: readonly string[],
  settings: { readonly unit: JobUnit; readonly range: LengthRange },
): string {
  const question = `Did you mean ${choices.join(' or ')}?`;
  const text = quoted(typed);
  switch (reason) {
    case 'ambiguous-comma':
      return `The comma in ${text} can be a decimal mark or part thousands. ${question}`;
    case 'mixed-or-minus':
      return `The hyphen in ${text} can join a fraction or be a minus. ${question}`;
    case 'out-of-range':
      return `${text} is outside ${sayRange(settings.range, settings.unit)}. ${question}`;
    case 'doubled':
      return `${text} looks like one value sent twice. ${question}`;
  }
}

/** Says a length in a unit and again in another, so that a slip of unit or point shows: "0.363 in (363 thou)". */
export function sayLength(mm: number, unit: LengthUnit, jobUnit: JobUnit): string {
  const inches = inchText(mm);
  const millimetres = mmText(mm);
  switch (unit) {
    case 'thou':
      return jobUnit === 'mm' ? `${inches} (${thouText(mm)}, ${millimetres})` : `${inches} (${thouText(mm)})`;
    case 'in':
      return `${inches} (${millimetres})`;
    case 'mm':
      return `${millimetres} (${inches})`;
  }
}

/** From where to where a value may be, in three figures; rounded inwards, so that both ends are taken. */
function sayRange(range: LengthRange, unit: JobUnit): string {
  const [say, unitMm] = unit === 'in' ? [inchText, inchesToMm(1)] : [mmText, 1];
  const from = say(threeFigures(range.fromMm / unitMm, Math.ceil) * unitMm);
  return `${from.replace(/ (?:in|mm)$/u, '')} to ${say(threeFigures(range.toMm / unitMm, Math.floor) * unitMm)}`;
}

function threeFigures(value: number, round: (value: number) => number): number {
  if (value === 0) return 0;
  const step = 10 ** (Math.floor(Math.log10(Math.abs(value))) - 2);
  // A hair of slack: 0.3 is three tenths, whatever the machine makes of it.
  return round(value / step + (round === Math.ceil ? -1e-9 : 1e-9)) * step;
}

/** Gives an example inside the range: the middle of it when the usual one does not fit. */
function exampleLength(unit: JobUnit, range: LengthRange): string {
  const usualMm = unit === 'in' ? inchesToMm(0.363) : 9.22;
  if (usualMm >= range.fromMm && usualMm <= range.toMm) return unit === 'in' ? '.363 in' : '9.22 mm';
  const middleMm = (range.fromMm + range.toMm) / 2;
  return unit === 'in' ? inchText(middleMm) : mmText(middleMm);
}

function inchText(mm: number): string {
  return withSign(mm, 254_000_000n, 5, 'in');
}

function thouText(mm: number): string {
  return withSign(mm, 254_000n, 2, 'thou');
}

function mmText(mm: number): string {
  return withSign(mm, 10_000_000n, 4, 'mm');
}

/** Writes a length as a decimal of a unit that has so many stored steps, to so many places, without idle zeros. */
function withSign(mm: number, stepsPerUnit: bigint, places: number, unit: LengthUnit): string {
  const parts = roundedQuotient(BigInt(storedSteps(mm)) * 10n ** BigInt(places), stepsPerUnit);
  const digits = plainDecimal(parts, { places, keptPlaces: 0, hasLeadingZero: true });
  return `${parts < 0n ? '−' : ''}${digits} ${unit}`;
}

function quoted(text: string): string {
  const characters = Array.from(text.replaceAll('\n', ' '));
  return characters.length > QUOTED_LENGTH
    ? `“${characters.slice(0, QUOTED_LENGTH).join('')}…”`
    : `“${characters.join('')}”`;
}
