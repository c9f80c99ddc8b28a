/** What else could stand in a chamber, best first by what the whole cylinder comes to. Picking one holds it there. */
import { useEffect, useEffectEvent } from 'react';
import { sayAmount } from '../../model/evaluate/say.ts';
import type { Alternative } from '../../model/matching/alternatives.ts';
import type { Held } from '../../model/matching/held.ts';
import type { ChamberMatch, Match } from '../../model/matching/match.ts';
import type { Look } from '../shared/look.ts';
import { listed, numberIn, partWords, spareWords, standsWords } from './match-words.ts';
import type { PairAsk } from './pair-ask.ts';
import { RunStatus } from './run-status.tsx';
import { useMatching } from './use-matching.ts';

type AlternativesListProps = {
  readonly look: Look;
  readonly match: Match;
  readonly chamber: ChamberMatch;
  readonly held: readonly Held[];
  readonly ask: PairAsk;
  readonly filled: number;
  readonly onPick: (held: Held) => void;
};

export function AlternativesList(props: AlternativesListProps) {
  const { look, match, chamber, held, ask, filled, onPick } = props;
  const { state, start, cancel } = useMatching<'alternatives'>();
  const { job } = look;
  const { pair, mostFiled } = ask;
  const lookForOthers = useEffectEvent(() => {
    start(job, {
      kind: 'alternatives',
      selection: pair,
      ask: { mostFiled, held },
      chamber: chamber.chamber,
    });
  });
  // Once, for what was on screen when it was opened.
  useEffect(() => lookForOthers(), []);
  if (state.type !== 'done') return <RunStatus state={state} what="Looking for others" onCancel={cancel} />;
  const others = state.answer.filter(({ isChosen }) => !isChosen);
  if (others.length === 0) return <p className="small quiet">Nothing else in the bag turns here.</p>;
  return (
    <ul className="alternatives" aria-label={`Others for chamber ${chamber.number}`}>
      {others.map((other) => (
        <li key={other.standing.items.map(({ part }) => part).join(' ') + String(other.standing.filedOff)}>
          <button
            type="button"
            className="alternative"
            onClick={() =>
              onPick({
                chamber: chamber.chamber,
                items: other.standing.items,
                isFiled: other.standing.filedOff > 0,
              })
            }
          >
            <span className="choice-label">{partWords(job, other.standing.items)}</span>
            <span>
              {standsWords(other.standing, job.settings).words}
              <span className="small quiet">, {spareWords(other.standing, job.settings.unit)}</span>
            </span>
            <span className="small quiet">{consequence(other, match, filled, job.settings.unit)}</span>
          </button>
        </li>
      ))}
    </ul>
  );
}

/** What it does to the other chambers. */
function consequence(
  { standing, whole, changes }: Alternative,
  match: Match,
  filled: number,
  unit: 'in' | 'mm',
): string {
  const locked = match.chambers.filter((each) => each.isLocked && (each.standing?.spare ?? -1) >= 0).length;
  const fewer = filled - locked - whole.filled;
  const numbers = changes.map((id) => numberIn(match, id)).sort((one, other) => one - other);
  const filed = standing.filedOff > 0 ? [`filed ${sayAmount(standing.filedOff, unit)}`] : [];
  const moves =
    numbers.length === 0 ? [] : [`changes chamber${numbers.length === 1 ? '' : 's'} ${listed(numbers)}`];
  const open = fewer <= 0 ? [] : [fewer === 1 ? 'leaves one more open' : `leaves ${fewer} more open`];
  return [...filed, ...moves, ...open].join(', ');
}
