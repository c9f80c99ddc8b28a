import fc from 'fast-check';
import { afterAll, describe, expect, it } from 'vitest';
import { parseLength, type LengthReading } from '../../../src/model/units/parse-length.ts';
import { recordFigure } from '../../support/figure.ts';
import { nearest, withPoint } from '../../support/length-spelling.ts';

const PIN_RANGE = { fromMm: 0.508, toMm: 38.1 };
/** A plug, .3 to 2 in: less than a factor of 25.4, so that no slip of unit can be plausible. */
const PLUG_RANGE = { fromMm: 7.62, toMm: 50.8 };

const PIECES = [
  '0',
  '2',
  '3',
  '4',
  '5',
  '6',
  '7',
  '8',
  '9',
  '.',
  ',',
  '/',
  '-',
  '+',
  '=',
  ' ',
  '"',
  "'",
  'in',
  'mm',
  'thou',
  'th',
  'mil',
  'e',
  '1',
  '3/8',
  '⅜',
  '½',
  '\u2212',
  '\u00a0',
  '\u2044',
  '³',
  '₈',
  '\r',
  '\n',
  '\t',
  '\u0002',
  '\u0003',
  '\u0000',
  '\u200b',
  '\ufeff',
  '\uff11',
  '\u0663',
  '\u066b',
  'NaN',
  'Infinity',
  '0.363',
  '9.22',
  '1,234',
  '-0',
  '\ud83d',
  '°',
  'inch',
  'Thousandths of an inch',
];
const nearlyLength = fc.array(fc.constantFrom(...PIECES), { maxLength: 12 }).map((pieces) => pieces.join(''));
/** UTF-16 code units, unpaired surrogates among them; half of them from the first 256. */
const anyText = fc
  .array(fc.oneof(fc.nat(0xff), fc.nat(0xffff)), { maxLength: 24 })
  .map((codes) => String.fromCharCode(...codes));
const longText = fc
  .array(fc.constantFrom(...PIECES), { minLength: 100, maxLength: 400 })
  .map((pieces) => pieces.join(''));
const jobUnit = fc.constantFrom('in', 'mm');

/** Throws unless a reading keeps every promise that does not depend on the text; plain code, for speed. */
function checkPromises(reading: LengthReading, range: { fromMm: number; toMm: number }, sign: boolean): void {
  const isInside = (mm: number): boolean =>
    Number.isFinite(mm) && !Object.is(mm, -0) && mm >= range.fromMm && mm <= range.toMm;
  const isOnStep = (mm: number): boolean => Math.round(mm * 1e7) / 1e7 === mm;
  switch (reading.type) {
    case 'length':
      if (!isInside(reading.mm) || !isOnStep(reading.mm)) throw new Error(`took ${reading.mm}`);
      return;
    case 'ask':
      if (reading.choices.length === 0 || reading.message === '') throw new Error('asked nothing');
      for (const { mm } of reading.choices) {
        if (!Number.isFinite(mm) || !isOnStep(mm) || Object.is(mm, -0)) throw new Error(`offered ${mm}`);
        if (!sign && mm < 0) throw new Error(`offered ${mm}`);
      }
      return;
    case 'error':
      if (!reading.message.endsWith('.') || reading.message.length > 200) throw new Error(reading.message);
      return;
    case 'empty':
  }
}

describe('parseLength on random text', () => {
  const runs = (text: fc.Arbitrary<string>, numRuns: number): void => {
    fc.assert(
      fc.property(text, jobUnit, fc.boolean(), (typed, unit, allow) => {
        const range = allow ? { fromMm: -1, toMm: 38.1 } : PIN_RANGE;
        const options = { unit, plausible: range, allowSum: allow, allowNegative: allow };
        checkPromises(parseLength(typed, options), range, allow);
      }),
      { numRuns },
    );
  };

  it('answers 120,000 texts that are nearly lengths without an exception or a non-finite number', () => {
    runs(nearlyLength, 120_000);
  });

  it('answers 80,000 texts of any characters', () => {
    runs(anyText, 80_000);
  });

  it('answers 3,000 long texts', () => {
    runs(longText, 3000);
  });

  it('refuses text beyond its limit and takes padding within it', () => {
    expect(parseLength('1'.repeat(100_000), { unit: 'in' }).type).toBe('error');
    expect(parseLength(`${' '.repeat(150)}.363`, { unit: 'in' }).type).toBe('length');
  });
});

