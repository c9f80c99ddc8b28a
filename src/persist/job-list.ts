/**
 * The jobs stored in this browser: listing, renaming, deleting and bringing back. Deleting only marks a job; its rows stay
 * until it is removed for good.
 */
import { committedJob, commitStep } from '../model/history/history.ts';
import type { SaveState } from '../model/history/save-state.ts';
import type { Database } from './database.ts';
import { createJobStorage } from './job-storage.ts';
import { openJob, type OpenedJob } from './open-job.ts';
import type { RowCodec } from './row-codec.ts';
import { createSaveQueue } from './save-queue.ts';
import { readSnapshotTitle } from './snapshot.ts';
import type { StoredRow } from './stored-row.ts';

export type ListedJob = {
  readonly id: string;
  /** Null for a job whose newest row cannot be read: locked, or damaged. */
  readonly title: string | null;
  readonly state: 'good' | 'locked' | 'damaged';
  /** Kept under a passphrase, though it may be open now. */
  readonly isSealed: boolean;
  readonly savedAt: string;
  readonly revision: number;
  /** When it was deleted; null for a job that was not. */
  readonly trashedAt: string | null;
};

export type JobList = {
  /** All jobs, the last saved first; deleted ones among them, marked. */
  readonly list: () => Promise<readonly ListedJob[]>;
  /** Opens the newest good revision. */
  readonly open: (id: string) => Promise<OpenedJob>;
  /** Gives a job that is not open another title, as a step that can be undone. The caller holds the job's lock. */
  readonly rename: (id: string, title: string) => Promise<SaveState | Extract<OpenedJob, { type: 'error' }>>;
  /** Deletes a job so that it can be brought back. */
  readonly delete: (id: string) => Promise<void>;
  readonly bringBack: (id: string) => Promise<void>;
  readonly isDeleted: (id: string) => Promise<boolean>;
  /** Removes what was saved of a job before it was locked, damaged rows among it. */
  readonly dropPlain: (id: string) => Promise<void>;
  /** Removes every trace of a job. There is no way back. */
  readonly removeForGood: (id: string) => Promise<void>;
};

/**
 * Makes the list on an open database.
 *
 * @param clock gives the time as ISO 8601 text
 */
export function createJobList(database: Database, codec: RowCodec, clock: () => string = isoNow): JobList {
  const storage = createJobStorage(database);
  const open = (id: string) => openJob(id, { storage, codec, clock });
  return {
    list: () => listJobs(database, codec),
    open,
    rename: async (id, title) => {
      const opened = await open(id);
      if (opened.type === 'error') return opened;
      const { history, base } = opened;
      const step = { name: 'Title', job: { ...committedJob(history), title }, at: clock() };
      const queue = createSaveQueue({ id, storage, codec, base, clock, onState: () => undefined });
      queue.offer(commitStep(history, step));
      return queue.flush();
    },
    delete: async (id) => {
      await database.trash.put({ id, trashedAt: clock() });
    },
    bringBack: (id) => database.trash.delete(id),
    isDeleted: async (id) => (await database.trash.get(id)) !== undefined,
    dropPlain: (id) => dropPlain(database, id),
    removeForGood: (id) => removeForGood(database, id),
  };
}

async function listJobs(database: Database, codec: RowCodec): Promise<readonly ListedJob[]> {
  const { jobs, trash } = database;
  const [rows, trashed] = await database.transaction('r', jobs, trash, () =>
    Promise.all([jobs.toArray(), trash.toArray()]),
  );
  const trashedAt = new Map(trashed.map((entry) => [entry.id, entry.trashedAt]));
  const listed = await Promise.all(
    rows.map(async (row): Promise<ListedJob> => {
      const { id, savedAt, revision } = row;
      return {
        id,
        savedAt,
        revision,
        isSealed: row.sealed,
        trashedAt: trashedAt.get(id) ?? null,
        ...(await readListed(row, codec)),
      };
    }),
  );
  return listed.sort((a, b) => (a.savedAt < b.savedAt ? 1 : a.savedAt > b.savedAt ? -1 : 0));
}

async function readListed(row: StoredRow, codec: RowCodec): Promise<Pick<ListedJob, 'title' | 'state'>> {
  const opened = await codec.decode(row);
  if (opened.type === 'error') return { title: null, state: opened.reason };
  const title = readSnapshotTitle(opened.text);
  return { title, state: title === null ? 'damaged' : 'good' };
}

async function dropPlain(database: Database, id: string): Promise<void> {
  const { revisions, quarantine } = database;
  await database.transaction('rw', revisions, quarantine, async () => {
    const own = revisions.where(':id').between([id], [id, []]);
    const plain = await own.filter(({ sealed }) => !sealed).primaryKeys();
    await revisions.bulkDelete(plain);
    await quarantine.where(':id').between([id], [id, []]).delete();
  });
}

async function removeForGood(database: Database, id: string): Promise<void> {
  const { jobs, revisions, trash, quarantine } = database;
  await database.transaction('rw', jobs, revisions, trash, quarantine, async () => {
    await jobs.delete(id);
    await revisions.where(':id').between([id], [id, []]).delete();
    await quarantine.where(':id').between([id], [id, []]).delete();
    await trash.delete(id);
  });
}

function isoNow(): string {
  return new Date().toISOString();
}
