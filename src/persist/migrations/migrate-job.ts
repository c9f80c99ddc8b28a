/** Brings a job file of an older version up to the present one, step by step. The data given is left as it is. */
import { SCHEMA_VERSION } from '../../model/schema/job-schema.ts';
import type { Problem } from '../../model/schema/problem.ts';
import type { JsonObject, Migration } from './migration.ts';
import { MIGRATIONS } from './migrations.ts';

export type MigratedJob =
  | { readonly type: 'success'; readonly data: JsonObject; readonly from: number }
  | { readonly type: 'error'; readonly reason: 'newer' | 'invalid'; readonly problems: readonly Problem[] };

/** Migrates; a file of a newer version than `target` is an error of its own kind. */
export function migrateJob(
  job: JsonObject,
  migrations: readonly Migration[] = MIGRATIONS,
  target: number = SCHEMA_VERSION,
): MigratedJob {
  const from = job['schemaVersion'];
  if (typeof from !== 'number' || !Number.isSafeInteger(from) || from < 1) {
    const message = 'should be the version of the file, a whole number from 1 on.';
    return { type: 'error', reason: 'invalid', problems: [{ field: 'schemaVersion', message }] };
  }
  if (from > target) {
    const message = `This job was saved by a newer Shearsight (file version ${from}; this one reads up to ${target}). Nothing was changed.`;
    return { type: 'error', reason: 'newer', problems: [{ field: 'schemaVersion', message }] };
  }
  let data = job;
  for (const migration of migrations) {
    if (migration.to <= from || migration.to > target) continue;
    try {
      data = { ...migration.migrate(data), schemaVersion: migration.to };
    } catch {
      const message = `could not be brought from file version ${from} to ${migration.to}: it is not as that version wrote it.`;
      return { type: 'error', reason: 'invalid', problems: [{ field: 'file', message }] };
    }
  }
  return { type: 'success', data, from };
}
