/** A lesson from the list of all: again with new numbers, or on to the next. */
import { MOST_SEED } from '../../model/learning/draw.ts';
import { LESSON_IDS } from '../../model/learning/lesson.ts';
import type { LessonLink } from '../../model/learning/lesson-link.ts';
import { fill } from './fill.ts';
import { LessonPage, readQuestion } from './lesson-page.tsx';
import { RoundLink } from './round-link.tsx';
import { useWords } from './words-context.ts';

type SingleLessonProps = { readonly link: LessonLink; readonly open: (link: LessonLink) => void };

export function SingleLesson({ link, open }: SingleLessonProps) {
  const words = useWords();
  const { common } = words;
  const { lesson, seed, unit } = link;
  const ruler = { unit, tongue: words.tongue };
  const at = LESSON_IDS.indexOf(lesson);
  const following = LESSON_IDS[at + 1];
  const goTo = (next: LessonLink) => {
    open(next);
    readQuestion();
  };
  return (
    <LessonPage
      link={link}
      toleranceMm={null}
      place={fill(common.place, { number: String(at + 1), count: String(LESSON_IDS.length) }, ruler)}
      onward={
        <>
          <button
            type="button"
            className="button"
            data-kind="start"
            onClick={() => goTo({ lesson, unit, seed: seed >= MOST_SEED ? 0 : seed + 1 })}
          >
            {common.newNumbers}
          </button>
          {following === undefined ? null : (
            <button type="button" className="button" onClick={() => goTo({ lesson: following, unit, seed })}>
              {fill(common.nextLesson, { title: words.lessons[following].title }, ruler)}
            </button>
          )}
        </>
      }
      foot={<RoundLink link={link} open={open} />}
    />
  );
}
