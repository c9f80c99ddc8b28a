/**
 * One reading of a spring on a scale: pressed to a length, what it presses with. Kept here until both are said; then the job
 * has it. Emptying either takes the reading out of the job.
 */
import { useState } from 'react';
import { type Pressed, setPressed } from '../../model/edit/edit-spring.ts';
import type { Job } from '../../model/schema/job-schema.ts';
import type { LengthValue } from '../../model/schema/leaf.ts';
import type { Part } from '../../model/schema/parts-schema.ts';
import { parseForce } from '../../model/units/parse-quantity.ts';
import { PLAUSIBLE } from '../measure/field-spec.ts';
import { LengthField } from '../measure/length-field.tsx';
import { useEdit } from '../shared/services.tsx';
import { PlainField } from './plain-field.tsx';

type Half = { readonly length: LengthValue | undefined; readonly newtons: number | undefined };

export function PressedField({ part, which }: { readonly part: Part; readonly which: 0 | 1 }) {
  const edit = useEdit();
  const [half, setHalf] = useState<Half>({ length: undefined, newtons: undefined });
  const reading: Pressed | undefined = part.pressed?.[which];
  const { length, newtons } = reading ?? half;
  const stored = (job: Job, next: Half): Job => {
    setHalf(next);
    if (next.length !== undefined && next.newtons !== undefined)
      return setPressed(job, part.id, which, { length: next.length, newtons: next.newtons });
    return reading === undefined ? job : setPressed(job, part.id, which, null);
  };
  const nth = which === 0 ? 'first' : 'second';
  return (
    <div className="pressed-field">
      <LengthField
        field={{
          id: `part/${part.id}/pressed/${which}`,
          label: `Pressed to, ${nth} time, ${part.label}`,
          value: length,
          set: (job, value) => stored(job, { length: value, newtons }),
          plausible: PLAUSIBLE.spring,
          help: 'spring free',
        }}
        isLabelShown
        shortLabel={which === 0 ? 'Pressed to' : 'and to'}
      />
      <PlainField
        label={`Presses with, ${nth} time, ${part.label}`}
        isLabelShown
        shortLabel="it presses with"
        value={newtons === undefined ? '' : `${Number(newtons.toPrecision(4))} N`}
        size={7}
        commit={(text) => {
          const force = parseForce(text);
          if (force.type === 'error') return force.message;
          const next = { length, newtons: force.type === 'empty' ? undefined : force.value };
          edit(`${part.label}: presses with, ${nth} time`, (job) => stored(job, next));
          return null;
        }}
      />
    </div>
  );
}
