/**
 * Spellings of lengths with what they must be read as, built from whole numbers: shares no code with src/.
 *
 * Every expected amount is a whole number of steps of 1e-7 mm, rounded from an exact fraction (ties away from zero).
 * Each spelling is read in a job in inches or in mm, for a length that is plausible from .020 in to 1.500 in, with sums
 * allowed. Sources: inch = 25.4 mm (exact by definition since 1959); how people, spreadsheets and calipers that type
 * write lengths is common practice, no source.
 */
import { addAsks, addRefusals } from './length-slips.ts';
import {
  fractionSteps,
  isPlausible,
  JOB_UNITS,
  nearest,
  STEPS_PER_INCH,
  STEPS_PER_MM,
  withPoint,
  type AddSpelling,
  type LengthSpelling,
} from './length-spelling.ts';

function fullWidth(text: string): string {
  return text.replace(/[!-~]/g, (character) => String.fromCharCode(character.charCodeAt(0) + 0xfee0));
}

function arabic(text: string): string {
  return text.replace(/[0-9]/g, (digit) => String.fromCharCode(0x660 + Number(digit))).replace('.', '\u066b');
}

/** How an inch may be written behind a number. */
const INCH_TAILS = [
  ' in',
  'in',
  ' IN',
  ' in.',
  ' inch',
  ' inches',
  ' Inch',
  '"',
  ' "',
  '\u2033',
  '\u201d',
  "''",
  '\u2032\u2032',
  '\u00a0in',
  '\u202fin',
  '\u2009in',
  '\u3000in',
  ' \u33cc',
  ' in\r\n',
  '"\t',
];
const THOU_TAILS = [
  ' thou',
  'thou',
  ' THOU',
  ' Thou',
  ' thou.',
  ' th',
  'th',
  ' mil',
  'mil',
  ' mils',
  ' thousandths',
  ' thousandth',
  ' thousandths of an inch',
  '\u00a0thou',
];
const MM_TAILS = [
  ' mm',
  'mm',
  ' MM',
  ' Mm',
  ' mm.',
  ' millimetres',
  ' millimeters',
  ' millimetre',
  '\u00a0mm',
  '\u202fmm',
  '\u2007mm',
  ' \u339c',
  '\u339c',
  ' mm\r',
];

/** What may come around a value: from a device that types, from a clipboard, from a slow finger. */
const WRAPPERS: readonly ((text: string) => string)[] = [
  (text) => `${text}\r\n`,
  (text) => `${text}\n`,
  (text) => `${text}\t`,
  (text) => `\u0002${text}\u0003`,
  (text) => `\u0002${text}\u0003\r\n`,
  (text) => `\u0000${text}\u0000`,
  (text) => `  ${text} `,
  (text) => `\u00a0${text}\u00a0`,
  (text) => `\ufeff${text}`,
  (text) => `\u202a${text}\u202c`,
  (text) => `\u200b${text}`,
  (text) => `+${text}`,
  (text) => `+ ${text}`,
  (text) => `=${text}`,
  fullWidth,
];

function addInches(add: AddSpelling): void {
  // Caliper readings: half thousandths and tenths of a thousandth, .0200 to 1.4995 in, in ten-thousandths.
  for (let tenThousandths = 200; tenThousandths <= 15_000; tenThousandths += 335) {
    const steps = nearest(BigInt(tenThousandths) * STEPS_PER_INCH, 10_000n);
    const length = { type: 'length', steps, unit: 'in' } as const;
    const dotted = withPoint(tenThousandths, 4);
    const trade = dotted.replace(/^0/, '');
    for (const text of [
      trade,
      dotted,
      `0${dotted}`,
      `${dotted}0`,
      `${dotted}000000000`,
      dotted.replace('.', ','),
    ]) {
      add(text, 'in', length);
    }
    for (const [at, tail] of INCH_TAILS.entries()) {
      add(`${at % 2 === 0 ? trade : dotted}${tail}`, 'in', length);
      add(`${at % 2 === 0 ? dotted : trade}${tail}`, 'mm', length);
    }
    for (const wrap of WRAPPERS) add(wrap(trade), 'in', length);
    add(arabic(dotted), 'in', length);
  }
}

function addThous(add: AddSpelling): void {
  for (let thou = 21; thou <= 1500; thou += 61) {
    const steps = BigInt(thou) * (STEPS_PER_INCH / 1000n);
    const length = { type: 'length', steps, unit: 'thou' } as const;
    for (const jobUnit of JOB_UNITS) for (const tail of THOU_TAILS) add(`${thou}${tail}`, jobUnit, length);
    add(`${thou}.5 thou`, 'in', {
      type: isPlausible(steps + STEPS_PER_INCH / 2000n) ? 'length' : 'error',
      steps: steps + STEPS_PER_INCH / 2000n,
      unit: 'thou',
    });
  }
}

