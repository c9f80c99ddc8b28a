/** A lesson: its questions one after the other, then what to do at the bench and where to go on. */
import { type ReactNode, useMemo, useState } from 'react';
import { roundOf } from '../../model/learning/ask.ts';
import { recordAnswer } from '../../model/learning/learner-record.ts';
import type { LessonId, Prediction } from '../../model/learning/lesson.ts';
import type { LessonLink } from '../../model/learning/lesson-link.ts';
import { usePreference, useServices } from '../shared/services.tsx';
import { useDesk } from './desk-context.ts';
import { fill } from './fill.ts';
import { Question } from './question.tsx';
import { useWords } from './words-context.ts';

type LessonPageProps = {
  readonly link: LessonLink;
  /** mm; null: as the lesson has it. */
  readonly toleranceMm: number | null;
  /** "Lesson 3 of 17". */
  readonly place: string;
  /** Buttons that lead on, when the last question was seen. */
  readonly onward: ReactNode;
  readonly foot?: ReactNode;
};

export function LessonPage({ link, toleranceMm, place, onward, foot }: LessonPageProps) {
  const words = useWords();
  const { makeBench, store } = useDesk();
  const { common } = words;
  const { lesson, seed, unit } = link;
  const ruler = { unit, tongue: words.tongue };
  const round = useMemo(() => roundOf(lesson, seed, unit, toleranceMm), [lesson, seed, unit, toleranceMm]);
  const [at, setAt] = useState(0);
  const markSeen = useMarkSeen(lesson);
  const step = round.steps[at];
  const said = words.lessons[lesson];
  const isLast = at === round.steps.length - 1;
  if (step === undefined) return null;
  const onSeen = (prediction: Prediction | null) => {
    const { rounds, set } = store.getState();
    set({ rounds: recordAnswer(rounds, round, { step: step.id, prediction }) });
    if (isLast) markSeen();
  };
  return (
    <article className="lesson" aria-labelledby="lesson">
      <p className="small quiet">{place}</p>
      <h2 id="lesson">{said.title}</h2>
      <p className="lesson-idea">{fill(common.manySay, { idea: said.idea }, ruler)}</p>
      {round.steps.length < 2 ? null : (
        <p className="small quiet">
          {fill(common.step, { number: String(at + 1), count: String(round.steps.length) }, ruler)}
        </p>
      )}
      <Question
        key={at}
        round={round}
        step={step}
        make={makeBench}
        onSeen={onSeen}
        next={
          <>
            {isLast ? (
              <div className="question-why">
                <h3>{common.atTheBench}</h3>
                <p>{said.bench}</p>
              </div>
            ) : null}
            <div className="question-buttons">
              {isLast ? (
                onward
              ) : (
                <button
                  type="button"
                  className="button"
                  data-kind="start"
                  onClick={() => {
                    setAt(at + 1);
                    readQuestion();
                  }}
                >
                  {common.nextQuestion}
                </button>
              )}
            </div>
          </>
        }
      />
      {foot}
    </article>
  );
}

/** The question that comes next is read from its beginning, once it is there. */
export function readQuestion(): void {
  queueMicrotask(() => document.getElementById('question')?.focus());
}

function useMarkSeen(lesson: LessonId): () => void {
  const { preferences } = useServices();
  const seen = usePreference(({ seenLessons }) => seenLessons);
  return () => {
    if (!seen.includes(lesson)) preferences.getState().set({ seenLessons: [...seen, lesson] });
  };
}
