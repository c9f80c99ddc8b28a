/**
 * Reads plain typed text as a length or a sum of lengths, exactly as written: no rounding, no range, no unit of the
 * job. What the text leaves open (a unit that is not there, a comma with two meanings, a hyphen with two meanings) is
 * kept open for the caller.
 *
 *     text     = ["="] [sign] term { sign term }        a sum that begins with a sign needs the "="
 *     term     = quantity [unit]
 *     quantity = decimal | whole "/" whole | whole (" " or "-") whole "/" whole
 *
 * In "1-3/8" the hyphen joins a mixed number, or it is a minus: `hyphen` says that the text has such a place, and the
 * caller reads it either way. Behind "=" it is always a minus.
 */
import { addExact, exactDecimal, type ExactNumber } from './exact-number.ts';
import { lengthTokens, type LengthToken } from './length-tokens.ts';
import type { LengthUnit } from './length-unit.ts';
import { readDecimal } from './read-decimal.ts';

export type LengthTerm = {
  readonly isNegative: boolean;
  readonly value: ExactNumber;
  /** the other meaning of its comma, which then parts thousands */
  readonly grouped?: ExactNumber;
  readonly unit?: LengthUnit;
  readonly isFraction: boolean;
};

export type LengthFault =
  | 'notALength'
  | 'noNumber'
  | 'power'
  | 'unknownUnit'
  | 'feet'
  | 'twoPoints'
  | 'commas'
  | 'twoValues'
  | 'fraction'
  | 'signFirst'
  | 'unfinished';

export type WrongText = { readonly type: 'wrong'; readonly why: LengthFault; readonly part: string };

export type LengthText =
  | {
      readonly type: 'terms';
      readonly terms: readonly LengthTerm[];
      readonly hyphen: 'none' | 'tight' | 'spaced';
    }
  | WrongText;

const POWER_OF_TEN = /^[-+]?[0-9.,]+e[-+]?[0-9]+$/iu;
const WHOLE = /^[0-9]+$/u;

/**
 * Reads plain text.
 *
 * @param joinHyphens whether a hyphen that can join a mixed number does so; otherwise it is a minus
 */
export function readLengthText(plain: string, joinHyphens: boolean): LengthText {
  if (POWER_OF_TEN.test(plain)) return wrong('power', plain);
  const tokens = lengthTokens(plain);
  if (!tokens.some((token) => token.kind === 'number')) {
    const isOnlyUnit = tokens.length === 1 && tokens[0]?.unit !== undefined;
    return wrong(isOnlyUnit ? 'noNumber' : 'notALength', plain);
  }
  const isFormula = isSign(tokens[0], '=');
  const terms: LengthTerm[] = [];
  let hyphen: 'none' | 'tight' | 'spaced' = 'none';
  let at = isFormula ? 1 : 0;
  const startsWithSign = isSign(tokens[at], '+') || isSign(tokens[at], '-');
  do {
    const isNegative = isSign(tokens[at], '-');
    if (isNegative || isSign(tokens[at], '+')) at += 1;
    const join = isFormula ? 'none' : hyphenAt(tokens, at);
    if (join !== 'none' && hyphen !== 'spaced') hyphen = join;
    const read = readTerm(tokens, at, isNegative, joinHyphens && join !== 'none');
    if (read.type === 'wrong') return read.why === 'fraction' ? wrong('fraction', plain) : read;
    terms.push(read.term);
    at = read.end;
  } while (isSign(tokens[at], '+') || isSign(tokens[at], '-'));
  const rest = tokens[at];
  if (rest !== undefined) return wrong(faultOfRest(rest), plain);
  if (startsWithSign && terms.length > 1 && !isFormula) return wrong('signFirst', plain);
  return { type: 'terms', terms, hyphen };
}

type TermRead = { readonly type: 'term'; readonly term: LengthTerm; readonly end: number } | WrongText;

function readTerm(
  tokens: readonly LengthToken[],
  start: number,
  isNegative: boolean,
  joinsHyphen: boolean,
): TermRead {
  const first = tokens[start];
  if (first === undefined) return wrong('unfinished', '');
  if (first.kind !== 'number') return wrong(faultOfRest(first), first.text);
  let end = start + 1;
  let quantity: Pick<LengthTerm, 'value' | 'grouped' | 'isFraction'>;
  const isMixed = joinsHyphen || (tokens[end]?.kind === 'number' && isSign(tokens[end + 1], '/'));
  if (isSign(tokens[end], '/') || isMixed) {
    const topAt = joinsHyphen ? start + 2 : isMixed ? start + 1 : start;
    const value = exactFraction(isMixed ? first : undefined, tokens[topAt], tokens[topAt + 2]);
    if (value === undefined) return wrong('fraction', first.text);
    quantity = { value, isFraction: true };
    end = topAt + 3;
  } else {
    const decimal = readDecimal(first.text);
    if (decimal.type === 'wrong') {
      return wrong(decimal.why === 'noDigits' ? 'notALength' : decimal.why, first.text);
    }
    const { value, grouped } = decimal;
    quantity = grouped === undefined ? { value, isFraction: false } : { value, grouped, isFraction: false };
  }
  const unitToken = tokens[end];
  if (unitToken?.kind !== 'unit') return { type: 'term', term: { isNegative, ...quantity }, end };
  if (unitToken.unit === undefined) return wrong('unknownUnit', unitToken.text);
  return { type: 'term', term: { isNegative, ...quantity, unit: unitToken.unit }, end: end + 1 };
}

/** Gives whole + top/bottom; undefined unless all are whole numbers, bottom not 0 and, behind a whole, top < bottom. */
function exactFraction(
  wholeToken: LengthToken | undefined,
  topToken: LengthToken | undefined,
  bottomToken: LengthToken | undefined,
): ExactNumber | undefined {
  const whole = wholeToken === undefined ? '0' : wholeToken.text;
  const top = topToken?.text ?? '';
  const bottom = bottomToken?.text ?? '';
  if (![whole, top, bottom].every((digits) => WHOLE.test(digits))) return undefined;
  const fraction = { top: BigInt(top), bottom: BigInt(bottom) };
  if (fraction.bottom === 0n) return undefined;
  if (wholeToken !== undefined && fraction.top >= fraction.bottom) return undefined;
  return addExact(exactDecimal(whole, ''), fraction);
}

/** Tells whether the five tokens from here are written like "1-3/8", and whether blanks stand around the hyphen. */
function hyphenAt(tokens: readonly LengthToken[], start: number): 'none' | 'tight' | 'spaced' {
  const [whole, hyphen, top, slash, bottom] = tokens.slice(start, start + 5);
  if (!isSign(hyphen, '-') || !isSign(slash, '/')) return 'none';
  if (whole?.kind !== 'number' || exactFraction(whole, top, bottom) === undefined) return 'none';
  return hyphen?.isApart === true || top?.isApart === true ? 'spaced' : 'tight';
}

function faultOfRest(token: LengthToken): LengthFault {
  if (token.kind === 'break' || token.kind === 'number') return 'twoValues';
  if (token.text === '/') return 'fraction';
  if (token.text === "'") return 'feet';
  return 'notALength';
}

function isSign(token: LengthToken | undefined, text: '+' | '-' | '/' | '='): boolean {
  return token?.kind === 'sign' && token.text === text;
}

function wrong(why: LengthFault, part: string): WrongText {
  return { type: 'wrong', why, part };
}
