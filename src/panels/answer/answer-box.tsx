/** The answer, in plain words, before any number. */
import { lazy, type ReactNode, Suspense } from 'react';
import { useView } from '../shared/services.tsx';
import { ONE_HAND, useMedia } from '../shared/use-media.ts';
import { VerdictMark } from '../shared/verdict-mark.tsx';
import type { Answer, AnswerPoint } from './answer-text.ts';
import { ANSWER_SYMBOLS } from './verdict-words.ts';
import './answer-box.css';

const UnreadNote = lazy(async () => ({ default: (await import('./unread-note.tsx')).UnreadNote }));

type AnswerBoxProps = {
  readonly answer: Answer;
  /** What can be changed right here. */
  readonly children?: ReactNode;
};

export function AnswerBox({ answer, children }: AnswerBoxProps) {
  const symbol = ANSWER_SYMBOLS[answer.tone];
  const isOneHand = useMedia(ONE_HAND);
  const isUnread = useView((view) => view.unread.size > 0);
  const [first, ...others] = answer.points;
  const rest = (
    <>
      {others.map((point) => (
        <Point key={point.text} point={point} />
      ))}
      {answer.assumes.length === 0 ? null : <p className="answer-small">{answer.assumes.join(' ')}</p>}
    </>
  );
  const hasRest = others.length + answer.assumes.length > 0;
  return (
    <>
      <output className="answer-headline">
        <VerdictMark symbol={symbol} />
        <span>{answer.headline}</span>
        {isUnread ? (
          <Suspense fallback={null}>
            <UnreadNote />
          </Suspense>
        ) : null}
      </output>
      <section className="answer-body" aria-label="Answer">
        {first === undefined ? null : <Point point={first} />}
        {children}
        {isOneHand && hasRest ? (
          <details className="fold answer-more">
            <summary>More</summary>
            {rest}
          </details>
        ) : (
          rest
        )}
        {answer.expected === null ? null : <p className="answer-small">{answer.expected}</p>}
      </section>
    </>
  );
}

/** Pointing at it picks the chamber in the picture; reading it needs no pointer. */
function Point({ point }: { readonly point: AnswerPoint }) {
  const pick = useView((view) => view.pickChamber);
  const { chamber } = point;
  return (
    <p className="answer-point" onPointerEnter={chamber === null ? undefined : () => pick(chamber)}>
      {point.text}
    </p>
  );
}
