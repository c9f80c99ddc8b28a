import { IDBDatabase, IDBObjectStore } from 'fake-indexeddb';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import {
  commitStep,
  committedJob,
  type History,
  startHistory,
  undo,
} from '../../src/model/history/history.ts';
import { DATABASE_NAME, type Database } from '../../src/persist/database.ts';
import { createJobStorage } from '../../src/persist/job-storage.ts';
import { type OpenedJob, openJob } from '../../src/persist/open-job.ts';
import { frameText, plainCodec } from '../../src/persist/row-codec.ts';
import { createSaveQueue, type SaveQueue } from '../../src/persist/save-queue.ts';
import type { SavedBase } from '../../src/persist/write-plan.ts';
import { buildJob } from '../support/job-builder.ts';
import { newDisk, openOn } from '../support/test-database.ts';

const CLOCK = () => '2031-02-03T04:05:06.000Z';
const job = buildJob();
const step = (history: History, title: string): History =>
  commitStep(history, { name: `Title ${title}`, job: { ...committedJob(history), title }, at: CLOCK() });

let disk: IDBFactory;
let database: Database;
beforeEach(async () => {
  disk = newDisk();
  database = await openOn(disk);
});
afterEach(() => {
  vi.restoreAllMocks();
  database.close();
});

function queueOn(tab: Database, base?: SavedBase): SaveQueue {
  const storage = createJobStorage(tab);
  const rest = base === undefined ? {} : { base };
  return createSaveQueue({
    id: job.id,
    storage,
    codec: plainCodec,
    clock: CLOCK,
    onState: () => undefined,
    ...rest,
  });
}

async function save(history: History, base?: SavedBase): Promise<string> {
  const queue = queueOn(database, base);
  queue.offer(history);
  return (await queue.flush()).kind;
}

const open = (id = job.id): Promise<OpenedJob> =>
  openJob(id, { storage: createJobStorage(database), codec: plainCodec, clock: CLOCK });

async function openedHistory(): Promise<History> {
  const result = await open();
  if (result.type === 'error') throw new Error(result.message);
  return result.history;
}

/** Writes garbage over the bytes of a stored row. */
async function damage(place: 'jobs' | 'revisions', revision: number): Promise<void> {
  const row = await database.revisions.get([job.id, revision]);
  const bytes = (row?.bytes ?? new Uint8Array(9)).map((byte, i) => (i === 30 ? byte ^ 4 : byte));
  const damaged = { id: job.id, revision, savedAt: CLOCK(), sealed: false, bytes };
  await (place === 'jobs' ? database.jobs.put(damaged) : database.revisions.put(damaged));
}

describe('a stored job', () => {
  it('comes back in another tab with its whole history, undone steps included', async () => {
    const history = undo(step(step(startHistory(job, 'Opened', CLOCK()), 'one'), 'two'));
    expect(await save(history)).toBe('saved');
    database.close();
    database = await openOn(disk);
    const again = await openedHistory();
    expect(again.present).toBe(1);
    expect(again.entries.map(({ name, at, job: { title } }) => [name, at, title])).toEqual([
      ['Opened', CLOCK(), 'Test job'],
      ['Title one', CLOCK(), 'one'],
      ['Title two', CLOCK(), 'two'],
    ]);
    expect({ ...committedJob(again), revision: 0 }).toEqual(committedJob(history));
  });

  it('lies there as five fields, nothing else in clear', async () => {
    await save(step(startHistory(job), 'A very secret door'));
    const rows = [...(await database.jobs.toArray()), ...(await database.revisions.toArray())];
    expect(rows).toHaveLength(3);
    for (const row of rows) {
      expect(Object.keys(row).sort()).toEqual(['bytes', 'id', 'revision', 'savedAt', 'sealed']);
      expect(JSON.stringify({ ...row, bytes: null })).not.toContain('secret');
    }
  });

  it('is written with strict durability', async () => {
    database.close();
    const transaction = vi.spyOn(IDBDatabase.prototype, 'transaction');
    database = await openOn(disk);
    await save(startHistory(job));
    const writes = transaction.mock.calls.filter(([, mode]) => mode === 'readwrite');
    expect(writes.length).toBeGreaterThan(0);
    expect(writes.map(([, , options]) => options)).toEqual(writes.map(() => ({ durability: 'strict' })));
  });

  it('that is not there is said to be missing', async () => {
    expect(await open('nobody')).toMatchObject({ type: 'error', reason: 'missing', raw: null });
  });

  it('keeps bytes and head the same as its newest revision', async () => {
    await save(step(startHistory(job), 'one'));
    const head = await database.jobs.get(job.id);
    expect(head).toEqual(await database.revisions.get([job.id, 2]));
  });
});

