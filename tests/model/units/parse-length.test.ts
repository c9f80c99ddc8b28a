import { describe, expect, it } from 'vitest';
import {
  parseLength,
  type LengthOptions,
  type LengthReading,
} from '../../../src/model/units/parse-length.ts';
import { lengthCorpus } from '../../support/length-corpus.ts';
import { CORPUS_RANGE, type LengthSpelling } from '../../support/length-spelling.ts';

const PIN = { plausible: CORPUS_RANGE, allowSum: true } as const;
const inchJob = (text: string, options: Partial<LengthOptions> = {}): LengthReading =>
  parseLength(text, { unit: 'in', ...PIN, ...options });
const mmJob = (text: string, options: Partial<LengthOptions> = {}): LengthReading =>
  parseLength(text, { unit: 'mm', ...PIN, ...options });

function says(reading: LengthReading): readonly string[] {
  return reading.type === 'ask' ? reading.choices.map((choice) => choice.says) : [];
}

/** Gives what a reading must equal, in the form of the corpus. */
function asExpected(reading: LengthReading): LengthSpelling['expected'] {
  const steps = (mm: number): bigint => BigInt(Math.round(mm * 1e7));
  switch (reading.type) {
    case 'length':
      return { type: 'length', steps: steps(reading.mm), unit: reading.unit };
    case 'ask':
      return {
        type: 'ask',
        reason: reading.reason,
        steps: reading.choices.map((choice) => steps(choice.mm)),
      };
    case 'error':
      return { type: 'error' };
    case 'empty':
      return { type: 'empty' };
  }
}

describe('parseLength on the corpus of spellings', () => {
  const corpus = lengthCorpus();

  it('has at least 5,000 spellings of every kind', () => {
    const count = (type: string): number => corpus.filter((each) => each.expected.type === type).length;
    expect(corpus.length).toBeGreaterThanOrEqual(5000);
    expect(count('length')).toBeGreaterThan(5000);
    expect(count('ask')).toBeGreaterThan(1000);
    expect(count('error')).toBeGreaterThan(150);
    expect(count('empty')).toBeGreaterThan(10);
  });

  it('reads every spelling as its exact fraction says', () => {
    const misread = corpus
      .map((each) => ({ ...each, got: asExpected(parseLength(each.text, { unit: each.jobUnit, ...PIN })) }))
      .filter(({ expected, got }) => JSON.stringify(expected, plain) !== JSON.stringify(got, plain));
    expect(misread).toEqual([]);
  });

  it('reads what it gives back as typed the same way', () => {
    for (const { text, jobUnit } of corpus) {
      const reading = parseLength(text, { unit: jobUnit, ...PIN });
      if (reading.type === 'length')
        expect(parseLength(reading.typed, { unit: jobUnit, ...PIN })).toEqual(reading);
    }
  });

  it('answers every refusal with one line that names an example', () => {
    for (const { text, jobUnit } of corpus) {
      const reading = parseLength(text, { unit: jobUnit, ...PIN });
      if (reading.type !== 'error') continue;
      expect(reading.message).toMatch(/^[^\n]{20,160}\.$/u);
      expect(reading.message).toMatch(/like \S+/u);
    }
  });
});

