/**
 * A job as the text of a file, and back. Writing gives the same text for the same job. Reading ends in a job or in a
 * sentence for each thing that is wrong, with the text kept; nothing is repaired. Limits come first, then parsing, then
 * copying without anything inherited, then migrating, then checking. Touches no storage, so that the first screen and the
 * command line can use it.
 */
import type { Job } from '../model/schema/job-schema.ts';
import { parseJob } from '../model/schema/parse-job.ts';
import type { Problem } from '../model/schema/problem.ts';
import { findJsonDamage } from './find-json-damage.ts';
import { inertCopy } from './inert-copy.ts';
import { measureDepth } from './measure-depth.ts';
import { migrateJob } from './migrations/migrate-job.ts';
import type { JsonObject, JsonValue } from './migrations/migration.ts';
import { printJson } from './print-json.ts';

export type ReadFailure =
  | 'too large'
  | 'too deep'
  /** No JSON text. */
  | 'unreadable'
  | 'not a job'
  /** Saved by a newer version: good work, not for this one. */
  | 'newer'
  | 'invalid';

export type JobProblems = {
  readonly type: 'error';
  readonly reason: ReadFailure;
  readonly problems: readonly Problem[];
};

export type ReadJobData =
  | {
      readonly type: 'success';
      readonly job: Job /** Null when the file is of this version. */;
      readonly migratedFrom: number | null;
    }
  | JobProblems;

export type ReadJob =
  | Extract<ReadJobData, { type: 'success' }>
  /** `raw` is the text as it came, to be kept or handed back. */
  | (JobProblems & { readonly raw: string });

/** 20 MB: three times the largest job that makes sense (ten thousand parts, measured one by one). */
export const MOST_BYTES = 20_000_000;
/** A job nests ten deep. */
export const MOST_DEPTH = 40;

/** Writes a job as the text of a file. */
export function jobToText(job: Job): string {
  return printJson(job);
}

/** Reads a job from the bytes of a file, which must be UTF-8: a damaged byte is told, not replaced. */
export function readJobBytes(bytes: Uint8Array): ReadJob {
  if (bytes.byteLength > MOST_BYTES) return refuseLarge(bytes.byteLength);
  try {
    return readJobText(new TextDecoder('utf-8', { fatal: true }).decode(bytes));
  } catch (error) {
    if (!(error instanceof TypeError)) throw error;
    const raw = new TextDecoder('utf-8').decode(bytes);
    return { ...failed('unreadable', 'file', 'This is not a job file: its bytes are not text.'), raw };
  }
}

/** Refuses a file by its size in bytes, before it is read. */
export function refuseLarge(size: number): ReadJob {
  return { ...tooLarge(size), raw: '' };
}

/** Reads a job from the text of a file. */
export function readJobText(text: string): ReadJob {
  const read = readText(text);
  return read.type === 'success' ? read : { ...read, raw: text };
}

/** Reads a job from parsed JSON data. */
export function readJobData(parsed: unknown): ReadJobData {
  const copied = inertCopy(parsed);
  if (copied.type === 'error') return { type: 'error', reason: 'invalid', problems: [copied.problem] };
  const data = copied.value;
  if (!isObject(data) || data['format'] !== 'shearsight-job') {
    const told = parseJob(data);
    const problems = told.type === 'error' ? told.problems : [];
    return { type: 'error', reason: 'not a job', problems };
  }
  const migrated = migrateJob(data);
  if (migrated.type === 'error') return migrated;
  const result = parseJob(migrated.data);
  if (result.type === 'error') return { type: 'error', reason: 'invalid', problems: result.problems };
  const isOld = migrated.data !== data;
  return { type: 'success', job: result.job, migratedFrom: isOld ? migrated.from : null };
}

function readText(text: string): ReadJobData {
  if (text.length > MOST_BYTES) return tooLarge(text.length);
  if (measureDepth(text) > MOST_DEPTH) {
    return failed('too deep', 'file', 'This is not a job file: it nests deeper than any job does.');
  }
  let parsed: unknown;
  try {
    parsed = JSON.parse(text);
  } catch {
    return failed('unreadable', 'file', whereUnreadable(text));
  }
  return readJobData(parsed);
}

function tooLarge(size: number): JobProblems {
  const megabytes = (size / 1e6).toFixed(1);
  const most = (MOST_BYTES / 1e6).toFixed(0);
  return failed(
    'too large',
    'file',
    `This file is too large for a job: ${megabytes} MB, at most ${most} MB.`,
  );
}

/** Says the line from which on the text is no JSON. */
function whereUnreadable(text: string): string {
  if (text.trim() === '') return 'This file is empty.';
  const line = text.slice(0, findJsonDamage(text) ?? text.length).split('\n').length;
  return `This file is not readable from line ${line} on: it is cut off or damaged there.`;
}

function failed(reason: ReadFailure, field: string, message: string): JobProblems {
  return { type: 'error', reason, problems: [{ field, message }] };
}

function isObject(value: JsonValue): value is JsonObject {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
