/** From where on something is worth a word, and the few sizes that are only asked here. Empty fields have the usual value. */
import { setCrestDrop, setJawEdge, setLooseness, setThreshold } from '../../model/edit/edit-thresholds.ts';
import { USUAL_THRESHOLDS_MM } from '../../model/rest/thresholds.ts';
import type { Thresholds } from '../../model/schema/job-schema.ts';
import { formatLength } from '../../model/units/format-length.ts';
import type { FieldSpec } from '../measure/field-spec.ts';
import type { HelpTopic } from '../measure/help-text.ts';
import { LengthField } from '../measure/length-field.tsx';
import type { Look } from '../shared/look.ts';

type Row = readonly [name: keyof Thresholds, label: string, help: HelpTopic];

const ROWS: readonly Row[] = [
  ['driverEngagement', 'Driver past the line, key out, at least', 'driver'],
  ['springMargin', 'Spring left before solid, at least', 'spring solid'],
  ['readingsSpread', 'Readings of a cut differ by', 'root depth'],
  ['plugSpread', 'Readings of the plug differ by', 'plug'],
  ['thinnestMasterPin', 'Thinnest master pin', 'pin length'],
  ['crestLow', 'Crest lower than half the plug by', 'plug'],
  ['keyMoved', 'Try the key lifted or drawn up to', 'metal under key'],
  ['depthStep', 'Step between depths, if it has one', 'root depth'],
];

/** mm */
const PLAUSIBLE = { fromMm: 0.002, toMm: 3 };

export function ThresholdsBlock({ look }: { readonly look: Look }) {
  const { job, bench } = look;
  const { unit } = job.settings;
  const { cylinder } = bench;
  const sizes: readonly FieldSpec[] = [
    ...(['endPlay', 'keywayWidth'] as const).map(
      (name): FieldSpec => ({
        id: `cylinder/${cylinder.id}/${name}`,
        label: name === 'endPlay' ? 'End play of the plug' : 'Slot under the chambers, width',
        value: cylinder[name],
        set: (changed, value) => setLooseness(changed, cylinder.id, name, value),
        plausible: { fromMm: 0.002, toMm: name === 'endPlay' ? 2 : 8 },
        help: name === 'endPlay' ? 'play' : 'chamber diameter',
      }),
    ),
    {
      id: `cylinder/${cylinder.id}/crestDrop`,
      label: 'Crest lower than half the plug, filed or worn',
      value: cylinder.bodies[0]?.crestDrop,
      set: (changed, value) => setCrestDrop(changed, cylinder.id, value),
      plausible: { fromMm: 0, toMm: 1.5 },
      help: 'plug',
    },
    ...job.instruments
      .filter(({ id }) => id === job.settings.instrument)
      .map(
        ({ id, label, jawEdge }): FieldSpec => ({
          id: `instrument/${id}/jawEdge`,
          label: `Jaw edge laid into a cut, ${label}`,
          value: jawEdge,
          set: (changed, value) => setJawEdge(changed, id, value),
          plausible: { fromMm: 0.05, toMm: 6 },
          help: 'root depth',
        }),
      ),
  ];
  return (
    <>
      <p className="check-lead">
        None of these decides whether it turns; they say from where on you are told. Common practice, no
        source.
      </p>
      <div className="field-grid">
        {ROWS.map(([name, label, help]) => (
          <LengthField
            key={name}
            isLabelShown
            field={{
              id: `threshold/${name}`,
              label,
              value: job.settings.thresholds?.[name],
              set: (changed, value) => setThreshold(changed, name, value),
              plausible: PLAUSIBLE,
              help,
            }}
            placeholder={name === 'depthStep' ? '–' : formatLength(USUAL_THRESHOLDS_MM[name], { unit })}
          />
        ))}
      </div>
      <h3>Asked only here</h3>
      <div className="field-grid">
        {sizes.map((field) => (
          <LengthField key={field.id} isLabelShown field={field} />
        ))}
      </div>
    </>
  );
}