describe('parseLength in a job in inches', () => {
  it('reads a bare number in inches', () => {
    expect(inchJob('.363')).toEqual({ type: 'length', mm: 9.2202, unit: 'in', typed: '.363' });
  });

  it('asks whether a bare whole number is in thou', () => {
    const reading = inchJob('363');
    expect(reading).toMatchObject({ type: 'ask', reason: 'out-of-range' });
    expect(says(reading)).toEqual(['0.363 in (363 thou)']);
    expect(reading).toHaveProperty(
      'message',
      '“363” is outside 0.02 to 1.5 in. Did you mean 0.363 in (363 thou)?',
    );
  });

  it('asks whether a number too large for inches is in mm', () => {
    expect(says(inchJob('9.22'))).toEqual(['9.22 mm (0.36299 in)']);
  });

  it('offers thou and mm where both are plausible', () => {
    expect(says(inchJob('36'))).toEqual(['0.036 in (36 thou)', '36 mm (1.41732 in)']);
  });

  it('asks even where the stated unit makes the value implausible', () => {
    expect(says(inchJob('363 mm'))).toEqual(['0.363 in (363 thou)']);
    expect(says(inchJob('9.22 in'))).toEqual(['9.22 mm (0.36299 in)']);
    expect(says(inchJob('.363 mm'))).toEqual(['0.363 in (9.2202 mm)', '0.363 mm (0.01429 in) as typed']);
    expect(says(inchJob('.363 thou'))).toEqual(['0.363 in (9.2202 mm)']);
  });

  it('asks about a comma that can part thousands and never guesses', () => {
    expect(inchJob('1,234')).toMatchObject({ type: 'ask', reason: 'ambiguous-comma' });
    expect(inchJob('1,234', { plausible: { fromMm: 0, toMm: 1e6 } })).toMatchObject({
      choices: [{ mm: 31.3436 }, { mm: 31343.6 }],
    });
    expect(inchJob('0,363')).toMatchObject({ type: 'length', mm: 9.2202 });
  });

  it('takes a value sent twice only as a question', () => {
    for (const text of [
      '0.3630.363',
      '.363.363',
      '0.363\r\n0.363\r\n',
      '363363',
      '0.3630.363 in',
      '23/6423/64',
    ]) {
      expect(inchJob(text), text).toMatchObject({ type: 'ask', reason: 'doubled' });
    }
    expect(inchJob('0.3630.364')).toMatchObject({ type: 'error' });
  });

  it('offers a length a little outside the range as it stands, behind what fits', () => {
    expect(says(inchJob('2'))).toEqual(['2 mm (0.07874 in)', '2 in (50.8 mm) as typed']);
    expect(inchJob('3.1')).toMatchObject({ type: 'ask', choices: [{ mm: 3.1, unit: 'mm' }] });
    expect(inchJob('3.1 in', { plausible: { fromMm: 5, toMm: 38.1 } })).toMatchObject({ type: 'error' });
  });

  it('takes both ends of the range', () => {
    const plausible = { fromMm: 0.02 * 25.4, toMm: 1.5 * 25.4 };
    for (const text of ['.02', '1.5', '20 thou', '1500 thou', '1 1/2']) {
      expect(inchJob(text, { plausible }), text).toMatchObject({ type: 'length' });
    }
    for (const text of ['.01999', '1.50001']) expect(inchJob(text, { plausible }).type, text).toBe('ask');
  });
});

describe('parseLength in a job in mm', () => {
  it('offers an inch number in both units before it stands as mm', () => {
    expect(says(mmJob('.363'))).toEqual(['0.363 in (9.2202 mm)', '0.363 mm (0.01429 in) as typed']);
    expect(says(mmJob('363'))).toEqual(['0.363 in (363 thou, 9.2202 mm)']);
  });

  it('reads a bare fraction in inches', () => {
    expect(mmJob('23/64')).toEqual({ type: 'length', mm: 9.128125, unit: 'in', typed: '23/64' });
  });
});

describe('parseLength on sums', () => {
  it('refuses them unless they are allowed', () => {
    for (const text of ['=.363+.002', '.363+.002', '=.363']) {
      expect(inchJob(text, { allowSum: false }), text).toMatchObject({ type: 'error' });
    }
  });

  it('asks whether a hyphen joins or is a minus, except where it is written tight and alone', () => {
    expect(inchJob('1-3/8')).toMatchObject({ type: 'length', mm: 34.925 });
    expect(inchJob('1 - 3/8')).toMatchObject({
      reason: 'mixed-or-minus',
      choices: [{ mm: 34.925 }, { mm: 15.875 }],
    });
    expect(inchJob('1-3/8+.002')).toMatchObject({ reason: 'mixed-or-minus' });
    expect(inchJob('=1-3/8')).toMatchObject({ type: 'length', mm: 15.875 });
    expect(inchJob('1 - 3/8', { allowSum: false })).toMatchObject({ type: 'length', mm: 34.925 });
    expect(mmJob('1 - 3/8')).toMatchObject({ type: 'ask', choices: [{ mm: 34.925 }] });
  });

  it('asks for units where inches and mm would have to be guessed', () => {
    expect(inchJob('.363 + 1 mm')).toMatchObject({
      type: 'error',
      message: expect.stringMatching(/mixed/u) as string,
    });
    expect(mmJob('9.22 + 2 thou')).toMatchObject({ type: 'error' });
    expect(inchJob('.363 + 2 thou')).toMatchObject({ type: 'length', mm: 9.271 });
  });

  it('refuses a sum below zero', () => {
    expect(inchJob('=.1-.4')).toMatchObject({
      type: 'error',
      message: expect.stringMatching(/below zero/u) as string,
    });
  });
});

