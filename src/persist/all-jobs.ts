/**
 * All jobs of a browser in one file, and back: each is a job file of its own inside, read by the same rules. One that cannot
 * be read is told by its place and does not keep the others out.
 */
import type { Job } from '../model/schema/job-schema.ts';
import type { Problem } from '../model/schema/problem.ts';
import { MOST_BYTES, MOST_DEPTH, readJobData } from './job-text.ts';
import { measureDepth } from './measure-depth.ts';
import { printJson } from './print-json.ts';

/** !!! DO NOT CHANGE: files that people have saved say it. */
const FORMAT = 'shearsight-jobs';

export type ReadAll =
  | { readonly type: 'success'; readonly jobs: readonly Job[]; readonly problems: readonly Problem[] }
  /** Not such a file: perhaps a single job. */
  | { readonly type: 'other' };

/** Writes jobs as the text of one file. */
export function allJobsToText(jobs: readonly Job[]): string {
  return printJson({ format: FORMAT, schemaVersion: 1, jobs });
}

/** Reads jobs from the text of a file. */
export function readAllJobs(text: string): ReadAll {
  if (text.length > MOST_BYTES || !text.includes(FORMAT) || measureDepth(text) > MOST_DEPTH + 2)
    return { type: 'other' };
  let data: unknown;
  try {
    data = JSON.parse(text);
  } catch {
    return { type: 'other' };
  }
  if (typeof data !== 'object' || data === null) return { type: 'other' };
  const { format, jobs } = data as { format?: unknown; jobs?: unknown };
  if (format !== FORMAT || !Array.isArray(jobs)) return { type: 'other' };
  const read: Job[] = [];
  const problems: Problem[] = [];
  jobs.forEach((each, i) => {
    const one = readJobData(each);
    if (one.type === 'success') read.push(one.job);
    else
      problems.push(
        ...one.problems.map(({ field, message }) => ({ field: `job ${i + 1}, ${field}`, message })),
      );
  });
  return { type: 'success', jobs: read, problems };
}
