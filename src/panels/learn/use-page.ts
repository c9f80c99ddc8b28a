/** Which page of the station is open: taken from the page's address, which always says it, so that it can be sent on. */
import { useEffect, useState } from 'react';
import { MOST_SEED } from '../../model/learning/draw.ts';
import { LESSON_IDS } from '../../model/learning/lesson.ts';
import { type LessonLink, lessonLink, readLessonLink } from '../../model/learning/lesson-link.ts';
import { type LessonSet, readSetLink, type SetFault, setLink } from '../../model/learning/lesson-set.ts';
import { usePreference, useServices } from '../shared/services.tsx';

/** Pages that need nothing but their name. */
export const SIDE_PAGES = ['ten', 'practice', 'record', 'teach', 'seal'] as const;
export type SidePage = (typeof SIDE_PAGES)[number];

export type Page =
  | { readonly kind: 'lesson'; readonly link: LessonLink }
  | { readonly kind: 'set'; readonly set: LessonSet }
  | { readonly kind: 'broken set'; readonly fault: SetFault; readonly address: string }
  | { readonly kind: SidePage };

const ADDRESSES: Readonly<Record<SidePage, string>> = {
  ten: '#learn/one-pin-ten-times',
  practice: '#learn/practice-cylinder',
  record: '#learn/my-page',
  teach: '#learn/for-teachers',
  seal: '#learn/seal-a-cylinder',
};

export function addressOf(page: Page): string {
  if (page.kind === 'lesson') return lessonLink(page.link);
  if (page.kind === 'set') return setLink(page.set);
  return page.kind === 'broken set' ? page.address : ADDRESSES[page.kind];
}

export function usePage(): {
  readonly page: Page;
  readonly open: (page: Page) => void;
  /** The lesson that was open last, whatever is open now. */
  readonly lesson: LessonLink;
} {
  const { newId } = useServices();
  const preferred = usePreference(({ unit }) => unit);
  const [first] = useState<LessonLink>(() => ({
    lesson: LESSON_IDS[0],
    seed: seedOf(newId()),
    unit: preferred,
  }));
  const [page, setPage] = useState<Page>(() => pageOfAddress() ?? { kind: 'lesson', link: first });
  const [lesson, setLesson] = useState(page.kind === 'lesson' ? page.link : first);
  if (page.kind === 'lesson' && page.link !== lesson) setLesson(page.link);
  useEffect(() => {
    const follow = () => {
      const found = pageOfAddress();
      if (found !== null) setPage(found);
    };
    window.addEventListener('hashchange', follow);
    return () => window.removeEventListener('hashchange', follow);
  }, []);
  useEffect(() => {
    window.history.replaceState(null, '', addressOf(page));
  }, [page]);
  return { page, open: setPage, lesson };
}

function pageOfAddress(): Page | null {
  if (typeof window === 'undefined') return null;
  const { hash } = window.location;
  const set = readSetLink(hash);
  if (set !== null)
    return set.type === 'set'
      ? { kind: 'set', set: set.set }
      : { kind: 'broken set', fault: set.fault, address: hash };
  const side = SIDE_PAGES.find((kind) => ADDRESSES[kind] === hash);
  if (side !== undefined) return { kind: side };
  const link = readLessonLink(hash);
  return link === null ? null : { kind: 'lesson', link };
}

/** Some seed or other, from an id that was never used. */
export function seedOf(id: string): number {
  let sum = 7;
  for (const letter of id) sum = (sum * 31 + letter.charCodeAt(0)) % (MOST_SEED + 1);
  return sum;
}
