/**
 * A saved state as text: the job after a step, the step's name and time, and which revisions hold the other steps, so that
 * undo survives a reload. Each snapshot carries its own schema version and is migrated by itself. Never exported.
 */
import type { Job } from '../model/schema/job-schema.ts';
import { type JobProblems, readJobData } from './job-text.ts';

export type Snapshot = {
  readonly name: string;
  readonly at: string | null;
  readonly job: Job;
  /** Revisions that hold the steps of the history, oldest first. */
  readonly steps: readonly number[];
  /** Which of the steps this is. */
  readonly present: number;
  /** Steps let go earlier. */
  readonly dropped: number;
};

export type ReadSnapshot =
  | { readonly type: 'success'; readonly snapshot: Snapshot; readonly migratedFrom: number | null }
  | JobProblems;

const NAME_MOST = 400;

/** Writes a snapshot; its job is stamped with the revision it is saved as. A name too long to be read again is cut. */
export function snapshotToText(snapshot: Snapshot, revision: number): string {
  const { job, name, ...rest } = snapshot;
  return JSON.stringify({ ...rest, name: name.slice(0, NAME_MOST), job: { ...job, revision } });
}

/** Reads a snapshot in full, its job migrated and checked. */
export function readSnapshotText(text: string): ReadSnapshot {
  const data = parse(text);
  const read = readJobData(data?.['job']);
  if (read.type === 'error') return read;
  const { name, at, steps, present, dropped } = data ?? {};
  const isSound =
    typeof name === 'string' &&
    name.length <= NAME_MOST &&
    (at === null || typeof at === 'string') &&
    isRevisions(steps) &&
    isCount(present) &&
    present < steps.length &&
    isCount(dropped);
  if (!isSound) {
    const message = 'This saved state does not say how it belongs to the steps before it.';
    return { type: 'error', reason: 'invalid', problems: [{ field: 'file', message }] };
  }
  const snapshot: Snapshot = { name, at, steps, present, dropped, job: read.job };
  return { type: 'success', snapshot, migratedFrom: read.migratedFrom };
}

/** Reads the job's title alone, for a list; null when there is none to be read. */
export function readSnapshotTitle(text: string): string | null {
  const job = parse(text)?.['job'];
  const title = typeof job === 'object' && job !== null && 'title' in job ? job.title : null;
  return typeof title === 'string' ? title : null;
}

function parse(text: string): Readonly<Record<string, unknown>> | null {
  try {
    const data: unknown = JSON.parse(text);
    return typeof data === 'object' && data !== null ? Object.fromEntries(Object.entries(data)) : null;
  } catch {
    return null;
  }
}

function isCount(value: unknown): value is number {
  return typeof value === 'number' && Number.isSafeInteger(value) && value >= 0;
}

function isRevisions(value: unknown): value is number[] {
  return Array.isArray(value) && value.length > 0 && value.length <= 1000 && value.every(isCount);
}
