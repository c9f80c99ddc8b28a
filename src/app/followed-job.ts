/**
 * Keeps one job saved from the moment it is shown until another one is: the lock that makes this tab its only writer, the queue
 * that writes, and what a person can do when either fails.
 *
 *    mine or unguarded -> every committed step is saved
 *    elsewhere, lost   -> looked at only, until it is taken over
 *
 * The lock comes a moment later than the job, and a job may be left before it: what was changed until then is saved all the same.
 */
import { committedJob, type History } from '../model/history/history.ts';
import type { SaveState } from '../model/history/save-state.ts';
import type { Id } from '../model/schema/leaf.ts';
import { type HistorySource, startAutosave } from '../persist/autosave.ts';
import { lockJob, type JobLock } from '../persist/job-lock.ts';
import type { RowCodec } from '../persist/row-codec.ts';
import { createSaveQueue, type SaveQueue } from '../persist/save-queue.ts';
import type { JobStorage } from '../persist/stored-row.ts';
import { baseFrom, type SavedBase } from '../persist/write-plan.ts';
import type { DocumentStore } from '../state/document-store.ts';
import type { Remedy } from './remedy.ts';

export type FollowOptions = {
  readonly id: Id;
  readonly document: DocumentStore;
  readonly storage: JobStorage;
  readonly codec: RowCodec;
  /** What storage holds of it; null for a job that came from elsewhere. */
  readonly base: SavedBase | null;
  /** Save what is there without waiting for a first step. */
  readonly fromNow: boolean;
  readonly onState: (saved: SaveState) => void;
  /** Shows what is stored of it, instead of what is on screen. */
  readonly reopen: () => Promise<void>;
};

export type FollowedJob = {
  readonly id: Id;
  /** Waits until nothing is left to write. */
  readonly flush: () => Promise<SaveState>;
  /** Saves every step anew with another codec, on top of this revision. */
  readonly saveAnew: (codec: RowCodec, revision: number) => Promise<SaveState>;
  readonly remedies: () => readonly Remedy[];
  /** Writes what is left, then lets other tabs have the job. */
  readonly end: () => Promise<void>;
};

const ELSEWHERE =
  'This job is open in another tab. Here it can be looked at; what is changed here is not saved.';

/** Jobs that were left and are not let go yet: opened again, they wait, or this tab would stand in its own way. */
const ending = new Map<Id, Promise<void>>();

function inTurn(id: Id, letGo: () => Promise<void>): Promise<void> {
  const ends = letGo().finally(() => {
    if (ending.get(id) === ends) ending.delete(id);
  });
  ending.set(id, ends);
  return ends;
}

/** Starts keeping a job. */
export function followJob(options: FollowOptions): FollowedJob {
  const { id, document, storage, onState, reopen } = options;
  let { codec, base, fromNow } = options;
  /** What is on screen and in storage alike. */
  let stored = document.getState().history;
  /** As the document holds it, or held it before it went on to another job. */
  let own = stored;
  const first = own;
  const forget = document.subscribe(({ history }) => {
    if (committedJob(history).id === id) own = history;
  });
  const source: HistorySource = {
    getState: () => ({ history: own }),
    subscribe: (listener) => (isEnded ? () => undefined : document.subscribe(listener)),
  };
  let saved: SaveState = { kind: 'not kept' };
  let queue: SaveQueue = newQueue();
  let lock: JobLock | null = null;
  let stop: () => void = () => undefined;
  let isEnded = false;
  let isWriter = false;

  function newQueue(): SaveQueue {
    return createSaveQueue({ id, storage, codec, ...(base !== null && { base }), onState: tell });
  }

  function tell(state: SaveState): void {
    saved = state;
    if (state.kind === 'saved') stored = own;
    if (!isEnded || state.kind === 'saved') onState(state);
  }

  const guard = {
    onAsked: () => queue.flush(),
    onLost: (message: string) => {
      isWriter = false;
      stop();
      queue.stop(message);
    },
  };

  function write(): void {
    isWriter = true;
    stop = startAutosave({ source, queue, page: window.document, fromNow: fromNow || !isSame(own, first) });
  }

  async function start(): Promise<void> {
    await ending.get(id);
    // Without a lock the queue still overwrites nothing that it has not seen.
    lock = await lockJob(id, guard).catch(() => null);
    if (lock?.kind !== 'elsewhere') write();
    else tell({ kind: 'failed', trouble: 'closed', message: ELSEWHERE });
  }

  /** Takes the job from the other tab. What was changed here meanwhile is offered to be saved; else the stored job is shown. */
  async function takeOver(): Promise<void> {
    const asked = await lockJob(id, guard);
    lock = asked.kind === 'elsewhere' ? await asked.takeOver() : asked;
    const { history } = document.getState();
    if (isSame(history, stored)) {
      await end();
      await reopen();
      return;
    }
    queue = newQueue();
    write();
    queue.offer(history);
  }

  /** From now on the document is somebody else's, be it with the same job. */
  function end(): Promise<void> {
    isEnded = true;
    forget();
    stop();
    return inTurn(id, async () => {
      await started;
      stop();
      await queue.flush();
      await lock?.release();
    });
  }

  const started = start();
  return {
    id,
    flush: async () => {
      await started;
      return queue.flush();
    },
    saveAnew: async (next, revision) => {
      if (!isWriter) return saved;
      stop();
      await queue.flush();
      codec = next;
      base = baseFrom(revision);
      fromNow = true;
      queue = newQueue();
      write();
      return queue.flush();
    },
    remedies: () => {
      const { kind } = saved;
      if (saved.kind === 'conflict') {
        const { found } = saved;
        return [
          {
            label: 'Keep this one on top',
            run: () => untold(queue.writeOver(found)),
          },
          {
            label: 'Show the other instead',
            run: async () => {
              await end();
              await reopen();
            },
          },
        ];
      }
      if (kind !== 'failed') return [];
      return isWriter
        ? [
            {
              label: 'Try again',
              run: () => untold(queue.retry()),
            },
          ]
        : [{ label: 'Take it over here', run: takeOver }];
    },
    end,
  };
}

function isSame(one: History, other: History): boolean {
  return one.entries === other.entries && one.present === other.present;
}

/** What comes of it is told by the queue. */
async function untold(outcome: Promise<SaveState>): Promise<void> {
  await outcome;
}
