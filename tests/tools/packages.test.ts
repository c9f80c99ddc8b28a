/** The list of packages says what is installed, each with a licence, every version pinned exactly. */
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { runtimePackages } from '../../tools/list-packages.ts';

const read = (path: string) => readFileSync(new URL(`../../${path}`, import.meta.url), 'utf8');
const rows = runtimePackages();

describe('packages of the running app', () => {
  test('stand in docs/packages.md (npx tsx tools/list-packages.ts)', () => {
    const text = read('docs/packages.md').replaceAll('**', '');
    for (const { name, version } of rows) expect(text).toContain(`| ${name} | ${version} |`);
  });

  test('have a licence that lets them be used', () => {
    const known = /MIT|ISC|BSD|Apache-2\.0|OFL-1\.1|0BSD|CC0|Unlicense|LGPL-3\.0|BlueOak|Python-2\.0|Zlib/;
    /** Says nothing in its manifest; asked for by the drei package, and no part of the build. */
    const silent = new Set(['webgl-constants']);
    for (const { name, licence } of rows) if (!silent.has(name)) expect(licence, name).toMatch(known);
  });

  test('are few, and pinned exactly', () => {
    const { dependencies, devDependencies } = JSON.parse(read('package.json')) as Record<
      string,
      Record<string, string>
    >;
    expect(rows.filter(({ isDirect }) => isDirect)).toHaveLength(Object.keys(dependencies ?? {}).length);
    for (const [name, version] of Object.entries({ ...dependencies, ...devDependencies }))
      expect(version, name).toMatch(/^\d+\.\d+\.\d+(-[\w.]+)?$/);
  });
});
