/** What each key would do once this is in the plan, and how many other sets of cuts would as well. */
import type { KeyOutcome } from '../../model/keying/key-outcomes.ts';
import { operatingKeys } from '../../model/keying/operating-keys.ts';
import type { KeysPlan } from '../../model/keying/plan-keys.ts';
import { sayOutcome } from '../../model/keying/say-turning.ts';
import { VerdictMark } from '../shared/verdict-mark.tsx';
import type { Look } from '../shared/look.ts';
import { grouped } from './keying-words.ts';

type PlanOutcomeProps = {
  readonly look: Look;
  readonly preview: Look;
  readonly plan: KeysPlan;
  readonly outcomes: readonly KeyOutcome[];
};

export function PlanOutcome({ look, preview, plan, outcomes }: PlanOutcomeProps) {
  return (
    <section className="plan-outcome" aria-label="What each key would then do">
      <h3>Then</h3>
      <ul>
        {outcomes.map((outcome) => (
          <li key={outcome.key} className="key-does">
            <VerdictMark symbol={markOf(outcome)} />
            <span>
              <strong>{outcome.label}</strong> {sayOutcome(outcome)}
              <Unplanned plan={plan} outcome={outcome} look={look} />
            </span>
          </li>
        ))}
      </ul>
      <Others preview={preview} plan={plan} />
    </section>
  );
}

function markOf({ does, probably }: KeyOutcome): 'turns' | 'stops' | 'unsure' | 'none' {
  if (does === null) return probably === null ? 'none' : 'unsure';
  return does === 'nothing' ? 'stops' : 'turns';
}

/** A key that was left out and turns it all the same. */
function Unplanned({
  plan,
  outcome,
}: {
  readonly plan: KeysPlan;
  readonly outcome: KeyOutcome;
  readonly look: Look;
}) {
  const isPlanned = plan.wants.some(({ key }) => key === outcome.key);
  const turns = outcome.does !== null && outcome.does !== 'nothing';
  return isPlanned || !turns ? null : <strong className="key-differs">, though it is left out</strong>;
}

function Others({ preview, plan }: { readonly preview: Look; readonly plan: KeysPlan }) {
  const result = operatingKeys(preview, null);
  if (result.type === 'missing') return null;
  const { setsOfHeights } = result.keys;
  const meant = (line: string) =>
    new Set(plan.wants.filter((each) => each.line === line).map(({ key }) => key)).size;
  return setsOfHeights.map(({ line, count }, i) => {
    const where =
      setsOfHeights.length === 1 ? 'the plug' : i === 0 ? 'the plug alone' : 'plug and sleeve together';
    const sets = count === 1n ? 'one set of cut heights turns' : `${grouped(count)} sets of cut heights turn`;
    return (
      <p key={line} className="small">
        In all {sets} {where}, for {meant(line)} planned.
      </p>
    );
  });
}
