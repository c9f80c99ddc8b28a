/** All lessons, in the order they are best taken: each leans on those before it. */
import { BALL_IN_DIMPLE } from './lessons/ball-in-dimple.ts';
import { BALL_ON_SIDES } from './lessons/ball-on-sides.ts';
import { CALIPER_ZERO } from './lessons/caliper-zero.ts';
import { CUT_NUMBER } from './lessons/cut-number.ts';
import { DEEP_CUT } from './lessons/deep-cut.ts';
import { DRIVER_LENGTH } from './lessons/driver-length.ts';
import { END_SHAPES } from './lessons/end-shapes.ts';
import { HIGH_OR_LOW } from './lessons/high-or-low.ts';
import { KEY_FLOOR } from './lessons/key-floor.ts';
import { NOT_HOME } from './lessons/not-home.ts';
import { ONE_AT_A_TIME } from './lessons/one-at-a-time.ts';
import { ROOT_DEPTH } from './lessons/root-depth.ts';
import { SECOND_LINE } from './lessons/second-line.ts';
import { SWAPPED_PINS } from './lessons/swapped-pins.ts';
import { TURNS_WHEN_LIFTED } from './lessons/turns-when-lifted.ts';
import { WHICH_END } from './lessons/which-end.ts';
import { WHICH_PART } from './lessons/which-part.ts';
import type { Lesson } from './lesson.ts';

export const LESSONS: readonly Lesson[] = [
  WHICH_PART,
  HIGH_OR_LOW,
  DEEP_CUT,
  ROOT_DEPTH,
  KEY_FLOOR,
  BALL_IN_DIMPLE,
  ONE_AT_A_TIME,
  END_SHAPES,
  BALL_ON_SIDES,
  NOT_HOME,
  TURNS_WHEN_LIFTED,
  DRIVER_LENGTH,
  WHICH_END,
  CUT_NUMBER,
  CALIPER_ZERO,
  SWAPPED_PINS,
  SECOND_LINE,
];
