/**
 * What every kind of field makes of what is typed, pasted and shown, kept as text: value, question or sentence. That lengths are read
 * right is held by parse-length.test.ts against spellings built from whole numbers.
 */
import { describe, test } from 'vitest';
import { cleanTypedText } from '../../../src/model/units/clean-typed-text.ts';
import { formatBoth, formatLength, formatOffset } from '../../../src/model/units/format-length.ts';
import { formatAtMost, formatRange } from '../../../src/model/units/format-range.ts';
import { parseAngle } from '../../../src/model/units/parse-angle.ts';
import { parseBlock, type Separator } from '../../../src/model/units/parse-block.ts';
import { parseCount } from '../../../src/model/units/parse-count.ts';
import { parseLength } from '../../../src/model/units/parse-length.ts';
import { parseCoils, parseForce } from '../../../src/model/units/parse-quantity.ts';
import { asText } from '../../support/as-text.ts';
import { expectGolden } from '../../support/golden.ts';
import { lengthCorpus } from '../../support/length-corpus.ts';
import { CORPUS_RANGE, JOB_UNITS } from '../../support/length-spelling.ts';

/** One line for each text: as it was typed, and what came of it. */
function lines<T>(texts: readonly T[], say: (text: T) => unknown): string {
  return texts.map((text) => `${JSON.stringify(text)}\n${asText(say(text), '    ')}`).join('');
}

const rest = (answer: object) => ({ ...answer, typed: undefined });

describe('what is typed', () => {
  test.each([0, 1, 2, 3, 4, 5])('lengths, %s', (at) => {
    const spellings = lengthCorpus()
      .filter((_, i) => i % 240 === 40 * at)
      .map(({ text, jobUnit }) => [text, jobUnit] as const);
    const say = ([text, jobUnit]: (typeof spellings)[number]) =>
      rest(parseLength(text, { unit: jobUnit, plausible: CORPUS_RANGE, allowSum: true }));
    expectGolden(`readings/lengths-${at + 1}.txt`, lines(spellings, say));
  });

  const odd = [
    ...[
      '',
      ' ',
      '.',
      '-',
      '+',
      '=',
      '0',
      '-0',
      '.5',
      '5.',
      '-.5',
      '+.5',
      '1,5',
      '1,500',
      '1.500',
      '1,500.5',
      '1.500,5',
      '1 500',
      "1'500",
    ],
    ...[
      '.363.363',
      '363363',
      '.363 .363',
      '3/8',
      '1 3/8',
      '1-3/8',
      '3/0',
      '13/8',
      '⅜',
      '1⅜',
      '３／８',
      '٣٫٥',
      '3 thou',
      '3 mil',
      '363 thou',
    ],
    ...[
      '.363"',
      '.363 in.',
      '9.2 mm',
      '9,2mm',
      '0.92 cm',
      '1 ft',
      '9.2 mm .363 in',
      '.363 in = 9.22 mm',
      '.363 in = 9.3 mm',
      'abc',
      '1e-3',
    ],
    ...[
      '=.363+.002',
      '.363 - .05 mm',
      '.363+',
      '=1/0',
      '.363\n',
      '.363\t.421',
      '\u200b.363',
      '.363\u00a0in',
      '−.002',
      '–.002',
      '0.0001',
      '999999',
    ],
    'x'.repeat(300),
  ];
  test.each(JOB_UNITS)('lengths that may be odd, %s', (unit) => {
    const say = (text: string) => rest(parseLength(text, { unit }));
    expectGolden(`readings/odd-lengths-${unit}.txt`, lines(odd, say));
  });
  test.each(JOB_UNITS)('sums and offsets, %s', (unit) => {
    const plausible = { fromMm: -2, toMm: 2 };
    const say = (text: string) =>
      rest(parseLength(text, { unit, plausible, allowSum: true, allowNegative: true }));
    expectGolden(`readings/offsets-${unit}.txt`, lines(odd, say));
  });

  test('angles', () => {
    const texts = [
      '90',
      '90°',
      '90 deg',
      '7,5',
      '1,500',
      '9090',
      '9 0',
      '-90',
      '361',
      '360',
      '0',
      '-0',
      '45 degrees',
      '45 Deg.',
      '45 rad',
      '45°°',
      'x90',
      '90x',
      '',
      ' ',
      '.5',
      '5.',
      '1.2.3',
      '45.045',
      '4545',
      '45,45',
      '180,180',
    ];
    expectGolden(
      'readings/angles.txt',
      lines(texts, (text) => ({
        wide: rest(parseAngle(text)),
        narrow: rest(parseAngle(text, { fromDeg: 30, toDeg: 150 })),
      })),
    );
  });

  test('counts', () => {
    const texts = [
      '1',
      '0',
      '12',
      '13',
      '66',
      '+6',
      '-6',
      '6.0',
      '6 6',
      '006',
      '1000',
      '1001',
      '10001000',
      '',
      'six',
      '99999999999999999999',
      '٦',
    ];
    expectGolden(
      'readings/counts.txt',
      lines(texts, (text) => ({
        usual: rest(parseCount(text)),
        few: rest(parseCount(text, { from: 2, to: 12 })),
        one: rest(parseCount(text, { from: 12, to: 12 })),
      })),
    );
  });

  test('forces and coils', () => {
    const texts = [
      '2.5 N',
      '2,5N',
      '255 g',
      '255gf',
      '0.25 kg',
      '9 oz',
      '.5 lb',
      '2 lbf',
      '2',
      '',
      'N',
      '2 stone',
      '1,500 g',
      '0,500 kg',
      '.,5 N',
      ',500 kg',
      '0.05 N',
      '0.04 N',
      '100 N',
      '100.1 N',
      '+3 N',
      '-3 N',
      '3 n',
      '3  N',
      'x3 N',
      '3 N x',
      '10',
      '10.5',
      '1',
      '0',
      '200',
      '201',
      '9'.repeat(200),
      'w'.repeat(60),
    ];
    expectGolden(
      'readings/forces-and-coils.txt',
      lines(texts, (text) => ({ force: rest(parseForce(text)), coils: rest(parseCoils(text)) })),
    );
  });
});

