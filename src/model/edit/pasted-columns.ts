/**
 * What stands in the columns of a pasted table: read from its heading where there is one, else guessed from what is in them.
 * Only a first suggestion, which the person sees and can change. A number without a unit has the unit of its column.
 */
import type { JobUnit, LengthUnit } from '../units/length-unit.ts';
import type { Separator } from '../units/parse-block.ts';

export const COLUMN_ROLES = [
  'label',
  'length',
  'diameter',
  'quantity',
  'kind',
  'from',
  'condition',
  'nothing',
] as const;
export type ColumnRole = (typeof COLUMN_ROLES)[number];

export type PastedColumn = { readonly role: ColumnRole; readonly unit: LengthUnit };

export type ColumnGuess = { readonly hasHeading: boolean; readonly columns: readonly PastedColumn[] };

/** Words of headings, in small letters and without their unit. */
const HEADINGS: Readonly<Record<Exclude<ColumnRole, 'nothing'>, readonly string[]>> = {
  label: ['label', 'name', 'id', 'no', 'nr', '#', 'part', 'bag', 'tag'],
  length: ['length', 'len', 'l', 'height', 'measured', 'ball + pin', 'ball and pin', 'ball+pin', 'stack'],
  diameter: ['diameter', 'dia', 'ø', '⌀', 'd', 'across'],
  quantity: ['quantity', 'qty', 'count', 'pcs', 'pieces', 'how many'],
  kind: ['kind', 'type', 'what'],
  from: ['from', 'where from', 'source', 'origin', 'cylinder', 'came from'],
  condition: ['condition', 'state'],
};
const UNITS: readonly (readonly [RegExp, LengthUnit])[] = [
  [/(?:^|[^a-z])mm(?:[^a-z]|$)|millimet/u, 'mm'],
  [/(?:^|[^a-z])(?:thou|th|mil)(?:[^a-z]|$)/u, 'thou'],
  [/(?:^|[^a-z])(?:in|inch|inches)(?:[^a-z]|$)|["″]/u, 'in'],
];

export const KIND_WORDS: Readonly<Record<string, 'pin' | 'ball' | 'spring'>> = {
  pin: 'pin',
  'bottom pin': 'pin',
  driver: 'pin',
  'top pin': 'pin',
  'master pin': 'pin',
  ball: 'ball',
  spring: 'spring',
};
export const CONDITION_WORDS: readonly string[] = ['good', 'fair', 'poor'];

/** Rows that a guess looks at. */
const SAMPLE = 200;
const LINES_FOR_SEPARATOR = 50;

/** Says what parts the cells: a tab if there is any, else a mark that every row has and that is no decimal mark. */
export function separatorOf(text: string): Separator {
  if (text.includes('\t')) return '\t';
  const lines = firstLines(text, LINES_FOR_SEPARATOR);
  if (lines.length === 0) return '\t';
  if (lines.every((line) => line.includes(';'))) return ';';
  if (!lines.every((line) => line.includes(','))) return '\t';
  // One comma between digits may be a decimal mark: only what cannot be one parts cells.
  return lines.some((line) => /,.*,|,\s|,$|^,|[a-z].*,|,.*[a-z"]|\.\d*,|,\s*\d*\./iu.test(line)) ? ',' : '\t';
}

function firstLines(text: string, most: number): string[] {
  const head = text.slice(0, 20_000);
  return head
    .split(/\r\n|\r|\n/u, most + 1)
    .slice(0, most)
    .filter((line) => line.trim() !== '');
}

/** Suggests what the columns of a table are. */
export function guessColumns(rows: readonly (readonly string[])[], unit: JobUnit): ColumnGuess {
  const [first = []] = rows;
  const named = first.map((cell) => roleOfHeading(cell));
  const hasHeading =
    named.some((role) => role !== null) && first.every((cell) => !isNumberLike(cell) || cell.trim() === '');
  const body = rows.slice(hasHeading || isUnknownHeading(rows) ? 1 : 0, SAMPLE);
  const columns = first.map((_, i) => body.map((row) => row[i]?.trim() ?? '').filter((cell) => cell !== ''));
  const guessed = columns.map((cells) => natureOf(cells));
  const roles = hasHeading ? onceEach(named.map((role) => role ?? 'nothing')) : rolesOf(guessed);
  return {
    hasHeading: hasHeading || isUnknownHeading(rows),
    columns: roles.map((role, i) => ({
      role,
      unit: (hasHeading ? unitOfHeading(first[i] ?? '') : null) ?? unitOfCells(columns[i] ?? [], unit),
    })),
  };
}

function roleOfHeading(cell: string): ColumnRole | null {
  const words = cell
    .toLowerCase()
    .replaceAll(/\([^)]*\)|\[[^\]]*\]|["″:.,]/gu, ' ')
    .replaceAll(/\b(?:mm|in|inch|inches|thou|mil)\b/gu, ' ')
    .replaceAll(/\s+/gu, ' ')
    .trim();
  const found = Object.entries(HEADINGS).find(([, names]) => names.includes(words));
  return found === undefined ? null : (found[0] as ColumnRole);
}

function unitOfHeading(cell: string): LengthUnit | null {
  return UNITS.find(([pattern]) => pattern.test(cell.toLowerCase()))?.[1] ?? null;
}

/** Words over numbers are a heading even when nobody knows them. */
function isUnknownHeading(rows: readonly (readonly string[])[]): boolean {
  const [first = [], ...others] = rows.slice(0, SAMPLE);
  if (others.length === 0 || first.some(isNumberLike)) return false;
  return first.some(
    (cell, i) => cell.trim() !== '' && others.every((row) => isNumberLike(row[i] ?? '') || row[i] === ''),
  );
}

function isNumberLike(cell: string): boolean {
  return /^\s*[=+−-]?\s*[.,]?\d/u.test(cell) || /^\s*[½⅛⅜⅝⅞¼¾]/u.test(cell);
}

type Nature =
  | 'lengths'
  | 'counting'
  | 'whole numbers'
  | 'kinds'
  | 'conditions'
  | 'texts'
  | 'same texts'
  | 'empty';

function natureOf(cells: readonly string[]): Nature {
  if (cells.length === 0) return 'empty';
  const small = cells.map((cell) => cell.toLowerCase());
  if (small.every((cell) => KIND_WORDS[cell] !== undefined)) return 'kinds';
  if (small.every((cell) => CONDITION_WORDS.includes(cell))) return 'conditions';
  if (cells.every((cell) => /^\d{1,6}$/u.test(cell))) {
    const numbers = cells.map(Number);
    const isCounting = numbers.length > 1 && numbers.every((number, i) => number === (numbers[0] ?? 0) + i);
    return isCounting ? 'counting' : 'whole numbers';
  }
  const numbers = cells.filter(isNumberLike).length;
  if (numbers * 2 > cells.length) return 'lengths';
  return new Set(small).size === cells.length ? 'texts' : 'same texts';
}

function rolesOf(natures: readonly Nature[]): ColumnRole[] {
  const lengths = natures.indexOf('lengths');
  const length = lengths >= 0 ? lengths : natures.indexOf('whole numbers');
  const alone = length >= 0 ? length : natures.indexOf('counting');
  return onceEach(
    natures.map((nature, i): ColumnRole => {
      if (i === alone) return 'length';
      switch (nature) {
        case 'lengths':
          return 'diameter';
        case 'counting':
          return 'label';
        case 'whole numbers':
          return 'quantity';
        case 'kinds':
          return 'kind';
        case 'conditions':
          return 'condition';
        case 'texts':
          return 'label';
        case 'same texts':
          return 'from';
        case 'empty':
          return 'nothing';
      }
    }),
  );
}

/** A role belongs to its first column; two columns of lengths are not added up. */
function onceEach(roles: readonly ColumnRole[]): ColumnRole[] {
  return roles.map((role, i) => (roles.indexOf(role) === i ? role : 'nothing'));
}

/** A whole column of hundreds without a point, in a job in inches, is in thou: nothing else can be of that size. */
function unitOfCells(cells: readonly string[], unit: JobUnit): LengthUnit {
  const isThou =
    unit === 'in' && cells.length > 0 && cells.every((cell) => /^\d{2,3}(?:[.,]\d)?$/u.test(cell));
  return isThou ? 'thou' : unit;
}
