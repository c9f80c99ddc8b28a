/** What a spring is wound of, or what it presses with: either tells its force. Asked beside its two lengths, never needed. */
import { useState } from 'react';
import {
  setCoilEnds,
  setCoils,
  setSpringWire,
  type SpringWire,
  SPRING_WIRES,
  springWireOf,
} from '../../model/edit/edit-spring.ts';
import { setPartLength } from '../../model/edit/edit-stack.ts';
import { measureSpring } from '../../model/rest/measured-spring.ts';
import type { Part } from '../../model/schema/parts-schema.ts';
import { parseCoils } from '../../model/units/parse-quantity.ts';
import { PLAUSIBLE } from '../measure/field-spec.ts';
import { LengthField } from '../measure/length-field.tsx';
import { Choice } from '../shared/choice.tsx';
import { useEdit } from '../shared/services.tsx';
import { PlainField } from './plain-field.tsx';
import { PressedField } from './pressed-field.tsx';

const WIRES: Readonly<Record<SpringWire, string>> = {
  'music wire': 'Steel (music wire)',
  'stainless steel': 'Stainless steel',
  'phosphor bronze': 'Phosphor bronze',
};

const ENDS: Readonly<Record<NonNullable<Part['coilEnds']>, string>> = {
  closed: 'Closed',
  'closed and ground': 'Closed and ground flat',
  open: 'Open',
};

export function SpringQuestions({ part }: { readonly part: Part }) {
  const edit = useEdit();
  const { rate } = measureSpring(part);
  const [isOpen, setOpen] = useState(() => rate !== null || isBegun(part));
  return (
    <details
      className="fold part-more"
      open={isOpen}
      onToggle={({ currentTarget }) => setOpen(currentTarget.open)}
    >
      <summary>
        <span className="fold-title">How strong it is</span>
        <span className="fold-summary quiet">{rateText(rate)}</span>
      </summary>
      <p className="small quiet">
        Press it on a scale to two lengths, or say what it is wound of. Without either, lengths are checked
        and force is not.
      </p>
      <div className="like-row">
        <PressedField part={part} which={0} />
        <PressedField part={part} which={1} />
      </div>
      <div className="like-row">
        <WireLength part={part} name="wire" short="Wire" />
        <WireLength part={part} name="diameter" short="Across the coils" />
        <div className="is-count">
          <PlainField
            label={`Coils of ${part.label}, the closed ones too`}
            isLabelShown
            shortLabel="Coils, all"
            value={part.coils === undefined ? '' : String(part.coils)}
            size={5}
            commit={(text) => {
              const reading = parseCoils(text);
              if (reading.type === 'error') return reading.message;
              const coils = reading.type === 'empty' ? undefined : reading.value;
              edit(`${part.label}: coils`, (job) => setCoils(job, part.id, coils));
              return null;
            }}
          />
        </div>
      </div>
      <div className="like-row">
        <Choice
          question="Its ends"
          options={(Object.keys(ENDS) as (keyof typeof ENDS)[]).map((value) => ({
            value,
            label: ENDS[value],
          }))}
          value={part.coilEnds ?? null}
          onChoose={(ends) => edit(`${part.label}: ends ${ends}`, (job) => setCoilEnds(job, part.id, ends))}
        />
        <Choice
          question="Wound of"
          options={(Object.keys(SPRING_WIRES) as SpringWire[]).map((value) => ({
            value,
            label: WIRES[value],
          }))}
          value={springWireOf(part.shearModulusGPa)}
          onChoose={(wire) => edit(`${part.label}: ${wire}`, (job) => setSpringWire(job, part.id, wire))}
        />
      </div>
    </details>
  );
}

function isBegun({ wire, coils, coilEnds, shearModulusGPa, pressed }: Part): boolean {
  return [wire, coils, coilEnds, shearModulusGPa, pressed].some((known) => known !== undefined);
}

function rateText(rate: number | null): string {
  return rate === null ? 'not known, not needed' : `about ${rate.toPrecision(2)} N for each mm`;
}

function WireLength({
  part,
  name,
  short,
}: {
  readonly part: Part;
  readonly name: 'wire' | 'diameter';
  readonly short: string;
}) {
  return (
    <LengthField
      field={{
        id: `part/${part.id}/${name}`,
        label: `${short}, ${part.label}`,
        value: part[name],
        set: (job, value) => setPartLength(job, part.id, name, value),
        plausible: name === 'wire' ? { fromMm: 0.05, toMm: 1.5 } : PLAUSIBLE.diameter,
        help: 'spring free',
      }}
      isLabelShown
      shortLabel={short}
    />
  );
}
