/**
 * Brings what a keyboard, a clipboard or a caliper that types has delivered into plain characters, without deciding
 * what it means. No units.
 *
 * `plain` holds ASCII where the typed character has an ASCII meaning: digits of other scripts, full-width forms,
 * minus signs, quotation and prime marks, fraction characters. A run of blanks is one space. A run with a control
 * character in it (Tab, Return, what a scanner puts around a value) is one line feed: it separates values, so that
 * digits on its two sides are never joined. Marks that cannot be seen (joiners, direction marks) are dropped.
 */

/** Characters one typed value may have; longer text is answered with a sentence. */
export const MAX_TYPED_LENGTH = 200;

export type CleanText = {
  /** what was typed, fit to be shown and stored: no control characters, no blanks at its ends */
  readonly typed: string;
  /** the same in plain characters, to be read */
  readonly plain: string;
};

/** A separator between values. */
const BREAK = '\n';
const BLANKS = '\\u0020\\u00a0\\u1680\\u2000-\\u200a\\u202f\\u205f\\u3000';
const CONTROLS = '\\u0000-\\u001f\\u007f-\\u009f\\u2028\\u2029';
const UNSEEN = '\\u00ad\\u061c\\u200b-\\u200f\\u202a-\\u202e\\u2060-\\u2064\\u2066-\\u2069\\ufeff';

const UNSEEN_MARKS = new RegExp(`[${UNSEEN}]`, 'gu');
const CONTROL_RUN = new RegExp(`[${CONTROLS}]+`, 'gu');
const EDGES = new RegExp(`^[${CONTROLS}${BLANKS}${UNSEEN}]+|[${CONTROLS}${BLANKS}${UNSEEN}]+$`, 'gu');
const SPACING_RUN = new RegExp(`[${CONTROLS}${BLANKS}]+`, 'gu');
const ANY_CONTROL = new RegExp(`[${CONTROLS}]`, 'u');

const FULL_WIDTH = /[\uff01-\uff5e]/gu;
/** Arabic-Indic, Persian and Devanagari digits: first digit of each ten. */
const DIGIT_TENS = [0x0660, 0x06f0, 0x0966];
const OTHER_DIGITS = /[\u0660-\u0669\u06f0-\u06f9\u0966-\u096f]/gu;

const SAME_MEANING: readonly (readonly [RegExp, string])[] = [
  [/[\u2010-\u2013\u2212\ufe63]/gu, '-'],
  [/[\u2018\u2019\u2032\u02b9\u00b4]/gu, "'"],
  [/[\u201c-\u201f\u2033\u02ba]|''/gu, '"'],
  [/\u066b/gu, '.'],
  [/[\u00ba\u02da]/gu, '°'],
  [/\u339c/gu, 'mm'],
  [/\u33cc/gu, 'in'],
];

/** One-character fractions: "⅜" is 3/8. */
const FRACTION_CHARACTERS: Readonly<Record<string, string>> = {
  '¼': '1/4',
  '½': '1/2',
  '¾': '3/4',
  '⅐': '1/7',
  '⅑': '1/9',
  '⅒': '1/10',
  '⅓': '1/3',
  '⅔': '2/3',
  '⅕': '1/5',
  '⅖': '2/5',
  '⅗': '3/5',
  '⅘': '4/5',
  '⅙': '1/6',
  '⅚': '5/6',
  '⅛': '1/8',
  '⅜': '3/8',
  '⅝': '5/8',
  '⅞': '7/8',
};
const RAISED = '⁰¹²³⁴⁵⁶⁷⁸⁹';
const LOWERED = '₀₁₂₃₄₅₆₇₈₉';
const BUILT_FRACTION = new RegExp(
  `[${Object.keys(FRACTION_CHARACTERS).join('')}]|[${RAISED}]+[\\u2044\\u2215/][${LOWERED}]+`,
  'gu',
);
const OTHER_SLASHES = /[\u2044\u2215]/gu;
const DIGIT = /[0-9]/u;

/** Cleans one typed value; undefined when it is longer than a value can be. */
export function cleanTypedText(text: string): CleanText | undefined {
  if (text.length > MAX_TYPED_LENGTH) return undefined;
  const seen = text.replace(EDGES, '');
  let plain = seen
    .replace(UNSEEN_MARKS, '')
    .replace(FULL_WIDTH, (character) => String.fromCharCode(character.charCodeAt(0) - 0xfee0))
    .replace(OTHER_DIGITS, plainDigit);
  for (const [pattern, meaning] of SAME_MEANING) plain = plain.replace(pattern, meaning);
  plain = plain
    .replace(BUILT_FRACTION, plainFraction)
    .replace(OTHER_SLASHES, '/')
    .replace(SPACING_RUN, (run) => (ANY_CONTROL.test(run) ? BREAK : ' '))
    .trim();
  return { typed: seen.replace(CONTROL_RUN, ' '), plain };
}

/**
 * Gives the one value of a text that consists of the same value twice, as when an instrument sent it twice
 * ("0.3630.363", "9.22 9.22", "363363 thou"); undefined for any other text. Takes plain text.
 */
export function halfOfRepeated(plain: string): string | undefined {
  return exactHalf(plain) ?? halfBeforeUnit(plain);
}

function exactHalf(plain: string): string | undefined {
  const length = plain.length;
  const middle = plain.charAt((length - 1) / 2);
  const isParted = length % 2 === 1 && (middle === ' ' || middle === BREAK);
  if (length % 2 === 1 && !isParted) return undefined;
  const halfLength = Math.floor(length / 2);
  const half = plain.slice(0, halfLength);
  return halfLength > 0 && plain.endsWith(half) ? half : undefined;
}

/** The unit may stand once behind both: "0.3630.363 in". */
function halfBeforeUnit(plain: string): string | undefined {
  let end = plain.length;
  while (end > 0 && !DIGIT.test(plain.charAt(end - 1))) end -= 1;
  const half = exactHalf(plain.slice(0, end));
  return half === undefined ? undefined : half + plain.slice(end);
}

function plainDigit(character: string): string {
  const code = character.charCodeAt(0);
  const zero = DIGIT_TENS.find((first) => code >= first && code <= first + 9);
  return zero === undefined ? character : String(code - zero);
}

/** Keeps a fraction character apart from digits at its sides: "1⅜" is 1 and 3/8, never 13/8. */
function plainFraction(fraction: string, at: number, whole: string): string {
  const before = DIGIT.test(whole.charAt(at - 1)) ? ' ' : '';
  const after = DIGIT.test(whole.charAt(at + fraction.length)) ? BREAK : '';
  const plain = FRACTION_CHARACTERS[fraction] ?? Array.from(fraction, digitOfBuilt).join('');
  return before + plain + after;
}

function digitOfBuilt(character: string): string {
  const digit = Math.max(RAISED.indexOf(character), LOWERED.indexOf(character));
  return digit < 0 ? '/' : String(digit);
}
