/**
 * The practice cylinder of a learner: real readings typed, the seal opened by whoever teaches, marks first, then the true
 * figures beside the readings. What was under the seal is held by this page only while it is open.
 */
import { useId, useState } from 'react';
import { readPracticeFile } from '../../model/learning/practice-file.ts';
import {
  type FigureName,
  type Figures,
  figureNames,
  figureRange,
  type PracticeCard,
} from '../../model/learning/practice-figures.ts';
import type { PracticeOnBench } from '../../state/learning-store.ts';
import { useDesk, useLearning } from './desk-context.ts';
import { figureLabel, FigureFields } from './figure-fields.tsx';
import { FileChoice } from './file-choice.tsx';
import { fill } from './fill.ts';
import { PracticeMarks } from './practice-marks.tsx';
import { typedMm } from './typed-length.tsx';
import { useWords } from './words-context.ts';

export function PracticePage() {
  const { station, practice } = useWords();
  const onBench = useLearning((state) => state.practice);
  return (
    <article className="lesson" aria-labelledby="lesson">
      <h2 id="lesson">{station.pages.practice}</h2>
      <p className="learn-lead">{practice.lead}</p>
      {onBench === null ? <p className="quiet">{practice.none}</p> : <OnBench {...onBench} />}
      <OpenPractice />
    </article>
  );
}

function OnBench({ file, typed }: PracticeOnBench) {
  const { practice, common, tongue } = useWords();
  const { store } = useDesk();
  const [truth, setTruth] = useState<Figures | null>(null);
  const { card } = file;
  const put = (texts: Readonly<Record<string, string>>) =>
    store.getState().set({ practice: { file, typed: texts } });
  const read = readAll(card, typed, tongue);
  return (
    <>
      <h3 className="practice-card">
        {fill(
          practice.card,
          { label: card.label, unit: card.unit === 'in' ? common.unitIn : common.unitMm },
          { unit: card.unit, tongue },
        )}
      </h3>
      <FigureFields
        card={card}
        typed={typed}
        isReadOnly={truth !== null}
        onType={(name, text) => put({ ...typed, [name]: text })}
      />
      {truth === null ? (
        <MarkForm file={file} missing={read.missing} onOpened={setTruth} />
      ) : (
        <PracticeMarks card={card} truth={truth} read={read.figures} />
      )}
      <div className="question-buttons no-print">
        {truth === null ? null : (
          <button
            type="button"
            className="button"
            onClick={() => {
              setTruth(null);
              put({});
            }}
          >
            {practice.again}
          </button>
        )}
        <button
          type="button"
          className="button"
          data-kind="quiet"
          onClick={() => store.getState().set({ practice: null })}
        >
          {practice.put}
        </button>
      </div>
    </>
  );
}

/** The readings that are there, and which are not. */
export function readAll(
  card: PracticeCard,
  typed: Readonly<Record<string, string>>,
  tongue: string,
): { readonly figures: Figures; readonly missing: readonly FigureName[] } {
  const pairs = figureNames(card.chambers).map(
    (name) => [name, typedMm(typed[name] ?? '', tongue, card.unit, figureRange(name))] as const,
  );
  return {
    figures: Object.fromEntries(pairs.filter(([, mm]) => mm !== null)) as Figures,
    missing: pairs.filter(([, mm]) => mm === null).map(([name]) => name),
  };
}

type MarkFormProps = {
  readonly file: PracticeOnBench['file'];
  readonly missing: readonly FigureName[];
  readonly onOpened: (truth: Figures) => void;
};

function MarkForm({ file, missing, onOpened }: MarkFormProps) {
  const { practice, station, tongue } = useWords();
  const { open } = useDesk();
  const id = useId();
  const [passphrase, setPassphrase] = useState('');
  const [told, setTold] = useState('');
  const [isWorking, setWorking] = useState(false);
  const mark = async () => {
    const [first] = missing;
    if (first !== undefined) {
      const what = figureLabel(first, practice.figures);
      setTold(fill(station.lengths.missing, { what }, { unit: file.card.unit, tongue }));
      return;
    }
    setTold('');
    setWorking(true);
    const opened = await open(file, passphrase);
    setWorking(false);
    if (opened.type === 'figures') onOpened(opened.figures);
    else setTold(opened.reason === 'damaged' ? practice.damaged : practice.wrong);
  };
  return (
    <form
      className="practice-mark"
      onSubmit={(event) => {
        event.preventDefault();
        if (!isWorking) void mark();
      }}
    >
      <h3>{practice.mark}</h3>
      <div className="learn-length">
        <label className="learn-label" htmlFor={id}>
          {practice.marking}
        </label>
        <input
          id={id}
          className="learn-input"
          type="password"
          autoComplete="off"
          value={passphrase}
          onChange={(event) => setPassphrase(event.target.value)}
        />
      </div>
      <button type="submit" className="button" data-kind="main" aria-disabled={isWorking}>
        {practice.markButton}
      </button>
      <p className="question-lacks" role="alert">
        {told}
      </p>
      <p className="small quiet" role="status">
        {isWorking ? practice.working : ''}
      </p>
    </form>
  );
}

function OpenPractice() {
  const { practice } = useWords();
  const { store } = useDesk();
  const take = (text: string) => {
    const opened = readPracticeFile(text);
    if (opened.type === 'error') return practice.faults[opened.fault];
    store.getState().set({ practice: { file: opened.file, typed: {} } });
    return '';
  };
  return <FileChoice label={practice.open} onText={take} className="no-print" />;
}