describe('parseLength with a minus allowed', () => {
  const zeroCheck: LengthOptions = {
    unit: 'in',
    plausible: { fromMm: -0.254, toMm: 0.254 },
    allowNegative: true,
  };

  it('reads readings on either side of zero and never minus zero', () => {
    expect(parseLength('-.0005', zeroCheck)).toMatchObject({ type: 'length', mm: -0.0127 });
    expect(parseLength('\u2212.0005', zeroCheck)).toMatchObject({ type: 'length', mm: -0.0127 });
    expect(parseLength('-0', zeroCheck)).toEqual({ type: 'length', mm: 0, unit: 'in', typed: '-0' });
  });

  it('still asks when the unit must be wrong', () => {
    expect(parseLength('-.5', zeroCheck)).toMatchObject({
      type: 'ask',
      choices: [{ mm: -0.0127, unit: 'thou' }],
    });
  });
});

describe('parseLength without a range', () => {
  it('refuses a minus even before a zero', () => {
    expect(parseLength('-0', { unit: 'in' })).toMatchObject({ type: 'error' });
  });

  it('asks back what is longer than anything on a cylinder or key', () => {
    expect(parseLength('363', { unit: 'in' })).toMatchObject({ type: 'ask', choices: [{ mm: 9.2202 }] });
    expect(parseLength('.363', { unit: 'mm' })).toMatchObject({ type: 'length', mm: 0.363 });
    expect(parseLength('0', { unit: 'in' })).toMatchObject({ type: 'length', mm: 0 });
  });

  it('refuses a range that is upside down as a bug', () => {
    expect(() => parseLength('1', { unit: 'in', plausible: { fromMm: 2, toMm: 1 } })).toThrow(/range/u);
  });
});

describe('the sentences of parseLength', () => {
  it('say a range in three figures, both ends inside it', () => {
    const options = { unit: 'in', plausible: { fromMm: 1, toMm: 20 } } as const;
    const refused = parseLength('90', options);
    expect(refused).toHaveProperty('message', expect.stringContaining('outside 0.0394 to 0.787 in'));
    for (const end of ['0.0394', '0.787'])
      expect(parseLength(end, options)).toMatchObject({ type: 'length' });
  });

  it('say what is wrong', () => {
    const expected: readonly (readonly [string, RegExp])[] = [
      ['abc', /not a length/u],
      ['mm', /no number/u],
      ['1e3', /power of ten/u],
      ['.363 cm', /“cm” is not a unit/u],
      ["5'", /feet/u],
      ['0.3630.364', /more than one decimal point/u],
      ['1,2,3', /comma/u],
      ['.363 .370', /more than one value/u],
      ['1 11/8', /fraction/u],
      ['23/0', /fraction/u],
      ['+.363+.002', /begins with a sign/u],
      ['.363+', /missing at the end/u],
      ['-.363', /below zero/u],
      ['.0001', /outside 0.02 to 1.5 in/u],
      ['1'.repeat(201), /too long/u],
    ];
    for (const [text, pattern] of expected) {
      const reading = inchJob(text);
      expect(reading.type, text).toBe('error');
      if (reading.type === 'error') expect(reading.message, text).toMatch(pattern);
    }
  });

  it('give an example that would be taken', () => {
    const narrow: LengthOptions = { unit: 'mm', plausible: { fromMm: 0.01, toMm: 0.2 } };
    const reading = parseLength('abc', narrow);
    expect(reading).toMatchObject({ message: '“abc” is not a length; write it like 0.105 mm.' });
    expect(parseLength('0.105 mm', narrow)).toMatchObject({ type: 'length' });
  });

  it('repeat only the beginning of a long text', () => {
    const reading = inchJob('a'.repeat(150));
    expect(reading).toHaveProperty('message', `“${'a'.repeat(24)}…” is not a length; write it like .363 in.`);
  });
});

function plain(_key: string, value: unknown): unknown {
  return typeof value === 'bigint' ? String(value) : value;
}
