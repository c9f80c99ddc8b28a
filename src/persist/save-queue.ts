/**
 * Saves one job, step by step: every committed step becomes a durable revision, read back and compared before it is called
 * saved. Steps that come while a write is running are written together after it. A revision that was never seen here is
 * never overwritten: that is a conflict, told and waited with. What failed stays wanted and is tried again with the next
 * step or on demand.
 *
 *    offer -> plan -> check that it can be read again -> write, if the newest revision is the one seen -> read back -> saved
 */
import { type History, presentEntry } from '../model/history/history.ts';
import type { SaveState } from '../model/history/save-state.ts';
import type { RowCodec } from './row-codec.ts';
import { readSnapshotText, snapshotToText } from './snapshot.ts';
import { type JobStorage, sameBytes, type StoredRow } from './stored-row.ts';
import { readTrouble, troubleOf } from './storage-trouble.ts';
import { baseFrom, NOTHING_SAVED, planWrite, type SavedBase, type WritePlan } from './write-plan.ts';

export type SaveQueueOptions = {
  readonly id: string;
  readonly storage: JobStorage;
  readonly codec: RowCodec;
  /** What storage is known to hold of this job, as openJob told it. */
  readonly base?: SavedBase;
  /** Gives the time as ISO 8601 text. */
  readonly clock?: () => string;
  readonly onState: (state: SaveState) => void;
};

export type SaveQueue = {
  readonly id: string;
  /** Wants a history saved. A running gesture in it is not saved. */
  readonly offer: (history: History) => void;
  /** Whether the job is stored, but not all steps of this history of it. */
  readonly misses: (history: History) => boolean;
  /** Waits until nothing is left to write, or nothing more can be. */
  readonly flush: () => Promise<SaveState>;
  /** Tries again after a failure. */
  readonly retry: () => Promise<SaveState>;
  /** The person has seen that the job was changed elsewhere and wants this one on top of it. */
  readonly writeOver: (found: number) => Promise<SaveState>;
  /** Ends all writing for good, saying why: somebody else writes this job from now on. */
  readonly stop: (message: string) => void;
};

/** Of the newest revisions, this many stay even when undo does not need them: to fall back on when rows are damaged. */
export const KEEP_NEWEST = 20;

/** Above this many characters a job is not read again before each write: it would hold up the screen. */
const CHECK_MOST_CHARACTERS = 1_000_000;

