/** Rounds of a lesson, and what is right in them: read by the engine in the true cylinder, never written down. mm. */
import { assert, known } from '../assert.ts';
import type { JobUnit } from '../units/length-unit.ts';
import { startDraw } from './draw.ts';
import { LESSONS } from './lesson-list.ts';
import type { LessonId, Prediction, Round, Step } from './lesson.ts';
import { readScene, type Scene } from './scene.ts';

/**
 * Makes the round of a seed.
 *
 * @param toleranceMm how close sums have to come, places twice as far; null: as the lesson has it
 */
export function roundOf(
  lesson: LessonId,
  seed: number,
  unit: JobUnit,
  toleranceMm: number | null = null,
): Round {
  const found = known(
    LESSONS.find(({ id }) => id === lesson),
    `lesson ${lesson}`,
  );
  const steps = found.steps(startDraw(seed, unit)).map(buildingOnce);
  return {
    lesson,
    seed,
    unit,
    toleranceMm,
    steps: toleranceMm === null ? steps : steps.map((step) => asClose(step, toleranceMm)),
  };
}

function asClose(step: Step, toleranceMm: number): Step {
  if (step.kind === 'choose') return step;
  return { ...step, tolerance: step.kind === 'length' ? toleranceMm : 2 * toleranceMm };
}

/** The same step; each option's cylinder is made once, so that it is evaluated once. */
function buildingOnce(step: Step): Step {
  if (step.kind !== 'choose') return step;
  const built = new Map<string, Scene>();
  const build = (option: string) => {
    const scene = built.get(option) ?? step.build(option);
    built.set(option, scene);
    return scene;
  };
  return { ...step, build };
}

const answers = new WeakMap<Step, Prediction>();

/** The right answer of a step, read once for each. */
export function answerOf(step: Step): Prediction {
  const answer = answers.get(step) ?? readAnswer(step);
  answers.set(step, answer);
  return answer;
}

function readAnswer(step: Step): Prediction {
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
