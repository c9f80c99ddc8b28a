import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseAngle } from '../../../src/model/units/parse-angle.ts';

const PIECES = [
  '0',
  '1',
  '9',
  '90',
  '.',
  ',',
  '-',
  '+',
  '°',
  ' deg',
  'e',
  ' ',
  '\r',
  '\u0002',
  '\u2212',
  '\ud83d',
  '\uff19',
];

describe('parseAngle', () => {
  it('reads degrees however they are written', () => {
    for (const text of [
      '90',
      '90°',
      '90 °',
      '90 deg',
      '90deg.',
      '90 degrees',
      '90,0',
      '９０',
      '90º',
      '+90',
      '90\r\n',
      '090',
      '٩٠',
    ]) {
      expect(parseAngle(text), text).toMatchObject({ type: 'angle', degrees: 90 });
    }
    expect(parseAngle('7,5')).toEqual({ type: 'angle', degrees: 7.5, typed: '7,5' });
  });

  it('keeps the number a decimal text names', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 360_000_000 }), (millionths) => {
        const text = (millionths / 1e6).toFixed(6);
        expect(parseAngle(text)).toMatchObject({ type: 'angle', degrees: Number(text) });
      }),
      { numRuns: 2000 },
    );
  });

  it('refuses what is outside the range of the caller', () => {
    expect(parseAngle('200', { toDeg: 180 })).toMatchObject({
      type: 'error',
      message: '“200” is outside 0° to 180°; write it like 90°.',
    });
    expect(parseAngle('-5')).toMatchObject({ type: 'error' });
    expect(parseAngle('-5', { fromDeg: -10, toDeg: 10 })).toMatchObject({ type: 'angle', degrees: -5 });
    expect(parseAngle('abc', { fromDeg: 4, toDeg: 20 })).toMatchObject({
      message: expect.stringMatching(/like 12°/u) as string,
    });
  });

  it('takes both ends of the range', () => {
    expect(parseAngle('0')).toEqual({ type: 'angle', degrees: 0, typed: '0' });
    expect(parseAngle('360')).toMatchObject({ type: 'angle' });
    expect(parseAngle('-0', { fromDeg: -1, toDeg: 1 })).toEqual({ type: 'angle', degrees: 0, typed: '-0' });
  });

  it('asks about a value sent twice and about a comma that can part thousands', () => {
    for (const text of ['9090', '90°90°', '90\r\n90\r\n', '9090°', '45.545.5']) {
      expect(parseAngle(text), text).toMatchObject({ type: 'ask', reason: 'doubled' });
    }
    expect(parseAngle('7,125')).toMatchObject({
      type: 'ask',
      reason: 'ambiguous-comma',
      choices: [{ degrees: 7.125 }],
    });
  });

  it('refuses other text and answers nothing with nothing', () => {
    for (const text of ['abc', '90 rad', "7° 30'", '1e2', 'NaN', '.', '9 0', '90%', '1'.repeat(300)]) {
      expect(parseAngle(text), text).toMatchObject({ type: 'error' });
    }
    expect(parseAngle(' \r\n')).toEqual({ type: 'empty' });
  });

  it('answers any text', () => {
    fc.assert(
      fc.property(fc.array(fc.constantFrom(...PIECES), { maxLength: 8 }), (pieces) => {
        const reading = parseAngle(pieces.join(''));
        if (reading.type === 'angle') expect(reading.degrees >= 0 && reading.degrees <= 360).toBe(true);
      }),
      { numRuns: 4000 },
    );
  });
});