describe('parseLength without a minus allowed', () => {
  it('never offers a negative length, even where the range reaches below zero', () => {
    const range = { fromMm: -50, toMm: 50 };
    fc.assert(
      fc.property(nearlyLength, jobUnit, (typed, unit) => {
        const reading = parseLength(typed, { unit, plausible: range, allowSum: true });
        if (reading.type === 'length' && reading.mm < 0) throw new Error(`took ${reading.mm}`);
        if (reading.type === 'ask' && reading.choices.some((choice) => choice.mm < 0))
          throw new Error('offered');
      }),
      { numRuns: 5000 },
    );
    expect(parseLength('.363 thou - 5 mm', { unit: 'in', plausible: range, allowSum: true }).type).toBe(
      'error',
    );
    const shifted = parseLength('2 in - 5 mm', {
      unit: 'in',
      plausible: { fromMm: -50, toMm: 20 },
      allowSum: true,
    });
    expect(JSON.stringify(shifted)).not.toMatch(/"mm":-/u);
  });
});

describe('parseLength on exact values', () => {
  it('gives the stored length nearest to any decimal number of inches, thou or mm', () => {
    const units = { in: 254_000_000n, thou: 254_000n, mm: 10_000_000n } as const;
    const decimal = fc.tuple(fc.bigInt(0n, 10n ** 14n), fc.integer({ min: 1, max: 16 }));
    fc.assert(
      fc.property(decimal, fc.constantFrom('in', 'thou', 'mm'), ([digits, places], unit) => {
        const text = String(digits).padStart(places + 1, '0');
        const typed = `${text.slice(0, -places)}.${text.slice(-places)} ${unit}`;
        const expected = nearest(digits * units[unit], 10n ** BigInt(places));
        fc.pre(expected <= 9n * 10n ** 15n);
        const reading = parseLength(typed, { unit: 'in', plausible: { fromMm: 0, toMm: 9e8 } });
        expect(reading).toMatchObject({ type: 'length', mm: Number(expected) / 1e7, unit });
      }),
      { numRuns: 8000 },
    );
  });

  it('gives the stored length nearest to any fraction', () => {
    const fraction = fc.tuple(fc.nat(3), fc.integer({ min: 1, max: 999 }), fc.integer({ min: 1, max: 999 }));
    fc.assert(
      fc.property(fraction, fc.constantFrom(' ', '-'), jobUnit, ([whole, top, bottom], join, unit) => {
        fc.pre(top < bottom);
        const expected = nearest(BigInt(whole * bottom + top) * 254_000_000n, BigInt(bottom));
        const reading = parseLength(`${whole}${join}${top}/${bottom}`, { unit });
        expect(reading).toMatchObject({ type: 'length', mm: Number(expected) / 1e7, unit: 'in' });
      }),
      { numRuns: 5000 },
    );
  });

  it('adds and takes away exactly', () => {
    const parts = fc.array(fc.tuple(fc.boolean(), fc.integer({ min: 1, max: 99_999 })), {
      minLength: 1,
      maxLength: 8,
    });
    fc.assert(
      fc.property(parts, (changes) => {
        let text = '=50';
        let steps = 50n * 254_000_000n;
        for (const [isLess, size] of changes) {
          text += `${isLess ? '-' : '+'}${withPoint(size, 5)}`;
          steps += BigInt(isLess ? -size : size) * 2540n;
        }
        const range = { fromMm: 0, toMm: 1e6 };
        const reading = parseLength(text, { unit: 'in', plausible: range, allowSum: true });
        expect(reading).toMatchObject({ type: 'length', mm: Number(steps) / 1e7 });
      }),
      { numRuns: 5000 },
    );
  });
});

