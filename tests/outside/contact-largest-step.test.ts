/**
 * The largest step between neighbouring cuts from spacing, root flat and angle, against the largest step that published
 * depth-and-space tables allow (counted there in depth increments). Inches.
 */
import { describe, expect, test } from 'vitest';
import { eatenFlats, largestStep } from '../../src/model/contact/eaten-flats.ts';
import type { KeyShape } from '../../src/model/contact/key-profile.ts';
import { fromDegrees } from '../../src/model/radians.ts';

type Table = { spacing: number; flat: number; degrees: number; increment: number };

function stepsThatFit({ spacing, flat, degrees, increment }: Table): number {
  return Math.floor(largestStep(spacing, flat, fromDegrees(degrees)) / increment + 1e-9);
}

/** Two neighbours this many increments apart. */
function neighbours({ spacing, flat, degrees, increment }: Table, steps: number): KeyShape {
  const cut = { rootFlat: flat, includedAngle: fromDegrees(degrees) };
  return {
    bladeHeight: 0.343,
    stop: 'shoulder',
    tipAt: 1.3,
    tipHeight: 0.1,
    tipRamp: fromDegrees(45),
    cuts: [
      { id: 'shallow', at: 0.231, rootDepth: 0.335, ...cut },
      { id: 'deep', at: 0.231 + spacing, rootDepth: 0.335 - steps * increment, ...cut },
    ],
  };
}

describe('table inch-500-b', () => {
  // A note in a public repository quoting the maker's factory key sheet: spacing .1562, root flat .031, cut angle 100
  // degrees, increment .015. Largest step 7: maker's Conventional Cylinders Service Manual p. 5.
  const table = { spacing: 0.1562, flat: 0.031, degrees: 100, increment: 0.015 };

  test('allows the 7 steps that are published', () => {
    expect(stepsThatFit(table)).toBe(7);
    expect(largestStep(table.spacing, table.flat, fromDegrees(table.degrees)) / table.increment).toBeCloseTo(
      7.004,
      3,
    );
  });

  test('keeps both flats whole at 7 steps and eats the shallow one at 8', () => {
    expect(eatenFlats(neighbours(table, 7))).toEqual([]);
    expect(eatenFlats(neighbours(table, 8))).toMatchObject([
      { cut: 'shallow', by: { kind: 'cut', cut: 'deep' } },
    ]);
  });
});

describe('table inch-500-a', () => {
  // lockwiki.com, page "Kwikset Classic", section Keying Specifications: spacing .150, "cut width" .080, increment .023,
  // largest step 4. No angle is given.
  const table = { spacing: 0.15, flat: 0.08, degrees: 90, increment: 0.023 };

  test('disagrees: geometry allows 3 steps where 4 are published', () => {
    // Either the printed cut width is not the root flat or the angle is not 90 degrees. Not resolved.
    expect(stepsThatFit(table)).toBe(3);
    expect(eatenFlats(neighbours(table, 4))).toHaveLength(1);
  });

  test('agrees with its 4 steps from a flat of .058 down, or an angle of 74 degrees down', () => {
    expect(stepsThatFit({ ...table, flat: 0.058 })).toBe(4);
    expect(stepsThatFit({ ...table, flat: 0.0581 })).toBe(3);
    expect(stepsThatFit({ ...table, degrees: 74 })).toBe(4);
    expect(stepsThatFit({ ...table, degrees: 75 })).toBe(3);
  });
});

describe('small-format systems with a 90 degree cutter', () => {
  // Maker's manual (easymanua.ls): at spacing .150 largest steps of 9 (.0125 increment) and 5 (.021), at .140 of 8 and 4.
  // The flat is not printed; one between .035 and .0375 has to explain all four.
  const published = [
    { spacing: 0.15, increment: 0.0125, steps: 9 },
    { spacing: 0.15, increment: 0.021, steps: 5 },
    { spacing: 0.14, increment: 0.0125, steps: 8 },
    { spacing: 0.14, increment: 0.021, steps: 4 },
  ];
  const agrees = (flat: number): boolean =>
    published.every(({ steps, ...table }) => stepsThatFit({ ...table, flat, degrees: 90 }) === steps);

  test.each([0.0351, 0.036, 0.0375])('agree on all four with a flat of %f', (flat) => {
    expect(agrees(flat)).toBe(true);
  });

  test.each([0.0349, 0.0376])('do not with a flat of %f', (flat) => {
    expect(agrees(flat)).toBe(false);
  });
});
