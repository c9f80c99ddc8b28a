/** Which round is open: taken from the page's address, which always says it, so that it can be sent on. */
import { useEffect, useState } from 'react';
import { MOST_SEED } from '../../model/learning/draw.ts';
import { LESSON_IDS } from '../../model/learning/lesson.ts';
import { type LessonLink, lessonLink, readLessonLink } from '../../model/learning/lesson-link.ts';
import { usePreference, useServices } from '../shared/services.tsx';

export function useLesson(): { readonly link: LessonLink; readonly open: (link: LessonLink) => void } {
  const { newId } = useServices();
  const preferred = usePreference(({ unit }) => unit);
  const [link, setLink] = useState<LessonLink>(
    () => linkOfAddress() ?? { lesson: LESSON_IDS[0], seed: seedOf(newId()), unit: preferred },
  );
  useEffect(() => {
    const follow = () => {
      const found = linkOfAddress();
      if (found !== null) setLink(found);
    };
    window.addEventListener('hashchange', follow);
    return () => window.removeEventListener('hashchange', follow);
  }, []);
  useEffect(() => {
    window.history.replaceState(null, '', lessonLink(link));
  }, [link]);
  return { link, open: setLink };
}

function linkOfAddress(): LessonLink | null {
  return typeof window === 'undefined' ? null : readLessonLink(window.location.hash);
}

/** Some seed or other, from an id that was never used. */
export function seedOf(id: string): number {
  let sum = 7;
  for (const letter of id) sum = (sum * 31 + letter.charCodeAt(0)) % (MOST_SEED + 1);
  return sum;
}
