/**
 * The link to a round: which lesson, which seed, which unit. It reproduces the round exactly and says nothing about
 * anybody's job. It is a fragment of the page's address, which is never sent to a server.
 *
 *     #learn/deep-cut/4711/in
 */
import type { JobUnit } from '../units/length-unit.ts';
import { MOST_SEED } from './draw.ts';
import { LESSON_IDS, type LessonId } from './lesson.ts';

export type LessonLink = { readonly lesson: LessonId; readonly seed: number; readonly unit: JobUnit };

const LINK = /^#learn\/([a-z-]{1,40})\/(\d{1,6})\/(in|mm)$/u;

export function lessonLink({ lesson, seed, unit }: LessonLink): string {
  return `#learn/${lesson}/${seed}/${unit}`;
}

/** Reads a link; null for anything that is not one. */
export function readLessonLink(fragment: string): LessonLink | null {
  const [, name, digits, unit] = LINK.exec(fragment) ?? [];
  const lesson = LESSON_IDS.find((id) => id === name);
  const seed = Number(digits);
  if (lesson === undefined || !(seed <= MOST_SEED)) return null;
  return { lesson, seed, unit: unit === 'mm' ? 'mm' : 'in' };
}
