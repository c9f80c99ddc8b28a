/**
 * Keeps the job on screen saved in this browser, and opens those that were. Loaded after the first picture: it brings the
 * database along.
 */
import { committedJob } from '../model/history/history.ts';
import type { Id } from '../model/schema/leaf.ts';
import { startAutosave } from '../persist/autosave.ts';
import { openDatabase } from '../persist/database.ts';
import { createJobList, type JobList } from '../persist/job-list.ts';
import { lockJob, type JobLock } from '../persist/job-lock.ts';
import { createJobStorage } from '../persist/job-storage.ts';
import { keepPreference, readKeptPreference } from '../persist/kept-preference.ts';
import { plainCodec } from '../persist/row-codec.ts';
import { createSaveQueue, type SaveQueue } from '../persist/save-queue.ts';
import { askToPersist } from '../persist/storage-status.ts';
import type { SavedBase } from '../persist/write-plan.ts';
import type { DocumentStore } from '../state/document-store.ts';
import type { ViewStore } from '../state/view-store.ts';

export type Keeper = {
  readonly list: JobList;
  /** Opens a stored job; gives what the person must know. */
  readonly open: (id: Id) => Promise<readonly string[]>;
  /** Writes what is not written yet. */
  readonly flush: () => Promise<void>;
};

export type KeeperOptions = {
  readonly document: DocumentStore;
  readonly view: ViewStore;
  /** The example is only kept once somebody has changed it. */
  readonly isUnsavedExample: (id: Id) => boolean;
};

/** Opens the storage, brings back the job of last time, and saves from now on. Null where the browser keeps nothing. */
export async function openKeeper({
  document,
  view,
  isUnsavedExample,
}: KeeperOptions): Promise<Keeper | null> {
  const setSaved = document.getState().setSaved;
  let database: Awaited<ReturnType<typeof openDatabase>>;
  try {
    database = await openDatabase({
      onTakenOver: () =>
        setSaved({
          kind: 'failed',
          trouble: 'closed',
          message: 'A newer Shearsight runs in another tab: save to a file and reload.',
        }),
    });
  } catch {
    setSaved({
      kind: 'failed',
      trouble: 'denied',
      message: 'This browser keeps nothing here: save to a file.',
    });
    return null;
  }
  const storage = createJobStorage(database);
  const list = createJobList(database, plainCodec);
  let queue: SaveQueue | null = null;
  let end: () => void = () => undefined;

  /** Saves one job until another one is followed. */
  const follow = async (id: Id, base: SavedBase | null) => {
    end();
    const own = createSaveQueue({
      id,
      storage,
      codec: plainCodec,
      ...(base !== null && { base }),
      onState: (saved) => {
        if (committedJob(document.getState().history).id !== id) return;
        setSaved(saved);
        if (saved.kind === 'saved') void remember(id);
      },
    });
    queue = own;
    let lock: JobLock | null = null;
    let stop: () => void = () => undefined;
    end = () => {
      stop();
      void own.flush().then(() => lock?.release());
    };
    lock = await lockJob(id, { onAsked: () => own.flush(), onLost: (message) => own.stop(message) });
    if (lock.kind === 'elsewhere') {
      setSaved({
        kind: 'failed',
        trouble: 'closed',
        message: 'This job is open in another tab: changes here are not saved.',
      });
      return;
    }
    const fromNow = base === null && (document.getState().history.present > 0 || !isUnsavedExample(id));
    stop = startAutosave({ source: document, queue: own, page: window.document, fromNow });
  };

  let remembered: Id | null = null;
  const remember = async (id: Id) => {
    if (remembered === id) return;
    remembered = id;
    await keepPreference(database, 'last job', id);
    await askToPersist();
  };

  const open = async (id: Id): Promise<readonly string[]> => {
    await queue?.flush();
    const opened = await list.open(id);
    if (opened.type === 'error') return [opened.message];
    opening = opened.base;
    document.getState().load(committedJob(opened.history), opened.history);
    view.getState().open(committedJob(opened.history));
    await remember(id);
    return opened.notices;
  };

  // A job that is loaded, from wherever, is followed; one that `open` brings knows what storage holds of it.
  let opening: SavedBase | null = null;
  let followed: Id | null = null;
  const followShown = () => {
    const { id } = committedJob(document.getState().history);
    if (id === followed) return;
    followed = id;
    const base = opening;
    opening = null;
    void follow(id, base);
  };
  document.subscribe(followShown);

  const last = await readKeptPreference(database, 'last job');
  const isUntouched = document.getState().history.present === 0;
  if (
    typeof last === 'string' &&
    isUntouched &&
    isUnsavedExample(committedJob(document.getState().history).id)
  )
    await open(last);
  followShown();
  return {
    list,
    open,
    flush: async () => {
      await queue?.flush();
    },
  };
}
