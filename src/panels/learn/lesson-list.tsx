/** The lessons, in the order they are best taken, and the other pages; which were seen is kept on this device only. */
import type { MouseEvent, ReactNode } from 'react';
import { LESSON_IDS } from '../../model/learning/lesson.ts';
import type { LessonLink } from '../../model/learning/lesson-link.ts';
import { usePreference, useServices } from '../shared/services.tsx';
import { addressOf, type Page, type SidePage } from './use-page.ts';
import { useWords } from './words-context.ts';

type LessonListProps = {
  readonly page: Page;
  readonly lesson: LessonLink;
  readonly open: (page: Page) => void;
};

const AT_THE_BENCH: readonly SidePage[] = ['ten', 'practice', 'record'];
const FOR_TEACHERS: readonly SidePage[] = ['teach', 'seal'];

export function LessonList({ page, lesson, open }: LessonListProps) {
  const words = useWords();
  const { preferences } = useServices();
  const seen = usePreference(({ seenLessons }) => seenLessons);
  const { common, station } = words;
  const side = (title: string, kinds: readonly SidePage[]) => (
    <section>
      <h3>{title}</h3>
      <ul>
        {kinds.map((kind) => (
          <li key={kind}>
            <PageLink to={{ kind }} isOpen={page.kind === kind} open={open}>
              {station.pages[kind]}
            </PageLink>
          </li>
        ))}
      </ul>
    </section>
  );
  return (
    <nav className="lesson-list" aria-label={common.lessons}>
      <ol>
        {LESSON_IDS.map((id, i) => (
          <li key={id}>
            <PageLink
              to={{ kind: 'lesson', link: { ...lesson, lesson: id } }}
              isOpen={page.kind === 'lesson' && page.link.lesson === id}
              open={open}
            >
              <span className="lesson-number number">{i + 1}</span>
              <span>{words.lessons[id].title}</span>
              {seen.includes(id) ? <span className="lesson-seen small">{common.seen}</span> : null}
            </PageLink>
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
      {side(station.atTheBench, AT_THE_BENCH)}
      {side(station.forTeachers, FOR_TEACHERS)}
    </nav>
  );
}

type PageLinkProps = {
  readonly to: Page;
  readonly isOpen: boolean;
  readonly open: (page: Page) => void;
  readonly children: ReactNode;
};

function PageLink({ to, isOpen, open, children }: PageLinkProps) {
  const follow = (event: MouseEvent) => {
    if (event.ctrlKey || event.metaKey || event.shiftKey) return;
    event.preventDefault();
    open(to);
  };
  return (
    <a href={addressOf(to)} aria-current={isOpen ? 'page' : undefined} onClick={follow}>
      {children}
    </a>
  );
}
