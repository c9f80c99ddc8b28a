/** What the bench said: with one chamber filled, or all of them, the plug turned or did not. */
import type { Job } from '../schema/job-schema.ts';
import type { Item } from '../schema/key-schema.ts';
import type { Id } from '../schema/leaf.ts';
import type { BenchResult } from '../schema/parts-schema.ts';
import { sameIds } from './change.ts';

export type BenchTest = {
  readonly plan: Id;
  readonly key: Id;
  /** Its id, or 'all'. */
  readonly chamber: Id;
  /** What was in the hole. */
  readonly items: readonly Item[];
};

/** Records the outcome of a test, in place of an earlier one with the same parts; null takes it back. */
export function recordBench(job: Job, test: BenchTest, turned: boolean | null, at: string): Job {
  const others = job.benchResults.filter((each) => !isSameTest(each, test));
  if (turned === null) return { ...job, benchResults: others };
  return {
    ...job,
    benchResults: [...others, { ...test, items: [...test.items], turned, at }],
  };
}

/** The recorded outcome of a test with these parts; null when it was not made. */
export function benchOutcome(job: Job, test: BenchTest): boolean | null {
  return job.benchResults.find((each) => isSameTest(each, test))?.turned ?? null;
}

function isSameTest(result: BenchResult, test: BenchTest): boolean {
  return (
    result.plan === test.plan &&
    result.key === test.key &&
    result.chamber === test.chamber &&
    sameIds(
      result.items.map((item) => item.part),
      test.items.map((item) => item.part),
    )
  );
}
