/** Seeded windows in batches, for the tests that hold them against solid bodies and dense sampling. */
import type { WindowInput } from '../../src/model/window/window-input.ts';
import { type Random, randomWindow, seededRandom } from './window-cases.ts';

/** mm. What a body is moved by to be clear on one side and overlapping on the other (2e-5 in). */
export const NEAR = 2e-5 * 25.4;
/** mm. Two heights closer than this are the same (1e-6 in). */
export const SAME = 1e-6 * 25.4;
export const CASES_PER_BATCH = 250;
/** Two thousand cases in all. */
export const BATCHES = [1, 2, 3, 4, 5, 6, 7, 8];
export const ENDS = ['flat', 'bevel', 'radius', 'dome'] as const;
export const TOPS = ['flat', 'bevel', 'dome'] as const;

export type WindowCase = { readonly input: WindowInput; readonly random: Random; readonly name: string };

/** Makes the cases of a batch; the seed stands in the name of each. */
export function casesOf(seed: number): WindowCase[] {
  const random = seededRandom(seed);
  return Array.from({ length: CASES_PER_BATCH }, (_, i) => {
    const input = randomWindow(random, TOPS, ENDS);
    return { input, random, name: `seed ${seed} case ${i}: ${JSON.stringify(input)}` };
  });
}
