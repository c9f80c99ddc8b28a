/**
 * Typed lengths against another reader of units: mathjs 15.2.0 (npm), `evaluate`, where it can read the text. It works
 * in binary floating point, so that it is compared to within one step of stored values (1e-7 mm).
 */
import { evaluate, type Unit } from 'mathjs';
import { describe, expect, it } from 'vitest';
import { parseLength } from '../../src/model/units/parse-length.ts';
import { lengthCorpus } from '../support/length-corpus.ts';
import { CORPUS_RANGE } from '../support/length-spelling.ts';

/**
 * Where a calculator and a person differ, and the person is followed: "Mm" is a megametre in the SI, and the hyphen of
 * "1-3/8 in" a minus in algebra.
 */
const IS_READ_OTHERWISE = /Mm|^[0-9]+-[0-9]+\//u;

/** What mathjs makes of a text, mm; undefined when it is not a length to it. */
function outsideMm(text: string): number | undefined {
  try {
    const value: unknown = evaluate(text);
    return isUnit(value) ? value.toNumber('mm') : undefined;
  } catch {
    return undefined;
  }
}

function isUnit(value: unknown): value is Unit {
  return typeof value === 'object' && value !== null && 'toNumber' in value;
}

describe('parseLength beside mathjs', () => {
  it('agrees on every spelling of the corpus that both read', () => {
    let compared = 0;
    for (const { text, jobUnit } of lengthCorpus()) {
      const reading = parseLength(text, { unit: jobUnit, plausible: CORPUS_RANGE, allowSum: true });
      if (reading.type !== 'length') continue;
      const outside = IS_READ_OTHERWISE.test(text) ? undefined : outsideMm(text);
      if (outside === undefined) continue;
      compared += 1;
      expect(Math.abs(reading.mm - outside), text).toBeLessThanOrEqual(1e-7);
    }
    expect(compared).toBeGreaterThan(500);
  });

  it('agrees on decimals, mils, fractions and sums', () => {
    for (let at = 0; at < 400; at += 1) {
      const inches = (0.02 + at * 0.00365).toFixed(4);
      const texts = [
        `${inches} in`,
        `${inches} inch`,
        `${21 + at * 3} mil`,
        `${(0.51 + at * 0.093).toFixed(2)} mm`,
      ];
      texts.push(
        `${1 + (at % 63)}/64 inch + ${inches} inch`,
        `${inches} in + 2 mil`,
        `3 in - ${inches} in - .05 mm`,
      );
      for (const text of texts) {
        const reading = parseLength(text, {
          unit: 'in',
          plausible: { fromMm: 0, toMm: 100 },
          allowSum: true,
        });
        const outside = outsideMm(text);
        expect(reading.type, text).toBe('length');
        if (reading.type !== 'length') continue;
        expect(outside, text).toBeTypeOf('number');
        expect(Math.abs(reading.mm - (outside ?? NaN)), text).toBeLessThanOrEqual(1e-7);
      }
    }
  });
});
