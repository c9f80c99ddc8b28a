/**
 * Answers of the model as text that a person can read and a diff can show: one line for each value, rows of alike things as a
 * table. Numbers are rounded to 0.0001 (mm, N or rad: below what anything is measured to), so that the last bits do not count.
 *
 *     chamber    number  contactHeight
 *     chamber-1  1       6.604
 */
type Flat = string | number | boolean | bigint | null | undefined;

const PLACES = 4;
/** As wide as a table may get; wider rows are written as blocks. */
const WIDEST = 150;

/** Writes any value of plain data, maps and sets included; functions are left out. */
export function asText(value: unknown, indent = ''): string {
  if (isFlat(value)) return `${indent}${sayFlat(value)}\n`;
  const list = listOf(value);
  if (list !== null) return listText(list, indent);
  const names = namesOf(value);
  if (names.length === 0) return `${indent}(empty)\n`;
  return names
    .map((name) => {
      const child = (value as Record<string, unknown>)[name];
      const short = shortOf(child);
      if (short !== null) return `${indent}${name}: ${short}\n`;
      return `${indent}${name}:\n${asText(child, `${indent}  `)}`;
    })
    .join('');
}

/** What differs between two values of plain data, one line for each place: `parts › 3 › length: 2.1 → 2.2`. */
export function differences(before: unknown, after: unknown, path = ''): string[] {
  if (before === after) return [];
  if (isFlat(before) || isFlat(after)) {
    const [one, other] = [before, after].map((each) => shortOf(each) ?? compact(each));
    return one === other ? [] : [`${path}: ${one} → ${other}`];
  }
  const [one, other] = [entriesOf(before), entriesOf(after)];
  return [...new Set([...one.keys(), ...other.keys()])].flatMap((name) =>
    differences(one.get(name), other.get(name), path === '' ? name : `${path} › ${name}`),
  );
}

function entriesOf(value: unknown): Map<string, unknown> {
  const list = listOf(value);
  if (list === null)
    return new Map(namesOf(value as object).map((name) => [name, (value as Record<string, unknown>)[name]]));
  return new Map(list.map((each, i) => [nameIn(each) ?? String(i + 1), each]));
}

/** What tells one of a list from the others: its id, else its number, else what it is of. */
function nameIn(each: unknown): string | null {
  if (isFlat(each) || Array.isArray(each)) return null;
  const { id, chamber, number, line, code } = each as Record<string, unknown>;
  const name = id ?? chamber ?? number ?? line ?? code;
  return typeof name === 'string' || typeof name === 'number' ? String(name) : null;
}

function listText(list: readonly unknown[], indent: string): string {
  const table = tableOf(list, indent);
  if (table !== null) return table;
  return list
    .map((each, i) => {
      const short = shortOf(each);
      return short === null ? `${indent}- ${i + 1}\n${asText(each, `${indent}  `)}` : `${indent}- ${short}\n`;
    })
    .join('');
}

function tableOf(list: readonly unknown[], indent: string): string | null {
  if (list.length < 2 || list.some((each) => isFlat(each) || listOf(each) !== null)) return null;
  const rows = list as readonly Record<string, unknown>[];
  const columns = [...new Set(rows.flatMap((row) => namesOf(row)))];
  const cells = [
    columns,
    ...rows.map((row) => columns.map((name) => (name in row ? shortOf(row[name]) : ''))),
  ];
  if (cells.some((row) => row.includes(null))) return null;
  const widths = columns.map((_, i) => Math.max(...cells.map((row) => row[i]!.length)));
  if (widths.reduce((sum, width) => sum + width + 2, indent.length) > WIDEST) return null;
  return cells
    .map((row) => `${indent}${row.map((cell, i) => cell!.padEnd(widths[i]!)).join('  ')}`.trimEnd() + '\n')
    .join('');
}

/** On one line, where that is short; null otherwise. */
function shortOf(value: unknown): string | null {
  if (isFlat(value)) return sayFlat(value);
  const list = listOf(value);
  if (list !== null) return list.every(isFlat) ? `[${list.map((each) => sayFlat(each)).join(', ')}]` : null;
  const names = namesOf(value);
  if (names.length === 0) return '(empty)';
  if (names.some((name) => !isFlat((value as Record<string, unknown>)[name]))) return null;
  const text = names.map((name) => `${name} ${sayFlat((value as Record<string, Flat>)[name])}`).join(', ');
  return text.length > 70 ? null : `{${text}}`;
}

function compact(value: unknown): string {
  return asText(value)
    .trim()
    .split('\n')
    .map((line) => line.trim().replaceAll(/ {2,}/g, ' '))
    .join('; ');
}

function isFlat(value: unknown): value is Flat {
  return value === null || typeof value !== 'object';
}

function sayFlat(value: Flat): string {
  if (value === null) return '–';
  if (typeof value === 'string') return value === '' ? "''" : value;
  if (typeof value !== 'number') return String(value);
  if (!Number.isFinite(value)) return String(value);
  return String(Number(value.toFixed(PLACES)) + 0);
}

function listOf(value: unknown): readonly unknown[] | null {
  if (Array.isArray(value)) return value as unknown[];
  if (value instanceof Set) return [...(value as Set<unknown>)];
  if (ArrayBuffer.isView(value)) return [...(value as unknown as Iterable<unknown>)];
  if (value instanceof Map)
    return [...(value as Map<unknown, unknown>)].map(([key, each]) => ({ id: key, value: each }));
  return null;
}

/** Names whose value is said: neither missing nor a function. */
function namesOf(value: object): string[] {
  return Object.entries(value)
    .filter(([, each]) => each !== undefined && typeof each !== 'function')
    .map(([name]) => name);
}
