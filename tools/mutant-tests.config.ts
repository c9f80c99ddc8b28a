/**
 * The tests that changes of `src/model` are held against: those of the model, those against something outside, those of the
 * command line, of what panels say and of the stores, without the slowest (mutant-runner.mjs leaves out single slow tests too). What is left out could only find more. A run stops at the first failure, so files that
 * take long come last.
 */
import { relative } from 'node:path';
import { defineConfig } from 'vitest/config';
import { BaseSequencer, type TestSpecification } from 'vitest/node';

/** Files that take longer than what they would find is worth: many random jobs, bodies of solids, solvers of other makers. */
const SLOW = [
  'tests/model/evaluate/evaluate.prop.test.ts',
  'tests/model/evaluate/small-jobs.prop.test.ts',
  'tests/model/findings/facts.prop.test.ts',
  'tests/model/matching/match.prop.test.ts',
  'tests/model/units/parse-length.prop.test.ts',
  'tests/panels/{contrast,described,named-flags}.test.{ts,tsx}',
  'tests/panels/learn/{german,words}.test.tsx',
  'tests/state/document-store.prop.test.ts',
  'tests/outside/{insertion,master,matching,passing,printed,window}*.test.ts',
];

/** Shortest first, by the longest time that a file was seen to take. */
class ShortestFirst extends BaseSequencer {
  readonly #longest = new Map<string, number>();

  override sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    return Promise.resolve([...files].sort((one, other) => this.#timeOf(one) - this.#timeOf(other)));
  }

  #timeOf({ project, moduleId }: TestSpecification): number {
    const key = `${project.name}:${relative(this.ctx.config.root, moduleId)}`;
    const seen = this.ctx.cache.getFileTestResults(key)?.duration ?? 0;
    const longest = Math.max(this.#longest.get(key) ?? 0, seen);
    this.#longest.set(key, longest);
    return longest;
  }
}

export default defineConfig({
  test: {
    environment: 'node',
    include: ['tests/{model,outside,cli,panels,state}/**/*.test.{ts,tsx}'],
    exclude: SLOW,
    // Fewer rounds of what can be run as long as one likes.
    env: { LESSON_SEEDS: '4' },
    setupFiles: ['tools/mutant-coverage.ts', 'tests/support/fixed-seed.ts'],
    // As in vite.config.ts: one process reads the model once, not for every file.
    isolate: false,
    maxWorkers: 1,
    unstubGlobals: true,
    restoreMocks: true,
    testTimeout: 120_000,
    hookTimeout: 120_000,
    sequence: { sequencer: ShortestFirst },
  },
});
