import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { formatBoth, formatLength, formatOffset } from '../../../src/model/units/format-length.ts';
import { inchesToMm, toStoredMm } from '../../../src/model/units/length-unit.ts';
import { parseLength } from '../../../src/model/units/parse-length.ts';

const ROOMY = { fromMm: -1e6, toMm: 1e6 };
const jobUnit = fc.constantFrom('in', 'mm');
/** Any stored length up to 10 m, on its step. */
const storedMm = fc.integer({ min: -1e11, max: 1e11 }).map((steps) => toStoredMm(steps / 1e7));

describe('formatLength', () => {
  it('writes inches the way of the trade', () => {
    const cases: readonly (readonly [number, string])[] = [
      [0.363, '.363'],
      [0.3345, '.3345'],
      [0.5, '.500'],
      [1.375, '1.375'],
      [0.02, '.020'],
      [0, '.000'],
      [0.33456, '.3346'],
      [0.99996, '1.000'],
      [-0.0005, '−.0005'],
    ];
    for (const [inches, text] of cases) expect(formatLength(inches * 25.4, { unit: 'in' })).toBe(text);
  });

  it('writes mm to the hundredth', () => {
    const cases: readonly (readonly [number, string])[] = [
      [8.4963, '8.50'],
      [9.2202, '9.22'],
      [0.005, '0.01'],
      [0, '0.00'],
      [12, '12.00'],
    ];
    for (const [mm, text] of cases) expect(formatLength(mm, { unit: 'mm' })).toBe(text);
  });

  it('writes to the half thousandth what a caliper would show', () => {
    expect(formatLength(inchesToMm(0.33456), { unit: 'in', form: 'bench' })).toBe('.3345');
    expect(formatLength(inchesToMm(0.33476), { unit: 'in', form: 'bench' })).toBe('.335');
  });

  it('writes more for exports, with a zero and a hyphen that machines read', () => {
    expect(formatLength(inchesToMm(0.3345), { unit: 'in', form: 'export' })).toBe('0.33450');
    expect(formatLength(-8.4963, { unit: 'mm', form: 'export' })).toBe('-8.4963');
    expect(Number(formatLength(-0.0127, { unit: 'in', form: 'export' }))).toBe(-0.0005);
  });

  it('keeps places for columns and adds the unit when asked', () => {
    expect(formatLength(inchesToMm(0.363), { unit: 'in', keepsPlaces: true })).toBe('.3630');
    expect(formatLength(inchesToMm(0.363), { unit: 'in', hasUnit: true })).toBe('.363 in');
  });

  it('refuses a number that is not finite as a bug', () => {
    for (const mm of [NaN, Infinity, -Infinity])
      expect(() => formatLength(mm, { unit: 'in' })).toThrow(/stored/u);
  });

  it('gives every stored length back through its round-trip form', () => {
    fc.assert(
      fc.property(storedMm, jobUnit, jobUnit, (mm, unit, readIn) => {
        const text = formatLength(mm, { unit, form: 'roundTrip' });
        const reading = parseLength(text, { unit: readIn, plausible: ROOMY, allowNegative: true });
        expect(reading).toEqual({ type: 'length', mm, unit, typed: text });
      }),
      { numRuns: 8000 },
    );
  });

  it('is read back within half its last place in every form', () => {
    const halfPlaceMm = {
      in: { screen: 0.00005, bench: 0.00025, export: 0.000005 },
      mm: { screen: 0.005, bench: 0.005, export: 0.00005 },
    };
    fc.assert(
      fc.property(storedMm, jobUnit, fc.constantFrom('screen', 'bench', 'export'), (mm, unit, form) => {
        const text = formatLength(mm, { unit, form, hasUnit: true });
        const reading = parseLength(text, { unit: 'mm', plausible: ROOMY, allowNegative: true });
        expect(reading.type).toBe('length');
        if (reading.type !== 'length') return;
        const allowed = halfPlaceMm[unit][form] * (unit === 'in' ? 25.4 : 1);
        expect(Math.abs(reading.mm - mm)).toBeLessThanOrEqual(allowed + 1e-7);
      }),
      { numRuns: 4000 },
    );
  });
});

describe('formatOffset', () => {
  it('writes a sign and half thousandths', () => {
    expect(formatOffset(inchesToMm(0.0024), 'in')).toBe('+.0025');
    expect(formatOffset(inchesToMm(-0.0045), 'in')).toBe('−.0045');
    expect(formatOffset(inchesToMm(0.003), 'in')).toBe('+.003');
    expect(formatOffset(-0.114, 'mm')).toBe('−0.11');
  });

  it('has no sign for what rounds to nothing', () => {
    for (const mm of [0, -0, inchesToMm(0.0002), inchesToMm(-0.0002)])
      expect(formatOffset(mm, 'in')).toBe('.000');
    for (const mm of [0, -0, 0.0049, -0.0049]) expect(formatOffset(mm, 'mm')).toBe('0.00');
  });

  it('treats both signs alike', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1e7 }), jobUnit, (steps, unit) => {
        const above = formatOffset(steps / 1e7, unit);
        const below = formatOffset(-steps / 1e7, unit);
        expect(below.replace('−', '')).toBe(above.replace('+', ''));
      }),
      { numRuns: 2000 },
    );
  });
});

describe('formatBoth', () => {
  it('echoes the unit of the job first', () => {
    expect(formatBoth(inchesToMm(0.3345), 'in')).toBe('.3345 in  8.50 mm');
    expect(formatBoth(8.5, 'mm')).toBe('8.50 mm  .3346 in');
  });
});
