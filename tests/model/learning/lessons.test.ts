/**
 * The lessons, seed after seed: each question can be answered, by one answer only, and that is the engine's. The number of
 * seeds is small because every round evaluates several cylinders; `LESSON_SEEDS=1000` runs a thousand of every lesson.
 */
import { describe, expect, test } from 'vitest';
import { answerOf, builtBy, comesTrue, roundOf } from '../../../src/model/learning/ask.ts';
import { MOST_SEED } from '../../../src/model/learning/draw.ts';
import { LESSON_IDS, type LessonId, type Step } from '../../../src/model/learning/lesson.ts';
import { LESSONS } from '../../../src/model/learning/lesson-list.ts';
import { readScene, type Scene } from '../../../src/model/learning/scene.ts';
import { restOfScene } from '../../../src/model/learning/rest.ts';
import { jobSchema } from '../../../src/model/schema/job-schema.ts';

/** Lessons whose rounds take a millisecond or two; the others take ten to thirty. */
const QUICK: readonly LessonId[] = [
  'root-depth',
  'key-floor',
  'ball-on-sides',
  'not-home',
  'cut-number',
  'caliper-zero',
];
const asked = Number(process.env['LESSON_SEEDS'] ?? 0);
const seedsOf = (lesson: LessonId) => asked || (QUICK.includes(lesson) ? 150 : 10);
/** A thousand seeds of the slowest lesson take ten seconds on an idle machine, forty on a busy one; all of them some minutes. */
const PATIENCE_MS = asked === 0 ? 120_000 : 1_800_000;
/** mm. Half a thousandth: nothing that is asked lies nearer to a limit. */
const CLEAR_MM = 0.0127;

/** A different seed each time, spread over all that can be typed. */
const seedAt = (i: number) => (i * 7919 + 3) % (MOST_SEED + 1);

test('there is one lesson for each name, in the order of the list', () => {
  expect(LESSONS.map(({ id }) => id)).toEqual([...LESSON_IDS]);
});

describe.each(LESSON_IDS)('%s', (lesson) => {
  test(
    'has one right answer for each seed, which the engine gives',
    () => {
      for (let i = 0; i < seedsOf(lesson); i++) {
        const seed = seedAt(i);
        const { steps } = roundOf(lesson, seed, i % 2 === 0 ? 'in' : 'mm');
        expect(steps.length, `seed ${seed}`).toBeGreaterThan(0);
        for (const step of steps) judgeStep(step, `seed ${seed}, ${step.id}`);
      }
    },
    PATIENCE_MS,
  );

  test('is the same again for the same seed, and another for another', () => {
    const text = (seed: number) =>
      JSON.stringify(roundOf(lesson, seed, 'in').steps.map(({ truth }) => truth.job));
    expect(text(4711)).toBe(text(4711));
    expect(new Set([1, 2, 3, 4, 5].map(text)).size).toBeGreaterThan(1);
  });

  test('is made of jobs that the file reader takes', () => {
    for (const step of roundOf(lesson, 5, 'mm').steps)
      expect(jobSchema.safeParse(step.truth.job).success).toBe(true);
  });
});

function judgeStep(step: Step, where: string) {
  const answer = answerOf(step);
  expect(comesTrue(step, answer), where).toBe(true);
  expectClear(step.truth, where);
  if (step.kind === 'choose') {
    expect(new Set(step.options).size, where).toBe(step.options.length);
    for (const option of step.options) {
      expectClear(step.build(option), `${where}, ${option}`);
      expect(comesTrue(step, option), `${where}, ${option}`).toBe(option === answer);
    }
    return;
  }
  const mm = Number(answer);
  expect(mm, where).toBeGreaterThan(step.range.from);
  expect(mm, where).toBeLessThan(step.range.to);
  // What the right answer builds is right at the line; what misses by a lot is off by that.
  expect(offsetOf(builtBy(step, mm)), where).toBeCloseTo(0, 3);
  const missed = 4 * step.tolerance;
  expect(comesTrue(step, mm + missed), where).toBe(false);
  expect(Math.abs(offsetOf(builtBy(step, mm + missed))), where).toBeCloseTo(missed, 3);
}

function offsetOf(scene: Scene): number {
  const { evaluation } = readScene(scene);
  const all = evaluation.chambers.map(({ splits }) => splits[0]?.offset ?? NaN);
  return all.reduce((most, each) => (Math.abs(each) > Math.abs(most) ? each : most), 0);
}

/** Every verdict is plain, and none hangs on less than half a thousandth. */
function expectClear(scene: Scene, where: string) {
  const reading = readScene(scene);
  for (const chamber of reading.evaluation.chambers) {
    expect(chamber.missing, where).toEqual([]);
    for (const { verdict, split } of chamber.verdicts) {
      expect(['unknown', "can't say yet"], where).not.toContain(verdict);
      expect(Math.abs(chamber.splits[split ?? -1]?.margin ?? 0), where).toBeGreaterThan(CLEAR_MM);
    }
  }
  if (scene.tries !== 'key out') return;
  const { missing } = restOfScene(reading);
  expect(
    missing.filter((what) => !what.startsWith("the spring's force")),
    where,
  ).toEqual([]);
}
