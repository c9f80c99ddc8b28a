/** The lessons, in the order they are best taken; which were seen is kept on this device only. */
import { LESSON_IDS } from '../../model/learning/lesson.ts';
import { type LessonLink, lessonLink } from '../../model/learning/lesson-link.ts';
import { usePreference, useServices } from '../shared/services.tsx';
import { useWords } from './words-context.ts';

type LessonListProps = { readonly link: LessonLink; readonly open: (link: LessonLink) => void };

export function LessonList({ link, open }: LessonListProps) {
  const words = useWords();
  const { preferences } = useServices();
  const seen = usePreference(({ seenLessons }) => seenLessons);
  const { common } = words;
  return (
    <nav className="lesson-list" aria-label={common.lessons}>
      <ol>
        {LESSON_IDS.map((id, i) => (
          <li key={id}>
            <a
              href={lessonLink({ ...link, lesson: id })}
              aria-current={id === link.lesson ? 'page' : undefined}
              onClick={(event) => {
                if (event.ctrlKey || event.metaKey || event.shiftKey) return;
                event.preventDefault();
                open({ ...link, lesson: id });
              }}
            >
              <span className="lesson-number number">{i + 1}</span>
              <span>{words.lessons[id].title}</span>
              {seen.includes(id) ? <span className="lesson-seen small">{common.seen}</span> : null}
            </a>
          </li>
        ))}
      </ol>
      {seen.length === 0 ? null : (
        <button
          type="button"
          className="button"
          data-kind="quiet"
          onClick={() => preferences.getState().set({ seenLessons: [] })}
        >
          {common.forget}
        </button>
      )}
    </nav>
  );
}
