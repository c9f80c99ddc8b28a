/** Drivers, springs, and how far the stack sinks with the key out: asked when the verdict comes to them. */
import { restValue, setPartLength, setRest } from '../../model/edit/edit-stack.ts';
import type { ChamberRow } from '../../model/edit/chamber-rows.ts';
import type { Part } from '../../model/schema/parts-schema.ts';
import type { Look } from '../shared/look.ts';
import { type FieldSpec, PLAUSIBLE } from './field-spec.ts';
import { LengthField } from './length-field.tsx';

const COLUMNS: readonly {
  readonly id: string;
  readonly title: string;
  readonly make: (look: Look, row: ChamberRow) => FieldSpec | null;
}[] = [
  { id: 'driver', title: 'Driver', make: (_look, row) => partField(row, row.parts?.driver, 'length') },
  { id: 'solid', title: 'Spring, solid', make: (_look, row) => partField(row, row.parts?.spring, 'solid') },
  { id: 'free', title: 'Spring, free', make: (_look, row) => partField(row, row.parts?.spring, 'free') },
  { id: 'rest', title: 'Key out, sinks by', make: restField },
];

export function DriversBlock({ look }: { readonly look: Look }) {
  return (
    <details className="fold">
      <summary>
        <h2 className="fold-title">Drivers and springs</h2>
        <span className="fold-summary quiet">what stands above the pins, and how far they sink</span>
      </summary>
      <div className="fold-body">
        <table className="plain-table" role="table" data-walk="drivers">
          <thead role="rowgroup">
            <tr role="row">
              <th role="columnheader" scope="col">
                Chamber
              </th>
              {COLUMNS.map((column) => (
                <th key={column.id} role="columnheader" scope="col">
                  {column.title}
                </th>
              ))}
            </tr>
          </thead>
          <tbody role="rowgroup">
            {look.rows.rows.map((row) => (
              <tr role="row" key={row.chamber.id}>
                <th role="rowheader" scope="row">
                  {row.number}
                </th>
                {COLUMNS.map((column) => {
                  const field = column.make(look, row);
                  return (
                    <td role="cell" key={column.id} data-column-title={column.title}>
                      {field === null ? (
                        <span className="quiet">–</span>
                      ) : (
                        <LengthField field={field} column={column.id} />
                      )}
                    </td>
                  );
                })}
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </details>
  );
}

const WORDS = {
  length: { label: 'Driver', help: 'driver', plausible: PLAUSIBLE.pinLength },
  solid: { label: 'Spring squeezed solid', help: 'spring solid', plausible: PLAUSIBLE.spring },
  free: { label: 'Spring free', help: 'spring free', plausible: PLAUSIBLE.spring },
} as const;

function partField(
  { number }: ChamberRow,
  part: Part | null | undefined,
  name: keyof typeof WORDS,
): FieldSpec | null {
  if (part === null || part === undefined) return null;
  const { label, help, plausible } = WORDS[name];
  return {
    id: `part/${part.id}/${name}`,
    label: `${label}, chamber ${number}`,
    value: part[name],
    set: (job, value) => setPartLength(job, part.id, name, value),
    plausible,
    help,
  };
}

function restField({ selection }: Look, { chamber, number, parts }: ChamberRow): FieldSpec | null {
  if (parts === null || parts.lower.length === 0) return null;
  return {
    id: `rest/${chamber.id}/belowLine`,
    label: `Sinks by, key out, chamber ${number}`,
    value: restValue(parts),
    set: (job, value) => setRest(job, selection.plan, chamber.id, value),
    plausible: PLAUSIBLE.restDepth,
    help: 'rest depth',
  };
}
