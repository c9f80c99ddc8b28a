/**
 * Saving a job to a file and opening one, through the browser's file dialogs or, where it has none, as a download and an
 * upload. A file is only offered if it can be opened again; where the browser lets us, it is read back after writing.
 */
import { fileOpen, fileSave } from 'browser-fs-access';
import type { Job } from '../model/schema/job-schema.ts';
import type { Problem } from '../model/schema/problem.ts';
import { allJobsToText, readAllJobs } from './all-jobs.ts';
import { JOB_ENDING, jobFileName } from './job-file-name.ts';
import { jobBytesIn } from './job-in-picture.ts';
import { isLockedFile } from './locked/locked-mark.ts';
import { sameBytes } from './stored-row.ts';
import { jobToText, MOST_BYTES, type ReadJob, readJobBytes, readJobText, refuseLarge } from './job-text.ts';

export type SavedFile =
  /** Verified: read back and found the same. A download cannot be read back. */
  | {
      readonly type: 'success';
      readonly name: string;
      readonly handle: FileSystemFileHandle | null;
      readonly isVerified: boolean;
    }
  | { readonly type: 'cancelled' }
  | { readonly type: 'error'; readonly problems: readonly Problem[] };

export type OpenedFile =
  | {
      readonly type: 'opened';
      readonly name: string;
      readonly handle: FileSystemFileHandle | null;
      readonly result: ReadJob;
    }
  /** Locked with a passphrase: its bytes, to be opened with it. */
  | { readonly type: 'locked'; readonly name: string; readonly bytes: Uint8Array }
  /** All jobs of a browser in one file. */
  | { readonly type: 'all'; readonly jobs: readonly Job[]; readonly problems: readonly Problem[] }
  | { readonly type: 'cancelled' }
  | { readonly type: 'error'; readonly problems: readonly Problem[] };

/** The dialogs, to be replaced in tests. */
export type FileDialogs = { readonly fileOpen: typeof fileOpen; readonly fileSave: typeof fileSave };

/** The usual ending of files in the age format. */
export const LOCKED_ENDING = '.age';

const OPENED_ENDINGS = ['.json', JOB_ENDING, LOCKED_ENDING, '.png', '.svg'];

const DIALOGS: FileDialogs = { fileOpen, fileSave };
type FileKind = {
  readonly id: string;
  readonly description: string;
  mimeTypes: string[];
  extensions: string[];
};

const KIND: FileKind = {
  id: 'shearsight-job',
  description: 'Shearsight job',
  mimeTypes: ['application/json'],
  extensions: ['.json'],
};
const LOCKED_KIND = {
  id: 'shearsight-locked-job',
  description: 'Locked Shearsight job',
  mimeTypes: ['application/octet-stream'],
  extensions: [LOCKED_ENDING],
};

/**
 * Saves a job to a file.
 *
 * @param handle the file it was opened from or saved to before: written without asking again
 */
export async function saveJobFile(
  job: Job,
  handle: FileSystemFileHandle | null = null,
  dialogs: FileDialogs = DIALOGS,
): Promise<SavedFile> {
  const text = jobToText(job);
  const again = readJobText(text);
  if (again.type === 'error') return { type: 'error', problems: again.problems };
  const fileName = jobFileName(job.title);
  try {
    const blob = new Blob([text], { type: 'application/json' });
    const saved = await dialogs.fileSave(blob, { ...KIND, fileName }, handle);
    if (saved === null) return { type: 'success', name: fileName, handle: null, isVerified: false };
    const written = await (await saved.getFile()).text();
    if (written !== text)
      return troubled('The file was written, but what was read back differs. Save it elsewhere.');
    return { type: 'success', name: saved.name, handle: saved, isVerified: true };
  } catch (error) {
    return isCancelled(error)
      ? { type: 'cancelled' }
      : troubled('The file could not be written. Choose another place or name; the job here is unchanged.');
  }
}

/** Lets a person choose a file and reads what is in it. */
export async function openJobFile(dialogs: FileDialogs = DIALOGS): Promise<OpenedFile> {
  try {
    const file = await dialogs.fileOpen({ ...KIND, extensions: OPENED_ENDINGS });
    return await readChosenFile(file, file.handle ?? null);
  } catch (error) {
    return isCancelled(error)
      ? { type: 'cancelled' }
      : troubled('The file could not be read. It may have been moved or be in use; choose it again.');
  }
}

