/**
 * Parts from a pasted table, row by row: what each would become, and every cell that cannot be taken as it stands, with a
 * sentence. A row with trouble is left out, never mended silently; two kinds of trouble can be settled for all rows with a
 * yes: labels that are taken, and lengths that only make sense in another unit. Cells are data and nothing else: what looks
 * like a formula or like markup is a text that is no length.
 *
 * The work is handed out in steps, so that a hundred thousand rows neither stop the page nor have to be waited for.
 */
import type { LengthValue } from '../schema/leaf.ts';
import type { LengthRange } from '../units/length-sentences.ts';
import type { LengthUnit } from '../units/length-unit.ts';
import { parseCount } from '../units/parse-count.ts';
import { parseLength } from '../units/parse-length.ts';
import { MOST_LABEL_CHARACTERS, sameLabel } from './labels.ts';
import type { NewPart } from './loose-parts.ts';
import { CONDITION_WORDS, KIND_WORDS, type PastedColumn } from './pasted-columns.ts';
import { measuredValue, type TakenWith } from './values.ts';

export type CellTrouble = {
  /** Place of the column. */
  readonly column: number;
  /** What a yes for all could settle; else only another text. */
  readonly kind: 'taken label' | 'other unit' | 'unreadable';
  readonly message: string;
};

export type PastedRow = {
  /** Counted from 1, as in the text that was pasted. */
  readonly line: number;
  readonly cells: readonly string[];
  /** Null while there is trouble. */
  readonly part: NewPart | null;
  readonly troubles: readonly CellTrouble[];
};

export type PasteSettings = {
  readonly columns: readonly PastedColumn[];
  readonly hasHeading: boolean;
  /** What every row is unless a column says otherwise. */
  readonly like: NewPart;
  readonly takenWith: TakenWith;
  /** Labels of the job, as `labelsOf` gives them. */
  readonly taken: ReadonlySet<string>;
  readonly plausible: Readonly<Record<'length' | 'ball' | 'spring' | 'diameter', LengthRange>>;
  /** Yes to: labels that are taken get a number behind them. */
  readonly renames: boolean;
  /** Yes to: lengths are read in the unit in which they make sense. */
  readonly takesOtherUnit: boolean;
};

/** Rows between two chances to stop. */
const STEP = 100;
/** Characters of a text in "where from", as in the job file. */
const MOST_TEXT = 400;
const MOST_OF_ONE = 100_000;

/** Reads the rows of a table; gives how many are done at each step. */
export function* readPastedRows(
  rows: readonly (readonly string[])[],
  settings: PasteSettings,
): Generator<number, PastedRow[], void> {
  const labels = new Labels(settings.taken);
  const read: PastedRow[] = [];
  for (const [i, cells] of rows.entries()) {
    if (i === 0 && settings.hasHeading) continue;
    if (i > 0 && i % STEP === 0) yield i;
    if (cells.every((cell) => cell.trim() === '')) continue;
    read.push(readRow(cells, i + 1, settings, labels));
  }
  return read;
}

/** Labels given so far. One that is taken is counted on from where the last one like it ended. */
class Labels {
  private readonly taken: Set<string>;
  private readonly copies = new Map<string, number>();

  constructor(taken: ReadonlySet<string>) {
    this.taken = new Set(taken);
  }

  take(label: string): boolean {
    if (this.taken.has(sameLabel(label))) return false;
    this.taken.add(sameLabel(label));
    return true;
  }

  takeNear(label: string): string {
    for (let copy = (this.copies.get(sameLabel(label)) ?? 1) + 1; ; copy++) {
      const ending = `-${copy}`;
      const near = `${label.slice(0, MOST_LABEL_CHARACTERS - ending.length)}${ending}`;
      if (!this.take(near)) continue;
      this.copies.set(sameLabel(label), copy);
      return near;
    }
  }
}

function readRow(cells: readonly string[], line: number, settings: PasteSettings, labels: Labels): PastedRow {
  const troubles: CellTrouble[] = [];
  const say = (column: number, message: string, kind: CellTrouble['kind'] = 'unreadable') => {
    troubles.push({ column, kind, message });
  };
  const at = (role: PastedColumn['role']) => {
    const column = settings.columns.findIndex((each) => each.role === role);
    return { column, text: column < 0 ? '' : (cells[column]?.trim() ?? '') };
  };
  const kind = kindIn(at('kind'), settings.like.kind, say);
  const quantity = quantityIn(at('quantity'), settings.like.quantity, say);
  const condition = conditionIn(at('condition'), settings.like.condition, say);
  const from = at('from');
  if (from.text.length > MOST_TEXT) say(from.column, `Where from has at most ${MOST_TEXT} characters.`);
  const size = kind === 'ball' ? 'ball' : kind === 'spring' ? 'spring' : 'length';
  const length = lengthIn(at('length'), settings.plausible[size], settings, say);
  const across = lengthIn(at('diameter'), settings.plausible.diameter, settings, say);
  const [lengthAt] = settings.columns.flatMap(({ role }, i) => (role === 'length' ? [i] : []));
  if (length === null && across === null && troubles.length === 0)
    say(lengthAt ?? 0, 'There is no length in this row.');
  const label = labelIn(at('label'), troubles.length === 0, settings.renames, labels, say);
  if (troubles.length > 0) return { line, cells, part: null, troubles };
  const part: NewPart = {
    ...settings.like,
    kind,
    label,
    length: kind === 'ball' ? null : length,
    onBall: kind === 'pin' ? settings.like.onBall : null,
    diameter: kind === 'ball' ? (across ?? length) : (across ?? settings.like.diameter),
    quantity,
    condition,
    from: from.text === '' ? settings.like.from : from.text,
  };
  return { line, cells, part, troubles };
}

