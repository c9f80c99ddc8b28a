/**
 * Locking the job on screen with a passphrase, opening a locked one, and forgetting its key. What locks is only loaded when it
 * is asked for.
 */
import type { SaveState } from '../model/history/save-state.ts';
import type { Id } from '../model/schema/leaf.ts';
import type { JobList } from '../persist/job-list.ts';
import type { RowCodec } from '../persist/row-codec.ts';
import type { JobStorage } from '../persist/stored-row.ts';

export type JobLocks = {
  /** Opens a locked job with its passphrase; gives what is in the way, one sentence each. */
  readonly unlock: (id: Id, passphrase: string) => Promise<readonly string[]>;
  /** Locks the job on screen with a passphrase, from its first step on. Gives what is in the way. */
  readonly lock: (passphrase: string) => Promise<readonly string[]>;
  /** The job on screen is a locked one, open for now. */
  readonly isLocked: () => boolean;
  /** Forgets the key of the job on screen, once everything of it is saved. */
  readonly forget: () => Promise<void>;
};

export type LockSurroundings = {
  readonly storage: JobStorage;
  readonly list: JobList;
  /** Of locked jobs that were opened here. */
  readonly codecs: Map<Id, RowCodec>;
  readonly shownId: () => Id;
  readonly open: (id: Id) => Promise<readonly string[]>;
  readonly flush: () => Promise<SaveState>;
  /** Saves every step of the job on screen anew with this codec, on top of this revision. */
  readonly saveAnew: (codec: RowCodec, revision: number) => Promise<SaveState>;
};

/** Makes the locks of a page. */
export function jobLocks(around: LockSurroundings): JobLocks {
  const { storage, list, codecs, shownId, open, flush, saveAnew } = around;
  return {
    lock: async (passphrase) => {
      const id = shownId();
      const state = await flush();
      if (state.kind === 'conflict' || state.kind === 'failed') return [state.message];
      const { newLock, pageLock } = await loadLocks();
      const codec = await newLock(passphrase, pageLock);
      codecs.set(id, codec);
      const sealed = await saveAnew(codec, state.kind === 'saved' ? state.revision : 0);
      if (sealed.kind !== 'saved') {
        codecs.delete(id);
        const isTold = sealed.kind === 'conflict' || sealed.kind === 'failed';
        return [isTold ? sealed.message : 'The job was not locked: it could not be saved.'];
      }
      // Only now: what was saved before lies there in clear.
      await list.dropPlain(id);
      return [];
    },
    unlock: async (id, passphrase) => {
      const row = await storage.readHead(id);
      if (row === undefined) return ['This job is not stored in this browser.'];
      const { openLock, pageLock } = await loadLocks();
      const opened = await openLock(row.bytes, passphrase, pageLock);
      if (opened.type === 'error') return [SENTENCES[opened.reason]];
      codecs.set(id, opened.codec);
      return open(id);
    },
    isLocked: () => codecs.has(shownId()),
    forget: async () => {
      const id = shownId();
      await flush();
      codecs.delete(id);
    },
  };
}

const SENTENCES = {
  'wrong passphrase': 'That passphrase does not open it. Mind capital letters and spaces.',
  damaged: 'The lock of this job is damaged: its bytes can still be saved to a file.',
} as const;

async function loadLocks() {
  const [codec, page] = await Promise.all([
    import('../persist/locked/locked-codec.ts'),
    import('./page-lock.ts'),
  ]);
  return { ...codec, ...page };
}
