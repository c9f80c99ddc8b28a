/** A prediction in words: an option's own, a length, or a place above or below the line. */
import type { Prediction, Round, Step } from '../../model/learning/lesson.ts';
import { fill, givenText, lengthText } from './fill.ts';
import type { StepWords } from './words/lesson-words.ts';
import type { Words } from './words/words.ts';

export function stepWords(words: Words, round: Round, step: Step): StepWords {
  return words.lessons[round.lesson].steps[step.id] ?? { ask: step.id, why: '' };
}

export function predictionText(prediction: Prediction, step: Step, round: Round, words: Words): string {
  const ruler = { unit: round.unit, tongue: words.tongue };
  if (step.kind === 'choose') {
    const options = stepWords(words, round, step).options ?? {};
    return fill(options[String(prediction)] ?? String(prediction), step.given, ruler);
  }
  const mm = Number(prediction);
  return step.kind === 'length' ? givenText(mm, ruler) : placeText(mm, round, words);
}

export function placeText(mm: number, { unit }: Round, { common, tongue }: Words): string {
  const ruler = { unit, tongue };
  // less than the least that is written
  if (Math.abs(mm) < 0.005) return common.placeLevel;
  return fill(mm > 0 ? common.placeAbove : common.placeBelow, { by: lengthText(mm, ruler) }, ruler);
}

export function askText(round: Round, step: Step, words: Words): string {
  return fill(stepWords(words, round, step).ask, step.given, { unit: round.unit, tongue: words.tongue });
}

export function whyText(round: Round, step: Step, words: Words): string {
  return fill(stepWords(words, round, step).why, step.given, { unit: round.unit, tongue: words.tongue });
}
