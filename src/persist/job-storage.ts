/** The storage of jobs on the database's tables. Each function is one transaction, durable when it resolves. */
import { Dexie } from 'dexie';
import type { Database } from './database.ts';
import {
  type JobStorage,
  newestRevision,
  type QuarantinedRow,
  type RowWrite,
  type RowWritten,
  type StoredRow,
} from './stored-row.ts';

/** Makes the storage that saving and opening work on. */
export function createJobStorage(database: Database): JobStorage {
  const { jobs, revisions } = database;
  return {
    write: (change) => database.transaction('rw', jobs, revisions, () => write(database, change)),
    readHead: (id) => database.transaction('r', jobs, () => jobs.get(id)),
    readRevisions: (id, numbers) =>
      database.transaction('r', revisions, () =>
        revisions.bulkGet(numbers.map((revision): [string, number] => [id, revision])),
      ),
    listRevisions: (id) => database.transaction('r', revisions, () => listRevisions(database, id)),
    quarantine: (rows) => quarantine(database, rows),
  };
}

async function write(database: Database, change: RowWrite): Promise<RowWritten> {
  const { id, expected, rows, keep, keepNewest } = change;
  const numbers = await listRevisions(database, id);
  const found = newestRevision(await database.jobs.get(id), numbers);
  if (found !== expected) return { type: 'conflict', found };
  await database.revisions.bulkPut(rows.map(storedRow));
  const head = rows.at(-1);
  if (head !== undefined) await database.jobs.put(storedRow(head));
  const all = [...numbers, ...rows.map(({ revision }) => revision)];
  const old = all.slice(0, Math.max(0, all.length - keepNewest)).filter((revision) => !keep.has(revision));
  await database.revisions.bulkDelete(old.map((revision): [string, number] => [id, revision]));
  return { type: 'written' };
}

async function listRevisions(database: Database, id: string): Promise<number[]> {
  const keys = await database.revisions
    .where(':id')
    .between([id, Dexie.minKey], [id, Dexie.maxKey])
    .primaryKeys();
  return keys.map(([, revision]) => revision);
}

async function quarantine(database: Database, rows: readonly QuarantinedRow[]): Promise<void> {
  if (rows.length === 0) return;
  await database.transaction('rw', database.quarantine, async () => {
    for (const row of rows) {
      // The first find stays: a second one of the same row is the same damage, or comes after it.
      const before = await database.quarantine.get([row.id, row.revision, row.place]);
      if (before === undefined) await database.quarantine.add(row);
    }
  });
}

/** Exactly what may lie in clear, whatever else an object carries. */
function storedRow({ id, revision, savedAt, sealed, bytes }: StoredRow): StoredRow {
  return { id, revision, savedAt, sealed, bytes };
}
