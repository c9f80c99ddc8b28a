/** A practice cylinder: readings against true figures, and the engine's split against the sum done by hand. */
import { describe, expect, test } from 'vitest';
import {
  type Figures,
  figureNames,
  markReadings,
  offsetsOf,
  type PracticeCard,
  readCard,
  readFigures,
} from '../../../src/model/learning/practice-figures.ts';
import { inchesToMm } from '../../../src/model/units/length-unit.ts';

const CARD: PracticeCard = { label: 'P 7', unit: 'in', chambers: 2 };
const figures = (by: Readonly<Record<string, number>> = {}): Figures => {
  const inches = {
    plug: 0.748,
    floor: 0.042,
    'root-1': 0.369,
    'root-2': 0.421,
    'pin-1': 0.337,
    'pin-2': 0.281,
  };
  return Object.fromEntries(
    Object.entries({ ...inches, ...by }).map(([name, inch]) => [name, inchesToMm(inch)]),
  ) as Figures;
};

test('a split stands at metal + root depth + pin - plug: .000 and -.004', () => {
  const [one, two] = offsetsOf(CARD, figures());
  expect((one ?? NaN) / 25.4).toBeCloseTo(0.042 + 0.369 + 0.337 - 0.748, 6);
  expect((two ?? NaN) / 25.4).toBeCloseTo(-0.004, 6);
});

describe('a reading counts within a thousandth, a stack within two', () => {
  test.each([
    [{ 'pin-1': 0.338 }, true, true],
    [{ 'pin-1': 0.3385 }, false, true],
    [{ 'pin-1': 0.336, 'root-1': 0.368 }, true, true],
    [{ 'pin-1': 0.336, 'root-1': 0.368, plug: 0.749 }, true, false],
  ])('%j', (read, allWithin, stackWithin) => {
    const marks = markReadings(CARD, figures(), figures(read));
    expect(marks.figures.map(({ name }) => name)).toEqual(figureNames(2));
    expect(marks.figures.every(({ isWithin }) => isWithin)).toBe(allWithin);
    expect(marks.stacks[0]?.isWithin).toBe(stackWithin);
  });
});

test('the difference is read less true', () => {
  const { figures: marks } = markReadings(CARD, figures(), figures({ floor: 0.0455 }));
  const floor = marks.find(({ name }) => name === 'floor');
  expect((floor?.difference ?? NaN) / 25.4).toBeCloseTo(0.0035, 6);
});

test('figures are read whole or not at all', () => {
  expect(readFigures(figures(), 2)).toEqual(figures());
  expect(readFigures({ ...figures(), 'root-2': 'deep' }, 2)).toBeNull();
  expect(readFigures({ ...figures(), 'root-2': NaN }, 2)).toBeNull();
  expect(readFigures(figures({ plug: 7.48 }), 2)).toBeNull();
  expect(readFigures(figures(), 3)).toBeNull();
  expect(readFigures(null, 2)).toBeNull();
  expect(readCard(CARD)).toEqual(CARD);
  for (const bad of [{ ...CARD, chambers: 9 }, { ...CARD, chambers: 1.5 }, { ...CARD, unit: 'ft' }, 7, null])
    expect(readCard(bad)).toBeNull();
});

test('the ends of what a figure can be still count, what lies beyond does not, whichever figure it is', () => {
  // inches; a plug is .3 to 1 across, the metal under a key up to .2, a cut or a pin .05 to .6
  for (const [name, from, to] of [
    ['plug', 0.3, 1],
    ['floor', 0, 0.2],
    ['root-1', 0.05, 0.6],
    ['pin-2', 0.05, 0.6],
  ] as const) {
    for (const inside of [from, to, (from + to) / 2])
      expect(readFigures(figures({ [name]: inside }), 2), `${name} ${inside}`).not.toBeNull();
    for (const beyond of [from - 0.001, to + 0.001])
      expect(readFigures(figures({ [name]: beyond }), 2), `${name} ${beyond}`).toBeNull();
  }
});

test('a card has one to eight chambers, a unit and a label that fits', () => {
  for (const chambers of [1, 8]) expect(readCard({ ...CARD, chambers })).toEqual({ ...CARD, chambers });
  for (const label of ['', 'x'.repeat(60)]) expect(readCard({ ...CARD, label })).toEqual({ ...CARD, label });
  expect(readCard({ ...CARD, unit: 'mm' })).toEqual({ ...CARD, unit: 'mm' });
  expect(readCard({ ...CARD, more: 1 })).toEqual(CARD);
  const { label, ...unnamed } = CARD;
  for (const bad of [
    { ...CARD, chambers: 0 },
    { ...CARD, chambers: '2' },
    { ...CARD, label: 'x'.repeat(61) },
    { ...CARD, label: 7 },
    unnamed,
  ])
    expect(readCard(bad), JSON.stringify(bad)).toBeNull();
  expect(label).toBe('P 7');
});
