import { useState } from 'react';
import { COLUMN_ROLES, type ColumnRole, type PastedColumn } from '../../model/edit/pasted-columns.ts';
import type { PastedRow } from '../../model/edit/pasted-parts.ts';
import { lengthOf } from '../../model/measured/part-ends.ts';
import { formatBoth } from '../../model/units/format-length.ts';
import type { JobUnit, LengthUnit } from '../../model/units/length-unit.ts';
import type { Separator } from '../../model/units/parse-block.ts';
import type { PasteChoices, PastedTable } from './use-paste.ts';

const ROLE_LABELS: Readonly<Record<ColumnRole, string>> = {
  label: 'label',
  length: 'length',
  diameter: 'across',
  quantity: 'how many',
  kind: 'kind',
  from: 'where from',
  condition: 'condition',
  nothing: 'left out',
};

/** Rows on the page; there may be a hundred thousand. */
const MOST_ROWS_SHOWN = 60;

export function PasteOptions({
  table,
  choices,
  setChoices,
}: {
  readonly table: PastedTable;
  readonly choices: PasteChoices;
  readonly setChoices: (choices: PasteChoices) => void;
}) {
  return (
    <div className="paste-options">
      <label>
        Cells are parted by{' '}
        <select
          value={table.separator}
          onChange={(event) =>
            setChoices({
              ...choices,
              separator: event.target.value as Separator,
              columns: null,
              hasHeading: null,
            })
          }
        >
          <option value={'\t'}>tabs</option>
          <option value=";">semicolons</option>
          <option value=",">commas</option>
        </select>
      </label>
      <label>
        <input
          type="checkbox"
          checked={table.guess.hasHeading}
          onChange={(event) => setChoices({ ...choices, hasHeading: event.target.checked })}
        />{' '}
        The first row is a heading
      </label>
    </div>
  );
}

/** The table as it is read: what each column is on top, every cell's trouble in its place. */
export function PastePreview({
  table,
  rows,
  setColumns,
  unit,
}: {
  readonly table: PastedTable;
  readonly rows: readonly PastedRow[];
  readonly setColumns: (columns: readonly PastedColumn[]) => void;
  readonly unit: JobUnit;
}) {
  const [isOnlyTrouble, setOnlyTrouble] = useState(false);
  const { columns } = table.guess;
  const troubled = rows.filter(({ part }) => part === null);
  const listed = isOnlyTrouble && troubled.length > 0 ? troubled : rows;
  const shown = listed.slice(0, MOST_ROWS_SHOWN);
  return (
    <>
      {troubled.length > 0 && troubled.length < rows.length ? (
        <label className="small">
          <input
            type="checkbox"
            checked={isOnlyTrouble}
            onChange={(event) => setOnlyTrouble(event.target.checked)}
          />{' '}
          Show only rows that are left out
        </label>
      ) : null}
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a table that scrolls must be reachable without a pointer */}
      <div
        className="dialog-scroll paste-scroll"
        tabIndex={0}
        role="region"
        aria-label="How the rows are read"
      >
        <table className="paste-table">
          <thead>
            <tr>
              <th scope="col">Row</th>
              {columns.map((column, i) => (
                <th key={i} scope="col">
                  <ColumnHead
                    column={column}
                    place={i + 1}
                    setColumn={(changed) => setColumns(withColumn(columns, i, changed))}
                  />
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {shown.map((row) => (
              <tr key={row.line}>
                <th scope="row">{row.line}</th>
                {columns.map((column, i) => (
                  <Cell key={i} row={row} column={column} place={i} unit={unit} />
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      {listed.length > shown.length ? (
        <p className="small quiet">
          and {(listed.length - shown.length).toLocaleString('en')} more rows, read in the same way
        </p>
      ) : null}
    </>
  );
}

function ColumnHead({
  column,
  place,
  setColumn,
}: {
  readonly column: PastedColumn;
  readonly place: number;
  readonly setColumn: (column: PastedColumn) => void;
}) {
  const isLength = column.role === 'length' || column.role === 'diameter';
  return (
    <span className="column-head">
      <select
        aria-label={`What column ${place} is`}
        value={column.role}
        onChange={(event) => setColumn({ ...column, role: event.target.value as ColumnRole })}
      >
        {COLUMN_ROLES.map((role) => (
          <option key={role} value={role}>
            {ROLE_LABELS[role]}
          </option>
        ))}
      </select>
      {isLength ? (
        <select
          aria-label={`Unit of column ${place}`}
          value={column.unit}
          onChange={(event) => setColumn({ ...column, unit: event.target.value as LengthUnit })}
        >
          <option value="in">in</option>
          <option value="thou">thou</option>
          <option value="mm">mm</option>
        </select>
      ) : null}
    </span>
  );
}

/** A role is given to one column; the one that had it is left out. */
function withColumn(columns: readonly PastedColumn[], at: number, changed: PastedColumn): PastedColumn[] {
  return columns.map((column, i) => {
    if (i === at) return changed;
    return column.role === changed.role && changed.role !== 'nothing'
      ? { ...column, role: 'nothing' }
      : column;
  });
}

function Cell({
  row,
  column,
  place,
  unit,
}: {
  readonly row: PastedRow;
  readonly column: PastedColumn;
  readonly place: number;
  readonly unit: JobUnit;
}) {
  const text = row.cells[place] ?? '';
  const trouble = row.troubles.find((each) => each.column === place);
  if (trouble !== undefined)
    return (
      <td data-good="false">
        <span className="number paste-cell">{text}</span>
        {trouble.message}
      </td>
    );
  return (
    <td data-good="true" data-out={column.role === 'nothing' || row.part === null}>
      {shownAs(row, column.role, unit) ?? text}
    </td>
  );
}

function shownAs({ part, cells }: PastedRow, role: ColumnRole, unit: JobUnit): string | null {
  if (part === null || cells.length === 0) return null;
  if (role === 'label') return part.label;
  const value =
    role === 'diameter' || (role === 'length' && part.kind === 'ball') ? part.diameter : part.length;
  if (role !== 'length' && role !== 'diameter') return null;
  return value === null ? null : formatBoth(lengthOf(value, 0), unit);
}
