/** Rounds of a lesson, and what is right in them: read by the engine in the true cylinder, never written down. mm. */
import { assert, known } from '../assert.ts';
import type { JobUnit } from '../units/length-unit.ts';
import { startDraw } from './draw.ts';
import { LESSONS } from './lesson-list.ts';
import type { LessonId, Prediction, Round, Step } from './lesson.ts';
import { readScene, type Scene } from './scene.ts';

/** Makes the round of a seed. */
export function roundOf(lesson: LessonId, seed: number, unit: JobUnit): Round {
  const found = known(
    LESSONS.find(({ id }) => id === lesson),
    `lesson ${lesson}`,
  );
  return { lesson, seed, unit, steps: found.steps(startDraw(seed, unit)) };
}

/** The right answer of a step. */
export function answerOf(step: Step): Prediction {
  if (step.kind !== 'choose') return step.reads(readScene(step.truth));
  const wanted = step.reads(readScene(step.truth));
  const right = step.options.filter((option) => step.reads(readScene(step.build(option))) === wanted);
  assert(right.length === 1, `step ${step.id} has ${right.length} right answers`);
  return known(right[0], `the right answer of step ${step.id}`);
}

/** Whether a prediction comes true. */
export function comesTrue(step: Step, prediction: Prediction): boolean {
  const answer = answerOf(step);
  if (step.kind === 'choose') return prediction === answer;
  return Math.abs(Number(prediction) - Number(answer)) <= step.tolerance + 1e-9;
}

/** The cylinder that a prediction builds. */
export function builtBy(step: Step, prediction: Prediction): Scene {
  return step.kind === 'choose' ? step.build(String(prediction)) : step.build(Number(prediction));
}
