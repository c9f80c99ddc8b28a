/** The answer key of a set: each question, the answer that the engine gives, what is seen, and why. On paper A4 or Letter. */
import { useId, useMemo } from 'react';
import { answerOf, roundOf } from '../../model/learning/ask.ts';
import type { LessonId } from '../../model/learning/lesson.ts';
import type { LessonSet } from '../../model/learning/lesson-set.ts';
import { readScene } from '../../model/learning/scene.ts';
import { fill, givenText } from './fill.ts';
import { PrintButton } from './learner-sheet.tsx';
import { askText, predictionText, whyText } from './prediction-words.ts';
import { sayAfter } from './scene-words.ts';
import { useWords } from './words-context.ts';

export function AnswerKey({ set }: { readonly set: LessonSet }) {
  const { paper, common, tongue } = useWords();
  const title = useId();
  const { unit, seed, toleranceMm } = set;
  const ruler = { unit, tongue };
  const unitName = unit === 'in' ? common.unitIn : common.unitMm;
  return (
    <section className="learn-paper" aria-labelledby={title}>
      <header className="paper-head">
        <h3 id={title}>{paper.key}</h3>
        <p className="paper-tally">
          {fill(paper.round, { seed: String(seed), unit: unitName }, ruler)}.{' '}
          {fill(paper.within, { by: givenText(toleranceMm, ruler) }, ruler)}
        </p>
      </header>
      <ol className="paper-key">
        {set.lessons.map((lesson) => (
          <KeyOfLesson key={lesson} lesson={lesson} set={set} />
        ))}
      </ol>
      <p className="small quiet no-print">{paper.keyNote}</p>
      <PrintButton />
    </section>
  );
}

function KeyOfLesson({ lesson, set }: { readonly lesson: LessonId; readonly set: LessonSet }) {
  const words = useWords();
  const { paper } = words;
  const { seed, unit, toleranceMm } = set;
  const round = useMemo(() => roundOf(lesson, seed, unit, toleranceMm), [lesson, seed, unit, toleranceMm]);
  const said = words.lessons[lesson];
  return (
    <li className="paper-lesson">
      <h4>{said.title}</h4>
      {round.steps.map((step) => (
        <dl key={step.id} className="paper-answer">
          <dt>{paper.asked}</dt>
          <dd>{askText(round, step, words)}</dd>
          <dt>{paper.right}</dt>
          <dd className="paper-right">{predictionText(answerOf(step), step, round, words)}</dd>
          <dt>{paper.seen}</dt>
          <dd>{sayAfter(readScene(step.truth), words, unit).join(' ')}</dd>
          <dt>{paper.why}</dt>
          <dd>{whyText(round, step, words)}</dd>
        </dl>
      ))}
      <p className="paper-bench">
        <span>{paper.benchWork}</span>
        <span>{said.bench}</span>
      </p>
    </li>
  );
}
