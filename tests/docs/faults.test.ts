/** docs/faults.md promises a test for every fault: each one named there is looked for in its file, by words of its title. */
import { existsSync, readFileSync } from 'node:fs';
import ts from 'typescript';
import { describe, expect, test } from 'vitest';

const root = new URL('../../', import.meta.url);
const ENDINGS = ['.spec.ts', '.test.ts', '.prop.test.ts'];

type Named = { readonly file: string; readonly titles: readonly string[] };
type Row = { readonly fault: string; readonly tests: readonly Named[] };

/** The rows of the table: what the fault is, and which tests it names. */
function rowsOf(page: string): Row[] {
  return page.split('\n').flatMap((line) => {
    const cells = line.split('|').map((cell) => cell.trim());
    const [, fault = '', , , tests = ''] = cells;
    if (cells.length !== 6 || fault === 'fault' || fault.startsWith('---')) return [];
    return [{ fault, tests: [...tests.matchAll(/`([a-z0-9/-]+)`((?:\s*“[^”]+”)+)/g)].map(namedTest) }];
  });
}

function namedTest([, file = '', titles = '']: RegExpMatchArray): Named {
  return { file, titles: [...titles.matchAll(/“([^”]+)”/g)].map(([, title = '']) => title) };
}

/** Every text that could be a title: in calls of test, it and describe, and in the tables they are given. */
function titlesIn(text: string): string[] {
  const titles: string[] = [];
  const look = (node: ts.Node, isInTest: boolean): void => {
    const isTest =
      ts.isCallExpression(node) && /^(test|it|describe)\b/.test(node.expression.getText(source).trim());
    if (isInTest && (ts.isStringLiteralLike(node) || ts.isTemplateExpression(node)))
      titles.push(node.getText(source).slice(1, -1));
    // What a test does is no title.
    if (ts.isFunctionLike(node)) {
      node.forEachChild((child) => look(child, false));
      return;
    }
    node.forEachChild((child) => look(child, isInTest || isTest));
  };
  const source = ts.createSourceFile('titles.ts', text, ts.ScriptTarget.Latest, true);
  look(source, false);
  return titles;
}

function missingIn({ file, titles }: Named): string[] {
  const path = ENDINGS.map((ending) => new URL(`tests/${file}${ending}`, root)).find((url) =>
    existsSync(url),
  );
  if (path === undefined) return [`no file ${file}`];
  const there = titlesIn(readFileSync(path, 'utf8'));
  return titles.filter((title) => !there.some((each) => each.includes(title))).map((t) => `${file}: ${t}`);
}

const rows = rowsOf(readFileSync(new URL('docs/faults.md', root), 'utf8'));

describe('the table of faults', () => {
  test('is read as a person reads it', () => {
    expect(rows.length).toBeGreaterThan(20);
    const page =
      '| fault | seen | next | test |\n|---|---|---|---|\n| a | b | c | `e2e/x` “one” “two”, `y` “three” |';
    expect(rowsOf(page)).toEqual([
      {
        fault: 'a',
        tests: [
          { file: 'e2e/x', titles: ['one', 'two'] },
          { file: 'y', titles: ['three'] },
        ],
      },
    ]);
  });

  test('would not take words inside a test for its title, nor a file that is not there', () => {
    const text =
      "test.each([['in a table', 1]])('a title %s', () => { expect('not a title').toBe(call('nor this')); });";
    expect(titlesIn(text)).toEqual(['in a table', 'a title %s']);
    expect(missingIn({ file: 'e2e/never-written', titles: ['x'] })).toEqual(['no file e2e/never-written']);
    expect(missingIn({ file: 'docs/faults', titles: ['no such words'] })).toEqual([
      'docs/faults: no such words',
    ]);
  });

  test.each(rows)('$fault: has a test', ({ tests }) => {
    expect(tests.length).toBeGreaterThan(0);
    expect(tests.flatMap(missingIn)).toEqual([]);
  });
});