function addMillimetres(add: AddSpelling): void {
  for (let hundredths = 51; hundredths <= 3810; hundredths += 92) {
    const steps = BigInt(hundredths) * (STEPS_PER_MM / 100n);
    const length = { type: 'length', steps, unit: 'mm' } as const;
    const dotted = withPoint(hundredths, 2);
    const comma = dotted.replace('.', ',');
    for (const text of [dotted, comma, `0${dotted}`, `${dotted}0`, arabic(dotted)]) add(text, 'mm', length);
    for (const [at, tail] of MM_TAILS.entries()) {
      add(`${at % 2 === 0 ? dotted : comma}${tail}`, 'in', length);
      add(`${at % 2 === 0 ? comma : dotted}${tail}`, 'mm', length);
    }
    for (const wrap of WRAPPERS) add(wrap(dotted), 'mm', length);
  }
}

const ONE_CHARACTER: readonly (readonly [string, number, number])[] = [
  ['¼', 1, 4],
  ['½', 1, 2],
  ['¾', 3, 4],
  ['⅓', 1, 3],
  ['⅔', 2, 3],
  ['⅕', 1, 5],
  ['⅖', 2, 5],
  ['⅗', 3, 5],
  ['⅘', 4, 5],
  ['⅙', 1, 6],
  ['⅚', 5, 6],
  ['⅐', 1, 7],
  ['⅛', 1, 8],
  ['⅜', 3, 8],
  ['⅝', 5, 8],
  ['⅞', 7, 8],
  ['⅑', 1, 9],
  ['⅒', 1, 10],
];

function addFractions(add: AddSpelling): void {
  const inBoth = (texts: readonly string[], steps: bigint): void => {
    for (const text of texts)
      for (const jobUnit of JOB_UNITS) add(text, jobUnit, { type: 'length', steps, unit: 'in' });
  };
  for (const bottom of [8, 16, 32, 64, 128]) {
    for (let top = 1; top < bottom; top += bottom > 32 ? 6 : 2) {
      const plain = `${top}/${bottom}`;
      const alone = fractionSteps(0, top, bottom);
      if (isPlausible(alone)) {
        inBoth(
          [
            plain,
            `${top} / ${bottom}`,
            `${plain}"`,
            `${plain} in`,
            `${top}\u2044${bottom}`,
            `${top}\u2215${bottom}\u2033`,
            `0 ${plain}`,
            `${plain}\r\n`,
          ],
          alone,
        );
      }
      const mixed = fractionSteps(1, top, bottom);
      if (isPlausible(mixed)) {
        inBoth(
          [
            `1 ${plain}`,
            `1-${plain}`,
            `1-${plain} in`,
            `1 ${plain}"`,
            `1\u00a0${plain} inch`,
            `1\u2010${plain}`,
            `1\u2013${plain}\u2033`,
          ],
          mixed,
        );
      }
    }
  }
  for (const [character, top, bottom] of ONE_CHARACTER) {
    inBoth([character, `${character}"`, `${character} in`, `0${character}`], fractionSteps(0, top, bottom));
    const mixed = fractionSteps(1, top, bottom);
    if (isPlausible(mixed))
      inBoth([`1${character}`, `1 ${character}`, `1-${character}"`, `1${character} inches`], mixed);
  }
  inBoth(['³⁄₈', '³/₈'], fractionSteps(0, 3, 8));
  inBoth(['²³⁄₆₄', '²³⁄₆₄ in'], fractionSteps(0, 23, 64));
  inBoth(['1³⁄₈'], fractionSteps(1, 3, 8));
}

function addSums(add: AddSpelling): void {
  for (let thou = 100; thou <= 900; thou += 40) {
    for (const change of [1, 2, 15]) {
      const first = `.${String(thou).padStart(3, '0')}`;
      const second = `.${String(change).padStart(3, '0')}`;
      const more = BigInt(thou + change) * 254_000n;
      const less = BigInt(thou - change) * 254_000n;
      const inches = (steps: bigint) => ({ type: 'length', steps, unit: 'in' }) as const;
      add(`=${first}+${second}`, 'in', inches(more));
      add(`${first} + ${second}`, 'in', inches(more));
      add(`${first}-${second}`, 'in', inches(less));
      add(`${first} \u2212 ${second}`, 'in', inches(less));
      add(`=${first}+${change} thou`, 'in', inches(more));
      for (const jobUnit of JOB_UNITS) {
        add(
          `${first} in - .${String(change).padStart(2, '0')} mm`,
          jobUnit,
          inches(BigInt(thou) * 254_000n - BigInt(change) * 100_000n),
        );
        add(`${first}"+${change}th`, jobUnit, inches(more));
      }
    }
  }
}

/** Gives every spelling once. */
export function lengthCorpus(): readonly LengthSpelling[] {
  const spellings = new Map<string, LengthSpelling>();
  const add: AddSpelling = (text, jobUnit, expected) => {
    spellings.set(`${jobUnit} ${text}`, { text, jobUnit, expected });
  };
  for (const part of [addInches, addThous, addMillimetres, addFractions, addSums, addAsks, addRefusals])
    part(add);
  return [...spellings.values()];
}
