import { lazy, Suspense } from 'react';
import type { Look } from '../shared/look.ts';
import { useServices, useView } from '../shared/services.tsx';
import { keyWords } from './key-words.ts';
import { turnAttempt, turnWords } from './turn-words.ts';

const TurnChoice = lazy(async () => ({ default: (await import('./turn-choice.tsx')).TurnChoice }));

/** What can be made to move, and where it stands. */
export function SectionTools({ look }: { readonly look: Look }) {
  const { SolidView } = useServices();
  const { key } = look.assembly;
  const travel = useView((view) => view.travel);
  const turn = useView((view) => view.turn);
  const play = useView((view) => view.play);
  const moveKey = useView((view) => view.moveKey);
  const playing = useView((view) => view.playing);
  const picture = useView((view) => view.picture);
  const setPicture = useView((view) => view.setPicture);
  const { unit } = look.job.settings;
  const way = key === null ? null : { seated: key.seatedTravel, out: key.outTravel };
  const isHome = way !== null && travel - way.seated < 1e-3;
  const isTurned = Math.abs(turn) > 1e-6;
  const line = useView((view) => view.pickedLine);
  const attempt = turnAttempt(look, line);
  const canTurn = attempt !== null;
  const tryTheTurn = () => {
    if (way !== null && !isHome) moveKey(way.seated);
    play('turn');
  };
  return (
    <div className="section-tools">
      {way === null ? null : (
        <>
          <button
            type="button"
            className="button"
            data-kind={isHome ? undefined : 'main'}
            disabled={isTurned}
            onClick={() => play(isHome ? 'key out' : 'key in')}
          >
            {isHome ? 'Pull the key out' : 'Slide the key in'}
          </button>
          <button
            type="button"
            className="button"
            data-kind={isHome ? 'main' : undefined}
            disabled={!canTurn && !isTurned}
            aria-describedby={canTurn || isTurned ? undefined : 'turn-waits'}
            onClick={isTurned ? () => play('turn back') : tryTheTurn}
          >
            {isTurned ? 'Turn back' : 'Try the turn'}
          </button>
          {attempt !== null && attempt.clear.length > 1 ? (
            <Suspense fallback={null}>
              <TurnChoice look={look} attempt={attempt} />
            </Suspense>
          ) : null}
          <output className="section-state quiet" data-turned={isTurned}>
            {isTurned || playing === 'turn' ? turnWords(look, turn, line) : keyWords(travel, way, unit)}
          </output>
          {canTurn || isTurned ? null : (
            <span className="small quiet" id="turn-waits">
              The turn waits for the readings.
            </span>
          )}
        </>
      )}
      {SolidView === null ? null : (
        <div className="picture-switch" role="group" aria-label="Picture">
          {(['drawing', 'solid'] as const).map((kind) => (
            <button
              key={kind}
              type="button"
              className="button"
              data-kind={picture === kind ? 'main' : undefined}
              aria-pressed={picture === kind}
              onClick={() => setPicture(kind)}
            >
              {kind === 'drawing' ? 'Drawing' : 'Solid'}
            </button>
          ))}
        </div>
      )}
    </div>
  );
}
