/**
 * Passphrases in a worker, because they are slow on purpose; on the page itself where no worker starts, or where one fails or
 * stays silent: then the page stands still for a second, but a locked job is never out of reach.
 */
import { passphraseLock, type PassphraseLock, type Unlocked } from '../persist/locked/passphrase-lock.ts';
import type { LockOrder, LockReply } from './lock-worker.ts';
import lockWorkerUrl from './lock-worker.ts?worker&url';
import { startWorker } from './own-worker.ts';

/** What is needed of a worker. */
export type LockWorker = Pick<Worker, 'addEventListener' | 'postMessage' | 'terminate'>;

export type PageLockOptions = {
  /** Throws where no worker may start. */
  readonly createWorker?: () => LockWorker;
  /** ms. After this a worker is taken for dead; it is usually done in one or two seconds. */
  readonly patience?: number;
  /** For when no worker answers. */
  readonly here?: PassphraseLock;
};

/** Makes the lock of a page. */
export function createPageLock(options: PageLockOptions = {}): PassphraseLock {
  const {
    createWorker = () => startWorker(lockWorkerUrl),
    patience = 60_000,
    here = passphraseLock(),
  } = options;

  /** Asks a worker of its own, which ends with its answer; null when none comes. */
  const ask = (order: LockOrder): Promise<LockReply | null> =>
    new Promise((resolve) => {
      let worker: LockWorker;
      try {
        worker = createWorker();
      } catch {
        resolve(null);
        return;
      }
      const end = (reply: LockReply | null) => {
        clearTimeout(silent);
        worker.terminate();
        resolve(reply);
      };
      const silent = setTimeout(() => end(null), patience);
      worker.addEventListener('message', ({ data }: MessageEvent<LockReply>) => end(data));
      worker.addEventListener('messageerror', () => end(null));
      worker.addEventListener('error', (event) => {
        event.preventDefault();
        end(null);
      });
      worker.postMessage(order);
    });

  return {
    seal: async (bytes, passphrase) => {
      const reply = await ask({ kind: 'seal', bytes, passphrase });
      return reply?.kind === 'sealed' ? reply.bytes : here.seal(bytes, passphrase);
    },
    open: async (bytes, passphrase): Promise<Unlocked> => {
      const reply = await ask({ kind: 'open', bytes, passphrase });
      return reply?.kind === 'opened' ? reply.result : here.open(bytes, passphrase);
    },
  };
}

/** The lock of this page. */
export const pageLock: PassphraseLock = createPageLock();
