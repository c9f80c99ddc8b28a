/** A job kept from the moment it is shown: also in the moment before its lock is there, and when the same one is opened again. */
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { type FollowedJob, followJob } from '../../src/app/followed-job.ts';
import { committedJob } from '../../src/model/history/history.ts';
import type { SaveState } from '../../src/model/history/save-state.ts';
import { openJob } from '../../src/persist/open-job.ts';
import { plainCodec } from '../../src/persist/row-codec.ts';
import type { SavedBase } from '../../src/persist/write-plan.ts';
import { createDocumentStore, type DocumentStore } from '../../src/state/document-store.ts';
import { FailingStorage } from '../support/failing-storage.ts';
import { FakeLocks } from '../support/fake-locks.ts';
import { buildJob } from '../support/job-builder.ts';

const job = buildJob({ title: 'Chapel door' });
const other = buildJob({ title: 'Boat shed', prefix: 'b-' });

let storage: FailingStorage;
let document: DocumentStore;
let states: SaveState[];
/** Resolves when the browser may give locks. */
let openLocks: () => void;
beforeEach(() => {
  storage = new FailingStorage();
  document = createDocumentStore(job, () => '2031-02-03T04:05:06.000Z');
  states = [];
  const locks = new FakeLocks();
  const mayLock = new Promise<void>((resolve) => {
    openLocks = resolve;
  });
  const request = async (name: string, how: LockOptions, held: (lock: Lock | null) => unknown) => {
    await mayLock;
    return locks.request(name, how, held);
  };
  vi.stubGlobal('navigator', { locks: { request } });
  vi.stubGlobal('window', { document: new EventTarget() });
});
afterEach(() => {
  vi.unstubAllGlobals();
});

function follow(base: SavedBase | null = null): FollowedJob {
  return followJob({
    id: committedJob(document.getState().history).id,
    document,
    storage,
    codec: plainCodec,
    base,
    fromNow: false,
    onState: (state) => states.push(state),
    reopen: () => Promise.resolve(),
  });
}

const edit = (title: string) => document.getState().edit('Title', (each) => ({ ...each, title }));
const stored = async (id: string) => {
  const opened = await openJob(id, { storage, codec: plainCodec });
  return opened.type === 'success' ? committedJob(opened.history).title : opened.reason;
};

test('a step made before the lock is there is saved with it, not with the next step', async () => {
  const followed = follow();
  edit('Chapel, side door');
  openLocks();
  await followed.flush();
  expect(await stored(job.id)).toBe('Chapel, side door');
  expect(states.at(-1)).toMatchObject({ kind: 'saved' });
});

test('a job that nobody changed is not saved', async () => {
  openLocks();
  const followed = follow();
  await followed.flush();
  await followed.end();
  expect(await stored(job.id)).toBe('missing');
});

test('a job that is left before its lock is there is saved as it was left, and nothing of the next one in its place', async () => {
  const followed = follow();
  edit('Chapel, side door');
  document.getState().load(other);
  const ended = followed.end();
  const next = follow();
  edit('Boat shed, back');
  openLocks();
  await ended;
  await next.flush();
  expect([await stored(job.id), await stored(other.id)]).toEqual(['Chapel, side door', 'Boat shed, back']);
});

test('the same job opened again at once waits for itself, and goes on being saved', async () => {
  openLocks();
  const followed = follow();
  edit('Chapel, side door');
  await followed.flush();
  const opened = await openJob(job.id, { storage, codec: plainCodec });
  if (opened.type === 'error') throw new Error(opened.message);
  const ended = followed.end();
  document.getState().load(committedJob(opened.history), opened.history);
  const again = follow(opened.base);
  edit('Chapel, back door');
  await ended;
  await again.flush();
  expect(states.filter(({ kind }) => kind === 'failed' || kind === 'conflict')).toEqual([]);
  expect(await stored(job.id)).toBe('Chapel, back door');
});

test('where locks are refused it is saved all the same', async () => {
  vi.stubGlobal('navigator', {
    locks: { request: () => Promise.reject(new DOMException('no', 'SecurityError')) },
  });
  const followed = follow();
  edit('Chapel, side door');
  await followed.flush();
  expect(await stored(job.id)).toBe('Chapel, side door');
});
