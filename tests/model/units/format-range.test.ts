/** Ranges rounded inwards: the figures are held against the lengths they stand for, with plain arithmetic on decimals. */
import { expect, test } from 'vitest';
import { formatAtMost, formatRange, formatWithin } from '../../../src/model/units/format-range.ts';

const MM_PER = { in: 25.4, mm: 1 } as const;
const STEP = { in: 0.0005, mm: 0.01 } as const;

test('both ends move inwards to what a caliper shows', () => {
  expect(formatRange(0.2453 * 25.4, 0.2496 * 25.4, 'in')).toEqual(['.2455', '.2495']);
  expect(formatRange(0.2451 * 25.4, 0.2499 * 25.4, 'in')).toEqual(['.2455', '.2495']);
  expect(formatRange(6.231, 6.339, 'mm')).toEqual(['6.24', '6.33']);
  expect(formatAtMost(0.1749 * 25.4, 'in')).toBe('.1745');
});

test('an end that lies on a step stays there, however it was stored', () => {
  expect(formatRange(0.245 * 25.4, 0.2495 * 25.4, 'in')).toEqual(['.2450', '.2495']);
  expect(formatRange(0.245 * 25.4 + 1e-7, 0.2495 * 25.4 - 1e-7, 'in')).toEqual(['.2450', '.2495']);
});

test('a range that holds no step is written as it is, never the wrong way round', () => {
  expect(formatRange(0.2476 * 25.4, 0.2478 * 25.4, 'in')).toEqual(['.2476', '.2478']);
  expect(formatRange(6.231, 6.234, 'mm')).toEqual(['6.23', '6.23']);
});

test.each(['in', 'mm'] as const)(
  'no figure in %s lies outside what is meant, nor a whole step inside',
  (unit) => {
    for (let i = 0; i < 400; i++) {
      const from = 2 + i * 0.01373;
      const to = from + 0.03 + (i % 17) * 0.0071;
      const [least, most] = formatRange(from, to, unit).map((text) => Number(text) * MM_PER[unit]);
      const step = STEP[unit] * MM_PER[unit];
      expect(least! - from).toBeGreaterThan(-1e-5);
      expect(least! - from).toBeLessThan(step);
      expect(to - most!).toBeGreaterThan(-1e-5);
      expect(to - most!).toBeLessThan(step);
    }
  },
);

test('one length of a range is told no further out than its ends', () => {
  // .17230 would be nearest to .1725, but the range is told as ending at .1720
  expect(formatWithin(0.1723 * 25.4, 0.1682 * 25.4, 0.1723 * 25.4, 'in')).toBe('.1720');
  expect(formatWithin(0.1682 * 25.4, 0.1682 * 25.4, 0.1723 * 25.4, 'in')).toBe('.1685');
  expect(formatWithin(0.1702 * 25.4, 0.1682 * 25.4, 0.1723 * 25.4, 'in')).toBe('.1700');
  expect(formatWithin(9, 4.512, 4.668, 'mm')).toBe('4.66');
  expect(formatWithin(0, 4.512, 4.668, 'mm')).toBe('4.52');
  // a range that holds no step is written as it is
  expect(formatWithin(0.2477 * 25.4, 0.2476 * 25.4, 0.2478 * 25.4, 'in')).toBe('.2477');
});
