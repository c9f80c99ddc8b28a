/** A rectangle pasted from a spreadsheet: which cell goes to which field, and how each reads. Nothing is stored before a yes. */
import type { Job } from '../../model/schema/job-schema.ts';
import { parseBlock } from '../../model/units/parse-block.ts';
import { type LengthReading, parseLength } from '../../model/units/parse-length.ts';
import type { Look } from '../shared/look.ts';
import type { Column } from './chamber-columns.ts';
import { type FieldSpec, takenValue } from './field-spec.ts';

export type PastedCell = {
  readonly text: string;
  /** Where it would go; none when the rectangle reaches past the table. */
  readonly field: FieldSpec | null;
  readonly reading: LengthReading;
};

export type PastedBlock = {
  readonly titles: readonly string[];
  readonly numbers: readonly number[];
  readonly rows: readonly (readonly PastedCell[])[];
};

/** Lays a pasted text over the table from a field on; null for a single value, which the field itself takes. */
export function pastedBlock(
  text: string,
  fieldId: string | undefined,
  look: Look,
  columns: readonly Column[],
): PastedBlock | null {
  const block = parseBlock(text);
  if (block.type !== 'block' || (block.rows.length < 2 && block.columnCount < 2)) return null;
  const { rows } = look.rows;
  const { unit } = look.job.settings;
  const startColumn = columns.findIndex((column) =>
    [...column.fields.values()].some((f) => f.id === fieldId),
  );
  if (startColumn < 0) return null;
  const startRow = rows.findIndex((row) => columns[startColumn]?.fields.get(row.chamber.id)?.id === fieldId);
  return {
    titles: Array.from(
      { length: block.columnCount },
      (_, i) => columns[startColumn + i]?.title ?? 'no column',
    ),
    numbers: block.rows.map((_, i) => rows[startRow + i]?.number ?? 0),
    rows: block.rows.map((cells, i) =>
      cells.map((cell, t): PastedCell => {
        const chamber = rows[startRow + i]?.chamber.id;
        const field = (chamber === undefined ? null : columns[startColumn + t]?.fields.get(chamber)) ?? null;
        const plausible = field?.plausible;
        const reading = parseLength(cell, plausible === undefined ? { unit } : { unit, plausible });
        return { text: cell, field, reading };
      }),
    ),
  };
}

/** Cells that would be stored. */
export function goodCells(block: PastedBlock): PastedCell[] {
  return block.rows.flat().filter((cell) => cell.field !== null && cell.reading.type === 'length');
}

/** Cells that hold something, but cannot be stored as they stand. */
export function troubledCells(block: PastedBlock): PastedCell[] {
  return block.rows
    .flat()
    .filter(
      (cell) => cell.reading.type !== 'empty' && (cell.field === null || cell.reading.type !== 'length'),
    );
}

/** Stores the good cells, as one change. */
export function storeBlock(job: Job, block: PastedBlock): Job {
  return goodCells(block).reduce(
    (changed, { field, reading }) =>
      field === null || reading.type !== 'length' ? changed : field.set(changed, takenValue(job, reading)),
    job,
  );
}
