/** One key, one cylinder: the best of the bag in every chamber, other choices, and the way into the plan. */
import { useState } from 'react';
import { planToBuild, setLocked } from '../../model/edit/edit-plans.ts';
import type { Held } from '../../model/matching/held.ts';
import type { MatchAnswer } from '../../model/matching/matching-request.ts';
import type { Match } from '../../model/matching/match.ts';
import type { Job } from '../../model/schema/job-schema.ts';
import type { Id } from '../../model/schema/leaf.ts';
import type { Look } from '../shared/look.ts';
import { useEdit, useServices } from '../shared/services.tsx';
import { ChamberChoice } from './chamber-choice.tsx';
import { gaugeScale } from './window-gauge.tsx';
import { landChoices } from './land-choice.ts';
import { missingWords, untilFiled } from './match-words.ts';
import type { PairAsk } from './pair-ask.ts';
import { RunStatus } from './run-status.tsx';
import { useMatching } from './use-matching.ts';

type OnePairProps = { readonly look: Look; readonly mostFiled: number | null };

export function OnePair({ look, mostFiled }: OnePairProps) {
  const { document, view, newId } = useServices();
  const edit = useEdit();
  const matching = useMatching<'match'>();
  const [held, setHeld] = useState<readonly Held[]>([]);
  const [told, setTold] = useState<string | null>(null);
  /** What was allowed when it was last chosen. */
  const [askedFiled, setAskedFiled] = useState<number | null>(null);
  const { job, selection, bench } = look;
  const plan = planToBuild(job, selection.cylinder, selection.plan);
  const { key } = bench;
  if (key === null || plan === null)
    return <p className="quiet">Pick a key first: parts are chosen for a key in a cylinder.</p>;

  const pair = { cylinder: selection.cylinder, key: key.id, plan };
  const choose = (from: Job, nowHeld: readonly Held[]) => {
    setHeld(nowHeld);
    setTold(null);
    setAskedFiled(mostFiled);
    matching.start(from, { kind: 'match', selection: pair, ask: { mostFiled, held: nowHeld } });
  };
  const lock = (chamber: Id, isLocked: boolean) => {
    edit(isLocked ? 'Chamber left as it is' : 'Chamber free to choose', (now) =>
      setLocked(now, plan, chamber, isLocked),
    );
    choose(
      document.getState().job,
      held.filter((each) => each.chamber !== chamber),
    );
  };
  const land = (match: Match) => {
    const landing = landChoices(job, [match], newId);
    if (landing.type === 'refused') {
      setTold(landing.message);
      return;
    }
    edit(`Parts for ${bench.cylinder.label}`, () => landing.job);
    matching.carryOver(document.getState().job);
    view.getState().pickPlan(landing.plans[0] ?? plan);
    const later = untilFiled(match);
    setTold(`In the plan: the section shows them.${later === null ? '' : ` ${later}`}`);
  };
  const { state } = matching;
  const isStale = state.type === 'done' && (state.job !== job || askedFiled !== mostFiled);
  return (
    <div className="one-pair">
      <div className="match-start">
        <p>
          <strong>{key.label}</strong> in <strong>{bench.cylinder.label}</strong>
        </p>
        <button
          type="button"
          className="button"
          data-kind={state.type === 'done' && !isStale ? undefined : 'main'}
          onClick={() => choose(job, held)}
        >
          {state.type === 'done' ? 'Choose again' : 'Choose the best parts'}
        </button>
      </div>
      <RunStatus state={state} what="Choosing parts" onCancel={matching.cancel} />
      {state.type === 'done' ? (
        <>
          {isStale ? (
            <p className="match-stale" role="status">
              Something has changed since this was chosen: choose again before you rely on it.
            </p>
          ) : null}
          <Choice
            answer={state.answer}
            look={look}
            held={held}
            isStale={isStale}
            ask={{ pair, mostFiled }}
            onHold={(one) => choose(job, [...held.filter((each) => each.chamber !== one.chamber), one])}
            onLetGo={(chamber) =>
              choose(
                job,
                held.filter((each) => each.chamber !== chamber),
              )
            }
            onLock={lock}
            onLand={() => land(state.answer.match)}
          />
        </>
      ) : null}
      <p className="match-told" role="status">
        {told}
      </p>
    </div>
  );
}

type ChoiceProps = {
  readonly answer: MatchAnswer;
  readonly look: Look;
  readonly held: readonly Held[];
  readonly isStale: boolean;
  readonly ask: PairAsk;
  readonly onHold: (held: Held) => void;
  readonly onLetGo: (chamber: Id) => void;
  readonly onLock: (chamber: Id, isLocked: boolean) => void;
  readonly onLand: () => void;
};

function Choice({ answer, look, held, isStale, ask, onHold, onLetGo, onLock, onLand }: ChoiceProps) {
  const { match, missing, reasons } = answer;
  const { unit } = look.job.settings;
  const lacks = missingWords(missing, unit);
  const isAny = match.chambers.some(({ isLocked, standing }) => !isLocked && standing !== null);
  const inOrder = [...match.chambers].sort((one, other) => one.number - other.number);
  const scale = gaugeScale(inOrder.flatMap(({ standing }) => standing ?? []));
  return (
    <div className="choice-made" data-stale={isStale}>
      <output className="choice-answer">{match.answer}</output>
      {lacks === null ? null : <p>{lacks}</p>}
      <ol className="chamber-choices">
        {inOrder.map((each) => (
          <ChamberChoice
            key={each.chamber}
            look={look}
            chamber={each}
            scale={scale}
            reason={reasons.get(each.chamber) ?? null}
            held={held}
            ask={ask}
            filled={match.filled}
            onHold={onHold}
            onLetGo={onLetGo}
            onLock={onLock}
            match={match}
          />
        ))}
      </ol>
      {match.notes.length === 0 ? null : (
        <ul className="small quiet">
          {match.notes.map((note) => (
            <li key={note}>{note}</li>
          ))}
        </ul>
      )}
      {match.isProved ? null : (
        <p className="small quiet">
          The best found; not every use of the balls was looked at, and a better one may exist.
        </p>
      )}
      {isAny ? (
        <div>
          <button type="button" className="button" data-kind="main" disabled={isStale} onClick={onLand}>
            Put these in the plan
          </button>
        </div>
      ) : null}
    </div>
  );
}
