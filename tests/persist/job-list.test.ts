import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import {
  commitStep,
  committedJob,
  type History,
  startHistory,
  undo,
} from '../../src/model/history/history.ts';
import type { Database } from '../../src/persist/database.ts';
import { createJobList, type JobList } from '../../src/persist/job-list.ts';
import { createJobStorage } from '../../src/persist/job-storage.ts';
import { keepPreference, readKeptPreference } from '../../src/persist/kept-preference.ts';
import { plainCodec } from '../../src/persist/row-codec.ts';
import { createSaveQueue } from '../../src/persist/save-queue.ts';
import { buildJob } from '../support/job-builder.ts';
import { newDisk, openOn } from '../support/test-database.ts';

let database: Database;
let jobs: JobList;
let minute: number;
const clock = () => `2031-02-03T04:${String(minute).padStart(2, '0')}:00.000Z`;

beforeEach(async () => {
  minute = 0;
  database = await openOn(newDisk());
  jobs = createJobList(database, plainCodec, clock);
});
afterEach(() => database.close());

async function store(prefix: string, title: string): Promise<string> {
  const job = buildJob({ prefix, title, chambers: 1 });
  const storage = createJobStorage(database);
  const queue = createSaveQueue({ id: job.id, storage, codec: plainCodec, clock, onState: () => undefined });
  queue.offer(startHistory(job));
  expect(await queue.flush()).toMatchObject({ kind: 'saved' });
  minute += 1;
  return job.id;
}

async function history(id: string): Promise<History> {
  const opened = await jobs.open(id);
  if (opened.type === 'error') throw new Error(opened.message);
  return opened.history;
}

describe('the job list', () => {
  it('shows every job with its title, the last saved first', async () => {
    expect(await jobs.list()).toEqual([]);
    await store('a-', 'Boathouse');
    await store('b-', 'Oil store');
    expect(await jobs.list()).toEqual([
      {
        id: 'b-job',
        title: 'Oil store',
        state: 'good',
        savedAt: '2031-02-03T04:01:00.000Z',
        revision: 1,
        trashedAt: null,
        isSealed: false,
      },
      {
        id: 'a-job',
        title: 'Boathouse',
        state: 'good',
        savedAt: '2031-02-03T04:00:00.000Z',
        revision: 1,
        trashedAt: null,
        isSealed: false,
      },
    ]);
  });

  it('shows jobs it cannot read, instead of hiding them', async () => {
    await store('a-', 'Boathouse');
    const row = { id: 'c-job', revision: 4, savedAt: clock(), sealed: true, bytes: new Uint8Array(3) };
    await database.jobs.bulkPut([row, { ...row, id: 'd-job', sealed: false }]);
    expect((await jobs.list()).map(({ id, title, state }) => [id, title, state])).toEqual(
      expect.arrayContaining([
        ['a-job', 'Boathouse', 'good'],
        ['c-job', null, 'locked'],
        ['d-job', null, 'damaged'],
      ]),
    );
  });

  it('renames a job as a step that can be undone', async () => {
    const id = await store('a-', 'Boathouse');
    expect(await jobs.rename(id, 'Boat shed')).toMatchObject({ kind: 'saved', revision: 2 });
    expect((await jobs.list())[0]).toMatchObject({ title: 'Boat shed', revision: 2 });
    const renamed = await history(id);
    expect(committedJob(undo(renamed)).title).toBe('Boathouse');
    expect(await jobs.rename('nobody', 'x')).toMatchObject({ type: 'error', reason: 'missing' });
  });

  it('refuses a title that no job may have, and leaves the job as it was', async () => {
    const id = await store('a-', 'Boathouse');
    expect(await jobs.rename(id, 'x'.repeat(201))).toMatchObject({ kind: 'failed' });
    expect((await jobs.list())[0]).toMatchObject({ title: 'Boathouse', revision: 1 });
  });

  it('deletes a job so that it can be brought back', async () => {
    const id = await store('a-', 'Boathouse');
    await jobs.delete(id);
    expect(await jobs.list()).toMatchObject([{ id, title: 'Boathouse', trashedAt: clock() }]);
    expect(committedJob(await history(id)).title).toBe('Boathouse');
    await jobs.bringBack(id);
    expect(await jobs.list()).toMatchObject([{ id, trashedAt: null }]);
  });

  it('removes every trace of a job when told to, and of no other', async () => {
    const id = await store('a-', 'Boathouse');
    await store('a-job-', 'Neighbour by name');
    const damaged = { id, revision: 9, savedAt: clock(), sealed: false, bytes: new Uint8Array(2) };
    await database.revisions.put(damaged);
    await jobs.open(id);
    await jobs.delete(id);
    await jobs.removeForGood(id);
    const tables = [database.jobs, database.revisions, database.trash, database.quarantine];
    const left = await Promise.all(tables.map((table) => table.toArray()));
    expect(left.flat().map((row) => (row as { id: string }).id)).toEqual(['a-job-job', 'a-job-job']);
  });

  it('goes on from what was opened', async () => {
    const id = await store('a-', 'Boathouse');
    const opened = await jobs.open(id);
    if (opened.type === 'error') throw new Error(opened.message);
    const storage = createJobStorage(database);
    const { base } = opened;
    const queue = createSaveQueue({ id, storage, codec: plainCodec, base, clock, onState: () => undefined });
    const next = { ...committedJob(opened.history), title: 'Slipway' };
    queue.offer(commitStep(opened.history, { name: 'Title', job: next, at: clock() }));
    await queue.flush();
    expect((await history(id)).entries.map(({ name }) => name)).toEqual(['Opened', 'Title']);
  });
});

describe('kept preferences', () => {
  it('come back, and are nothing when never kept', async () => {
    expect(await readKeptPreference(database, 'last job')).toBeNull();
    expect(await keepPreference(database, 'last job', 'a-job')).toBe(true);
    expect(await readKeptPreference(database, 'last job')).toBe('a-job');
  });

  it('disturb nobody when the storage is gone', async () => {
    database.close({ disableAutoOpen: true });
    expect(await keepPreference(database, 'last job', 'a-job')).toBe(false);
    expect(await readKeptPreference(database, 'last job')).toBeNull();
  });
});
