/**
 * The browser's storage, as tables. Everything here loads Dexie: what the first screen needs must not import it.
 *
 * !!! DO NOT CHANGE the database's name, the tables' names, their keys or what lies in them. It WOULD LOSE ALL WORK that
 * !!! people have stored. A new table or index is a new `version(...)` below the old ones, which all stay as they are.
 */
import { Dexie, type DexieOptions, type Table } from 'dexie';
import type { QuarantinedRow, StoredRow } from './stored-row.ts';

/** !!! DO NOT CHANGE: see above. */
export const DATABASE_NAME = 'shearsight';
/** !!! Only ever one higher, with a `version(...)` of its own. */
export const DATABASE_VERSION = 1;

export type TrashedJob = { readonly id: string; readonly trashedAt: string };
/** A small setting that is not needed for the first picture: the job last open, handles of files. */
export type KeptPreference = { readonly name: string; readonly value: unknown };

export type Database = Dexie & {
  /** The newest revision of each job. */
  readonly jobs: Table<StoredRow, string>;
  /** A bounded number of revisions of each job, the newest among them. */
  readonly revisions: Table<StoredRow, [id: string, revision: number]>;
  /** Jobs that were deleted and can be brought back. A table of its own, so that rows hold nothing in clear. */
  readonly trash: Table<TrashedJob, string>;
  readonly quarantine: Table<QuarantinedRow, [id: string, revision: number, place: string]>;
  readonly preferences: Table<KeptPreference, string>;
};

export type DatabaseOptions = {
  readonly name?: string;
  /** Another implementation of IndexedDB, for tests. */
  readonly implementation?: Pick<DexieOptions, 'indexedDB' | 'IDBKeyRange'>;
  /** A newer version in another tab wants the storage: this tab lets go of it and cannot save any more. */
  readonly onTakenOver?: () => void;
};

/** Opens the storage. Fails with the browser's error when it is denied, or made by a newer version. */
export async function openDatabase(options: DatabaseOptions = {}): Promise<Database> {
  const { name = DATABASE_NAME, implementation = {}, onTakenOver } = options;
  const database = new Dexie(name, { ...implementation, chromeTransactionDurability: 'strict' }) as Database;
  database.version(1).stores({
    jobs: 'id',
    revisions: '[id+revision]',
    trash: 'id',
    quarantine: '[id+revision+place]',
    preferences: 'name',
  });
  database.on('versionchange', () => {
    database.close({ disableAutoOpen: true });
    onTakenOver?.();
    return false;
  });
  await database.open();
  // Dexie opens storage of a newer version without a word; what an older program writes there, the newer may not expect.
  if (database.backendDB().version > DATABASE_VERSION * DEXIE_VERSION_STEP) {
    database.close({ disableAutoOpen: true });
    throw new DOMException('The storage was made by a newer version.', 'VersionError');
  }
  return database;
}

/** Dexie multiplies versions by this before it hands them to the browser. */
const DEXIE_VERSION_STEP = 10;
