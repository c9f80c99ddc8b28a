/** The station where the whole cylinder is looked at: the answer, what is worth knowing, and the tests at the bench. */
import { lazy, Suspense } from 'react';
import { AnswerBox } from '../answer/answer-box.tsx';
import { answerOf } from '../answer/answer-of.ts';
import { splitThatMatters } from '../answer/verdict-words.ts';
import { BenchTests } from '../measure/bench-tests.tsx';
import { focusOf, type Look } from '../shared/look.ts';
import { useView } from '../shared/services.tsx';
import { ONE_COLUMN, useMedia } from '../shared/use-media.ts';
import { CheckFolds } from './check-folds.tsx';
import { FindingsList } from './findings-list.tsx';
import { PickedChamber } from './picked-chamber.tsx';
import './check-station.css';

const HowSure = lazy(async () => ({ default: (await import('../sure/how-sure.tsx')).HowSure }));
const WhichKey = lazy(async () => ({ default: (await import('../keying/which-key.tsx')).WhichKey }));

export function CheckStation({ look }: { readonly look: Look }) {
  const isOneColumn = useMedia(ONE_COLUMN);
  return (
    <div className="station check">
      <AnswerBox answer={answerOf(look)} />
      <FindingsList look={look} />
      {/* In two columns it stands under the section; here that would push the answer far down. */}
      {isOneColumn ? <PickedChamber look={look} /> : null}
      <OneAtATime look={look} />
      <Suspense fallback={null}>
        <HowSure look={look} />
        <WhichKey look={look} />
      </Suspense>
      <CheckFolds look={look} />
    </div>
  );
}

/** The bench test, one chamber at a time in the shell: what is expected, and what really happened. */
function OneAtATime({ look }: { readonly look: Look }) {
  const picked = useView((view) => view.pickedChamber);
  const pick = useView((view) => view.pickChamber);
  const rows = look.rows.rows.filter(
    ({ chamber }) => (look.chamberResults.get(chamber.id)?.splits.length ?? 0) > 0,
  );
  if (rows.length === 0) return null;
  return (
    <section className="one-at-a-time" aria-labelledby="one-at-a-time">
      <h2 id="one-at-a-time">One chamber at a time</h2>
      <p className="small quiet">
        Key in, one stack alone in the shell: first without its driver, then with it. What is expected, and
        what really happened.
      </p>
      {rows.map((row) => {
        const result = look.chamberResults.get(row.chamber.id);
        if (result === undefined) return null;
        return (
          <details
            key={row.chamber.id}
            className="fold one-chamber"
            open={picked === row.chamber.id}
            onToggle={({ currentTarget }) => {
              if (currentTarget.open && picked !== row.chamber.id) pick(row.chamber.id);
            }}
          >
            <summary>
              <span className="fold-title">{row.number}</span>
              <span className="one-expected">
                alone {result.alone?.lowerStackOnly ?? 'unknown'}, with driver{' '}
                {result.alone?.withDriver ?? 'unknown'}
              </span>
            </summary>
            <NextStep step={splitThatMatters(result, focusOf(look) ?? undefined)?.split.nextStep ?? null} />
            <BenchTests row={row} look={look} result={result} />
          </details>
        );
      })}
    </section>
  );
}

function NextStep({ step }: { readonly step: string | null }) {
  return step === null ? null : <p>{step}</p>;
}
