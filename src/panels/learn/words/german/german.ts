/** All words of the station in German. */
import type { Words } from '../words.ts';
import { GERMAN_CAPTIONS } from './german-captions.ts';
import { GERMAN_COMMON } from './german-common.ts';
import { GERMAN_FIRST_LESSONS } from './german-first-lessons.ts';
import { GERMAN_LATER_LESSONS } from './german-later-lessons.ts';
import { GERMAN_PAPER, GERMAN_STATION, GERMAN_TEACH } from './german-pages.ts';
import { GERMAN_PRACTICE, GERMAN_TEN } from './german-practice.ts';

export const GERMAN: Words = {
  tongue: 'de',
  captions: GERMAN_CAPTIONS,
  common: GERMAN_COMMON,
  station: GERMAN_STATION,
  teach: GERMAN_TEACH,
  paper: GERMAN_PAPER,
  ten: GERMAN_TEN,
  practice: GERMAN_PRACTICE,
  lessons: { ...GERMAN_FIRST_LESSONS, ...GERMAN_LATER_LESSONS },
};
