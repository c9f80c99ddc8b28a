import { describe, expect, it } from 'vitest';
import { findPeak } from '../../../src/model/window/find-peak.ts';
import { findRoot } from '../../../src/model/window/find-root.ts';
import { between, seededRandom } from '../../support/window-cases.ts';

describe('findRoot', () => {
  it('finds a change of sign to the tolerance, whichever way it goes', () => {
    const random = seededRandom(31);
    for (let i = 0; i < 300; i++) {
      const root = between(random, -3, 3);
      const bend = between(random, 0.1, 20);
      const rising = (at: number): number => Math.expm1(bend * (at - root));
      expect(Math.abs(findRoot(rising, -3.5, 3.5, 1e-11) - root)).toBeLessThan(1e-10);
      expect(Math.abs(findRoot((at) => -rising(at), -3.5, 3.5, 1e-11) - root)).toBeLessThan(1e-10);
    }
  });

  it('takes few steps on a smooth function', () => {
    let calls = 0;
    findRoot(
      (at) => {
        calls++;
        return Math.cos(at) - at;
      },
      0,
      1,
      1e-12,
    );
    expect(calls).toBeLessThan(14);
  });

  it('finds a jump and copes with infinite values', () => {
    expect(findRoot((at) => (at < 0.3 ? -1 : 5), 0, 1, 1e-12)).toBeCloseTo(0.3, 10);
    expect(findRoot((at) => (at < 0.3 ? -Infinity : Infinity), 0, 1, 1e-12)).toBeCloseTo(0.3, 10);
  });

  it('gives the end nearer to zero when there is no change of sign', () => {
    expect(findRoot((at) => at + 1, 0, 1, 1e-9)).toBe(0);
    expect(findRoot((at) => -2 + at, 0, 1, 1e-9)).toBe(1);
  });
});

describe('findPeak', () => {
  it('finds a smooth peak, a kink and an end', () => {
    expect(findPeak((at) => -((at - 0.7) ** 2), 0, 2, 1e-9)).toBeCloseTo(0.7, 7);
    expect(findPeak((at) => -Math.abs(at - 1.3), 0, 2, 1e-12)).toBeCloseTo(1.3, 10);
    expect(findPeak((at) => at, 0, 2, 1e-9)).toBe(2);
    expect(findPeak((at) => -at, 0, 2, 1e-9)).toBe(0);
  });
});