describe('a write that is cut off', () => {
  it.each([1, 2, 3, 4])('at its put number %i leaves the job as it was before', async (number) => {
    await save(startHistory(job));
    const base = await open();
    if (base.type === 'error') throw new Error(base.message);
    let puts = 0;
    const genuine = Reflect.get(IDBObjectStore.prototype, 'put') as (
      ...args: unknown[]
    ) => IDBRequest<IDBValidKey>;
    const broken = vi.spyOn(IDBObjectStore.prototype, 'put').mockImplementation(function (
      this: IDBObjectStore,
      ...args
    ) {
      puts += 1;
      if (puts === number) throw new DOMException('power cut', 'UnknownError');
      return genuine.apply(this, args);
    });
    const history = step(step(step(base.history, 'one'), 'two'), 'three');
    const queue = queueOn(database, base.base);
    queue.offer(history);
    expect(await queue.flush()).toMatchObject({ kind: 'failed' });
    expect(puts).toBe(number);
    broken.mockRestore();
    const between = await openedHistory();
    expect(between.entries.map(({ name }) => name)).toEqual(['Opened']);
    expect(await database.revisions.count()).toBe(1);
    expect(await queue.retry()).toMatchObject({ kind: 'saved', revision: 4 });
    expect((await openedHistory()).entries.map(({ name }) => name)).toEqual([
      'Opened',
      'Title one',
      'Title two',
      'Title three',
    ]);
  });

  it('by the tab being closed does not say saved', async () => {
    const queue = queueOn(database);
    queue.offer(startHistory(job));
    database.close({ disableAutoOpen: true });
    expect(await queue.flush()).toMatchObject({ kind: 'failed', trouble: 'closed' });
  });
});

