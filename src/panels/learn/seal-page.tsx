/** The true figures of a practice cylinder, typed by whoever teaches and sealed; once sealed they leave the page. */
import { useId, useState } from 'react';
import { readPracticeFile } from '../../model/learning/practice-file.ts';
import { LONGEST_LABEL, MOST_CHAMBERS, type PracticeCard } from '../../model/learning/practice-figures.ts';
import { Choice } from '../shared/choice.tsx';
import { usePreference } from '../shared/services.tsx';
import { useDesk } from './desk-context.ts';
import { figureLabel, FigureFields } from './figure-fields.tsx';
import { fill } from './fill.ts';
import { readAll } from './practice-page.tsx';
import type { Page } from './use-page.ts';
import { useWords } from './words-context.ts';

/** Shorter ones are guessed. */
const LEAST_CHARACTERS = 10;

type Draft = {
  readonly label: string;
  readonly unit: PracticeCard['unit'];
  readonly chambers: number;
  readonly typed: Readonly<Record<string, string>>;
  readonly passphrase: string;
  readonly again: string;
};

export function SealPage({ open }: { readonly open: (page: Page) => void }) {
  const { station, practice, common } = useWords();
  const { seal: words } = practice;
  const preferred = usePreference(({ unit }) => unit);
  const [empty] = useState<Draft>({
    label: '',
    unit: preferred,
    chambers: 3,
    typed: {},
    passphrase: '',
    again: '',
  });
  const [draft, setDraft] = useState(empty);
  const change = (changes: Partial<Draft>) => setDraft({ ...draft, ...changes });
  return (
    <article className="lesson" aria-labelledby="lesson">
      <h2 id="lesson">{station.pages.seal}</h2>
      <p className="learn-lead">{words.lead}</p>
      <div className="teach-figures">
        <TextField
          label={words.label}
          note={words.labelExample}
          value={draft.label}
          most={LONGEST_LABEL}
          onChange={(label) => change({ label })}
        />
        <ChambersChoice value={draft.chambers} onChoose={(chambers) => change({ chambers })} />
        <Choice
          question={common.unitChoice}
          value={draft.unit}
          options={[
            { value: 'in', label: common.unitIn },
            { value: 'mm', label: common.unitMm },
          ]}
          onChoose={(unit) => change({ unit })}
        />
      </div>
      <FigureFields
        card={draft}
        typed={draft.typed}
        onType={(name, text) => change({ typed: { ...draft.typed, [name]: text } })}
      />
      <div className="teach-figures">
        <TextField
          label={words.passphrase}
          isSecret
          value={draft.passphrase}
          onChange={(passphrase) => change({ passphrase })}
        />
        <TextField label={words.again} isSecret value={draft.again} onChange={(again) => change({ again })} />
      </div>
      <SealButtons draft={draft} onSealed={() => setDraft(empty)} open={open} />
      <section className="question-why">
        <h3>{words.protects}</h3>
        <p>{words.protectsText}</p>
        <h3>{words.protectsNot}</h3>
        <p>{words.protectsNotText}</p>
      </section>
    </article>
  );
}

function ChambersChoice({
  value,
  onChoose,
}: {
  readonly value: number;
  readonly onChoose: (chambers: number) => void;
}) {
  const { practice } = useWords();
  const id = useId();
  return (
    <div className="learn-length">
      <label className="learn-label" htmlFor={id}>
        {practice.seal.chambers}
      </label>
      <select
        id={id}
        className="learn-input"
        value={value}
        onChange={(event) => onChoose(Number(event.target.value))}
      >
        {Array.from({ length: MOST_CHAMBERS }, (_, i) => (
          <option key={i} value={i + 1}>
            {i + 1}
          </option>
        ))}
      </select>
    </div>
  );
}

type SealButtonsProps = {
  readonly draft: Draft;
  readonly onSealed: () => void;
  readonly open: (page: Page) => void;
};

function SealButtons({ draft, onSealed, open }: SealButtonsProps) {
  const { practice, station, tongue } = useWords();
  const { seal: words } = practice;
  const { seal, save, store } = useDesk();
  const [told, setTold] = useState('');
  const [done, setDone] = useState('');
  const [isWorking, setWorking] = useState(false);
  const ruler = { unit: draft.unit, tongue };
  const { figures, missing } = readAll({ ...draft }, draft.typed, tongue);
  const problem = () => {
    const [first] = missing;
    const { label, passphrase, again } = draft;
    if (label.trim() === '') return words.labelMissing;
    if (first !== undefined)
      return fill(station.lengths.missing, { what: figureLabel(first, practice.figures) }, ruler);
    if (passphrase.length < LEAST_CHARACTERS)
      return fill(words.short, { count: String(passphrase.length) }, ruler);
    return passphrase === again ? null : words.differ;
  };
  const run = async (then: (text: string) => Promise<string | null>) => {
    const wrong = problem();
    setDone('');
    setTold(wrong ?? '');
    if (wrong !== null || isWorking) return;
    setWorking(true);
    const { label, unit, chambers, passphrase } = draft;
    const text = await seal({ label: label.trim(), unit, chambers }, figures, passphrase);
    const said = await then(text);
    setWorking(false);
    if (said === null) return;
    setDone(said);
    onSealed();
  };
  const saveFile = async (text: string) => {
    const saved = await save(text, words.fileName);
    if (saved.type === 'saved')
      return `${words.done} ${fill(station.files.saved, { name: saved.name }, ruler)}`;
    if (saved.type === 'failed') setTold(station.files.failed);
    return null;
  };
  const layOut = (text: string) => {
    const read = readPracticeFile(text);
    if (read.type === 'practice') store.getState().set({ practice: { file: read.file, typed: {} } });
    open({ kind: 'practice' });
    return Promise.resolve(words.done);
  };
  return (
    <>
      <div className="question-buttons">
        <button
          type="button"
          className="button"
          data-kind="main"
          aria-disabled={isWorking}
          onClick={() => void run(saveFile)}
        >
          {words.button}
        </button>
        <button type="button" className="button" aria-disabled={isWorking} onClick={() => void run(layOut)}>
          {words.layOut}
        </button>
      </div>
      <p className="question-lacks" role="alert">
        {told}
      </p>
      <p className="small quiet" role="status">
        {isWorking ? words.working : done}
      </p>
    </>
  );
}

type TextFieldProps = {
  readonly label: string;
  readonly note?: string;
  readonly value: string;
  readonly most?: number;
  readonly isSecret?: boolean;
  readonly onChange: (text: string) => void;
};

function TextField({ label, note, value, most, isSecret = false, onChange }: TextFieldProps) {
  const id = useId();
  return (
    <div className="learn-length">
      <label className="learn-label" htmlFor={id}>
        {label}
      </label>
      <input
        id={id}
        className="learn-input"
        type={isSecret ? 'password' : 'text'}
        autoComplete={isSecret ? 'new-password' : 'off'}
        maxLength={most}
        value={value}
        aria-describedby={note === undefined ? undefined : `${id}note`}
        onChange={(event) => onChange(event.target.value)}
      />
      {note === undefined ? null : (
        <p className="choice-note" id={`${id}note`}>
          {note}
        </p>
      )}
    </div>
  );
}