/** Makes the queue of one job. */
export function createSaveQueue(options: SaveQueueOptions): SaveQueue {
  const { id, storage, codec, onState, clock = isoNow } = options;
  let base = options.base ?? NOTHING_SAVED;
  let wanted: History | null = null;
  let state: SaveState = { kind: 'not kept' };
  let isStopped = false;
  let isRunning = false;
  let running: Promise<void> = Promise.resolve();
  /** Writes whose outcome never came back: each may have happened all the same. */
  let unsure: readonly Attempt[] = [];

  const tell = (next: SaveState) => {
    if (isStopped) return;
    state = next;
    onState(next);
  };

  /** One try; false when it did not succeed. */
  async function saveOnce(history: History): Promise<boolean> {
    const savedAt = clock();
    const plan = planWrite(history, base, savedAt);
    if (plan === null) return settle(history);
    tell({ kind: 'saving' });
    const rows = await encodeRows(plan, id, codec, savedAt);
    if (rows === null) {
      tell({ kind: 'failed', trouble: 'other', message: UNREADABLE_STEP });
      return false;
    }
    unsure = [...unsure, { rows, base: plan.base }];
    const keep = new Set(plan.base.numbers.values());
    const change = { id, expected: base.revision, rows, keep, keepNewest: KEEP_NEWEST };
    const result = await storage.write(change);
    return result.type === 'written' ? confirm(history, rows, plan.base) : recognise(result.found);
  }

  /** Reads back what was written. */
  async function confirm(history: History, rows: readonly StoredRow[], written: SavedBase): Promise<boolean> {
    const isSame = await isWritten(storage, rows);
    unsure = [];
    // Rows that read back wrong count as not written: the next try writes every step anew, under new numbers.
    base = isSame ? written : baseFrom(written.revision);
    if (isSame) return settle(history);
    tell({ kind: 'failed', ...troubleOf('not verified') });
    return false;
  }

  /** Finds out whether an unexpected revision is this queue's own, written although it seemed to fail. */
  async function recognise(found: number): Promise<boolean> {
    const own = unsure.find((attempt) => attempt.base.revision === found);
    if (own !== undefined && (await isWritten(storage, own.rows))) {
      unsure = [];
      base = own.base;
      return true;
    }
    unsure = [];
    tell({ kind: 'conflict', found, message: found === 0 ? GONE : CONFLICT });
    return false;
  }

  /** After a save: says so, unless there is more to write. */
  function settle(history: History): true {
    if (wanted === history) wanted = null;
    if (wanted === null) tell({ kind: 'saved', revision: base.revision, at: base.savedAt ?? clock() });
    return true;
  }

  async function attempt(history: History): Promise<boolean> {
    try {
      return await saveOnce(history);
    } catch (error) {
      tell({ kind: 'failed', ...readTrouble(error) });
      return false;
    }
  }

  async function run(): Promise<void> {
    isRunning = true;
    while (wanted !== null && !isStopped) {
      const attempted: History = wanted;
      const isDone = await attempt(attempted);
      // A step offered while this one failed is the next try; the same one is not tried over and over.
      if (!isDone && (hasConflict() || wanted === attempted)) break;
    }
    // In one go with the last look at `wanted`: an offer finds the queue either running or ready to start.
    isRunning = false;
  }

  const hasConflict = () => state.kind === 'conflict';

  async function finish(): Promise<SaveState> {
    while (isRunning) await running;
    return state;
  }

  function start(): Promise<SaveState> {
    if (!isRunning) running = run();
    return finish();
  }

  return {
    id,
    offer: (history) => {
      if (isStopped || presentEntry(history).job.id !== id) return;
      wanted = history;
      if (!hasConflict()) void start();
    },
    misses: (history) => base.revision > 0 && history.entries.some((entry) => !base.numbers.has(entry)),
    flush: finish,
    retry: () => (hasConflict() ? finish() : start()),
    writeOver: (found) => {
      if (!hasConflict()) return finish();
      base = baseFrom(found);
      tell({ kind: 'saving' });
      return start();
    },
    stop: (message) => {
      tell({ kind: 'failed', trouble: 'closed', message });
      isStopped = true;
    },
  };
}

type Attempt = { readonly rows: readonly StoredRow[]; readonly base: SavedBase };

const CONFLICT =
  'Not saved: this job was changed in another tab or window since it was opened here, and nothing of that was overwritten. Keep this one as well, or look at the other first.';
const GONE = 'Not saved: this job was removed in another tab or window. Keep it here to save it again.';
const UNREADABLE_STEP =
  'Not saved: the last step made a job that could not be opened again. That is a fault of Shearsight. Undo the step; the saved job is as it was before it.';

/** The rows of a plan; null when the job as it is now could not be read again. */
async function encodeRows(
  plan: WritePlan,
  id: string,
  codec: RowCodec,
  savedAt: string,
): Promise<readonly StoredRow[] | null> {
  const rows: StoredRow[] = [];
  for (const { revision, snapshot } of plan.snapshots) {
    const text = snapshotToText(snapshot, revision);
    const isNow = revision === plan.base.revision;
    const isChecked = isNow && text.length <= CHECK_MOST_CHARACTERS;
    if (isChecked && readSnapshotText(text).type === 'error') return null;
    rows.push({ id, revision, savedAt, ...(await codec.encode(text)) });
  }
  return rows;
}

/** Reads rows back and compares them byte for byte; the last one must also be the job's head. */
async function isWritten(storage: JobStorage, rows: readonly StoredRow[]): Promise<boolean> {
  const last = rows.at(-1);
  if (last === undefined) return true;
  const head = await storage.readHead(last.id);
  const found = await storage.readRevisions(
    last.id,
    rows.map(({ revision }) => revision),
  );
  return isSameRow(last, head) && rows.every((row, i) => isSameRow(row, found[i]));
}

function isSameRow(row: StoredRow, found: StoredRow | undefined): boolean {
  return found?.revision === row.revision && found.sealed === row.sealed && sameBytes(found.bytes, row.bytes);
}

function isoNow(): string {
  return new Date().toISOString();
}
