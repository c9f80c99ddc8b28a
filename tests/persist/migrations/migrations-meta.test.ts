import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { SCHEMA_VERSION } from '../../../src/model/schema/job-schema.ts';
import { readJobText } from '../../../src/persist/job-text.ts';
import { MIGRATIONS } from '../../../src/persist/migrations/migrations.ts';

const root = new URL('../../../', import.meta.url);
const versions = Array.from({ length: SCHEMA_VERSION }, (_, i) => i + 1);
const fixture = (version: number) => new URL(`tests/fixtures/jobs/v${version}.json`, root);
const files = readdirSync(new URL('src/persist/migrations/', root)).filter((name) => /^\d{3}-/.test(name));

describe('every version of the job file', () => {
  it('is looked at', () => {
    expect(versions.length).toBeGreaterThan(0);
  });

  it.each(versions)('%i has a fixture that was saved by it, and it opens', (version) => {
    const text = readFileSync(fixture(version), 'utf8');
    expect((JSON.parse(text) as { schemaVersion: unknown }).schemaVersion).toBe(version);
    expect(readJobText(text)).toMatchObject({
      type: 'success',
      job: { schemaVersion: SCHEMA_VERSION },
      migratedFrom: version === SCHEMA_VERSION ? null : version,
    });
  });

  it('has no fixture beyond the present one', () => {
    expect(existsSync(fixture(SCHEMA_VERSION + 1))).toBe(false);
  });

  it('but the first has a migration that leads to it, in order, each in a file with a test', () => {
    expect(MIGRATIONS.map(({ to }) => to)).toEqual(versions.slice(1));
    expect(files.map((name) => Number(name.slice(0, 3)))).toEqual(versions.slice(1));
    for (const name of files) {
      const test = new URL(`tests/persist/migrations/${name.replace(/\.ts$/, '.test.ts')}`, root);
      expect(existsSync(test), test.pathname).toBe(true);
    }
    for (const { change } of MIGRATIONS) expect(change).toMatch(/^\S.*\.$/);
  });
});
