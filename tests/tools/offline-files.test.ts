/** The list of a build's files: everything but what servers read, with a version that follows the contents. */
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { listBuild } from '../../tools/offline-files.ts';

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'build-'));
  mkdirSync(join(folder, 'assets'));
  for (const name of ['index.html', '_headers', 'service-worker.js', join('assets', 'a.js')])
    writeFileSync(join(folder, name), name);
});
afterEach(() => rmSync(folder, { recursive: true }));

test('lists what the page needs; the page itself is the empty address', () => {
  expect(listBuild(folder).files).toEqual(['assets/a.js', './']);
});

test('the same contents have the same version, others another', () => {
  const { version } = listBuild(folder);
  writeFileSync(join(folder, 'service-worker.js'), 'changed');
  expect(listBuild(folder).version).toBe(version);
  writeFileSync(join(folder, 'assets', 'a.js'), 'changed');
  expect(listBuild(folder).version).not.toBe(version);
});