/** Reads a chosen or dropped file: a job, a picture with one inside, a locked one, or all jobs of a browser. */
export async function readChosenFile(file: File, handle: FileSystemFileHandle | null): Promise<OpenedFile> {
  const { name } = file;
  if (file.size > MOST_BYTES) return { type: 'opened', name, handle, result: refuseLarge(file.size) };
  const bytes = new Uint8Array(await file.arrayBuffer());
  if (isLockedFile(bytes)) return { type: 'locked', name, bytes };
  const picture = jobBytesIn(bytes);
  if (picture.type === 'no job')
    return troubled(
      'This picture holds no job. Only one that was saved with the job inside opens again; sent through a chat it may have lost it.',
    );
  if (picture.type === 'damaged')
    return troubled(
      'This picture is cut off or damaged, so the job inside cannot be read. Get the file again.',
    );
  // What a picture holds is not its file: saving goes to a new one.
  if (picture.type === 'job')
    return { type: 'opened', name, handle: null, result: readJobBytes(picture.bytes) };
  const result = readJobBytes(bytes);
  const all = result.type === 'error' ? readAllJobs(result.raw) : null;
  return all?.type === 'success' ? { ...all, type: 'all' } : { type: 'opened', name, handle, result };
}

/** Saves the bytes of a locked job under a name that tells its title and nothing else. */
export function saveLockedFile(
  bytes: Uint8Array,
  title: string,
  dialogs: FileDialogs = DIALOGS,
): Promise<SavedFile> {
  return saveBytes(bytes, jobFileName(title).replace(JOB_ENDING, LOCKED_ENDING), LOCKED_KIND, dialogs);
}

export type OtherFile = {
  readonly bytes: Uint8Array;
  /** With its dot. */
  readonly ending: string;
  readonly mimeType: string;
  /** "Picture", "Table": what the file dialog calls it. */
  readonly description: string;
};

/** Saves a picture or table of a job, under the job's title. */
export function saveOtherFile(
  { bytes, ending, mimeType, description }: OtherFile,
  title: string,
  dialogs: FileDialogs = DIALOGS,
): Promise<SavedFile> {
  const kind = { id: 'shearsight-note', description, mimeTypes: [mimeType], extensions: [ending] };
  return saveBytes(bytes, jobFileName(title).replace(JOB_ENDING, ending), kind, dialogs);
}

/** Saves a job's text as it came from a file of a newer version. */
export function saveText(text: string, title: string, dialogs: FileDialogs = DIALOGS): Promise<SavedFile> {
  return saveBytes(new TextEncoder().encode(text), jobFileName(title), KIND, dialogs);
}

/** Saves all jobs in one file. */
export function saveAllJobs(
  jobs: readonly Job[],
  day: string,
  dialogs: FileDialogs = DIALOGS,
): Promise<SavedFile> {
  const bytes = new TextEncoder().encode(allJobsToText(jobs));
  return saveBytes(bytes, `all-jobs-${day}${JOB_ENDING}`, KIND, dialogs);
}

async function saveBytes(
  bytes: Uint8Array,
  fileName: string,
  kind: FileKind,
  dialogs: FileDialogs,
): Promise<SavedFile> {
  try {
    const blob = new Blob([bytes.slice()], { type: kind.mimeTypes[0] ?? '' });
    const saved = await dialogs.fileSave(blob, { ...kind, fileName });
    if (saved === null) return { type: 'success', name: fileName, handle: null, isVerified: false };
    const written = new Uint8Array(await (await saved.getFile()).arrayBuffer());
    if (!sameBytes(written, bytes))
      return troubled('The file was written, but what was read back differs. Save it elsewhere.');
    return { type: 'success', name: saved.name, handle: saved, isVerified: true };
  } catch (error) {
    return isCancelled(error)
      ? { type: 'cancelled' }
      : troubled('The file could not be written. Choose another place or name; the job here is unchanged.');
  }
}

function isCancelled(error: unknown): boolean {
  return error instanceof DOMException && error.name === 'AbortError';
}

function troubled(message: string): { type: 'error'; problems: readonly Problem[] } {
  return { type: 'error', problems: [{ field: 'file', message }] };
}
