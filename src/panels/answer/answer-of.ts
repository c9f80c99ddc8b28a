/** The answer about what is looked at, with what only the rows know: cuts that do not lie under their chambers. */
import { meantLine } from '../../model/evaluate/what-turns.ts';
import type { Look } from '../shared/look.ts';
import { type Answer, answerText } from './answer-text.ts';
import { seatSentence } from './seat-words.ts';

/** mm. A cut off by less is as good as under its chamber (.002 in). Common practice, no source. */
const OFF_FROM_MM = 0.05;

/** Words the answer. */
export function answerOf(look: Look): Answer {
  const { evaluation, job, rows, selection } = look;
  const offCuts = rows.rows.flatMap(({ chamber, number, under, offBy }) =>
    under === null || Math.abs(offBy) < OFF_FROM_MM ? [] : [{ chamber: chamber.id, number, offBy }],
  );
  const answer = answerText(evaluation, job.settings.unit, {
    offCuts,
    meant: meantLine(job, selection.cylinder, selection.key),
  });
  const seat = seatSentence(look);
  return seat === null ? answer : { ...answer, assumes: [seat, ...answer.assumes] };
}
