/** The station of the loose parts: which lengths are wanted first, then the bag, then which part goes where. */
import { lazy, Suspense } from 'react';
import { MatchSection } from '../match/match-section.tsx';
import type { Look } from '../shared/look.ts';
import './parts-station.css';

const PlanKeysSection = lazy(async () => ({
  default: (await import('../keying/plan-keys-section.tsx')).PlanKeysSection,
}));

export function PartsStation({ look }: { readonly look: Look }) {
  return (
    <div className="station parts">
      <h2>Parts on hand</h2>
      <p className="quiet">
        {look.job.parts.length === 1 ? 'One part' : `${look.job.parts.length} parts`} in this job.
      </p>
      <MatchSection look={look} />
      <Suspense fallback={null}>
        <PlanKeysSection look={look} />
      </Suspense>
    </div>
  );
}
