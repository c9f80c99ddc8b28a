import { describe, expect, it } from 'vitest';
import { migrateJob } from '../../../src/persist/migrations/migrate-job.ts';
import type { JsonObject, Migration } from '../../../src/persist/migrations/migration.ts';

const rename: Migration = {
  to: 2,
  change: 'The name of a job is called its title.',
  migrate: ({ name, ...rest }) => ({ ...rest, title: name ?? null }),
};
const split: Migration = {
  to: 3,
  change: 'Notes are split.',
  migrate: (job) => {
    if (typeof job['note'] !== 'string') throw new Error('no note');
    return { ...job, note: { shared: job['note'] } };
  },
};
const old: JsonObject = { schemaVersion: 1, name: 'Door', note: 'stiff' };

describe('migrateJob', () => {
  it('goes through every step from the version of the file on, leaving the file as it was', () => {
    const before = JSON.stringify(old);
    expect(migrateJob(old, [rename, split], 3)).toEqual({
      type: 'success',
      from: 1,
      data: { schemaVersion: 3, title: 'Door', note: { shared: 'stiff' } },
    });
    expect(JSON.stringify(old)).toBe(before);
  });

  it('skips the steps that a file has behind it', () => {
    const newer = { schemaVersion: 2, title: 'Door', note: 'stiff' };
    expect(migrateJob(newer, [rename, split], 3)).toMatchObject({
      from: 2,
      data: { title: 'Door', note: { shared: 'stiff' } },
    });
  });

  it('gives a file of the present version back as it is', () => {
    const present = { schemaVersion: 3 };
    const result = migrateJob(present, [rename, split], 3);
    expect(result.type === 'success' && result.data).toBe(present);
  });

  it('says which step a file could not take', () => {
    expect(migrateJob({ schemaVersion: 1, name: 'Door' }, [rename, split], 3)).toEqual({
      type: 'error',
      reason: 'invalid',
      problems: [
        {
          field: 'file',
          message: 'could not be brought from file version 1 to 3: it is not as that version wrote it.',
        },
      ],
    });
  });

  it('does not touch a file of a newer version', () => {
    expect(migrateJob({ schemaVersion: 4 }, [rename, split], 3)).toMatchObject({ reason: 'newer' });
  });
});
