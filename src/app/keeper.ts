/**
 * Keeps the job on screen saved in this browser, and opens those that were. Loaded after the first picture: it brings the
 * database along. A job locked with a passphrase is opened with it once, and stays open until it is left.
 */
import { committedJob, startHistory } from '../model/history/history.ts';
import { readTrouble } from '../persist/storage-trouble.ts';
import type { Job } from '../model/schema/job-schema.ts';
import type { Id } from '../model/schema/leaf.ts';
import { type Database, openDatabase } from '../persist/database.ts';
import { createJobList, type JobList } from '../persist/job-list.ts';
import { createJobStorage } from '../persist/job-storage.ts';
import { keepPreference, readKeptPreference } from '../persist/kept-preference.ts';
import { plainCodec, type RowCodec } from '../persist/row-codec.ts';
import { createSaveQueue } from '../persist/save-queue.ts';
import { askToPersist, readStorageStatus, type StorageStatus } from '../persist/storage-status.ts';
import type { JobStorage } from '../persist/stored-row.ts';
import type { SavedBase } from '../persist/write-plan.ts';
import type { DocumentStore } from '../state/document-store.ts';
import type { ViewStore } from '../state/view-store.ts';
import { type FollowedJob, followJob } from './followed-job.ts';
import { type JobLocks, jobLocks } from './job-locks.ts';
import type { Remedy } from './remedy.ts';

export type Keeper = JobLocks & {
  readonly list: JobList;
  /** Removes every trace of a job that is not on screen. There is no way back. */
  readonly removeForGood: (id: Id) => Promise<void>;
  /** Opens a stored job; gives what the person must know. */
  readonly open: (id: Id) => Promise<readonly string[]>;
  /** Writes what is not written yet. */
  readonly flush: () => Promise<void>;
  readonly remedies: () => readonly Remedy[];
  /** Stores jobs that came from a file beside those there are; one that is there already gets another id. */
  readonly add: (jobs: readonly Job[]) => Promise<number>;
  readonly status: () => Promise<StorageStatus>;
  /** To be told once at the start: the job of last time could not be brought back. */
  readonly notices: readonly string[];
};

export type KeeperOptions = {
  readonly document: DocumentStore;
  readonly view: ViewStore;
  readonly newId: () => Id;
  /** The example is only kept once somebody has changed it. */
  readonly isUnsavedExample: (id: Id) => boolean;
};

const TAKEN_BY_NEWER = 'A newer Shearsight runs in another tab: save to a file, then load this page again.';

/** Opens the storage, brings back the job of last time, and saves from now on. Null where the browser keeps nothing. */
export async function openKeeper(options: KeeperOptions): Promise<Keeper | null> {
  const { document, view, newId, isUnsavedExample } = options;
  const setSaved = document.getState().setSaved;
  let database: Awaited<ReturnType<typeof openDatabase>>;
  try {
    database = await openDatabase({
      onTakenOver: () => setSaved({ kind: 'failed', trouble: 'closed', message: TAKEN_BY_NEWER }),
    });
  } catch (error) {
    setSaved({ kind: 'failed', ...readTrouble(error) });
    return null;
  }
  const storage = createJobStorage(database);
  /** Of locked jobs that were opened here. */
  const codecs = new Map<Id, RowCodec>();
  const codecOf = (id: Id): RowCodec => codecs.get(id) ?? plainCodec;
  const list = createJobList(database, {
    encode: plainCodec.encode,
    decode: (row) => codecOf((row as { id?: Id } | null)?.id ?? '').decode(row),
  });
  const shownId = () => committedJob(document.getState().history).id;
  let followed: FollowedJob | null = null;
  let remembered: Id | null = null;

  const remember = async (id: Id) => {
    if (remembered === id) return;
    remembered = id;
    await keepPreference(database, 'last job', id);
    await askToPersist();
  };

  /** Saves one job until another one is followed. */
  const follow = (id: Id, base: SavedBase | null) => {
    void followed?.end();
    const fromNow = base === null && (document.getState().history.present > 0 || !isUnsavedExample(id));
    followed = followJob({
      id,
      document,
      storage,
      codec: codecOf(id),
      base,
      fromNow,
      onState: (saved) => {
        if (shownId() !== id) return;
        setSaved(saved);
        if (saved.kind === 'saved') void remember(id);
      },
      reopen: async () => {
        forgetFollowed();
        await open(id);
      },
    });
  };
  const forgetFollowed = () => {
    followedId = null;
  };

  const open = async (id: Id): Promise<readonly string[]> => {
    await followed?.flush();
    const opened = await list.open(id);
    if (opened.type === 'error') return [opened.message];
    opening = opened.base;
    forgetFollowed();
    document.getState().load(committedJob(opened.history), opened.history);
    view.getState().open(committedJob(opened.history));
    await remember(id);
    return opened.notices;
  };

  const locks = jobLocks({
    storage,
    codecs,
    list,
    shownId,
    open,
    flush: async () => (await followed?.flush()) ?? { kind: 'not kept' },
    saveAnew: async (codec, revision) => (await followed?.saveAnew(codec, revision)) ?? { kind: 'not kept' },
  });

  // A job that is loaded, from wherever, is followed; one that `open` brings knows what storage holds of it.
  let opening: SavedBase | null = null;
  let followedId: Id | null = null;
  const followShown = () => {
    const id = shownId();
    // What a newer version saved is looked at only.
    if (document.getState().newer !== null) {
      void followed?.end();
      followed = null;
      followedId = null;
      return;
    }
    if (id === followedId) return;
    followedId = id;
    const base = opening;
    opening = null;
    follow(id, base);
  };
  document.subscribe(followShown);

  const notices: string[] = [];
  const last = await lastJob(database, list);
  const isUntouched = document.getState().history.present === 0;
  if (last !== null && isUntouched && isUnsavedExample(shownId())) notices.push(...(await open(last)));
  followShown();
  return {
    list,
    open,
    ...locks,
    flush: async () => {
      await followed?.flush();
    },
    remedies: () => followed?.remedies() ?? [],
    removeForGood: async (id) => {
      await list.removeForGood(id);
      codecs.delete(id);
      if (remembered === id) remembered = null;
      await forgetLast(database, id);
    },
    add: (jobs) => addJobs(jobs, { list, storage, newId }),
    status: () => readStorageStatus(),
    notices,
  };
}

/** The job of last time; null when there was none, or it was deleted since. */
async function lastJob(database: Database, list: JobList): Promise<Id | null> {
  const last = await readKeptPreference(database, 'last job');
  return typeof last === 'string' && !(await list.isDeleted(last)) ? last : null;
}

async function forgetLast(database: Database, id: Id): Promise<void> {
  if ((await readKeptPreference(database, 'last job')) === id)
    await keepPreference(database, 'last job', null);
}

type Store = { readonly list: JobList; readonly storage: JobStorage; readonly newId: () => Id };

async function addJobs(jobs: readonly Job[], { list, storage, newId }: Store): Promise<number> {
  const there = new Set((await list.list()).map(({ id }) => id));
  let count = 0;
  for (const job of jobs) {
    const own = there.has(job.id) ? { ...job, id: newId() } : job;
    there.add(own.id);
    const queue = createSaveQueue({ id: own.id, storage, codec: plainCodec, onState: () => undefined });
    queue.offer(startHistory(own));
    if ((await queue.flush()).kind === 'saved') count += 1;
  }
  return count;
}
