import { expect, test } from 'vitest';
import { FINDING_CODES } from '../../../src/model/findings/finding-codes.ts';
import { roundOf } from '../../../src/model/learning/ask.ts';
import { lessonOf } from '../../../src/model/learning/finding-lessons.ts';
import { LESSON_IDS } from '../../../src/model/learning/lesson.ts';
import { lessonLink, readLessonLink } from '../../../src/model/learning/lesson-link.ts';

test('every link is read back as it was written', () => {
  for (const lesson of LESSON_IDS)
    for (const seed of [0, 1, 4711, 999_999])
      for (const unit of ['in', 'mm'] as const) {
        const link = { lesson, seed, unit };
        expect(readLessonLink(lessonLink(link))).toEqual(link);
      }
});

test('a link holds lesson, seed and unit, and brings up the same round', () => {
  const link = readLessonLink('#learn/deep-cut/4711/mm');
  expect(link).toEqual({ lesson: 'deep-cut', seed: 4711, unit: 'mm' });
  const made = JSON.stringify(roundOf('deep-cut', 4711, 'mm').steps);
  expect(link === null ? null : JSON.stringify(roundOf(link.lesson, link.seed, link.unit).steps)).toBe(made);
});

test.each([
  '#learn',
  '#learn/',
  '#learn/no-such-lesson/1/in',
  '#learn/deep-cut/-1/in',
  '#learn/deep-cut/1000000/in',
  '#learn/deep-cut/1e3/in',
  '#learn/deep-cut/1/ft',
  '#learn/deep-cut/1/in/more',
  '#learn/__proto__/1/in',
  '#measure',
  '',
])('%j is no link to a round', (fragment) => {
  expect(readLessonLink(fragment)).toBeNull();
});

test('findings that a lesson explains lead to one that there is, the others to none', () => {
  const explained = FINDING_CODES.filter((code) => lessonOf(code) !== null);
  expect(explained).toContain('rides-on-sides');
  expect(explained).toContain('turns-when-lifted');
  for (const code of explained) expect(LESSON_IDS).toContain(lessonOf(code));
  expect(lessonOf('routes-disagree')).toBeNull();
  expect(lessonOf('constructor')).toBeNull();
});
