/**
 * What the lessons ask and what is right, kept as text for a few seeds: what is given, the options, what each of them builds. That the
 * answers are right is held by lessons.test.ts for any seed.
 */
import { describe, test } from 'vitest';
import { answerOf, builtBy, roundOf } from '../../../src/model/learning/ask.ts';
import { LESSON_IDS, type Prediction, type Step } from '../../../src/model/learning/lesson.ts';
import { crossingOf, readScene, turnOfScene, type Scene } from '../../../src/model/learning/scene.ts';
import { asText } from '../../support/as-text.ts';
import { expectGolden } from '../../support/golden.ts';

describe.each(LESSON_IDS)('%s', (lesson) => {
  test.each([1, 2, 3, 4, 5, 6])('round %s', (seed) => {
    const { steps, ...round } = roundOf(lesson, seed, seed % 2 === 0 ? 'in' : 'mm', seed > 4 ? 0.05 : null);
    expectGolden(`lessons/${lesson}-${seed}.txt`, asText({ ...round, steps: steps.map(stepText) }));
  });
});

function stepText(step: Step): unknown {
  const { id, kind, given, truth } = step;
  const tried: readonly Prediction[] =
    step.kind === 'choose' ? step.options : [step.range.from, answerOf(step), step.range.to];
  return {
    id,
    kind,
    given,
    ...(step.kind !== 'choose' && { tolerance: step.tolerance, range: step.range }),
    answer: answerOf(step),
    truth: sceneText(truth),
    tried: tried.map((prediction) => ({ prediction, ...sceneText(builtBy(step, prediction)) })),
  };
}

function sceneText(scene: Scene) {
  const { job, ...shown } = scene;
  const reading = readScene(scene);
  const turn = turnOfScene(reading);
  return {
    ...shown,
    title: job.title,
    unit: job.settings.unit,
    chambers: reading.evaluation.chambers.map((chamber, i) => ({
      number: chamber.number,
      contact: chamber.contactHeight,
      needed: chamber.neededLowerStack,
      stack: chamber.lowerStack,
      rest: reading.evaluation.insertion[i]?.rest,
      highest: reading.evaluation.insertion[i]?.highest,
      offsets: chamber.splits.map(({ offset }) => offset),
      verdicts: chamber.verdicts.map(({ verdict }) => verdict),
      crossing: crossingOf(reading, i),
    })),
    lines: reading.evaluation.lines.map(({ line, verdict }) => ({ line, verdict })),
    turn: { line: turn.line, turning: turn.turning, reach: turn.reach, stoppedBy: turn.stoppedBy.length },
  };
}
