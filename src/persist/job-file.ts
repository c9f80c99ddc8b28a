/**
 * Saving a job to a file and opening one, through the browser's file dialogs or, where it has none, as a download and an
 * upload. A file is only offered if it can be opened again; where the browser lets us, it is read back after writing.
 */
import { fileOpen, fileSave } from 'browser-fs-access';
import type { Job } from '../model/schema/job-schema.ts';
import type { Problem } from '../model/schema/problem.ts';
import { JOB_ENDING, jobFileName } from './job-file-name.ts';
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
  | { readonly type: 'cancelled' }
  | { readonly type: 'error'; readonly problems: readonly Problem[] };

/** The dialogs, to be replaced in tests. */
export type FileDialogs = { readonly fileOpen: typeof fileOpen; readonly fileSave: typeof fileSave };

const DIALOGS: FileDialogs = { fileOpen, fileSave };
const KIND = {
  id: 'shearsight-job',
  description: 'Shearsight job',
  mimeTypes: ['application/json'],
  extensions: ['.json'],
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

/** Lets a person choose a file and reads a job from it. */
export async function openJobFile(dialogs: FileDialogs = DIALOGS): Promise<OpenedFile> {
  try {
    const file = await dialogs.fileOpen({ ...KIND, extensions: ['.json', JOB_ENDING] });
    return { type: 'opened', name: file.name, handle: file.handle ?? null, result: await readJobFile(file) };
  } catch (error) {
    return isCancelled(error)
      ? { type: 'cancelled' }
      : troubled('The file could not be read. It may have been moved or be in use; choose it again.');
  }
}

/** Reads a job from a chosen or dropped file; a file that is too large is not even read. */
export async function readJobFile(file: Blob): Promise<ReadJob> {
  if (file.size > MOST_BYTES) return refuseLarge(file.size);
  return readJobBytes(new Uint8Array(await file.arrayBuffer()));
}

function isCancelled(error: unknown): boolean {
  return error instanceof DOMException && error.name === 'AbortError';
}

function troubled(message: string): { type: 'error'; problems: readonly Problem[] } {
  return { type: 'error', problems: [{ field: 'file', message }] };
}