describe('what is pasted', () => {
  test('blocks of cells', () => {
    const texts: readonly (readonly [string, Separator])[] = [
      ['a\tb\nc\td', '\t'],
      ['a\tb\r\nc\r\n', '\t'],
      ['a\rb\r\n\nc', '\t'],
      ['\ufeffa\t\t\n\tb\0\0', '\t'],
      ['"a\tb"\t"c""d"\n"e\nf"', '\t'],
      ['.363"\t"open\t"x"y\n"', '\t'],
      ['"a"b\t"c"', '\t'],
      ['""\t""""\t"\t"', '\t'],
      ['1,5;2,5\n3;', ';'],
      ['"1,5",2\n3', ','],
      ['1,5\t2', ','],
      [' \n\t \0', '\t'],
      ['\n', '\t'],
      ['', '\t'],
      ['\na', '\t'],
    ];
    expectGolden(
      'readings/blocks.txt',
      lines(texts, ([text, separator]) => parseBlock(text, separator)),
    );
  });

  test('texts are cleaned', () => {
    const texts = [
      '３.６',
      '\u00bd',
      '1\u00bd',
      '1\u2044 2',
      '\u2212.5',
      '\u2013.5',
      'a\u00adb',
      '\u200e.5',
      'a\u0007b',
      '  a  b ',
      'a\u2009b',
      '٣٫٥',
      '१.५',
      '\u2033',
      '\u201d',
      '\u2032\u2032',
      'ﬁ',
      'µ',
      'é',
      '\ufeff1',
      '1\u30025',
      '1\uff0e5',
      '1\u066c500',
    ];
    expectGolden('readings/cleaned.txt', lines(texts, cleanTypedText));
  });
});

describe('what is shown', () => {
  const lengths = [
    0, 0.00001, 0.004, 0.005, 0.00635, 0.0064, 0.0127, 0.0254, -0.0254, -0.004, 0.333333, 1, 5.08, 9.2202,
    9.22, 12.7, 25.4, 25.399999, 127, -9.99999,
  ];
  test.each(JOB_UNITS)('lengths, %s', (unit) => {
    const say = (mm: number) => ({
      screen: formatLength(mm, { unit }),
      kept: formatLength(mm, { unit, keepsPlaces: true }),
      bench: formatLength(mm, { unit, form: 'bench', hasUnit: true }),
      export: formatLength(mm, { unit, form: 'export' }),
      roundTrip: formatLength(mm, { unit, form: 'roundTrip' }),
      bare: formatLength(mm, { unit, form: 'roundTrip', hasUnit: false }),
      offset: formatOffset(mm, unit),
      both: formatBoth(mm, unit),
      atMost: formatAtMost(mm, unit),
    });
    expectGolden(`readings/shown-${unit}.txt`, lines(lengths, say));
  });

  test('ranges', () => {
    const ranges = [
      [1, 2],
      [1.001, 1.999],
      [1.001, 1.009],
      [1, 1],
      [1.004, 1.006],
      [0.0127, 0.0254],
      [0.0128, 0.0253],
      [0.013, 0.0131],
      [-0.0127, 0.0127],
      [-0.5, -0.2],
    ] as const;
    expectGolden(
      'readings/ranges.txt',
      lines(ranges, ([from, to]) => JOB_UNITS.map((unit) => formatRange(from, to, unit).join(' to '))),
    );
  });
});
