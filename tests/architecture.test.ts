/**
 * A second look at the architecture, independent of dependency-cruiser and the linter: layers, barrels, head comments, names,
 * sizes. The checks are tried on made-up files first, so that they cannot pass by seeing nothing.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { posix } from 'node:path';
import { fileURLToPath } from 'node:url';
import ts from 'typescript';
import { expect, test } from 'vitest';
import layers from '../tools/layers.json' with { type: 'json' };

type SourceFile = { readonly path: string; readonly text: string };

const mayImport = new Map<string, readonly string[]>(Object.entries(layers));
const longest = 400;

function readTree(folder: string): SourceFile[] {
  const root = fileURLToPath(new URL(`../${folder}`, import.meta.url));
  return readdirSync(root, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && /\.(ts|tsx)$/.test(entry.name))
    .map((entry) => {
      const path = posix.join(entry.parentPath, entry.name);
      return { path: posix.join(folder, posix.relative(root, path)), text: readFileSync(path, 'utf8') };
    });
}

const layerOf = (path: string) => /^src\/([^/]+)\//.exec(path)?.[1] ?? '';

/** Imports of other files of src, type imports and imports on demand included. */
function importsOf({ path, text }: SourceFile): string[] {
  const named = ts.preProcessFile(text, true, true).importedFiles.map(({ fileName }) => fileName);
  return named.filter((name) => name.startsWith('.')).map((name) => posix.join(posix.dirname(path), name));
}

function layerOffences(file: SourceFile): string[] {
  const allowed = mayImport.get(layerOf(file.path));
  if (allowed === undefined) return [];
  return importsOf(file)
    .filter((target) => !allowed.includes(layerOf(target)))
    .map((target) => `${file.path} imports ${target}`);
}

/** A file that only passes on what others define, or that is called index. */
function isBarrel({ path, text }: SourceFile): boolean {
  const statements = ts.createSourceFile(path, text, ts.ScriptTarget.Latest).statements;
  const onlyPassesOn = statements.every(
    (statement) => ts.isExportDeclaration(statement) && statement.moduleSpecifier !== undefined,
  );
  return /(^|\/)index\.tsx?$/.test(path) || (statements.length > 0 && onlyPassesOn);
}

const needsHead = (path: string) => /^src\/(model|geometry|drawing|solids|scene)\//.test(path);
const hasHead = ({ text }: SourceFile) => /^\/\*\*[^]{20,}?\*\//.test(text) || /^\/\/ .{20,}/.test(text);

const isTooLong = ({ path, text }: SourceFile) =>
  !path.endsWith('-table.ts') && text.split('\n').filter((line) => line.trim() !== '').length > longest;

const isKebab = ({ path }: SourceFile) =>
  /^[a-z0-9]+(-[a-z0-9]+)*(\.d|\.module)?\.tsx?$/.test(posix.basename(path));

const pathsWhere = (files: readonly SourceFile[], isBad: (file: SourceFile) => boolean) =>
  files.filter(isBad).map(({ path }) => path);

const source = readTree('src');

test('the walk sees every layer and a whole app', () => {
  const seen = new Set(source.map(({ path }) => layerOf(path)));
  expect([...seen].sort()).toEqual([...mayImport.keys(), 'app'].sort());
  expect(source.length).toBeGreaterThan(100);
  expect(source.flatMap(importsOf).length).toBeGreaterThan(300);
});

test('the checks catch made-up offenders', () => {
  const offender = (path: string, text: string): SourceFile => ({ path, text });
  const upward = [
    offender('src/model/a.ts', "import type { B } from '../panels/b.ts';"),
    offender('src/geometry/deep/a.ts', "export { b } from '../../scene/b.ts';"),
    offender('src/scene/a.tsx', "const later = () => import('../panels/b.tsx');"),
    offender('src/persist/a.ts', "import '../state/b.ts';"),
  ];
  expect(upward.map((file) => layerOffences(file).length)).toEqual([1, 1, 1, 1]);
  expect(layerOffences(offender('src/panels/a.tsx', "import { b } from '../drawing/b.ts';"))).toEqual([]);
  expect(isBarrel(offender('src/model/all.ts', "export * from './a.ts';\nexport { b } from './b.ts';"))).toBe(
    true,
  );
  expect(isBarrel(offender('src/model/index.ts', 'export const a = 1;'))).toBe(true);
  expect(isBarrel(offender('src/model/a.ts', "import { b } from './b.ts';\nexport const a = b;"))).toBe(
    false,
  );
  expect(hasHead(offender('src/model/a.ts', "import { b } from './b.ts';\n/** Late. */"))).toBe(false);
  expect(isTooLong(offender('src/model/a.ts', 'x\n'.repeat(longest + 1)))).toBe(true);
  expect(isKebab(offender('src/panels/AnswerBox.tsx', ''))).toBe(false);
});

test('every layer imports only what the table allows, types included', () => {
  expect(source.flatMap(layerOffences)).toEqual([]);
});

test('no file of src imports tests, tools or bench', () => {
  const outward = source.flatMap((file) => importsOf(file).filter((target) => !target.startsWith('src/')));
  expect(outward).toEqual([]);
});

test('there are no barrels', () => {
  expect(pathsWhere(source, isBarrel)).toEqual([]);
});

test('every file of model, geometry, drawing, solids and scene opens with what it is responsible for', () => {
  const withHeads = source.filter(({ path }) => needsHead(path));
  expect(pathsWhere(withHeads, (file) => !hasHead(file))).toEqual([]);
});

test(`no file is longer than ${String(longest)} lines`, () => {
  const files = [...source, ...['tests', 'tools', 'bench'].flatMap(readTree)];
  expect(pathsWhere(files, isTooLong)).toEqual([]);
});

test('files are named in kebab case', () => {
  expect(pathsWhere(source, (file) => !isKebab(file))).toEqual([]);
});
