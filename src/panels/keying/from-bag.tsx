/** The same plan out of the parts on hand, for two keys: what there is for each chamber, and what is missing. */
import { useState } from 'react';
import { putChosen } from '../../model/keying/put-chosen.ts';
import { sayChambers } from '../../model/keying/say-turning.ts';
import type { KeysPlan } from '../../model/keying/plan-keys.ts';
import type { TwoKeysMatch } from '../../model/matching/two-keys.ts';
import { RunStatus } from '../match/run-status.tsx';
import { useMatching } from '../match/use-matching.ts';
import type { Look } from '../shared/look.ts';
import { useEdit, useServices } from '../shared/services.tsx';

export function FromBag({ look, plan }: { readonly look: Look; readonly plan: KeysPlan }) {
  const { newId, view } = useServices();
  const edit = useEdit();
  const { state, start, cancel } = useMatching<'two keys'>();
  // What was found belongs to this plan: a changed one is looked for again.
  const [asked, setAsked] = useState<KeysPlan | null>(null);
  const [one, other] = plan.wants;
  const { job } = look;
  if (one === undefined || other === undefined) return null;
  if (plan.wants.length > 2)
    return (
      <p className="small quiet">
        For more than two keys the lengths are worked out and the finished plan is checked; choosing from the
        parts on hand is done for two.
      </p>
    );
  const match = asked === plan && state.type === 'done' ? state.answer : null;
  const find = () => {
    const { cylinder, plan: planId } = plan;
    setAsked(plan);
    start(job, { kind: 'two keys', selection: { cylinder, plan: planId, wants: [one, other] } });
  };
  const put = (chosen: TwoKeysMatch) => {
    let landed = plan.plan;
    edit('Parts on hand for two keys', (now) => {
      const done = putChosen(now, plan.plan, chosen.chambers, newId);
      landed = done.plan;
      return done.job;
    });
    view.getState().pickPlan(landed);
  };
  return (
    <div className="from-bag">
      <div className="keying-buttons">
        <button type="button" className="button" onClick={find}>
          Look in the parts on hand
        </button>
        {match === null || match.filled === 0 ? null : (
          <button type="button" className="button" onClick={() => put(match)}>
            Put these parts in the plan
          </button>
        )}
      </div>
      <RunStatus state={state} what="Looking in the parts on hand" onCancel={cancel} />
      <div role="status">{match === null ? null : <Found look={look} match={match} />}</div>
    </div>
  );
}

function Found({ look, match }: { readonly look: Look; readonly match: TwoKeysMatch }) {
  const label = (id: string) => look.job.parts.find((part) => part.id === id)?.label ?? 'a part';
  const filled = match.chambers.filter(({ isLocked, items }) => !isLocked && items !== null);
  const open = match.chambers.filter(({ isLocked, items }) => !isLocked && items === null);
  return (
    <>
      <p>{match.answer}</p>
      <ul className="small">
        {filled.map(({ chamber, number, items }) => (
          <li key={chamber}>
            Chamber {number}: {items?.map(({ part }) => label(part)).join(', under ')}
          </li>
        ))}
      </ul>
      {open.length === 0 ? null : (
        <p className="small quiet">Left as it is: {sayChambers(open.map(({ number }) => number))}.</p>
      )}
    </>
  );
}
