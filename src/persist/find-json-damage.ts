/**
 * Where JSON text stops being JSON. `JSON.parse` says it in as many ways as there are browsers, or not at all; a person who
 * opens a damaged file wants the line. Only looked for after reading has failed.
 */

/** A bracket, comma, colon, whole string, number or word, with the blanks before it. */
const TOKEN =
  /[ \t\n\r]*(?:[[\]{},:]|"(?:[^"\\\u0000-\u001f]|\\(?:["\\/bfnrt]|u[0-9a-fA-F]{4}))*"|-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?|true|false|null)/y;
const BLANKS = /[ \t\n\r]*/y;

type Expected = 'value' | 'value or end' | 'name' | 'name or end' | 'colon' | 'comma or end' | 'nothing';

/** Finds the place (in characters) of the first damage; null when the text is sound. */
export function findJsonDamage(text: string): number | null {
  const open: ('[' | '{')[] = [];
  let expected: Expected = 'value';
  let at = 0;
  while (expected !== 'nothing') {
    TOKEN.lastIndex = at;
    const token = TOKEN.exec(text)?.[0];
    if (token === undefined) return skipBlanks(text, at);
    const next = after(expected, token.trim(), open);
    if (next === null) return skipBlanks(text, at);
    expected = next;
    at += token.length;
  }
  const end = skipBlanks(text, at);
  return end === text.length ? null : end;
}

/** What may come after a token; null when the token itself may not. Keeps the list of what is open. */
function after(expected: Expected, token: string, open: ('[' | '{')[]): Expected | null {
  const isEnd = expected.endsWith('end');
  if (token === '}' || token === ']') {
    const isOpen = open.at(-1) === (token === '}' ? '{' : '[');
    if (!isEnd || !isOpen) return null;
    open.pop();
    return afterValue(open);
  }
  if (token === ',') return expected === 'comma or end' ? (open.at(-1) === '{' ? 'name' : 'value') : null;
  if (token === ':') return expected === 'colon' ? 'value' : null;
  if (expected.startsWith('name')) return token.startsWith('"') ? 'colon' : null;
  if (!expected.startsWith('value')) return null;
  if (token === '{' || token === '[') {
    open.push(token);
    return token === '{' ? 'name or end' : 'value or end';
  }
  return afterValue(open);
}

function afterValue(open: readonly string[]): Expected {
  return open.length === 0 ? 'nothing' : 'comma or end';
}

function skipBlanks(text: string, at: number): number {
  BLANKS.lastIndex = at;
  return at + (BLANKS.exec(text)?.[0].length ?? 0);
}
