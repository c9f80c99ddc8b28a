/** Several cylinders built at the same time: which parts go where in each, and the way into their plans, in one step. */
import { useState } from 'react';
import type { Together } from '../../model/matching/build-together.ts';
import type { KeyChoice } from '../../model/matching/choose-keys.ts';
import type { Match } from '../../model/matching/match.ts';
import type { Job } from '../../model/schema/job-schema.ts';
import { useEdit, useServices } from '../shared/services.tsx';
import { VerdictMark } from '../shared/verdict-mark.tsx';
import { landChoices } from './land-choice.ts';
import { partWords, proofWords, togetherWords, untilFiled } from './match-words.ts';

type TogetherResultProps = {
  readonly job: Job;
  /** What it was reckoned from. */
  readonly from: Job;
  readonly together: Together;
  /** Where the keys were chosen as well. */
  readonly choice: KeyChoice | null;
  readonly onLanded: (job: Job) => void;
};

export function TogetherResult({ job, from, together, choice, onLanded }: TogetherResultProps) {
  const { document, newId } = useServices();
  const edit = useEdit();
  const [told, setTold] = useState<string | null>(null);
  const { matches, complete } = together;
  const isStale = from !== job;
  const without = choice === null ? [] : choice.keys.filter(({ key }) => key === null);
  const land = () => {
    const landing = landChoices(job, matches, newId);
    if (landing.type === 'refused') {
      setTold(landing.message);
      return;
    }
    const what = matches.length === 1 ? 'Parts for one cylinder' : `Parts for ${matches.length} cylinders`;
    edit(what, () => landing.job);
    onLanded(document.getState().job);
    const later = matches.flatMap((match) => {
      const until = untilFiled(match);
      return until === null ? [] : [`${cylinderName(job, match)}: ${until}`];
    });
    setTold([`In ${matches.length === 1 ? 'the plan' : 'the plans'}, as one step.`, ...later].join(' '));
  };
  return (
    <div className="together" data-stale={isStale}>
      <output className="choice-answer">{togetherWords(complete, matches.length)}</output>
      {choice === null ? null : <p>{proofWords(choice, job.settings.unit)}</p>}
      {isStale ? (
        <p className="match-stale" role="status">
          Something has changed since this was chosen: choose again before you rely on it.
        </p>
      ) : null}
      <ul className="together-list">
        {matches.map((match) => (
          <TogetherPair key={match.cylinder} job={job} match={match} />
        ))}
        {without.map(({ cylinder }) => (
          <li key={cylinder} className="quiet">
            {job.cylinders.find(({ id }) => id === cylinder)?.label}: no key left for it.
          </li>
        ))}
      </ul>
      <div>
        <button type="button" className="button" data-kind="main" disabled={isStale} onClick={land}>
          {matches.length === 1 ? 'Put these in the plan' : 'Put these in the plans'}
        </button>
      </div>
      <p className="match-told" role="status">
        {told}
      </p>
    </div>
  );
}

function TogetherPair({ job, match }: { readonly job: Job; readonly match: Match }) {
  const isWhole = match.filled === match.of;
  const key = job.keys.find(({ id }) => id === match.key)?.label ?? '';
  const inOrder = [...match.chambers].sort((one, other) => one.number - other.number);
  return (
    <li className="together-pair">
      <p className="together-name">
        <VerdictMark symbol={isWhole ? 'turns' : 'stops'} />
        <strong>{cylinderName(job, match)}</strong> for {key}
      </p>
      <p>{match.answer}</p>
      <ol className="together-parts">
        {inOrder.map(({ chamber, number, standing }) => (
          <li key={chamber}>
            <span className="small quiet">{number}</span>{' '}
            {standing === null ? <span className="quiet">open</span> : partWords(job, standing.items)}
          </li>
        ))}
      </ol>
    </li>
  );
}

function cylinderName(job: Job, { cylinder }: Match): string {
  return job.cylinders.find(({ id }) => id === cylinder)?.label ?? '';
}
