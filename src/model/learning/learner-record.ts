/**
 * What a learner predicted, question by question: kept on the device, printed as a page, saved as a file when they ask. A
 * round is known by lesson, seed, unit and tolerance, from which everything that was asked and seen is made again. The first
 * prediction of a question stands; trying again does not overwrite it. Lengths mm.
 */
import type { JobUnit } from '../units/length-unit.ts';
import { MOST_SEED } from './draw.ts';
import { LESSON_IDS, type LessonId, type Prediction, type Round } from './lesson.ts';
import { steady } from './lesson-set.ts';

export type AnswerRecord = {
  readonly step: string;
  /** Null: shown without predicting. */
  readonly prediction: Prediction | null;
};

export type RoundRecord = {
  readonly lesson: LessonId;
  readonly seed: number;
  readonly unit: JobUnit;
  readonly toleranceMm: number | null;
  readonly answers: readonly AnswerRecord[];
};

/** Rounds that are kept; the oldest go first. */
export const MOST_ROUNDS = 200;
/** Longer than a lesson has questions. */
const MOST_ANSWERS = 12;
/** mm. Nothing that is predicted is longer. */
const LONGEST_MM = 127;

type RoundKey = Pick<Round, 'lesson' | 'seed' | 'unit' | 'toleranceMm'>;

export function isSameRound(one: RoundKey, other: RoundKey): boolean {
  return (
    one.lesson === other.lesson &&
    one.seed === other.seed &&
    one.unit === other.unit &&
    one.toleranceMm === other.toleranceMm
  );
}

/** Adds a prediction; one that was made before stays as it was. */
export function recordAnswer(
  rounds: readonly RoundRecord[],
  round: RoundKey,
  answer: AnswerRecord,
): readonly RoundRecord[] {
  const before = rounds.find((each) => isSameRound(each, round));
  if (before === undefined) {
    const { lesson, seed, unit, toleranceMm } = round;
    return [...rounds, { lesson, seed, unit, toleranceMm, answers: [answer] }].slice(-MOST_ROUNDS);
  }
  if (before.answers.some(({ step }) => step === answer.step)) return rounds;
  const grown = { ...before, answers: [...before.answers, answer] };
  return rounds.map((each) => (each === before ? grown : each));
}

/** Reads rounds from unknown data: each good one counts, the others are as if they had never been. */
export function readRounds(data: unknown): readonly RoundRecord[] {
  const list: unknown[] = Array.isArray(data) ? data.slice(-MOST_ROUNDS) : [];
  return list.flatMap((each) => readRound(each) ?? []);
}

function readRound(data: unknown): RoundRecord | null {
  const kept = membersOf(data);
  const lesson = LESSON_IDS.find((id) => id === kept.get('lesson'));
  const seed = kept.get('seed');
  const unit = kept.get('unit');
  const tolerance = kept.get('toleranceMm');
  const answers = kept.get('answers');
  if (lesson === undefined || (unit !== 'in' && unit !== 'mm') || !Array.isArray(answers)) return null;
  if (typeof seed !== 'number' || !Number.isInteger(seed) || seed < 0 || seed > MOST_SEED) return null;
  if (tolerance !== null && (typeof tolerance !== 'number' || tolerance !== steady(tolerance))) return null;
  return {
    lesson,
    seed,
    unit,
    toleranceMm: tolerance,
    answers: answers.slice(0, MOST_ANSWERS).flatMap((each) => readAnswer(each) ?? []),
  };
}

function readAnswer(data: unknown): AnswerRecord | null {
  const kept = membersOf(data);
  const step = kept.get('step');
  const prediction = kept.get('prediction');
  if (typeof step !== 'string' || step.length > 40) return null;
  if (prediction === null || (typeof prediction === 'string' && prediction.length <= 40))
    return { step, prediction };
  const isLength = typeof prediction === 'number' && Math.abs(prediction) <= LONGEST_MM;
  return isLength ? { step, prediction } : null;
}

/** Own members only, so that nothing inherited is read. */
export function membersOf(data: unknown): ReadonlyMap<string, unknown> {
  return new Map(typeof data === 'object' && data !== null ? Object.entries(data) : []);
}
