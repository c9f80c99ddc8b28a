/**
 * !!! APPEND ONLY. Files and browsers out there hold jobs of every version that was ever released. Changing, reordering
 * !!! or removing a migration makes people's work unreadable.
 *
 * A change of the saved shape is: `SCHEMA_VERSION` one higher in src/model/schema/job-schema.ts; a new file
 * `NNN-what-changed.ts` here (NNN: the new version) with its migration, appended to this list; a file saved by the version
 * before in tests/fixtures/jobs/vN.json, never edited again; and tests/persist/migrations/NNN-what-changed.test.ts.
 * tests/persist/migrations/migrations-meta.test.ts fails as long as one of them is missing.
 */
import type { Migration } from './migration.ts';

/** From version 1 on, in order. Version 1 is the first, so nothing leads to it. */
export const MIGRATIONS: readonly Migration[] = [];
