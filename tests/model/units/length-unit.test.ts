import { describe, expect, it } from 'vitest';
import { inchesToMm, mmToInches, storedSteps, toStoredMm } from '../../../src/model/units/length-unit.ts';

describe('toStoredMm', () => {
  it('keeps 1/128 in and 1e-6 in exactly', () => {
    expect(toStoredMm(25.4 / 128)).toBe(0.1984375);
    expect(storedSteps(25.4 / 128)).toBe(1_984_375);
    expect(storedSteps(25.4e-6)).toBe(254);
    for (let top = 1; top <= 256; top += 1) expect(storedSteps((top * 25.4) / 128)).toBe(1_984_375 * top);
  });

  it('takes away what arithmetic left behind', () => {
    expect(toStoredMm(0.1 + 0.2)).toBe(0.3);
    expect(toStoredMm(1.5 * 25.4)).toBe(38.1);
  });

  it('treats both signs alike and never gives minus zero', () => {
    expect(toStoredMm(-1.5e-7)).toBe(-toStoredMm(1.5e-7));
    expect(Object.is(toStoredMm(-1e-9), 0)).toBe(true);
    expect(Object.is(toStoredMm(-0), 0)).toBe(true);
  });

  it('refuses a number that is not finite as a bug', () => {
    expect(() => toStoredMm(NaN)).toThrow(/cannot be stored/u);
    expect(() => toStoredMm(Infinity)).toThrow(/cannot be stored/u);
  });
});

describe('inches and mm', () => {
  it('convert with 25.4 exactly', () => {
    expect(inchesToMm(1)).toBe(25.4);
    expect(inchesToMm(0.363)).toBe(9.2202);
    expect(mmToInches(25.4)).toBe(1);
  });
});
