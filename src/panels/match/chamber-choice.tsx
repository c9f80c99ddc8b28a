/** One chamber of a choice: the part in words, where it stands, why, and what else could stand there. */
import { useState } from 'react';
import type { Held } from '../../model/matching/held.ts';
import type { ChamberMatch, Match } from '../../model/matching/match.ts';
import { sayLength } from '../../model/evaluate/say.ts';
import type { Id } from '../../model/schema/leaf.ts';
import type { Look } from '../shared/look.ts';
import { useView } from '../shared/services.tsx';
import { VerdictMark } from '../shared/verdict-mark.tsx';
import { AlternativesList } from './alternatives-list.tsx';
import type { PairAsk } from './pair-ask.ts';
import { isOpen as isOpenYet, partWords, spareWords, standingNotes, standsWords } from './match-words.ts';
import { type GaugeScale, WindowGauge } from './window-gauge.tsx';

type ChamberChoiceProps = {
  readonly look: Look;
  readonly match: Match;
  readonly chamber: ChamberMatch;
  readonly scale: GaugeScale;
  readonly reason: string | null;
  readonly held: readonly Held[];
  readonly ask: PairAsk;
  /** Chambers that turn in this choice. */
  readonly filled: number;
  readonly onHold: (held: Held) => void;
  readonly onLetGo: (chamber: Id) => void;
  readonly onLock: (chamber: Id, isLocked: boolean) => void;
};

export function ChamberChoice(props: ChamberChoiceProps) {
  const { look, match, chamber, scale, reason, held, ask, filled, onHold, onLetGo, onLock } = props;
  const [isOpen, setOpen] = useState(false);
  const pick = useView((view) => view.pickChamber);
  const { unit } = look.job.settings;
  const { standing, number, isLocked } = chamber;
  const isHeld = held.some((each) => each.chamber === chamber.chamber);
  const notes = standingNotes(chamber, { reason, isHeld }, unit);
  const stands = standing === null ? null : standsWords(standing, look.job.settings);
  const isUnsure = standing !== null && isOpenYet(standing, look.chamberResults.get(chamber.chamber));
  const symbol = isUnsure ? 'unsure' : (stands?.symbol ?? 'stops');
  return (
    <li className="chamber-choice" onPointerEnter={() => pick(chamber.chamber)}>
      <span className="choice-number">
        <span className="visually-hidden">Chamber </span>
        {number}
      </span>
      <div className="choice-part">
        <span className="choice-label">
          {standing === null ? 'open' : partWords(look.job, standing.items)}
        </span>
        {standing === null ? null : (
          <span className="small quiet number">{sayLength(standing.height, unit)}</span>
        )}
      </div>
      {standing === null ? null : <WindowGauge standing={standing} scale={scale} />}
      <div className="choice-stands" data-verdict={symbol}>
        <VerdictMark symbol={symbol} />
        {standing === null || stands === null ? (
          <span>nothing fits</span>
        ) : (
          <span>
            <span className="choice-offset">{stands.words}</span>
            <span className="visually-hidden">, </span>
            <span className="small quiet">
              {spareWords(standing, unit)}
              {isUnsure ? ', probably turns' : ''}
            </span>
          </span>
        )}
      </div>
      {notes.length === 0 ? null : (
        <div className="choice-notes small">
          {notes.map((note) => (
            <p key={note}>{note}</p>
          ))}
        </div>
      )}
      <div className="choice-tools">
        {isLocked ? null : (
          <button
            type="button"
            className="word-button"
            aria-expanded={isOpen}
            onClick={() => setOpen((now) => !now)}
          >
            Others<span className="visually-hidden"> for chamber {number}</span>
          </button>
        )}
        {isHeld ? (
          <button type="button" className="word-button" onClick={() => onLetGo(chamber.chamber)}>
            Let it choose<span className="visually-hidden"> for chamber {number}</span>
          </button>
        ) : null}
        <label className="check-line">
          <input
            type="checkbox"
            checked={isLocked}
            onChange={({ target }) => onLock(chamber.chamber, target.checked)}
          />
          <span>
            Leave <span className="visually-hidden">chamber {number} </span>as it is
          </span>
        </label>
      </div>
      {isOpen && !isLocked ? (
        <AlternativesList
          key={JSON.stringify(held)}
          look={look}
          match={match}
          chamber={chamber}
          held={held}
          ask={ask}
          filled={filled}
          onPick={(one) => {
            setOpen(false);
            onHold(one);
          }}
        />
      ) : null}
    </li>
  );
}
