/**
 * Cuts what was pasted from a spreadsheet into a rectangle of cell texts; each cell is then read by the caller. No
 * units.
 *
 * Cells are parted by tabs and rows by line ends (CR LF, LF or CR), as spreadsheets put them on the clipboard. Commas
 * and semicolons part cells only when the caller says so: they may be decimal marks. A cell that holds a tab or a line end arrives in quotation marks with
 * its own marks doubled; a cell counts as quoted only when its closing mark is followed by the end of the cell, so that
 * an inch mark (.363") stays what it is. One line end at the very end is not a row. Short rows are filled with ''.
 */

export type BlockReading =
  | {
      readonly type: 'block';
      /** all of `columnCount` cells */
      readonly rows: readonly (readonly string[])[];
      readonly columnCount: number;
    }
  | { readonly type: 'error'; readonly message: string }
  | { readonly type: 'empty' };

export const MAX_BLOCK_ROWS = 100_000;
export const MAX_BLOCK_CELLS = 1_000_000;
/** Characters: a full block of ordinary values is far shorter. */
export const MAX_BLOCK_LENGTH = 20_000_000;

const BLANK = /^[\s\0\ufeff]*$/u;

/** What stands between two cells of a row. */
export type Separator = '\t' | ';' | ',';

const CELL_ENDS: Readonly<Record<Separator, RegExp>> = {
  '\t': /[\t\r\n]/gu,
  ';': /[;\r\n]/gu,
  ',': /[,\r\n]/gu,
};

/** Cuts a pasted text into cells; takes time in proportion to its length and is never given up half way. */
export function parseBlock(text: string, separator: Separator = '\t'): BlockReading {
  if (text.length > MAX_BLOCK_LENGTH) return tooMuch(`${MAX_BLOCK_LENGTH.toLocaleString('en')} characters`);
  const pasted = text.replace(/^\ufeff/u, '').replace(/\0+$/u, '');
  if (BLANK.test(pasted)) return { type: 'empty' };
  const rows: string[][] = [];
  let row: string[] = [];
  let columnCount = 0;
  let at = 0;
  let isAtEnd = false;
  while (!isAtEnd) {
    const cell = cellAt(pasted, at, separator);
    row.push(cell.text);
    isAtEnd = cell.end >= pasted.length;
    at = cell.end + 1;
    if (row.length > MAX_BLOCK_CELLS) return tooMuch(`${MAX_BLOCK_CELLS.toLocaleString('en')} cells`);
    if (pasted.charAt(cell.end) === separator) continue;
    if (pasted.startsWith('\r\n', cell.end)) at += 1;
    // A line end behind the last row begins no further one.
    if (at >= pasted.length) isAtEnd = true;
    rows.push(row);
    columnCount = Math.max(columnCount, row.length);
    row = [];
    if (rows.length > MAX_BLOCK_ROWS) return tooMuch(`${MAX_BLOCK_ROWS.toLocaleString('en')} rows`);
    if (rows.length * columnCount > MAX_BLOCK_CELLS)
      return tooMuch(`${MAX_BLOCK_CELLS.toLocaleString('en')} cells`);
  }
  for (const short of rows) while (short.length < columnCount) short.push('');
  return { type: 'block', rows, columnCount };
}

/** Reads the cell that begins here; `end` is the place of what ends it, or the length of the text. */
function cellAt(text: string, start: number, separator: Separator): { text: string; end: number } {
  const quoted = quotedCellAt(text, start, separator);
  if (quoted !== undefined) return quoted;
  const cellEnd = CELL_ENDS[separator];
  cellEnd.lastIndex = start;
  const end = cellEnd.exec(text)?.index ?? text.length;
  return { text: text.slice(start, end), end };
}

/** Reads a cell in quotation marks, or undefined when it does not end where its quotation does. */
function quotedCellAt(
  text: string,
  start: number,
  separator: Separator,
): { text: string; end: number } | undefined {
  if (text.charAt(start) !== '"') return undefined;
  let mark = text.indexOf('"', start + 1);
  while (mark >= 0 && text.charAt(mark + 1) === '"') mark = text.indexOf('"', mark + 2);
  if (mark < 0) return undefined;
  const end = mark + 1;
  const isCellEnd = end === text.length || `${separator}\r\n`.includes(text.charAt(end));
  return isCellEnd ? { text: text.slice(start + 1, mark).replaceAll('""', '"'), end } : undefined;
}

function tooMuch(limit: string): BlockReading {
  return { type: 'error', message: `More than ${limit} were pasted; copy a smaller block.` };
}
