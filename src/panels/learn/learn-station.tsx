/** The station Learn: how stack height works, by predicting and then seeing. Nothing in it touches the person's job. */
import { useEffect, useMemo, useState } from 'react';
import { roundOf } from '../../model/learning/ask.ts';
import { MOST_SEED } from '../../model/learning/draw.ts';
import { LESSON_IDS, type LessonId } from '../../model/learning/lesson.ts';
import type { LessonLink } from '../../model/learning/lesson-link.ts';
import { type MakePracticeBench, usePreference, useServices } from '../shared/services.tsx';
import { fill } from './fill.ts';
import { LessonList } from './lesson-list.tsx';
import { Question } from './question.tsx';
import { RoundLink } from './round-link.tsx';
import { useLesson } from './use-lesson.ts';
import { useWords } from './words-context.ts';
import './learn.css';

export function LearnStation() {
  const { link, open } = useLesson();
  const { common } = useWords();
  const make = useMake();
  return (
    <div className="station learn">
      <header className="learn-head">
        <h2>{common.heading}</h2>
        <p className="quiet">{common.lead}</p>
      </header>
      <LessonList link={link} open={open} />
      <LessonPage key={`${link.lesson} ${link.seed} ${link.unit}`} link={link} open={open} make={make} />
    </div>
  );
}

/** What makes benches comes with its own code; until it is there, the question already stands. */
function useMake(): MakePracticeBench | null {
  const { practice } = useServices();
  const [make, setMake] = useState<MakePracticeBench | null>(null);
  useEffect(() => {
    let isWanted = true;
    void practice().then((made) => {
      if (isWanted) setMake(() => made);
    });
    return () => {
      isWanted = false;
    };
  }, [practice]);
  return make;
}

type LessonPageProps = {
  readonly link: LessonLink;
  readonly open: (link: LessonLink) => void;
  readonly make: MakePracticeBench | null;
};

function LessonPage({ link, open, make }: LessonPageProps) {
  const words = useWords();
  const { common } = words;
  const { lesson, seed, unit } = link;
  const round = useMemo(() => roundOf(lesson, seed, unit), [lesson, seed, unit]);
  const [at, setAt] = useState(0);
  const markSeen = useMarkSeen(lesson);
  const step = round.steps[at];
  const said = words.lessons[lesson];
  const isLast = at === round.steps.length - 1;
  const following = LESSON_IDS[LESSON_IDS.indexOf(lesson) + 1];
  if (step === undefined) return null;
  return (
    <article className="lesson" aria-labelledby="lesson">
      <p className="small quiet">
        {fill(
          common.place,
          { number: String(LESSON_IDS.indexOf(lesson) + 1), count: String(LESSON_IDS.length) },
          unit,
        )}
      </p>
      <h2 id="lesson">{said.title}</h2>
      <p className="lesson-idea">{fill(common.manySay, { idea: said.idea }, unit)}</p>
      {round.steps.length < 2 ? null : (
        <p className="small quiet">
          {fill(common.step, { number: String(at + 1), count: String(round.steps.length) }, unit)}
        </p>
      )}
      <Question
        key={at}
        round={round}
        step={step}
        make={make}
        onSeen={() => {
          if (isLast) markSeen();
        }}
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
                <>
                  <button
                    type="button"
                    className="button"
                    data-kind="start"
                    onClick={() => {
                      open({ lesson, unit, seed: seed >= MOST_SEED ? 0 : seed + 1 });
                      readQuestion();
                    }}
                  >
                    {common.newNumbers}
                  </button>
                  {following === undefined ? null : (
                    <button
                      type="button"
                      className="button"
                      onClick={() => {
                        open({ lesson: following, unit, seed });
                        readQuestion();
                      }}
                    >
                      {fill(common.nextLesson, { title: words.lessons[following].title }, unit)}
                    </button>
                  )}
                </>
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
      <RoundLink link={link} open={open} />
    </article>
  );
}

/** The question that comes next is read from its beginning, once it is there. */
function readQuestion(): void {
  queueMicrotask(() => document.getElementById('question')?.focus());
}

function useMarkSeen(lesson: LessonId): () => void {
  const { preferences } = useServices();
  const seen = usePreference(({ seenLessons }) => seenLessons);
  return () => {
    if (!seen.includes(lesson)) preferences.getState().set({ seenLessons: [...seen, lesson] });
  };
}