describe('the four slips', () => {
  let tried = 0;
  let taken = 0;
  afterAll(() => {
    recordFigure({
      what: 'inch for mm, thou for inch, comma for point, sent twice: taken without a yes',
      measured: taken,
      unit: 'values',
      aim: { atMost: 0 },
      note: `${tried} slips`,
    });
  });

  /** Half thousandths of an inch or hundredths of a mm, inside the range of a plug. */
  const inches = fc.integer({ min: 600, max: 4000 }).map((half) => half * 5);
  const hundredthsMm = fc.integer({ min: 762, max: 5080 });

  /** Checks that a slip is not taken, and that what was meant is among the choices. */
  const isAskedBack = (text: string, unit: 'in' | 'mm', meantSteps: bigint): void => {
    const reading = parseLength(text, { unit, plausible: PLUG_RANGE, allowSum: true });
    tried += 1;
    if (reading.type === 'length') taken += 1;
    expect(reading.type, text).toBe('ask');
    if (reading.type !== 'ask') return;
    expect(reading.choices.map((choice) => BigInt(Math.round(choice.mm * 1e7)))).toContain(meantSteps);
  };

  it('asks about an inch number in a job in mm', () => {
    fc.assert(
      fc.property(inches, (tenth) => isAskedBack(withPoint(tenth, 4), 'mm', BigInt(tenth) * 25_400n)),
      { numRuns: 2000 },
    );
  });

  it('asks about a mm number in a job in inches', () => {
    fc.assert(
      fc.property(hundredthsMm, (hundredth) =>
        isAskedBack(withPoint(hundredth, 2), 'in', BigInt(hundredth) * 100_000n),
      ),
      { numRuns: 2000 },
    );
  });

  it('asks about thou typed as a bare number or with the wrong unit', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 300, max: 2000 }),
        jobUnit,
        fc.constantFrom('', ' in', ' mm'),
        (thou, unit, tail) => isAskedBack(`${thou}${tail}`, unit, BigInt(thou) * 254_000n),
      ),
      { numRuns: 2000 },
    );
  });

  it('asks about inches typed as thou', () => {
    fc.assert(
      fc.property(inches, jobUnit, (tenth, unit) =>
        isAskedBack(`${withPoint(tenth, 4)} thou`, unit, BigInt(tenth) * 25_400n),
      ),
      { numRuns: 2000 },
    );
  });

  it('asks about every comma that can part thousands', () => {
    const text = fc.tuple(fc.integer({ min: 1, max: 999 }), fc.integer({ min: 0, max: 999 }));
    fc.assert(
      fc.property(
        text,
        jobUnit,
        fc.constantFrom('', ' in', ' mm', ' thou'),
        ([before, behind], unit, tail) => {
          const typed = `${before},${String(behind).padStart(3, '0')}${tail}`;
          for (const plausible of [PIN_RANGE, PLUG_RANGE, { fromMm: 0, toMm: 1e5 }]) {
            const { type } = parseLength(typed, { unit, plausible });
            tried += 1;
            if (type === 'length') taken += 1;
            expect(type, typed).not.toBe('length');
          }
        },
      ),
      { numRuns: 3000 },
    );
  });

  it('asks about a value sent twice, whatever stands between', () => {
    const between = fc.constantFrom('', ' ', '\r', '\n', '\r\n', '\t', '\u0003\u0002', '\r\n\u0002');
    fc.assert(
      fc.property(inches, between, (tenth, join) => {
        const text = withPoint(tenth, 4);
        isAskedBack(text + join + text, 'in', BigInt(tenth) * 25_400n);
        isAskedBack(`${text} in${join}${text} in`, 'mm', BigInt(tenth) * 25_400n);
      }),
      { numRuns: 2000 },
    );
    fc.assert(
      fc.property(hundredthsMm, between, (hundredth, join) => {
        const text = withPoint(hundredth, 2).replace('.', ',');
        isAskedBack(text + join + text, 'mm', BigInt(hundredth) * 100_000n);
      }),
      { numRuns: 2000 },
    );
  });

  it('takes nothing for a value sent three times or for two different values', () => {
    fc.assert(
      fc.property(inches, inches, (first, second) => {
        fc.pre(first !== second);
        const texts = [withPoint(first, 4), withPoint(second, 4)] as const;
        for (const text of [texts[0].repeat(3), texts.join(''), texts.join('\r\n'), `+${texts.join('+')}`]) {
          expect(parseLength(text, { unit: 'in', plausible: PLUG_RANGE, allowSum: true }).type, text).toBe(
            'error',
          );
        }
      }),
      { numRuns: 1000 },
    );
  });
});
