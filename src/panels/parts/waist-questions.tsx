/** What kind of driver a pin is when it stands above the line: plain, or with a waist, and where the waist is. */
import { setWaistKind, setWaistSize, type WaistSize } from '../../model/edit/edit-waist.ts';
import type { Part } from '../../model/schema/parts-schema.ts';
import { PLAUSIBLE } from '../measure/field-spec.ts';
import { LengthField } from '../measure/length-field.tsx';
import { Choice } from '../shared/choice.tsx';
import { useEdit } from '../shared/services.tsx';

const KINDS = ['plain', 'spool', 'serrated', 'mushroom'] as const;
type Kind = (typeof KINDS)[number];

const LABELS: Readonly<Record<Kind, string>> = {
  plain: 'Plain',
  spool: 'Spool',
  serrated: 'Serrated',
  mushroom: 'Mushroom',
};

/** The outline of each, standing 6 to 34 high and 19 to 37 across. */
const OUTLINES: Readonly<Record<Kind, string>> = {
  plain: 'M19 5H37V35H19Z',
  spool: 'M19 5H37V12L32 15V25L37 28V35H19V28L24 25V15L19 12Z',
  serrated: 'M19 5H37V11H33V14H37V18H33V21H37V25H33V28H37V35H19V28H23V25H19V21H23V18H19V14H23V11H19Z',
  mushroom: 'M24 5H32V20L37 29V35H19V29L24 20Z',
};

const SIZES: readonly { readonly name: WaistSize; readonly short: string }[] = [
  { name: 'from', short: 'Waist from the lower end' },
  { name: 'length', short: 'Waist, how long' },
  { name: 'diameter', short: 'Waist, across' },
];

export function WaistQuestions({ part }: { readonly part: Part }) {
  const edit = useEdit();
  const choose = (kind: Kind) =>
    edit(`${part.label}: ${LABELS[kind].toLowerCase()}`, (job) =>
      setWaistKind(job, part.id, kind === 'plain' ? null : kind),
    );
  return (
    <>
      <Choice
        question="As a driver"
        options={KINDS.map((kind) => ({
          value: kind,
          label: LABELS[kind],
          picture: (
            <svg className="shape-picture" viewBox="0 0 56 40" aria-hidden="true">
              <path className="picture-pin" d={OUTLINES[kind]} />
            </svg>
          ),
        }))}
        value={part.waist?.kind ?? 'plain'}
        onChoose={choose}
      />
      {part.waist === undefined ? null : (
        <div className="like-row">
          {SIZES.map(({ name, short }) => (
            <LengthField
              key={name}
              field={{
                id: `part/${part.id}/waist/${name}`,
                label: `${short}, ${part.label}`,
                value: part.waist?.[name],
                set: (job, value) => setWaistSize(job, part.id, name, value),
                plausible: name === 'diameter' ? PLAUSIBLE.diameter : { fromMm: 0.2, toMm: 20 },
                help: 'driver',
              }}
              isLabelShown
              shortLabel={short}
            />
          ))}
        </div>
      )}
    </>
  );
}