describe('a damaged row', () => {
  it('at the head gives way to the same revision beside it, and is kept byte for byte', async () => {
    await save(step(startHistory(job), 'one'));
    await damage('jobs', 2);
    const bytes = (await database.jobs.get(job.id))?.bytes;
    const result = await open();
    expect(result).toMatchObject({ type: 'success', notices: [] });
    expect(await database.quarantine.toArray()).toMatchObject([
      { id: job.id, revision: 2, place: 'jobs', reason: 'damaged', foundAt: CLOCK(), row: { bytes } },
    ]);
    expect((await database.jobs.get(job.id))?.bytes).toEqual(bytes);
  });

  it('in both places gives way to the newest good revision, and the person is told', async () => {
    await save(step(step(startHistory(job), 'one'), 'two'));
    await damage('jobs', 3);
    await damage('revisions', 3);
    const result = await open();
    if (result.type === 'error') throw new Error(result.message);
    expect(committedJob(result.history).title).toBe('one');
    expect(result.notices).toEqual([expect.stringMatching(/newest saved state of this job was damaged/)]);
    expect(await database.quarantine.count()).toBe(2);
    // The next step is written over nothing: under a number higher than the damaged one.
    expect(await save(step(result.history, 'three'), result.base)).toBe('saved');
    expect((await database.jobs.get(job.id))?.revision).toBe(4);
    const again = await openedHistory();
    expect(again.entries.map(({ name }) => name)).toEqual(['Opened', 'Title one', 'Title three']);
  });

  it('of an older step is left out of the history, and the person is told', async () => {
    await save(step(step(startHistory(job), 'one'), 'two'));
    await damage('revisions', 2);
    const result = await open();
    if (result.type === 'error') throw new Error(result.message);
    expect(result.history.entries.map(({ name }) => name)).toEqual(['Opened', 'Title two']);
    expect([result.history.present, result.notices]).toEqual([
      1,
      ["One step of this job's history could not be read and cannot be undone or done again."],
    ]);
  });

  it('of the step that the job stands at is no loss while the head holds the same, and is written anew', async () => {
    const history = undo(step(step(startHistory(job), 'one'), 'two'));
    await save(history);
    await damage('revisions', 2);
    const result = await open();
    if (result.type === 'error') throw new Error(result.message);
    const names = ['Opened', 'Title one', 'Title two'];
    expect(result.history.entries.map(({ name }) => name)).toEqual(names);
    expect([result.history.present, result.notices]).toEqual([1, []]);
    expect(await save(result.history, result.base)).toBe('saved');
    await database.quarantine.clear();
    expect((await openedHistory()).entries.map(({ name }) => name)).toEqual(names);
    expect(await database.quarantine.count()).toBe(0);
  });

  it('is quarantined once, however often it is met', async () => {
    await save(step(startHistory(job), 'one'));
    await damage('revisions', 1);
    await open();
    await open();
    expect(await database.quarantine.count()).toBe(1);
  });

  it('beside others as bad ends in a message with the bytes, nothing overwritten', async () => {
    await save(startHistory(job));
    await damage('jobs', 1);
    await damage('revisions', 1);
    const bytes = (await database.jobs.get(job.id))?.bytes;
    expect(await open()).toMatchObject({ type: 'error', reason: 'damaged', raw: bytes });
    expect(await database.quarantine.count()).toBe(2);
  });

  it('may hold anything at all', async () => {
    await save(step(startHistory(job), 'one'));
    const odd = { id: job.id, revision: 'two', sealed: 0, bytes: 'text' };
    await database.jobs.put(odd as never);
    expect(await open()).toMatchObject({ type: 'success', history: { present: 1 } });
    expect(await database.quarantine.toArray()).toMatchObject([{ revision: 0, place: 'jobs', row: odd }]);
  });

  it('of another job under this name is not taken for it', async () => {
    await save(startHistory(job));
    const other = JSON.stringify({
      name: 'Opened',
      at: null,
      steps: [1],
      present: 0,
      dropped: 0,
      job: buildJob({ prefix: 'other-' }),
    });
    const row = { id: job.id, revision: 2, savedAt: CLOCK(), sealed: false, bytes: frameText(other) };
    await database.jobs.put(row);
    expect(await open()).toMatchObject({ type: 'success', history: { entries: [{ job: { id: job.id } }] } });
  });
});

describe('a job that must not be touched', () => {
  it.each([
    ['of a newer version', 'newer', false, frameText(JSON.stringify({ job: { ...job, schemaVersion: 99 } }))],
    ['that is locked', 'locked', true, new Uint8Array([1, 2, 3])],
  ] as const)(
    'because it is %s, is reported with its bytes; an older revision is not opened instead',
    async (...row) => {
      const [, reason, sealed, bytes] = row;
      await save(startHistory(job));
      await database.jobs.put({ id: job.id, revision: 2, savedAt: CLOCK(), sealed, bytes });
      expect(await open()).toMatchObject({ type: 'error', reason, raw: bytes });
      expect(await database.quarantine.count()).toBe(0);
    },
  );
});

describe('the database itself', () => {
  it('refuses to open when a newer version made it', async () => {
    database.close();
    await new Promise<void>((resolve, reject) => {
      const request = disk.open(DATABASE_NAME, 20);
      request.onsuccess = () => {
        request.result.close();
        resolve();
      };
      request.onerror = () => reject(new Error('test disk'));
    });
    await expect(openOn(disk)).rejects.toMatchObject({ name: 'VersionError' });
  });

  it('lets go when a newer version in another tab wants it, and says so', async () => {
    let told = 0;
    const tab = await openOn(disk, () => (told += 1));
    database.close();
    await new Promise<void>((resolve, reject) => {
      const request = disk.open(DATABASE_NAME, 20);
      request.onsuccess = () => {
        request.result.close();
        resolve();
      };
      request.onblocked = () => reject(new Error('the old tab blocks the new one'));
    });
    expect([told, tab.isOpen()]).toEqual([1, false]);
  });
});
