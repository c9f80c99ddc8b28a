/** Counting and listing of keys against trying them all: in random systems, and in cylinders, each key evaluated. */
import { describe, expect, test } from 'vitest';
import { countKeys, productOfSteps, waysToFinish } from '../../../src/model/keying/count-keys.ts';
import {
  INNER,
  type KeyFilter,
  type KeySystem,
  marksOfKey,
  OUTER,
} from '../../../src/model/keying/key-system.ts';
import { listKeys } from '../../../src/model/keying/list-keys.ts';
import { evaluate } from '../../../src/model/evaluate/evaluate.ts';
import { INCREMENT, keyedJob, keysOf, rootDepthOf, withKey } from '../../support/keyed-job.ts';
import { seededRandom } from '../../support/random-job.ts';

const SEEDS = Array.from({ length: 60 }, (_, i) => i + 1);

/** Every key there is, in the order of its steps. */
function allKeys(columns: number, stepCount: number): number[][] {
  if (columns === 0) return [[]];
  const rest = allKeys(columns - 1, stepCount);
  return Array.from({ length: stepCount }, (_, step) => rest.map((keys) => [step, ...keys])).flat();
}

function tried(system: KeySystem, { turns, steps }: KeyFilter): number[][] {
  return allKeys(system.columns.length, system.stepCount).filter((key) => {
    const isCuttable = key.every(
      (step, i) =>
        i === 0 ||
        system.largestStep === null ||
        !system.columns[i]!.isNextToBefore ||
        Math.abs(step - key[i - 1]!) <= system.largestStep,
    );
    const isAsked = key.every((step, i) => steps?.[i]?.includes(step) ?? true);
    return isCuttable && isAsked && turns.includes(marksOfKey(system, key));
  });
}

function randomSystem(seed: number): { system: KeySystem; steps: (number[] | null)[] } {
  const random = seededRandom(seed);
  const upTo = (most: number) => Math.floor(random() * (most + 1));
  const stepCount = 2 + upTo(3);
  const columns = Array.from({ length: 1 + upTo(3) }, () => ({
    // mostly clear somewhere, so that not every list is empty
    marks: Array.from({ length: stepCount }, () => Math.max(upTo(3), upTo(3))),
    isNextToBefore: random() < 0.8,
  }));
  const steps = columns.map(() => (random() < 0.7 ? null : [upTo(stepCount - 1), upTo(stepCount - 1)]));
  return { system: { columns, stepCount, largestStep: random() < 0.5 ? null : upTo(3) }, steps };
}

describe('random systems', () => {
  test('counts, lists and single places are what trying every key gives', () => {
    let keys = 0;
    for (const seed of SEEDS) {
      const { system, steps } = randomSystem(seed);
      for (const turns of [[INNER], [OUTER], [INNER | OUTER], [INNER, INNER | OUTER], [1, 2, 3]]) {
        for (const filter of [{ turns }, { turns, steps }]) {
          const expected = tried(system, filter);
          const list = listKeys(system, filter);
          expect(list.count, `seed ${seed}`).toBe(BigInt(expected.length));
          expect(
            [...list.from()].map((key) => key.steps),
            `seed ${seed}`,
          ).toEqual(expected);
          for (const key of list.from()) expect(key.turns).toBe(marksOfKey(system, key.steps));
          keys += expected.length;
        }
      }
    }
    expect(keys).toBeGreaterThan(5000);
  });

  test('without a largest step the product over the chambers is the count', () => {
    for (const seed of SEEDS) {
      const system = { ...randomSystem(seed).system, largestStep: null };
      const { plugAlone, together, either, all } = countKeys(system);
      expect(plugAlone + either, `seed ${seed}`).toBe(productOfSteps(system, INNER));
      expect(together + either, `seed ${seed}`).toBe(productOfSteps(system, OUTER));
      expect(all, `seed ${seed}`).toBe(BigInt(system.stepCount) ** BigInt(system.columns.length));
    }
  });

  test('a thousand million keys: the count is exact, and any place of the list is found', () => {
    const columns = Array.from({ length: 9 }, (_, i) => ({
      marks: Array.from({ length: 10 }, () => INNER),
      isNextToBefore: i > 0,
    }));
    const system: KeySystem = { columns, stepCount: 10, largestStep: null };
    const list = listKeys(system, { turns: [INNER] });
    expect(list.count).toBe(1_000_000_000n);
    expect(list.at(123_456_789n).steps).toEqual([1, 2, 3, 4, 5, 6, 7, 8, 9]);
    expect([...list.from(999_999_998n)].map(({ steps }) => steps.join(''))).toEqual([
      '999999998',
      '999999999',
    ]);
    // 40 steps in 12 chambers, with a limit: counted another way, by multiplying the matrix of what may follow what
    const large: KeySystem = {
      columns: Array.from({ length: 12 }, (_, i) => ({
        marks: Array.from({ length: 40 }, () => INNER),
        isNextToBefore: i > 0,
      })),
      stepCount: 40,
      largestStep: 7,
    };
    let ways = Array.from({ length: 40 }, () => 1n);
    for (let i = 1; i < 12; i++)
      ways = ways.map((_, step) =>
        ways.reduce((sum, each, other) => (Math.abs(step - other) <= 7 ? sum + each : sum), 0n),
      );
    const total = waysToFinish(large, { turns: [INNER] }).total;
    expect(total).toBe(ways.reduce((sum, each) => sum + each, 0n));
  });
});

describe('cylinders', () => {
  test('the keys listed are those that the evaluation lets turn, each key put in', () => {
    let turning = 0;
    for (const seed of SEEDS.slice(0, 3)) {
      const random = seededRandom(seed);
      const cuts = Array.from({ length: 3 }, () =>
        [1, 2, 3, 4, 5].filter((cut) => random() < 0.45 || cut === 1 + Math.floor(random() * 5)),
      ).map((each) => (each.length === 0 ? [3] : each));
      // steps of half the increment: some stand between two splits
      const table = {
        rootDepths: Array.from({ length: 4 }, (_, i) => (rootDepthOf(1) - i * INCREMENT * 0.8) * 25.4),
        largestStep: null,
      };
      const job = keyedJob(cuts);
      const { system, counts } = keysOf(job, table);
      const listed = new Set(
        [...listKeys(system, { turns: [INNER] }).from()].map(({ steps }) => steps.join()),
      );
      expect(BigInt(listed.size)).toBe(counts.plugAlone);
      for (const steps of allKeys(3, 4)) {
        const depths = steps.map((step) => table.rootDepths[step]! / 25.4);
        const { lines } = evaluate(withKey(job, 'tried', depths), {
          cylinder: 'cylinder',
          key: 'tried',
          plan: 'plan',
        });
        expect(listed.has(steps.join()), `seed ${seed}, steps ${steps.join()}`).toBe(
          lines[0]?.verdict === 'turns',
        );
        turning += lines[0]?.verdict === 'turns' ? 1 : 0;
      }
    }
    expect(turning).toBeGreaterThan(5);
  });
});
