import { test as propertyTest } from '@fast-check/vitest';
import { describe, expect, test } from 'vitest';
import { eatenFlats, largestStep } from '../../../src/model/contact/eaten-flats.ts';
import { buildKeyProfile, type KeyShape, profileHeightAt } from '../../../src/model/contact/key-profile.ts';
import { fromDegrees } from '../../../src/model/radians.ts';
import { anyKey } from './random-keys.ts';
import { INCH, SIX_CUTS } from './six-chamber-key.ts';

const SEED = 20_702;

function pair(stepIn: number, degrees: number): KeyShape {
  const cut = { rootFlat: 0.046 * INCH, includedAngle: fromDegrees(degrees) };
  return {
    ...SIX_CUTS,
    cuts: [
      { id: 'shallow', at: 0.25 * INCH, rootDepth: 0.33 * INCH, ...cut },
      { id: 'deep', at: 0.406 * INCH, rootDepth: (0.33 - stepIn) * INCH, ...cut },
    ],
  };
}

describe('the largest step', () => {
  test('is what spacing, flat and angle leave', () => {
    // Worked by hand.
    expect(largestStep(0.25, 0.06, fromDegrees(90))).toBeCloseTo(0.19, 12);
    expect(largestStep(0.156, 0.031, fromDegrees(100))).toBeCloseTo(0.10489, 5);
    expect(largestStep(0.156, 0.046, fromDegrees(100))).toBeCloseTo(0.0923, 5);
  });

  test('is nothing when the flats overlap', () => {
    expect(largestStep(0.05, 0.06, fromDegrees(90))).toBe(0);
  });
});

describe('a flat', () => {
  test('stays whole at the largest step and is eaten past it', () => {
    expect(eatenFlats(pair(0.11, 90))).toEqual([]);
    expect(eatenFlats(pair(0.11 + 1e-6, 90))).toHaveLength(1);
  });

  test('is eaten from the deeper neighbour, past its middle too', () => {
    // Worked by hand: .0330 of .046 goes, and the root under the middle drops .0084.
    const [eaten, ...others] = eatenFlats(pair(0.12, 100));
    expect(others).toEqual([]);
    expect(eaten).toMatchObject({ cut: 'shallow', by: { kind: 'cut', cut: 'deep' } });
    expect((eaten?.eaten ?? 0) / INCH).toBeCloseTo(0.03301, 5);
    expect((eaten?.flatLeft ?? 0) / INCH).toBeCloseTo(0.01299, 5);
    expect((eaten?.rootDrop ?? 0) / INCH).toBeCloseTo(0.0084, 5);
  });

  test('is eaten by the ramp of a tip that comes too early', () => {
    // The ramp of 45 degrees reaches the root of .303 at 1.6 + .343 less .243: .010 before the flat's end.
    const shape = { ...SIX_CUTS, tipAt: 1.863 * INCH };
    const [eaten] = eatenFlats(shape);
    expect(eaten).toMatchObject({ cut: 'cut 6', by: { kind: 'tip' }, rootDrop: 0 });
    expect((eaten?.eaten ?? 0) / INCH).toBeCloseTo(0.01, 9);
  });

  test('of a V cut has no width to lose, yet its root can drop', () => {
    const shape = pair(0.14, 90);
    const vCut = {
      ...shape,
      cuts: shape.cuts.map((cut) => ({ ...cut, rootFlat: cut.id === 'shallow' ? 0 : cut.rootFlat })),
    };
    const [eaten] = eatenFlats(vCut);
    expect(eaten).toMatchObject({ cut: 'shallow', eaten: 0, flatLeft: 0 });
    expect((eaten?.rootDrop ?? 0) / INCH).toBeCloseTo(0.14 - 0.133, 9);
  });
});

describe(`random keys, seed ${SEED}`, () => {
  propertyTest.prop([anyKey], { seed: SEED, numRuns: 400, endOnFailure: true })(
    'drop at the middle of a cut by the largest of what eats it',
    (shape) => {
      const profile = buildKeyProfile(shape);
      const eaten = eatenFlats(shape);
      for (const cut of shape.cuts) {
        if (cut.rootDepth > shape.bladeHeight || cut.at > shape.tipAt) continue;
        const drops = eaten.filter((entry) => entry.cut === cut.id).map(({ rootDrop }) => rootDrop);
        expect(cut.rootDepth - profileHeightAt(profile, cut.at)).toBeCloseTo(Math.max(0, ...drops), 8);
      }
    },
  );

  propertyTest.prop([anyKey], { seed: SEED, numRuns: 400, endOnFailure: true })(
    'keep as much of a flat as the profile shows at root depth',
    (shape) => {
      const { points } = buildKeyProfile(shape);
      const eaten = eatenFlats(shape);
      for (const cut of shape.cuts) {
        if (cut.rootDepth > shape.bladeHeight) continue;
        const shown = points.reduce((width, { s, from }, i) => {
          const isRoot = from.kind === 'root' && from.cut === cut.id;
          return isRoot ? width + (points[i + 1]?.s ?? s) - s : width;
        }, 0);
        const left = eaten.find((entry) => entry.cut === cut.id)?.flatLeft ?? cut.rootFlat;
        expect(shown).toBeCloseTo(left, 8);
      }
    },
  );
});
