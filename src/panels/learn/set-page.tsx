/** A set as a learner meets it: exactly its lessons, in its order; the learner's page grows below. */
import { useState } from 'react';
import { isSameRound } from '../../model/learning/learner-record.ts';
import type { LessonSet, SetFault } from '../../model/learning/lesson-set.ts';
import { useLearning } from './desk-context.ts';
import { countText, fill } from './fill.ts';
import { LearnerSheet } from './learner-sheet.tsx';
import { LessonPage, readQuestion } from './lesson-page.tsx';
import type { Page } from './use-page.ts';
import { useWords } from './words-context.ts';

type SetPageProps = { readonly set: LessonSet; readonly open: (page: Page) => void };

export function SetPage({ set, open }: SetPageProps) {
  const words = useWords();
  const { teach, tongue } = words;
  const { lessons, seed, unit, toleranceMm } = set;
  const ruler = { unit, tongue };
  const rounds = useLearning((state) => state.rounds);
  const [at, setAt] = useState(0);
  const lesson = lessons[at];
  const following = lessons[at + 1];
  if (lesson === undefined) return null;
  const own = lessons.map((id) => ({ lesson: id, seed, unit, toleranceMm }));
  const answered = own.flatMap((round) => rounds.find((each) => isSameRound(each, round)) ?? []);
  const place = { number: String(at + 1), count: String(lessons.length) };
  return (
    <>
      <nav className="lesson-list set-lessons" aria-label={countText(lessons.length, teach.inSet, tongue)}>
        <p>{countText(lessons.length, teach.inSet, tongue)}</p>
        <ol>
          {lessons.map((id, i) => (
            <li key={id}>
              <button type="button" aria-current={i === at ? 'step' : undefined} onClick={() => setAt(i)}>
                <span className="lesson-number number">{i + 1}</span>
                <span>{words.lessons[id].title}</span>
              </button>
            </li>
          ))}
        </ol>
        <button
          type="button"
          className="button"
          data-kind="quiet"
          onClick={() => open({ kind: 'lesson', link: { lesson, seed, unit } })}
        >
          {teach.leave}
        </button>
      </nav>
      <div className="learn-set">
        <LessonPage
          key={lesson}
          link={{ lesson, seed, unit }}
          toleranceMm={toleranceMm}
          place={fill(teach.lessonOf, place, ruler)}
          onward={
            following === undefined ? (
              <p>{teach.end}</p>
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
                {fill(teach.next, { title: words.lessons[following].title }, ruler)}
              </button>
            )
          }
        />
        {answered.length === 0 ? null : <LearnerSheet rounds={own} />}
      </div>
    </>
  );
}

export function BrokenSet({ fault }: { readonly fault: SetFault }) {
  const { teach, tongue } = useWords();
  return (
    <article className="lesson" aria-labelledby="lesson">
      <h2 id="lesson">{teach.faults.heading}</h2>
      <p role="alert">{fill(teach.faults[fault.fault], { part: fault.part }, { unit: 'in', tongue })}</p>
    </article>
  );
}
