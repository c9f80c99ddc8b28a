/** What is said to do next: the sentence that goes with each case, and the entered quantity behind most of the doubt. mm. */
import { describe, expect, test } from 'vitest';
import type { Estimate } from '../../../src/model/estimate/estimate.ts';
import { largestDoubt, nextStep, type NextStepInput } from '../../../src/model/evaluate/next-step.ts';
import { sayEnd, sayField } from '../../../src/model/evaluate/say.ts';
import { fromDegrees } from '../../../src/model/radians.ts';
import { seededRandom } from '../../support/random-job.ts';

const IN = 25.4;

function estimate(
  value: number,
  weights: Readonly<Record<string, number>>,
  kind: Kind = 'repeatability',
): Estimate {
  const terms = Object.entries(weights).map(([name, weight]) => ({
    cause: { id: name, kind, field: { owner: 'cut', id: name, name: 'rootDepth' } },
    weight,
  }));
  return { value, terms };
}
type Kind = 'repeatability' | 'scale' | 'assumed';

/** A split that is not decided: so far from both ends, in inches, each with its ±. */
function undecided(
  low: number,
  high: number,
  plusMinus: number,
  kind: Kind = 'repeatability',
): NextStepInput {
  return {
    ...decided('too high', 0.33, 0.34),
    verdict: "can't say yet",
    lean: 'probably turns',
    toLowest: estimate(low * IN, { low: 1 }, kind),
    toHighest: estimate(high * IN, { high: 1 }, kind),
    toLowestUncertainty: plusMinus * IN,
    toHighestUncertainty: plusMinus * IN,
  };
}

function decided(verdict: NextStepInput['verdict'], from: number, to: number): NextStepInput {
  return {
    verdict,
    lean: null,
    unit: 'in',
    toLowest: estimate(0, {}),
    toHighest: estimate(0, {}),
    toLowestUncertainty: 0,
    toHighestUncertainty: 0,
    useFrom: from * IN,
    useTo: to * IN,
    noneCertain: false,
    isLowerStack: true,
    hasBall: false,
  };
}

describe('what to do next', () => {
  test('is nothing where it turns or nothing is known', () => {
    for (const verdict of ['level', 'low, turns', 'unknown'] as const)
      expect(nextStep(decided(verdict, 0.33, 0.34))).toBeNull();
    expect(nextStep(decided('high, rubs', 0.33, 0.34))).toContain('slightly shorter');
    expect(nextStep(decided('never turns', 0.33, 0.34))).toContain('No length turns');
  });

  test.each(['too low', 'too high'] as const)('%s names the part and the range that would do', (verdict) => {
    // told to the half thousandth, and never more than would do: .3293 to .3414
    const range = decided(verdict, 0.3293, 0.3414);
    expect(nextStep(range)).toBe('Use a bottom pin of .3295 in to .3410 in.');
    expect(nextStep({ ...range, hasBall: true })).toContain('a ball + bottom pin of');
    expect(nextStep({ ...range, isLowerStack: false, hasBall: true })).toContain('parts that add up');
    expect(nextStep({ ...range, useFrom: 0 })).toBe('Use a bottom pin of up to .3410 in.');
    expect(nextStep({ ...range, useFrom: -1, useTo: 0 })).toContain('No stack is short enough');
    expect(nextStep({ ...range, useFrom: 0.335 * IN, useTo: 0.335 * IN, noneCertain: true })).toMatch(
      /No length is certain.*a bottom pin of about \.335/u,
    );
  });

  test('asks for the bench test of the nearer side, and how much would settle it', () => {
    // .001 from the low end, .008 from the high one, good to .003: .002 more would be certain
    expect(nextStep(undecided(0.001, 0.008, 0.003))).toBe(
      'Only the driver test tells: try it with its driver; a stack .002 in longer would settle it. ' +
        'Reading the root depth of the cut again would help most.',
    );
    expect(nextStep(undecided(0.008, 0.001, 0.003))).toBe(
      'Try it alone in the empty shell, without driver; a stack .002 in shorter would settle it. ' +
        'Reading the root depth of the cut again would help most.',
    );
    // no room to move it: .001 and .002, good to .003
    expect(nextStep(undecided(0.001, 0.002, 0.003))).not.toContain('settle');
    expect(nextStep(undecided(0.001, 0.008, 0.003, 'assumed'))).toContain('Measuring the root depth');
    expect(nextStep(undecided(0.001, 0.008, 0.003, 'scale'))).toContain('A stands-up-by reading');
  });
});

describe('the largest doubt', () => {
  test('is the field whose causes make the largest share of the variance', () => {
    const random = seededRandom(5);
    for (let round = 0; round < 50; round++) {
      const weights = Object.fromEntries(['a', 'b', 'c', 'd'].map((name) => [name, random() - 0.5]));
      const squares = Object.entries(weights).map(([name, weight]) => [name, weight ** 2] as const);
      const total = squares.reduce((sum, [, square]) => sum + square, 0);
      const [most] = squares.toSorted(([, one], [, other]) => other - one);
      const found = largestDoubt(estimate(1, weights));
      expect(found?.field.id).toBe(most![0]);
      expect(found?.share).toBeCloseTo(most![1] / total, 9);
    }
  });

  test('adds up the causes of one field, and is told by the largest of them', () => {
    const field = { owner: 'cut', id: 'x', name: 'rootDepth' };
    const other = { ...field, id: 'y' };
    const found = largestDoubt({
      value: 1,
      terms: [
        { cause: { id: '1', kind: 'repeatability', field }, weight: 3 },
        { cause: { id: '2', kind: 'resolution', field }, weight: -4 },
        { cause: { id: '3', kind: 'zero', field: other }, weight: 4.9 },
      ],
    });
    expect(found).toMatchObject({ field, kind: 'resolution' });
    expect(found?.share).toBeCloseTo(25 / (25 + 4.9 ** 2), 9);
    expect(largestDoubt({ value: 1, terms: [] })).toBeNull();
  });
});

describe('words', () => {
  test('for every end, with its size where it has one', () => {
    const width = 0.005 * IN;
    expect(
      [
        { kind: 'flat' } as const,
        { kind: 'bevel', width, angle: fromDegrees(45) } as const,
        { kind: 'radius', radius: 2 * width } as const,
        { kind: 'dome', radius: 0.374 * IN } as const,
        { kind: 'cone', tipFlatDiameter: 1, includedAngle: fromDegrees(90) } as const,
        { kind: 'cup', mouthDiameter: 1, includedAngle: fromDegrees(90) } as const,
        { kind: 'sphere' } as const,
      ].map((end) => sayEnd(end, 'in')),
    ).toEqual([
      'flat with a sharp edge',
      'edge broken .005 in',
      'edge rounded .010 in',
      'domed to .374 in',
      'pointed',
      'cupped',
      'round',
    ]);
  });

  test('for a field, those of the screen', () => {
    const field = (owner: string, name: string) => sayField({ owner, id: 'x', name });
    expect(field('chamber', 'holeDiameter/plug')).toBe('the chamber diameter');
    expect(field('body', 'outerDiameter')).toBe('the plug diameter');
    expect(field('line', 'clearance/outer')).toBe('the play between sleeve and shell');
    expect(field('group', 'height')).toBe('the ball + bottom pin together');
  });
});
