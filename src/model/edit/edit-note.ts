/** Lines of the repair note: work that is planned at the bench. They tell depths, so they are confidential. */
import type { Job } from '../schema/job-schema.ts';

/** The field of the note that holds work to do, a line for each. */
export const TO_DO = 'toDo';

/** The most the field holds, as the job file allows. */
const MOST_CHARACTERS = 20_000;

/** Adds a line of work to do; one that is there already, or for which there is no room left, changes nothing. */
export function addToDo(job: Job, line: string): Job {
  const lines = toDo(job);
  if (lines.includes(line)) return job;
  const text = [...lines, line].join('\n');
  if (text.length > MOST_CHARACTERS) return job;
  return { ...job, note: { ...job.note, restricted: { ...job.note.restricted, [TO_DO]: text } } };
}

/** The work to do, line by line. */
export function toDo(job: Job): string[] {
  const text = job.note.restricted[TO_DO] ?? '';
  return text === '' ? [] : text.split('\n');
}
