/**
 * Tables as comma-separated text (RFC 4180: CRLF, quotes doubled). A text that a spreadsheet would run as a formula (it
 * starts with = + - @, a tab or a return, CWE-1236) gets an apostrophe in front; numbers stay numbers, signs and all.
 */

/** A number already written for machines, or a text of any kind. */
export type Cell = { readonly number: string } | { readonly text: string };

const RUNS = /^[\s]*[=+\-@\t\r＝＋－＠]/u;
const NUMBER = /^-?\d+(\.\d+)?$/u;

/** Writes rows as one text, with a mark in front that tells programs it is UTF-8. */
export function csvText(rows: readonly (readonly Cell[])[]): string {
  return `\uFEFF${rows.map((row) => `${row.map(cellText).join(',')}\r\n`).join('')}`;
}

function cellText(cell: Cell): string {
  if ('number' in cell && (cell.number === '' || NUMBER.test(cell.number))) return cell.number;
  const text = 'number' in cell ? cell.number : cell.text;
  const safe = RUNS.test(text) ? `'${text}` : text;
  return /[",\r\n\t']/u.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}
