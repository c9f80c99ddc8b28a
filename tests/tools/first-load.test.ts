import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { expect, onTestFinished, test } from 'vitest';
import { firstLoad, staticImportsOf } from '../../tools/first-load.ts';

async function built(files: Record<string, string>): Promise<string> {
  const folder = await mkdtemp(join(tmpdir(), 'first-load-'));
  onTestFinished(() => rm(folder, { recursive: true }));
  for (const [path, text] of Object.entries(files)) {
    await mkdir(dirname(join(folder, path)), { recursive: true });
    await writeFile(join(folder, path), text);
  }
  return folder;
}

test('follows what the page loads and what that imports at once, and leaves out what is imported on demand', async () => {
  const dist = await built({
    'index.html':
      '<script type="module" crossorigin src="./assets/main.js"></script>' +
      '<link rel="stylesheet" crossorigin href="./assets/main.css"><link rel="icon" href="./icon.svg">',
    'assets/main.js':
      'const sheets = ["./app.js","./app.css"]; import { load } from "./load.js"; void load(() => import(`./app.js`), sheets);',
    'assets/load.js': 'export const load = (get) => get();',
    'assets/app.js': 'import { a } from "./a.js"; const later = () => import("./later.js"); a(later);',
    'assets/app.css': '',
    'assets/a.js': 'export * from "./b.js"; export { c } from "./c.js"; export const a = 1;',
    'assets/b.js': 'import "./a.js"; export const b = "import(\'./later.js\')";',
    'assets/c.js': 'export const c = 1;',
    'assets/later.js': 'import "./only-later.js";',
    'assets/only-later.js': '',
    'assets/main.css': "@font-face{src:url(./text.woff2)} @font-face{src:url('./mono.woff2')}",
    'assets/later.css': '',
    'assets/solid.wasm': '',
    'icon.svg': '<svg/>',
  });
  const { needed, fonts, later } = firstLoad(dist);
  expect([...needed].sort()).toEqual([
    'assets/a.js',
    'assets/app.css',
    'assets/app.js',
    'assets/b.js',
    'assets/c.js',
    'assets/load.js',
    'assets/main.css',
    'assets/main.js',
    'index.html',
  ]);
  expect(fonts).toEqual(['assets/text.woff2', 'assets/mono.woff2']);
  expect(later).toEqual(['assets/later.css', 'assets/later.js', 'assets/only-later.js', 'assets/solid.wasm']);
});

test('reads minified imports and exports', () => {
  const code =
    'import{a as b}from"./x.js";import"./y.js";export{b as c};export{d}from"./z.js";export*as e from"./w.js";';
  expect(staticImportsOf('m.js', code).sort()).toEqual(['./w.js', './x.js', './y.js', './z.js']);
});

test('refuses a page without a script instead of finding it small', async () => {
  const dist = await built({ 'index.html': '<!doctype html><title>x</title>' });
  expect(() => firstLoad(dist)).toThrow('loads no script');
});
