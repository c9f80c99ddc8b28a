/**
 * Ten readings of one pin, against the worked example of a mean and its spread that JCGM 100:2008 (4.4.3, table 1) gives for
 * twenty temperatures: mean 100.145, s = 1.489, s of the mean 0.333. Its numbers are read here as mm.
 */
import { expect, test } from 'vitest';
import { usualInstrument } from '../../../src/model/edit/instruments.ts';
import { scatterOf } from '../../../src/model/learning/ten-readings.ts';

// JCGM 100:2008, table 1, from memory of the document's own list.
const TEMPERATURES = [
  96.9, 98.18, 98.25, 98.61, 99.03, 99.49, 99.56, 99.74, 99.89, 100.07, 100.33, 100.42, 100.68, 100.95,
  101.11, 101.2, 101.57, 101.84, 102.36, 102.72,
];
const NO_ERROR = {
  ...usualInstrument('micrometer', 'one', 'mm'),
  resolutionMm: 0,
  maxPermissibleErrorMm: 0,
};

test('mean and spread are those of the published example', () => {
  const { mean, deviation, meanDoubt, apart } = scatterOf(TEMPERATURES, NO_ERROR);
  expect(mean).toBeCloseTo(100.145, 3);
  expect(deviation).toBeCloseTo(1.489, 3);
  expect(meanDoubt / 2).toBeCloseTo(0.333, 3);
  expect(apart).toBeCloseTo(102.72 - 96.9, 9);
});

test('one reading is worse than ten by the root of ten; a split of four lengths by two, without scale error', () => {
  const readings = [8.5, 8.51, 8.49, 8.52, 8.48, 8.5, 8.51, 8.5, 8.49, 8.5];
  const { oneDoubt, meanDoubt, splitDoubt } = scatterOf(readings, NO_ERROR);
  expect(oneDoubt / meanDoubt).toBeCloseTo(Math.sqrt(10), 9);
  expect(splitDoubt / oneDoubt).toBeCloseTo(2, 9);
});

test('more spread never makes anything surer, and the caliper keeps its own error however often it is read', () => {
  const caliper = usualInstrument('digital caliper', 'one', 'in');
  const readings = [8.5, 8.5, 8.5, 8.5, 8.5, 8.5, 8.5, 8.5, 8.5, 8.5];
  const calm = scatterOf(readings, caliper);
  const hurried = scatterOf(
    readings.map((mm, i) => mm + (i % 2 ? 0.05 : 0)),
    caliper,
  );
  // 2 * sqrt(0.0127^2 / 12 + 0.0254^2 / 3)
  expect(calm.meanDoubt).toBeCloseTo(2 * Math.sqrt(0.0127 ** 2 / 12 + 0.0254 ** 2 / 3), 9);
  expect(hurried.meanDoubt).toBeGreaterThan(calm.meanDoubt);
  expect(hurried.oneDoubt).toBeGreaterThan(calm.oneDoubt);
  expect(hurried.splitDoubt).toBeGreaterThan(calm.splitDoubt);
});
