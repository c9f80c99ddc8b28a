/** The written part of the repair note; its lines of work that is planned at the bench tell depths, so they are confidential. */
import type { NotePage } from '../note/note-fields.ts';
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

/** Writes a field of the note; an empty text takes it away. Text beyond what the file holds is cut off. */
export function setNoteField(job: Job, page: NotePage, name: string, text: string): Job {
  const written = text.trim().slice(0, MOST_CHARACTERS);
  if ((job.note[page][name] ?? '') === written) return job;
  const others = Object.entries(job.note[page]).filter(([each]) => each !== name);
  const fields = Object.fromEntries(written === '' ? others : [...others, [name, written]]);
  return { ...job, note: { ...job.note, [page]: fields } };
}

/** Says whether what leaves the job as a page, picture or table keeps the bitting out. */
export function setHidesBitting(job: Job, hides: boolean): Job {
  const { shared, restricted } = job.note;
  return { ...job, note: hides ? { shared, restricted, hidesBitting: true } : { shared, restricted } };
}
