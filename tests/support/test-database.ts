/** The real database on an IndexedDB in memory, empty for each test. */
import { IDBFactory, IDBKeyRange } from 'fake-indexeddb';
import { type Database, openDatabase } from '../../src/persist/database.ts';

/** Makes a disk; databases opened on the same one see the same data, as tabs of one browser do. */
export function newDisk(): IDBFactory {
  return new IDBFactory();
}

/** Opens the database on a disk, as a tab does. */
export function openOn(disk: IDBFactory, onTakenOver?: () => void): Promise<Database> {
  return openDatabase({
    implementation: { indexedDB: disk, IDBKeyRange },
    ...(onTakenOver === undefined ? {} : { onTakenOver }),
  });
}
