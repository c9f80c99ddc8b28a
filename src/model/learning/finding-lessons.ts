/** Which lesson explains what a finding tells. Findings that no lesson explains are not in it. */
import type { FindingCode } from '../findings/finding-codes.ts';
import type { LessonId } from './lesson.ts';

const LESSON_OF: Readonly<Partial<Record<FindingCode, LessonId>>> = {
  'ball-missing': 'ball-in-dimple',
  'cut-off-chamber': 'not-home',
  'driver-barely-across': 'driver-length',
  'driver-below-at-rest': 'driver-length',
  'driver-strikes-cap': 'driver-length',
  'flat-top-corners': 'end-shapes',
  'mixed-lines': 'second-line',
  'no-driver-fits': 'driver-length',
  'no-length-turns': 'end-shapes',
  'pin-across-at-rest': 'driver-length',
  'rides-on-sides': 'ball-on-sides',
  'same-error-everywhere': 'caliper-zero',
  'spring-loose': 'driver-length',
  'spring-solid': 'driver-length',
  'tip-rides-on-sides': 'ball-on-sides',
  'turns-when-lifted': 'turns-when-lifted',
  'turns-when-drawn': 'not-home',
};

/** The lesson that explains a finding; null when there is none. */
export function lessonOf(code: string): LessonId | null {
  return Object.hasOwn(LESSON_OF, code) ? (LESSON_OF[code as FindingCode] ?? null) : null;
}
