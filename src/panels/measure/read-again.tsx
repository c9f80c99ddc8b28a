/** Repeats, asked for only where the verdict hangs on them. */
import { withoutLastRepeat } from '../../model/edit/values.ts';
import type { LengthValue } from '../../model/schema/leaf.ts';
import { formatLength } from '../../model/units/format-length.ts';
import { useEdit, useJob } from '../shared/services.tsx';
import type { FieldSpec } from './field-spec.ts';
import { LengthField } from './length-field.tsx';

/** A field that adds a reading to the ones there are. */
function repeatOf(field: FieldSpec, value: LengthValue): FieldSpec {
  return {
    ...field,
    id: `${field.id}/again`,
    label: `${field.label}, read again`,
    value: undefined,
    set: (job, reading) =>
      reading === undefined
        ? job
        : field.set(job, { ...value, readings: [...value.readings, ...reading.readings] }),
  };
}

export function ReadAgain({ fields }: { readonly fields: readonly FieldSpec[] }) {
  const edit = useEdit();
  const { unit } = useJob().settings;
  const measured = fields.flatMap((field) =>
    field.value?.basis === 'measured' ? [{ field, value: field.value }] : [],
  );
  if (measured.length === 0) return null;
  return (
    <div className="read-again" data-walk="again">
      <h3>Read again</h3>
      {measured.map(({ field, value }) => (
        <div key={field.id} className="read-again-line">
          <span>
            {field.label}:{' '}
            <span className="number">
              {value.readings
                .map((reading) => formatLength(reading.value, { unit, keepsPlaces: true }))
                .join(', ')}
            </span>
          </span>
          <LengthField field={repeatOf(field, value)} column="again" placeholder="again" />
          {value.readings.length < 2 ? null : (
            <button
              type="button"
              className="button"
              data-kind="quiet"
              onClick={() =>
                edit(`${field.label}: last reading taken away`, (job) =>
                  field.set(job, withoutLastRepeat(value)),
                )
              }
            >
              Take the last one away
            </button>
          )}
        </div>
      ))}
    </div>
  );
}
