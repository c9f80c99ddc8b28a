/**
 * A lesson: a few steps, each a situation, one question, and what every possible answer would build. An answer is never
 * marked by a table: the cylinder it builds is evaluated, and the right answer is what the engine reads in the true one.
 * Words are kept apart (src/panels/learn/words), found by lesson, step and option. Lengths mm; offsets + high, - low.
 */
import type { JobUnit } from '../units/length-unit.ts';
import type { Draw } from './draw.ts';
import type { Reading, Scene } from './scene.ts';

export const LESSON_IDS = [
  'which-part',
  'high-or-low',
  'deep-cut',
  'root-depth',
  'key-floor',
  'ball-in-dimple',
  'one-at-a-time',
  'end-shapes',
  'ball-on-sides',
  'not-home',
  'turns-when-lifted',
  'driver-length',
  'which-end',
  'cut-number',
  'caliper-zero',
  'swapped-pins',
  'second-line',
] as const;
export type LessonId = (typeof LESSON_IDS)[number];

/** What words may name: lengths in mm, or text that is ready (a count, a chamber's number). */
export type Facts = Readonly<Record<string, number | string>>;

type StepCommon = {
  /** Its words are found by it. */
  readonly id: string;
  readonly given: Facts;
  /** The cylinder as it is: shown with its key out while the question stands, tried afterwards. */
  readonly truth: Scene;
};

/** One of a few: the right one is the one whose cylinder reads like the true one. */
export type ChooseStep = StepCommon & {
  readonly kind: 'choose';
  readonly options: readonly string[];
  readonly build: (option: string) => Scene;
  readonly reads: (reading: Reading) => string;
};

/** A length, in any unit, or where the split will be: above (+) or below (-) the line. */
export type NumberStep = StepCommon & {
  readonly kind: 'length' | 'place';
  readonly build: (mm: number) => Scene;
  readonly reads: (reading: Reading) => number;
  /** A prediction this close is taken as right. */
  readonly tolerance: number;
  readonly range: { readonly from: number; readonly to: number };
};

export type Step = ChooseStep | NumberStep;

export type Lesson = {
  readonly id: LessonId;
  readonly steps: (draw: Draw) => readonly Step[];
};

export type Round = {
  readonly lesson: LessonId;
  readonly seed: number;
  readonly unit: JobUnit;
  /** mm. How close sums have to come where whoever teaches said so; null: as the lesson has it. */
  readonly toleranceMm: number | null;
  readonly steps: readonly Step[];
};

/** What a person predicts: an option, or mm. */
export type Prediction = string | number;
