/** What saving relies on, held against the real tables and against the stand-in that other tests break on purpose. */
import { beforeEach, describe, expect, it } from 'vitest';
import { createJobStorage } from '../../src/persist/job-storage.ts';
import type { JobStorage, RowWrite, StoredRow } from '../../src/persist/stored-row.ts';
import { FailingStorage } from '../support/failing-storage.ts';
import { newDisk, openOn } from '../support/test-database.ts';

const row = (revision: number, id = 'job', fill = revision): StoredRow => ({
  id,
  revision,
  savedAt: '2031-02-03T04:05:06.000Z',
  sealed: false,
  bytes: new Uint8Array([fill, fill]),
});

const write = (expected: number, revisions: readonly number[], rest: Partial<RowWrite> = {}): RowWrite => ({
  id: 'job',
  expected,
  rows: revisions.map((revision) => row(revision, rest.id)),
  keep: new Set(revisions),
  keepNewest: 20,
  ...rest,
});

describe.each<[string, () => Promise<JobStorage>]>([
  ['the tables of the database', async () => createJobStorage(await openOn(newDisk()))],
  ['the stand-in', () => Promise.resolve(new FailingStorage())],
])('%s', (_, make) => {
  let storage: JobStorage;
  beforeEach(async () => {
    storage = await make();
  });

  it('have nothing of a job that was never written', async () => {
    expect(await storage.readHead('job')).toBeUndefined();
    expect(await storage.listRevisions('job')).toEqual([]);
    expect(await storage.readRevisions('job', [1])).toEqual([undefined]);
  });

  it('keep all rows of a write, the last one as the head', async () => {
    expect(await storage.write(write(0, [1, 2, 3]))).toEqual({ type: 'written' });
    expect(await storage.readHead('job')).toEqual(row(3));
    expect(await storage.listRevisions('job')).toEqual([1, 2, 3]);
    expect(await storage.readRevisions('job', [3, 9, 1])).toEqual([row(3), undefined, row(1)]);
  });

  it.each([
    ['older', 1],
    ['newer', 3],
    ['none', 0],
  ])('write nothing at all when the revision expected is %s', async (__, expected) => {
    await storage.write(write(0, [1, 2]));
    const change = write(expected, [5], { keepNewest: 0 });
    expect(await storage.write(change)).toEqual({ type: 'conflict', found: 2 });
    expect(await storage.readHead('job')).toEqual(row(2));
    expect(await storage.listRevisions('job')).toEqual([1, 2]);
  });

  it('conflict when a job is expected that is not there', async () => {
    expect(await storage.write(write(4, [5]))).toEqual({ type: 'conflict', found: 0 });
    expect(await storage.readHead('job')).toBeUndefined();
  });

  it('let one of two writes win that start from the same revision', async () => {
    await storage.write(write(0, [1]));
    const both = await Promise.all([
      storage.write(write(1, [2], { rows: [row(2, 'job', 7)] })),
      storage.write(write(1, [2], { rows: [row(2, 'job', 8)] })),
    ]);
    expect(both).toEqual([{ type: 'written' }, { type: 'conflict', found: 2 }]);
    expect(await storage.readHead('job')).toEqual(row(2, 'job', 7));
  });

  it('drop old revisions but for those that undo needs and the newest few', async () => {
    await storage.write(write(0, [1, 2, 3, 4, 5]));
    await storage.write(write(5, [6], { keep: new Set([2, 6]), keepNewest: 3 }));
    expect(await storage.listRevisions('job')).toEqual([2, 4, 5, 6]);
  });

  it('keep jobs apart, whatever their ids begin with', async () => {
    await storage.write(write(0, [1, 2], { id: 'job-2' }));
    await storage.write(write(0, [1], { keepNewest: 0 }));
    await storage.write(write(1, [2], { keep: new Set(), keepNewest: 1 }));
    expect(await storage.listRevisions('job')).toEqual([2]);
    expect(await storage.listRevisions('job-2')).toEqual([1, 2]);
    expect(await storage.readHead('job-2')).toEqual(row(2, 'job-2'));
  });
});

describe('tables whose head is lost', () => {
  it('still expect the newest revision that there is', async () => {
    const database = await openOn(newDisk());
    const storage = createJobStorage(database);
    await storage.write(write(0, [1, 2]));
    await database.jobs.delete('job');
    expect(await storage.write(write(0, [1]))).toEqual({ type: 'conflict', found: 2 });
    expect(await storage.write(write(2, [3]))).toEqual({ type: 'written' });
    database.close();
  });
});
