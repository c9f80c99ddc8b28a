/** All words of the station in one language. Another language is another `Words`. */
import type { Captions } from '../../../drawing/captions.ts';
import type { LessonId } from '../../../model/learning/lesson.ts';
import { BALL_IN_DIMPLE_WORDS } from './ball-in-dimple.ts';
import { BALL_ON_SIDES_WORDS } from './ball-on-sides.ts';
import { CALIPER_ZERO_WORDS } from './caliper-zero.ts';
import { COMMON_WORDS } from './common-words.ts';
import { CUT_NUMBER_WORDS } from './cut-number.ts';
import { DEEP_CUT_WORDS } from './deep-cut.ts';
import { DRIVER_LENGTH_WORDS } from './driver-length.ts';
import { END_SHAPES_WORDS } from './end-shapes.ts';
import { HIGH_OR_LOW_WORDS } from './high-or-low.ts';
import { KEY_FLOOR_WORDS } from './key-floor.ts';
import type { LessonWords } from './lesson-words.ts';
import { PAPER_WORDS } from './paper-words.ts';
import { PRACTICE_WORDS } from './practice-words.ts';
import { STATION_WORDS } from './station-words.ts';
import { TEACH_WORDS } from './teach-words.ts';
import { TEN_WORDS } from './ten-words.ts';
import { NOT_HOME_WORDS } from './not-home.ts';
import { ONE_AT_A_TIME_WORDS } from './one-at-a-time.ts';
import { ROOT_DEPTH_WORDS } from './root-depth.ts';
import { SECOND_LINE_WORDS } from './second-line.ts';
import { SWAPPED_PINS_WORDS } from './swapped-pins.ts';
import { TURNS_WHEN_LIFTED_WORDS } from './turns-when-lifted.ts';
import { WHICH_END_WORDS } from './which-end.ts';
import { WHICH_PART_WORDS } from './which-part.ts';

/** The same tree with any texts in it. */
export type Texts<T> = { readonly [Name in keyof T]: T[Name] extends string ? string : Texts<T[Name]> };

export type Words = {
  /** BCP 47 tag of the language. */
  readonly tongue: string;
  /** Says the captions of drawings; null where they are English anyway. */
  readonly captions: Captions | null;
  readonly common: Texts<typeof COMMON_WORDS>;
  readonly station: Texts<typeof STATION_WORDS>;
  readonly teach: Texts<typeof TEACH_WORDS>;
  readonly paper: Texts<typeof PAPER_WORDS>;
  readonly ten: Texts<typeof TEN_WORDS>;
  readonly practice: Texts<typeof PRACTICE_WORDS>;
  readonly lessons: Readonly<Record<LessonId, LessonWords>>;
};

export const ENGLISH: Words = {
  tongue: 'en',
  captions: null,
  common: COMMON_WORDS,
  station: STATION_WORDS,
  teach: TEACH_WORDS,
  paper: PAPER_WORDS,
  ten: TEN_WORDS,
  practice: PRACTICE_WORDS,
  lessons: {
    'which-part': WHICH_PART_WORDS,
    'high-or-low': HIGH_OR_LOW_WORDS,
    'deep-cut': DEEP_CUT_WORDS,
    'root-depth': ROOT_DEPTH_WORDS,
    'key-floor': KEY_FLOOR_WORDS,
    'ball-in-dimple': BALL_IN_DIMPLE_WORDS,
    'one-at-a-time': ONE_AT_A_TIME_WORDS,
    'end-shapes': END_SHAPES_WORDS,
    'ball-on-sides': BALL_ON_SIDES_WORDS,
    'not-home': NOT_HOME_WORDS,
    'turns-when-lifted': TURNS_WHEN_LIFTED_WORDS,
    'driver-length': DRIVER_LENGTH_WORDS,
    'which-end': WHICH_END_WORDS,
    'cut-number': CUT_NUMBER_WORDS,
    'caliper-zero': CALIPER_ZERO_WORDS,
    'swapped-pins': SWAPPED_PINS_WORDS,
    'second-line': SECOND_LINE_WORDS,
  },
};
