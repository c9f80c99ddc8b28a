/** Locking with a passphrase where the worker for it fails in one way or another, with a stand-in for the worker. */
import { expect, test, vi } from 'vitest';
import type { LockOrder, LockReply } from '../../src/app/lock-worker.ts';
import { createPageLock } from '../../src/app/page-lock.ts';
import { passphraseLock } from '../../src/persist/locked/passphrase-lock.ts';

const PASSPHRASE = 'four plain brass words';
const TEXT = new TextEncoder().encode('root depths');
/** scrypt at a cost that no test waits for. */
const here = passphraseLock(4);

type Happening = (worker: FakeWorker, order: LockOrder) => void;

class FakeWorker extends EventTarget {
  isEnded = false;
  private readonly onOrder: Happening;
  constructor(onOrder: Happening) {
    super();
    this.onOrder = onOrder;
  }
  postMessage(order: LockOrder): void {
    this.onOrder(this, order);
  }
  terminate(): void {
    this.isEnded = true;
  }
  say(reply: LockReply): void {
    this.dispatchEvent(Object.assign(new Event('message'), { data: reply }));
  }
}

function pageWith(onOrder: Happening | 'refused') {
  const workers: FakeWorker[] = [];
  const lock = createPageLock({
    here,
    patience: 60_000,
    createWorker: () => {
      if (onOrder === 'refused') throw new Error('workers are switched off');
      const worker = new FakeWorker(onOrder);
      workers.push(worker);
      return worker;
    },
  });
  return { lock, workers };
}

test('what the worker answers is taken, and the worker ended', async () => {
  const sealed = Uint8Array.of(1, 2, 3);
  const { lock, workers } = pageWith((worker) => worker.say({ kind: 'sealed', bytes: sealed }));
  expect(await lock.seal(TEXT, PASSPHRASE)).toBe(sealed);
  expect(workers.map(({ isEnded }) => isEnded)).toEqual([true]);
});

test.each<[string, Happening | 'refused']>([
  ['no worker may start', 'refused'],
  ['its script does not load', (worker) => worker.dispatchEvent(new Event('error'))],
  ['its answer cannot be read', (worker) => worker.dispatchEvent(new Event('messageerror'))],
  ['it says that it could not', (worker) => worker.say({ kind: 'failed' })],
])('%s: the page locks and opens by itself', async (_, onOrder) => {
  const { lock, workers } = pageWith(onOrder);
  const sealed = await lock.seal(TEXT, PASSPHRASE);
  expect(await here.open(sealed, PASSPHRASE)).toEqual({ type: 'success', bytes: TEXT });
  expect(await lock.open(sealed, PASSPHRASE)).toEqual({ type: 'success', bytes: TEXT });
  expect(await lock.open(sealed, 'other words')).toEqual({ type: 'error', reason: 'wrong passphrase' });
  expect(workers.every(({ isEnded }) => isEnded)).toBe(true);
});

test('it was killed and stays silent: after its patience the page does it', async () => {
  vi.useFakeTimers();
  try {
    const { lock, workers } = pageWith(() => undefined);
    let isDone = false;
    const sealing = lock.seal(TEXT, PASSPHRASE).then((bytes) => {
      isDone = true;
      return bytes;
    });
    await vi.advanceTimersByTimeAsync(59_999);
    expect(isDone).toBe(false);
    await vi.advanceTimersByTimeAsync(2);
    vi.useRealTimers();
    expect(await here.open(await sealing, PASSPHRASE)).toMatchObject({ type: 'success' });
    expect(workers[0]?.isEnded).toBe(true);
  } finally {
    vi.useRealTimers();
  }
});
