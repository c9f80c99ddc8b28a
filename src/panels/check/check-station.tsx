/** The station where the whole cylinder is looked at: the answer, and the section beside it. */
import { AnswerBox } from '../answer/answer-box.tsx';
import { answerOf } from '../answer/answer-of.ts';
import type { Look } from '../shared/look.ts';

export function CheckStation({ look }: { readonly look: Look }) {
  return (
    <div className="station check">
      <AnswerBox answer={answerOf(look)} />
    </div>
  );
}
