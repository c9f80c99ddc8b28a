/** One pin measured ten times: expect a spread, measure, see mean, spread and ±; then the same in a hurry. */
import { useState } from 'react';
import { type InstrumentKind, usualInstrument } from '../../model/edit/instruments.ts';
import { READINGS, type Scatter, scatterOf } from '../../model/learning/ten-readings.ts';
import { inchesToMm } from '../../model/units/length-unit.ts';
import { Choice } from '../shared/choice.tsx';
import { usePreference } from '../shared/services.tsx';
import { useDesk, useLearning } from './desk-context.ts';
import { countText, fill, lengthText, type Ruler } from './fill.ts';
import { ScatterPicture } from './scatter-picture.tsx';
import { TypedLength, typedMm } from './typed-length.tsx';
import { useWords } from './words-context.ts';

const PIN = { fromMm: inchesToMm(0.05), toMm: inchesToMm(0.6) };
const APART = { fromMm: 0, toMm: inchesToMm(0.02) };
const CALIPERS = ['digital caliper', 'dial caliper', 'micrometer'] as const;
type Caliper = (typeof CALIPERS)[number];

export function TenPage() {
  const { ten, station, common, tongue } = useWords();
  const { store } = useDesk();
  const unit = usePreference((preferences) => preferences.unit);
  const kind = usePreference(({ instrument }) => instrument?.kind);
  const careful = useLearning((state) => state.careful);
  const hurried = useLearning((state) => state.hurried);
  const ruler: Ruler = { unit, tongue };
  const [guess, setGuess] = useState('');
  const [isLocked, setLocked] = useState(careful.length > 0);
  const [caliper, setCaliper] = useState<Caliper>(caliperOf(kind));
  const expected = typedMm(guess, tongue, unit, APART);
  const read = (texts: readonly string[]) => texts.flatMap((text) => typedMm(text, tongue, unit, PIN) ?? []);
  const own = usualInstrument(caliper, 'own', unit);
  const scatter = (texts: readonly string[]) => {
    const lengths = read(texts);
    return lengths.length < READINGS ? null : scatterOf(lengths, own);
  };
  const calm = scatter(careful);
  const fast = scatter(hurried);
  return (
    <article className="lesson" aria-labelledby="lesson">
      <h2 id="lesson">{station.pages.ten}</h2>
      <p className="lesson-idea">{fill(common.manySay, { idea: ten.idea }, ruler)}</p>
      <p className="learn-lead">{ten.lead}</p>
      <Choice
        question={ten.caliper}
        value={caliper}
        options={CALIPERS.map((value) => ({ value, label: ten.calipers[value] }))}
        onChoose={setCaliper}
      />
      {!isLocked ? (
        <form
          className="question-form"
          onSubmit={(event) => {
            event.preventDefault();
            if (expected !== null) setLocked(true);
          }}
        >
          <TypedLength
            label={ten.predict}
            text={guess}
            unit={unit}
            range={APART}
            note={ten.predictNote}
            onText={setGuess}
          />
          <button type="submit" className="button" data-kind="start" aria-disabled={expected === null}>
            {ten.lock}
          </button>
        </form>
      ) : (
        <>
          {expected === null ? null : <p>{fill(ten.locked, { by: lengthText(expected, ruler) }, ruler)}</p>}
          <Readings
            title={ten.careful}
            texts={careful}
            ruler={ruler}
            onTexts={(texts) => store.getState().set({ careful: texts })}
          />
          {calm === null ? null : (
            <>
              <ScatterPicture
                careful={read(careful)}
                hurried={fast === null ? [] : read(hurried)}
                scatter={calm}
                ruler={ruler}
              />
              <Result scatter={calm} expected={expected} own={own.maxPermissibleErrorMm} ruler={ruler} />
              <p className="learn-lead">{ten.hurriedLead}</p>
              <Readings
                title={ten.hurried}
                texts={hurried}
                ruler={ruler}
                onTexts={(texts) => store.getState().set({ hurried: texts })}
              />
              {fast === null ? null : <Compared calm={calm} fast={fast} ruler={ruler} />}
              <div className="question-why">
                <h3>{common.atTheBench}</h3>
                <p>{ten.bench}</p>
              </div>
            </>
          )}
          <div className="question-buttons">
            <button
              type="button"
              className="button"
              data-kind="quiet"
              onClick={() => {
                store.getState().set({ careful: [], hurried: [] });
                setGuess('');
                setLocked(false);
              }}
            >
              {ten.startOver}
            </button>
          </div>
        </>
      )}
    </article>
  );
}

function caliperOf(kind: InstrumentKind | undefined): Caliper {
  return CALIPERS.find((each) => each === kind) ?? 'digital caliper';
}

type ReadingsProps = {
  readonly title: string;
  readonly texts: readonly string[];
  readonly ruler: Ruler;
  readonly onTexts: (texts: readonly string[]) => void;
};

function Readings({ title, texts, ruler, onTexts }: ReadingsProps) {
  const { ten, tongue } = useWords();
  const { unit } = ruler;
  const missing = READINGS - texts.filter((text) => typedMm(text, tongue, unit, PIN) !== null).length;
  return (
    <fieldset className="ten-readings">
      <legend>{title}</legend>
      <ol>
        {Array.from({ length: READINGS }, (_, i) => (
          <li key={i}>
            <TypedLength
              label={fill(ten.reading, { number: String(i + 1) }, ruler)}
              text={texts[i] ?? ''}
              unit={unit}
              range={PIN}
              onText={(written) =>
                onTexts(
                  Array.from({ length: READINGS }, (__, at) => (at === i ? written : (texts[at] ?? ''))),
                )
              }
              onEnter={(event) => {
                event.preventDefault();
                const fields = event.currentTarget.closest('ol')?.querySelectorAll('input');
                fields?.[i + 1]?.focus();
              }}
            />
          </li>
        ))}
      </ol>
      <p className="small quiet" role="status">
        {missing === 0 ? '' : countText(missing, ten.more, tongue)}
      </p>
    </fieldset>
  );
}

type ResultProps = {
  readonly scatter: Scatter;
  readonly expected: number | null;
  readonly own: number;
  readonly ruler: Ruler;
};

function Result({ scatter, expected, own, ruler }: ResultProps) {
  const { ten } = useWords();
  const rows = ['mean', 'apart', 'deviation', 'meanDoubt', 'oneDoubt', 'splitDoubt'] as const;
  return (
    <section className="ten-result" aria-live="polite">
      <h3>{ten.result}</h3>
      {expected === null ? null : (
        <p className="question-result">
          {fill(
            ten.expected,
            { expected: lengthText(expected, ruler), apart: lengthText(scatter.apart, ruler) },
            ruler,
          )}
        </p>
      )}
      <dl>
        {rows.map((name) => (
          <div key={name}>
            <dt>{ten[name]}</dt>
            <dd className="number">{lengthText(scatter[name], ruler)}</dd>
          </div>
        ))}
      </dl>
      <p className="small quiet">{fill(ten.doubtNote, { own: `±${lengthText(own, ruler)}` }, ruler)}</p>
    </section>
  );
}

function Compared({
  calm,
  fast,
  ruler,
}: {
  readonly calm: Scatter;
  readonly fast: Scatter;
  readonly ruler: Ruler;
}) {
  const { ten } = useWords();
  const said = {
    hurried: lengthText(fast.oneDoubt, ruler),
    careful: lengthText(calm.oneDoubt, ruler),
    split: lengthText(fast.splitDoubt, ruler),
  };
  return (
    <p className="question-result" role="status">
      {fill(ten.compare, said, ruler)}
    </p>
  );
}