type Cell = { readonly column: number; readonly text: string };
type Say = (column: number, message: string, kind?: CellTrouble['kind']) => void;

function kindIn({ column, text }: Cell, otherwise: NewPart['kind'], say: Say): NewPart['kind'] {
  if (text === '') return otherwise;
  const kind = Object.hasOwn(KIND_WORDS, text.toLowerCase()) ? KIND_WORDS[text.toLowerCase()] : undefined;
  if (kind === undefined) say(column, `“${shortened(text)}” is no kind of part; write pin, ball or spring.`);
  return kind ?? otherwise;
}

function quantityIn({ column, text }: Cell, otherwise: number, say: Say): number {
  const reading = parseCount(text, { to: MOST_OF_ONE });
  if (reading.type === 'count') return reading.count;
  if (reading.type !== 'empty') say(column, reading.message);
  return otherwise;
}

function conditionIn(
  { column, text }: Cell,
  otherwise: NewPart['condition'],
  say: Say,
): NewPart['condition'] {
  if (text === '') return otherwise;
  const word = text.toLowerCase();
  if (CONDITION_WORDS.includes(word)) return word as NewPart['condition'];
  say(column, `“${shortened(text)}” is no condition; write good, fair or poor.`);
  return otherwise;
}

function lengthIn(
  { column, text }: Cell,
  plausible: LengthRange,
  { columns, takenWith, takesOtherUnit }: PasteSettings,
  say: Say,
): LengthValue | null {
  if (text === '') return null;
  const unit = columns[column]?.unit ?? 'in';
  const reading = parseLength(inUnit(text, unit), { unit: unit === 'thou' ? 'in' : unit, plausible });
  switch (reading.type) {
    case 'length':
      return measuredValue({ ...reading, typed: text.slice(0, 200) }, takenWith);
    case 'empty':
      return null;
    case 'error':
      say(column, reading.message);
      return null;
    case 'ask': {
      const [choice] = reading.choices;
      if (takesOtherUnit && choice !== undefined && reading.choices.length === 1)
        return measuredValue({ mm: choice.mm, unit: choice.unit, typed: text.slice(0, 200) }, takenWith);
      say(column, reading.message, reading.choices.length === 1 ? 'other unit' : 'unreadable');
      return null;
    }
  }
}

/** A plain number in a column of thou gets its unit; whatever has one keeps it. */
function inUnit(text: string, unit: LengthUnit): string {
  return unit === 'thou' && /^[\d.,\s]+$/u.test(text) ? `${text} thou` : text;
}

function labelIn(
  { column, text }: Cell,
  isElseGood: boolean,
  renames: boolean,
  labels: Labels,
  say: Say,
): string | null {
  if (text === '') return null;
  if (text.length > MOST_LABEL_CHARACTERS) {
    say(column, `A label has at most ${MOST_LABEL_CHARACTERS} characters.`);
    return null;
  }
  // A row that is left out for something else keeps no label from the others.
  if (!isElseGood) return null;
  if (labels.take(text)) return text;
  if (renames) return labels.takeNear(text);
  say(column, `“${shortened(text)}” is the label of another part.`, 'taken label');
  return null;
}

function shortened(text: string): string {
  const characters = Array.from(text);
  return characters.length > 24 ? `${characters.slice(0, 24).join('')}…` : text;
}

export type PasteSummary = {
  readonly parts: readonly NewPart[];
  /** Parts that the job has no room for. */
  readonly over: number;
  readonly leftOut: number;
  readonly takenLabels: number;
  readonly otherUnits: number;
  readonly unreadable: number;
};

/** Counts what would be stored and what would not. */
export function summarise(rows: readonly PastedRow[], room: number): PasteSummary {
  const parts = rows.flatMap(({ part }) => part ?? []);
  const having = (kind: CellTrouble['kind']) =>
    rows.filter(({ troubles }) => troubles.some((trouble) => trouble.kind === kind)).length;
  return {
    parts: parts.slice(0, room),
    over: Math.max(0, parts.length - room),
    leftOut: rows.filter(({ part }) => part === null).length,
    takenLabels: having('taken label'),
    otherUnits: having('other unit'),
    unreadable: having('unreadable'),
  };
}

/** The rows that were not stored, as lines to go on with. */
export function restOfPaste(rows: readonly PastedRow[], stored: number, separator: string): string {
  let count = 0;
  const rest = rows.filter(({ part }) => part === null || ++count > stored);
  return rest.map(({ cells }) => cells.map((cell) => quoted(cell, separator)).join(separator)).join('\n');
}

function quoted(cell: string, separator: string): string {
  const isPlain = !cell.includes(separator) && !/[\r\n]/u.test(cell);
  return isPlain ? cell : `"${cell.replaceAll('"', '""')}"`;
}
