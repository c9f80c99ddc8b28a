/**
 * Opens a stored job: its newest good revision, and the history around it. What is damaged is copied to quarantine byte
 * for byte and told; nothing is written over it here. A job saved by a newer version, or a locked one, is left alone.
 */
import { type History, restoreHistory } from '../model/history/history.ts';
import type { HistoryEntry } from '../model/history/history-entry.ts';
import { shareStructure } from '../model/history/share-structure.ts';
import type { RowCodec } from './row-codec.ts';
import { readSnapshotText, type Snapshot } from './snapshot.ts';
import { type JobStorage, newestRevision, type QuarantinedRow, type StoredRow } from './stored-row.ts';
import { baseFrom, type SavedBase } from './write-plan.ts';

export type OpenedJob =
  | {
      readonly type: 'success';
      readonly history: History;
      /** To go on saving from. */
      readonly base: SavedBase;
      /** What the person must know: damaged revisions, steps that are lost. One sentence each. */
      readonly notices: readonly string[];
    }
  | {
      readonly type: 'error';
      readonly reason: 'missing' | 'newer' | 'locked' | 'damaged';
      readonly message: string;
      /** The stored bytes, to be offered as a file. */
      readonly raw: Uint8Array | null;
    };

export type OpenOptions = {
  readonly storage: JobStorage;
  readonly codec: RowCodec;
  /** Gives the time as ISO 8601 text. */
  readonly clock?: () => string;
};

type Place = QuarantinedRow['place'];
type Found =
  | { readonly type: 'success'; readonly snapshot: Snapshot; readonly row: StoredRow }
  | { readonly type: 'error'; readonly reason: 'newer' | 'locked' | 'damaged' };

/** Opens a job by its id. */
export async function openJob(id: string, options: OpenOptions): Promise<OpenedJob> {
  const { storage, codec, clock = () => new Date().toISOString() } = options;
  const damaged: QuarantinedRow[] = [];
  const read = async (row: StoredRow, place: Place): Promise<Found> => {
    const found = await readRow(row, codec);
    if (found.type === 'success') return { type: 'success', snapshot: found.snapshot, row };
    if (found.reason === 'newer' || found.reason === 'locked') return { type: 'error', reason: found.reason };
    const revision = Number.isSafeInteger(row.revision) ? row.revision : 0;
    damaged.push({ id, revision, place, reason: found.reason, foundAt: clock(), row });
    return { type: 'error', reason: 'damaged' };
  };

  const head = await storage.readHead(id);
  const revisions = await storage.listRevisions(id);
  const newest = newestRevision(head, revisions);
  if (head === undefined && revisions.length === 0) return failed('missing', null);

  let found: Found = head === undefined ? { type: 'error', reason: 'damaged' } : await read(head, 'jobs');
  for (const revision of revisions.toReversed()) {
    if (found.type === 'success' || found.reason !== 'damaged') break;
    const [row] = await storage.readRevisions(id, [revision]);
    if (row !== undefined) found = await read(row, 'revisions');
  }
  if (found.type === 'error') {
    await storage.quarantine(damaged);
    return failed(found.reason, head?.bytes instanceof Uint8Array ? head.bytes : null);
  }

  const steps = await readSteps(found.snapshot, storage, id, (row) => read(row, 'revisions'));
  await storage.quarantine(damaged);
  const isNewest = found.row.revision === newest;
  const history = restoreHistory(steps.entries, steps.present, found.snapshot.dropped);
  const numbers = new Map<HistoryEntry, number>();
  history.entries.forEach((entry, i) => {
    const number = steps.numbers[i];
    if (number !== undefined && number !== null) numbers.set(entry, number);
  });
  const present = isNewest ? (history.entries[history.present] ?? null) : null;
  const base: SavedBase = { ...baseFrom(newest), numbers, present, savedAt: found.row.savedAt };
  return { type: 'success', history, base, notices: tellNotices(found.row, isNewest, steps.lost) };
}

type Steps = {
  readonly entries: readonly HistoryEntry[];
  readonly present: number;
  /** The revision that holds each entry; null for one that has to be written again. */
  readonly numbers: readonly (number | null)[];
  readonly lost: number;
};

/** Reads the steps around a snapshot, which itself always stays; steps that cannot be read are left out. */
async function readSteps(
  snapshot: Snapshot,
  storage: JobStorage,
  id: string,
  read: (row: StoredRow) => Promise<Found>,
): Promise<Steps> {
  const rows = await storage.readRevisions(id, snapshot.steps);
  const entries: HistoryEntry[] = [];
  const numbers: (number | null)[] = [];
  let present = 0;
  let lost = 0;
  for (const [i, number] of snapshot.steps.entries()) {
    if (i % STEPS_AT_ONCE === STEPS_AT_ONCE - 1) await pause();
    const row = rows[i];
    const found = row === undefined ? null : await read(row);
    const isPresent = i === snapshot.present;
    if (isPresent) present = entries.length;
    if (!isPresent && found?.type !== 'success') {
      lost += 1;
      continue;
    }
    const { name, at, job } = isPresent || found?.type !== 'success' ? snapshot : found.snapshot;
    entries.push({ name, at, job: shareStructure(entries.at(-1)?.job, job) });
    numbers.push(found?.type === 'success' ? number : null);
  }
  return { entries, present, numbers, lost };
}

/** Steps read in one go; the page is let live between them. */
const STEPS_AT_ONCE = 8;

function pause(): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve, 0));
}

type RowRead =
  | { readonly type: 'success'; readonly snapshot: Snapshot }
  | { readonly type: 'error'; readonly reason: 'newer' | 'locked' | 'damaged' | 'invalid' };

async function readRow(row: StoredRow, codec: RowCodec): Promise<RowRead> {
  const opened = await codec.decode(row);
  if (opened.type === 'error') return opened;
  const read = readSnapshotText(opened.text);
  if (read.type === 'error') return { type: 'error', reason: read.reason === 'newer' ? 'newer' : 'invalid' };
  return read.snapshot.job.id === row.id ? read : { type: 'error', reason: 'invalid' };
}

function tellNotices(row: StoredRow, isNewest: boolean, lost: number): string[] {
  const notices: string[] = [];
  if (!isNewest) {
    notices.push(
      `The newest saved state of this job was damaged and has been set aside. This is the one before it, saved ${row.savedAt}.`,
    );
  }
  if (lost > 0) {
    const what = lost === 1 ? 'One step' : `${lost} steps`;
    notices.push(`${what} of this job's history could not be read and cannot be undone or done again.`);
  }
  return notices;
}

const MESSAGES = {
  missing: 'This job is not stored in this browser.',
  newer:
    'This job was saved by a newer Shearsight. Nothing was changed; open it there, or save its bytes to a file.',
  locked: 'This job is locked with a passphrase.',
  damaged:
    'No saved state of this job can be read. Everything was set aside as it is; save its bytes to a file to have them looked at.',
} as const;

function failed(reason: keyof typeof MESSAGES, raw: Uint8Array | null): OpenedJob {
  return { type: 'error', reason, message: MESSAGES[reason], raw };
}
