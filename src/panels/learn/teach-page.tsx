/** Sets put together: lessons and their order, round, unit, how close sums have to come; then link, file and answer key. */
import { useId, useState } from 'react';
import { MOST_SEED } from '../../model/learning/draw.ts';
import { LESSON_IDS, type LessonId } from '../../model/learning/lesson.ts';
import {
  type LessonSet,
  readSetFile,
  setFileText,
  setLink,
  steady,
  USUAL_TOLERANCE_MM,
} from '../../model/learning/lesson-set.ts';
import { TOLERANCE_FROM_MM, TOLERANCE_TO_MM } from '../../model/learning/tolerance.ts';
import { Choice } from '../shared/choice.tsx';
import { usePreference, useServices } from '../shared/services.tsx';
import { AnswerKey } from './answer-key.tsx';
import { useDesk } from './desk-context.ts';
import { FileChoice } from './file-choice.tsx';
import { fill, givenText } from './fill.ts';
import { SetLessons } from './set-lessons.tsx';
import { TypedLength, typedMm } from './typed-length.tsx';
import { type Page, seedOf } from './use-page.ts';
import { useWords } from './words-context.ts';

const TOLERANCES = { fromMm: TOLERANCE_FROM_MM, toMm: TOLERANCE_TO_MM };

type Draft = {
  readonly lessons: readonly LessonId[];
  readonly seed: string;
  readonly unit: LessonSet['unit'];
  readonly tolerance: string;
};

export function TeachPage({ open }: { readonly open: (page: Page) => void }) {
  const { teach, tongue } = useWords();
  const { newId } = useServices();
  const preferred = usePreference(({ unit }) => unit);
  const [draft, setDraft] = useState<Draft>(() => ({
    lessons: LESSON_IDS.slice(0, 3),
    seed: String(seedOf(newId())),
    unit: preferred,
    tolerance: givenText(USUAL_TOLERANCE_MM, { unit: preferred, tongue }),
  }));
  const set = setOf(draft, tongue);
  return (
    <article className="lesson learn-teach" aria-labelledby="lesson">
      <h2 id="lesson">{teach.heading}</h2>
      <p className="quiet">{teach.lead}</p>
      <SetLessons lessons={draft.lessons} onChange={(lessons) => setDraft({ ...draft, lessons })} />
      <SetFigures draft={draft} onChange={setDraft} />
      {set === null ? null : <SetTools key={setLink(set)} set={set} open={open} />}
      <OpenSet
        onOpen={(opened) =>
          setDraft({
            ...opened,
            seed: String(opened.seed),
            tolerance: givenText(opened.toleranceMm, { unit: opened.unit, tongue }),
          })
        }
      />
    </article>
  );
}

/** Null while something is still wrong or missing. */
function setOf({ lessons, seed, unit, tolerance }: Draft, tongue: string): LessonSet | null {
  const mm = typedMm(tolerance, tongue, unit, TOLERANCES);
  if (lessons.length === 0 || mm === null || !isSeed(seed)) return null;
  return { lessons, seed: Number(seed), unit, toleranceMm: steady(mm) };
}

function isSeed(text: string): boolean {
  return /^\s*\d{1,6}\s*$/u.test(text) && Number(text) <= MOST_SEED;
}

type SetFiguresProps = { readonly draft: Draft; readonly onChange: (draft: Draft) => void };

function SetFigures({ draft, onChange }: SetFiguresProps) {
  const { teach, common, tongue } = useWords();
  const id = useId();
  const isWrong = !isSeed(draft.seed);
  const ruler = { unit: draft.unit, tongue };
  return (
    <div className="teach-figures">
      <div className="learn-length">
        <label className="learn-label" htmlFor={id}>
          {teach.seed}
        </label>
        <input
          id={id}
          className="learn-input number"
          type="text"
          inputMode="numeric"
          autoComplete="off"
          size={7}
          value={draft.seed}
          aria-invalid={isWrong}
          aria-describedby={`${id}note`}
          onChange={(event) => onChange({ ...draft, seed: event.target.value })}
        />
        <p className="choice-note" id={`${id}note`}>
          {isWrong ? fill(teach.seedWrong, { typed: draft.seed }, ruler) : teach.seedNote}
        </p>
      </div>
      <TypedLength
        label={teach.tolerance}
        text={draft.tolerance}
        unit={draft.unit}
        range={TOLERANCES}
        note={teach.toleranceNote}
        onText={(tolerance) => onChange({ ...draft, tolerance })}
      />
      <Choice
        question={common.unitChoice}
        value={draft.unit}
        options={[
          { value: 'in', label: common.unitIn },
          { value: 'mm', label: common.unitMm },
        ]}
        onChoose={(unit) => onChange({ ...draft, unit })}
      />
    </div>
  );
}

type SetToolsProps = { readonly set: LessonSet; readonly open: (page: Page) => void };

function SetTools({ set, open }: SetToolsProps) {
  const { teach, paper, station, tongue } = useWords();
  const { save } = useDesk();
  const id = useId();
  const [told, setTold] = useState('');
  const [isKeyShown, setKeyShown] = useState(false);
  const link = new URL(setLink(set), window.location.href).href;
  const copy = async () => {
    try {
      await navigator.clipboard.writeText(link);
      setTold(teach.copied);
    } catch {
      setTold(teach.notCopied);
    }
  };
  const saveFile = async () => {
    const saved = await save(setFileText(set), teach.fileName);
    if (saved.type === 'cancelled') return;
    setTold(
      saved.type === 'saved'
        ? fill(station.files.saved, { name: saved.name }, { unit: set.unit, tongue })
        : station.files.failed,
    );
  };
  return (
    <>
      <div className="teach-link">
        <label className="learn-label" htmlFor={id}>
          {teach.link}
        </label>
        <input
          id={id}
          className="learn-input number"
          type="text"
          readOnly
          value={link}
          onFocus={(event) => event.currentTarget.select()}
        />
      </div>
      <div className="question-buttons">
        <button type="button" className="button" data-kind="main" onClick={() => void copy()}>
          {teach.copy}
        </button>
        <button type="button" className="button" onClick={() => void saveFile()}>
          {teach.save}
        </button>
        <button type="button" className="button" onClick={() => open({ kind: 'set', set })}>
          {teach.tryIt}
        </button>
        <button
          type="button"
          className="button"
          aria-expanded={isKeyShown}
          onClick={() => setKeyShown(!isKeyShown)}
        >
          {isKeyShown ? paper.hideKey : paper.showKey}
        </button>
      </div>
      <p className="small" role="status">
        {told}
      </p>
      {isKeyShown ? <AnswerKey set={set} /> : null}
    </>
  );
}

function OpenSet({ onOpen }: { readonly onOpen: (set: LessonSet) => void }) {
  const { teach, tongue } = useWords();
  const take = (text: string) => {
    const opened = readSetFile(text);
    if (opened.type === 'error') {
      const { fault, part } = opened.fault;
      return fill(teach.faults[fault], { part }, { unit: 'in', tongue });
    }
    onOpen(opened.set);
    return '';
  };
  return <FileChoice label={teach.open} onText={take} />;
}
