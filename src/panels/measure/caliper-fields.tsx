import {
  closedReading,
  currentInstrument,
  type InstrumentKind,
  setClosedReading,
  takeUpInstrument,
} from '../../model/edit/instruments.ts';
import { formatLength } from '../../model/units/format-length.ts';
import { Choice } from '../shared/choice.tsx';
import type { Look } from '../shared/look.ts';
import { type Services, useEdit, usePreference, useServices } from '../shared/services.tsx';
import { type FieldSpec, PLAUSIBLE } from './field-spec.ts';
import { LengthField } from './length-field.tsx';

const KINDS: readonly { readonly value: InstrumentKind; readonly label: string }[] = [
  { value: 'digital caliper', label: 'Digital caliper' },
  { value: 'dial caliper', label: 'Dial caliper' },
  { value: 'micrometer', label: 'Micrometer' },
];

/** Which instrument is in hand, what it reads closed, and whether it types by itself. */
export function CaliperFields({ look }: { readonly look: Look }) {
  const edit = useEdit();
  const services = useServices();
  const { newId, now, preferences } = services;
  const isTyping = usePreference((each) => each.caliper);
  const { job } = look;
  const { unit } = job.settings;
  const instrument = currentInstrument(job);
  const closed: FieldSpec = {
    id: `session/${job.settings.session ?? 'new'}/closedReading`,
    label: 'Closed, it reads',
    value: closedReading(job) ?? undefined,
    set: (before, value) =>
      setClosedReading(before, value === undefined ? undefined : withoutSession(value), { newId, at: now() }),
    plausible: PLAUSIBLE.closedReading,
    help: 'caliper closed',
    isSigned: true,
  };
  const error = (mm: number) => formatLength(mm, { unit, form: 'screen', hasUnit: true });
  return (
    <div className="question-with-field">
      <Choice
        question="In your hand"
        options={KINDS}
        value={instrument?.kind ?? null}
        onChoose={(kind) => {
          edit(`Took up the ${kind}`, (before) => takeUpInstrument(before, kind, newId));
          rememberInstrument(services);
        }}
        {...(instrument !== null && {
          note: `Steps of ${error(instrument.resolutionMm)}, good to ±${error(instrument.maxPermissibleErrorMm)}${
            instrument.source === 'assumed' ? ', assumed' : ''
          }.`,
        })}
      />
      <LengthField
        field={closed}
        isLabelShown
        shortLabel="Closed, it reads"
        placeholder={unit === 'in' ? '.0000' : '0.00'}
      />
      <Choice
        question="Does it type into the field by itself?"
        options={[
          { value: 'on', label: 'Yes' },
          { value: 'off', label: 'No' },
        ]}
        value={isTyping}
        onChoose={(caliper) => preferences.getState().set({ caliper })}
      />
    </div>
  );
}

/** The next job starts with what is in the hand now. */
function rememberInstrument({ document, preferences }: Services): void {
  const inHand = currentInstrument(document.getState().job);
  if (inHand === null) return;
  const { label, kind, resolutionMm, maxPermissibleErrorMm, repeatabilityMm, source } = inHand;
  const instrument = { label, kind, resolutionMm, maxPermissibleErrorMm, repeatabilityMm, source };
  preferences.getState().set({ instrument });
}

/** The reading closed is the zero itself: nothing corrects it. */
function withoutSession(value: NonNullable<FieldSpec['value']>): NonNullable<FieldSpec['value']> {
  return { ...value, readings: value.readings.map((reading) => ({ ...reading, session: null })) };
}
