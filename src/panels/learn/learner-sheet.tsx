/**
 * A learner's page: what was asked, what was predicted, what was seen, and the difference. Made again from the rounds and the
 * predictions, never from what was on the screen. On paper a page of its own, A4 or Letter.
 */
import { useId } from 'react';
import { answerOf, comesTrue, roundOf } from '../../model/learning/ask.ts';
import { isSameRound, type RoundRecord } from '../../model/learning/learner-record.ts';
import type { Prediction, Round, Step } from '../../model/learning/lesson.ts';
import { readScene } from '../../model/learning/scene.ts';
import { LONGEST_NAME } from '../../state/learning-store.ts';
import { useDesk, useLearning } from './desk-context.ts';
import { countText, fill, lengthText } from './fill.ts';
import { askText, predictionText } from './prediction-words.ts';
import { sayAfter } from './scene-words.ts';
import { useWords } from './words-context.ts';
import type { Words } from './words/words.ts';

type RoundKey = Omit<RoundRecord, 'answers'>;

type Row = {
  readonly round: Round;
  readonly step: Step;
  /** Undefined: not come to yet. */
  readonly prediction: Prediction | null | undefined;
};

export function LearnerSheet({ rounds }: { readonly rounds: readonly RoundKey[] }) {
  const words = useWords();
  const { paper, tongue } = words;
  const records = useLearning((state) => state.rounds);
  const title = useId();
  const sheets = rounds.map((key) => rowsOf(key, records));
  const predicted = sheets.flat().filter(({ prediction }) => prediction != null);
  const right = predicted.filter(({ step, prediction }) => comesTrue(step, prediction ?? ''));
  const tally = countText(predicted.length, paper.tally, tongue).replace('{right}', String(right.length));
  return (
    <section className="learn-paper" aria-labelledby={title}>
      <header className="paper-head">
        <h3 id={title}>{paper.page}</h3>
        <p className="paper-tally">{tally}</p>
        <NameLine />
      </header>
      {sheets.map((rows) => (
        <RoundRows key={roundName(rows)} rows={rows} words={words} />
      ))}
      <p className="small quiet">{paper.first}</p>
      <PrintButton />
    </section>
  );
}

function roundName(rows: readonly Row[]): string {
  const round = rows[0]?.round;
  return round === undefined ? '' : `${round.lesson} ${round.seed} ${round.unit} ${round.toleranceMm}`;
}

function rowsOf(key: RoundKey, records: readonly RoundRecord[]): readonly Row[] {
  const round = roundOf(key.lesson, key.seed, key.unit, key.toleranceMm);
  const answers = records.find((each) => isSameRound(each, key))?.answers ?? [];
  return round.steps.map((step) => ({
    round,
    step,
    prediction: answers.find((answer) => answer.step === step.id)?.prediction,
  }));
}

function RoundRows({ rows, words }: { readonly rows: readonly Row[]; readonly words: Words }) {
  const { paper, common, tongue } = words;
  const round = rows[0]?.round;
  if (round === undefined) return null;
  const { unit } = round;
  const unitName = unit === 'in' ? common.unitIn : common.unitMm;
  return (
    <section className="paper-lesson">
      <h4>
        {words.lessons[round.lesson].title}{' '}
        <span className="paper-round">
          {fill(paper.round, { seed: String(round.seed), unit: unitName }, { unit, tongue })}
        </span>
      </h4>
      <table className="paper-table">
        <thead>
          <tr>
            <th scope="col">{paper.asked}</th>
            <th scope="col">{paper.predicted}</th>
            <th scope="col">{paper.seen}</th>
            <th scope="col">{paper.difference}</th>
          </tr>
        </thead>
        <tbody>
          {rows.map(({ step, prediction }) => (
            <tr key={step.id}>
              <td>{askText(round, step, words)}</td>
              <td>{predictedText(prediction, step, round, words)}</td>
              <td>{prediction === undefined ? '' : seenText(step, round, words)}</td>
              <td>{differenceText(prediction, step, round, words)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

function predictedText(prediction: Row['prediction'], step: Step, round: Round, words: Words): string {
  if (prediction === undefined) return words.paper.notReached;
  return prediction === null ? words.paper.noPrediction : predictionText(prediction, step, round, words);
}

/** The right answer, and what the engine reads in the cylinder as it is. */
export function seenText(step: Step, round: Round, words: Words): string {
  const said = sayAfter(readScene(step.truth), words, round.unit).join(' ');
  const answer = predictionText(answerOf(step), step, round, words);
  return `${answer}${/[.!?]$/u.test(answer) ? '' : '.'} ${said}`;
}

function differenceText(prediction: Row['prediction'], step: Step, round: Round, words: Words): string {
  const { paper, tongue } = words;
  if (prediction == null) return '';
  if (comesTrue(step, prediction)) return `✓ ${paper.asPredicted}`;
  if (step.kind === 'choose') return `✗ ${paper.otherwise}`;
  const off = Number(prediction) - Number(answerOf(step));
  const ruler = { unit: round.unit, tongue };
  return `✗ ${fill(off > 0 ? paper.tooLarge : paper.tooSmall, { by: lengthText(off, ruler) }, ruler)}`;
}

export function NameLine() {
  const { paper } = useWords();
  const { store } = useDesk();
  const name = useLearning((state) => state.name);
  const id = useId();
  return (
    <p className="paper-name">
      <label htmlFor={id}>{paper.name}</label>
      <input
        id={id}
        className="paper-name-input no-print"
        type="text"
        autoComplete="off"
        maxLength={LONGEST_NAME}
        value={name}
        aria-describedby={`${id}note`}
        onChange={(event) => store.getState().set({ name: event.target.value })}
      />
      <span className="paper-written" aria-hidden="true">
        {name}
      </span>
      <span className="paper-date">{paper.date}</span>
      <span className="paper-written" aria-hidden="true" />
      <span className="small quiet no-print" id={`${id}note`}>
        {paper.nameNote}
      </span>
    </p>
  );
}

export function PrintButton() {
  const { paper } = useWords();
  return (
    <p className="paper-print no-print">
      <button type="button" className="button" data-kind="main" onClick={() => window.print()}>
        {paper.print}
      </button>{' '}
      <span className="small quiet">{paper.printNote}</span>
    </p>
  );
}
