/**
 * Choosing what goes where: for the picked key and cylinder, and for all keys and cylinders of the job. Nothing is changed
 * until a choice is put into the plan.
 */
import { lazy, Suspense, useState } from 'react';
import { usedTooOften } from '../../model/matching/used-parts.ts';
import type { Job } from '../../model/schema/job-schema.ts';
import type { Look } from '../shared/look.ts';
import { useServices } from '../shared/services.tsx';
import { FilingChoice } from './filing-choice.tsx';
import { OnePair } from './one-pair.tsx';
import { OtherRepair } from './other-repair.tsx';
import './match-section.css';

const PairTable = lazy(async () => ({ default: (await import('./pair-table.tsx')).PairTable }));

export function MatchSection({ look }: { readonly look: Look }) {
  const { view } = useServices();
  const [mostFiled, setMostFiled] = useState<number | null>(null);
  const { job, selection } = look;
  const isSeveral = job.cylinders.length > 1 || job.keys.length > 1;
  const pair = `${job.id} ${selection.cylinder} ${selection.key ?? ''}`;
  return (
    <section className="match" aria-labelledby="match-title">
      <h2 id="match-title">Which part goes where</h2>
      <UsedTooOften job={job} />
      <FilingChoice unit={job.settings.unit} mostFiled={mostFiled} onChange={setMostFiled} />
      <OnePair key={`pair ${pair}`} look={look} mostFiled={mostFiled} />
      <OtherRepair key={`repair ${pair}`} look={look} />
      {isSeveral ? (
        <Suspense fallback={<p className="quiet">Loading…</p>}>
          <PairTable key={job.id} look={look} mostFiled={mostFiled} />
        </Suspense>
      ) : (
        <p className="small quiet">
          Several keys or cylinders at once?{' '}
          <button type="button" className="word-button" onClick={() => view.getState().chooseBench(true)}>
            Add another
          </button>
          , and this place says which of them the bag can build.
        </p>
      )}
    </section>
  );
}

function UsedTooOften({ job }: { readonly job: Job }) {
  const double = usedTooOften(job);
  if (double.length === 0) return null;
  return (
    <ul className="match-troubles">
      {double.map(({ part, message }) => (
        <li key={part} className="match-trouble">
          {message}
        </li>
      ))}
    </ul>
  );
}
