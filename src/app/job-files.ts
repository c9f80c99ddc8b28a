/** What the job menu does with files. Each gives a sentence to tell, or null when nothing needs telling. */
import type { Job } from '../model/schema/job-schema.ts';
import { printable } from '../model/schema/printable.ts';
import type { OpenedFile, SavedFile } from '../persist/job-file.ts';
import type { JobProblems } from '../persist/job-text.ts';
import type { Workshop } from './create-workshop.ts';
import type { PassphraseAsk } from './passphrase-dialog.tsx';

/** A file that needs its passphrase first is opened through this. */
export type AskPassphrase = (ask: PassphraseAsk) => void;

/** Lets a person choose a file and shows what is in it. */
export async function openFile(workshop: Workshop, askPassphrase: AskPassphrase): Promise<string | null> {
  const { openJobFile } = await import('../persist/job-file.ts');
  return showOpened(workshop, await openJobFile(), askPassphrase);
}

/** Shows what came from a chosen or dropped file. */
export async function showOpened(
  workshop: Workshop,
  opened: OpenedFile,
  askPassphrase: AskPassphrase,
): Promise<string | null> {
  switch (opened.type) {
    case 'cancelled':
      return null;
    case 'error':
      return tell(opened.problems);
    case 'locked':
      askPassphrase({
        title: `Open ${printable(opened.name)}`,
        isNew: false,
        run: (passphrase) => unlockFile(workshop, opened.bytes, passphrase),
      });
      return null;
    case 'all':
      return addAll(workshop, opened.jobs, opened.problems);
    case 'opened':
      if (opened.result.type === 'error') return showNewer(workshop, opened.result);
      await workshop.show(opened.result.job);
      return null;
  }
}

/** A file of a newer version is looked at, as far as this one knows it; everything else is told. */
async function showNewer(
  { lookAt }: Workshop,
  refused: JobProblems & { readonly raw: string },
): Promise<string | null> {
  if (refused.reason !== 'newer') return tell(refused.problems);
  const { readNewerJob } = await import('../persist/newer-job.ts');
  const newer = readNewerJob(refused.raw);
  if (newer === null) return tell(refused.problems);
  await lookAt(newer.job, newer.raw);
  return null;
}

async function unlockFile(workshop: Workshop, bytes: Uint8Array, passphrase: string): Promise<string[]> {
  const [{ pageLock }, { readJobBytes }] = await Promise.all([
    import('./page-lock.ts'),
    import('../persist/job-text.ts'),
  ]);
  const opened = await pageLock.open(bytes, passphrase);
  if (opened.type === 'error')
    return [
      opened.reason === 'damaged'
        ? 'The file is damaged or locked in a way that no passphrase opens.'
        : 'That passphrase does not open it. Mind capital letters and spaces.',
    ];
  const read = readJobBytes(opened.bytes);
  if (read.type === 'error') return [tell(read.problems)];
  await workshop.show(read.job);
  return [];
}

async function addAll(
  { keeper }: Workshop,
  jobs: readonly Job[],
  problems: readonly { readonly field: string; readonly message: string }[],
): Promise<string> {
  const kept = await keeper;
  if (kept === null) return 'This browser keeps nothing here, so only single jobs can be opened.';
  const count = await kept.add(jobs);
  const added = `${count === 1 ? 'One job' : `${count} jobs`} of ${jobs.length + new Set(problems.map(({ field }) => field.split(',')[0])).size} added: see Jobs on this computer.`;
  return problems.length === 0 ? added : `${added} ${tell(problems)}`;
}

/** Saves the job on screen to a file. */
export async function saveFile({ document }: Workshop): Promise<string | null> {
  const { saveJobFile, saveText } = await import('../persist/job-file.ts');
  const { job, newer } = document.getState();
  return tellSaved(newer === null ? await saveJobFile(job) : await saveText(newer, job.title));
}

/** Saves the job on screen to a file under a passphrase; gives what is in the way. */
export async function saveLocked({ document }: Workshop, passphrase: string): Promise<readonly string[]> {
  const [{ pageLock }, { jobToText }, { saveLockedFile }] = await Promise.all([
    import('./page-lock.ts'),
    import('../persist/job-text.ts'),
    import('../persist/job-file.ts'),
  ]);
  const { job, newer } = document.getState();
  const bytes = await pageLock.seal(new TextEncoder().encode(newer ?? jobToText(job)), passphrase);
  const saved = await saveLockedFile(bytes, job.title);
  return saved.type === 'error' ? saved.problems.map(({ message }) => message) : [];
}

/**
 * Saves every job of this browser that can be read to one file, but for deleted and locked ones: the file is in clear, and who
 * locked a job did not mean it to be there, open or not.
 */
export async function saveAll({ keeper }: Workshop, day: string): Promise<string | null> {
  const kept = await keeper;
  if (kept === null) return 'This browser keeps nothing here: there are no other jobs.';
  await kept.flush();
  const jobs: Job[] = [];
  let left = 0;
  for (const { id, trashedAt, isSealed } of await kept.list.list()) {
    if (trashedAt !== null) continue;
    const opened = isSealed ? null : await kept.list.open(id);
    const entry = opened?.type === 'success' ? opened.history.entries[opened.history.present] : undefined;
    if (entry === undefined) left += 1;
    else jobs.push(entry.job);
  }
  const { saveAllJobs } = await import('../persist/job-file.ts');
  const said = tellSaved(await saveAllJobs(jobs, day));
  return said === null || left === 0
    ? said
    : `${said} ${left === 1 ? 'One job that is locked or damaged is' : `${left} jobs that are locked or damaged are`} not in it; a locked one is saved under its passphrase.`;
}

function tellSaved(saved: SavedFile): string | null {
  if (saved.type === 'cancelled') return null;
  if (saved.type === 'error') return tell(saved.problems);
  return saved.isVerified ? `Saved to ${saved.name}, and read back.` : `Saved as ${saved.name}.`;
}

function tell(problems: readonly { readonly field: string; readonly message: string }[]): string {
  return problems
    .slice(0, 4)
    .map(({ field, message }) => `${field}: ${message}`)
    .join(' ');
}
