/** Small settings that nothing waits for at the start: which job was open last, the handle of a job's file. */
import type { Database } from './database.ts';

/** !!! DO NOT CHANGE the spelling: what is kept lies under it. */
export type PreferenceName = 'last job' | `file of ${string}`;

/** Reads a setting as unknown data; null when it was never kept or cannot be read. */
export async function readKeptPreference(database: Database, name: PreferenceName): Promise<unknown> {
  try {
    return (await database.preferences.get(name))?.value ?? null;
  } catch {
    return null;
  }
}

/** Keeps a setting; false when the browser refuses. */
export async function keepPreference(
  database: Database,
  name: PreferenceName,
  value: unknown,
): Promise<boolean> {
  try {
    await database.preferences.put({ name, value });
    return true;
  } catch {
    return false;
  }
}
