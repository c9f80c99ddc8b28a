/** Passphrases in a worker, because they are slow on purpose; on the page itself where no worker starts. */
import { passphraseLock, type PassphraseLock, type Unlocked } from '../persist/locked/passphrase-lock.ts';
import type { LockOrder, LockReply } from './lock-worker.ts';
import lockWorkerUrl from './lock-worker.ts?worker&url';
import { startWorker } from './own-worker.ts';

export const pageLock: PassphraseLock = {
  seal: async (bytes, passphrase) => {
    const reply = await ask({ kind: 'seal', bytes, passphrase });
    return reply?.kind === 'sealed' ? reply.bytes : passphraseLock().seal(bytes, passphrase);
  },
  open: async (bytes, passphrase): Promise<Unlocked> => {
    const reply = await ask({ kind: 'open', bytes, passphrase });
    return reply?.kind === 'opened' ? reply.result : passphraseLock().open(bytes, passphrase);
  },
};

/** Asks a worker of its own, which ends with its answer; null when it fails. */
function ask(order: LockOrder): Promise<LockReply | null> {
  return new Promise((resolve) => {
    let worker: Worker;
    try {
      worker = startWorker(lockWorkerUrl);
    } catch {
      resolve(null);
      return;
    }
    const end = (reply: LockReply | null) => {
      worker.terminate();
      resolve(reply);
    };
    worker.addEventListener('message', ({ data }: MessageEvent<LockReply>) => end(data));
    worker.addEventListener('error', () => end(null));
    worker.postMessage(order);
  });
}
