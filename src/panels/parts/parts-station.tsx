/** The station of the loose parts: which lengths are wanted first, then the bag, then which part goes where. */
import { lazy, Suspense, useState } from 'react';
import { MatchSection } from '../match/match-section.tsx';
import type { Look } from '../shared/look.ts';
import { BagSection } from './bag-section.tsx';
import { EntryCard } from './entry-card.tsx';
import { type Like, likeLast } from './next-like.ts';
import { WantedSection } from './wanted-section.tsx';
import './parts-station.css';

const PastePartsDialog = lazy(async () => ({
  default: (await import('./paste-parts-dialog.tsx')).PastePartsDialog,
}));
const StacksFromNumbers = lazy(async () => ({
  default: (await import('../keying/stacks-from-numbers.tsx')).StacksFromNumbers,
}));
const PlanKeysSection = lazy(async () => ({
  default: (await import('../keying/plan-keys-section.tsx')).PlanKeysSection,
}));
const HelpCard = lazy(async () => ({ default: (await import('../measure/help-card.tsx')).HelpCard }));

export function PartsStation({ look }: { readonly look: Look }) {
  // What the next part is belongs to one job.
  return <Station key={look.job.id} look={look} />;
}

function Station({ look }: { readonly look: Look }) {
  const [isFirst] = useState(() => !look.job.parts.some((part) => !isInPlan(look, part.id)));
  const [like, setLike] = useState<Like>(() => likeLast(look));
  const [pasted, setPasted] = useState<string | null>(null);
  const [said, say] = useState('');
  return (
    <div className="station parts">
      <h2>Parts on hand</h2>
      <WantedSection look={look} />
      <EntryCard
        look={look}
        like={like}
        setLike={(changes) => setLike((before) => ({ ...before, ...changes }))}
        isFirst={isFirst}
        onPaste={setPasted}
      />
      <BagSection look={look} said={said} say={say} onPaste={setPasted} />
      <MatchSection look={look} />
      <Suspense fallback={null}>
        <PlanKeysSection look={look} />
        <StacksFromNumbers look={look} />
      </Suspense>
      <Suspense fallback={null}>
        <HelpCard />
        {pasted === null ? null : (
          <PastePartsDialog
            look={look}
            like={like}
            first={pasted}
            onClose={(words) => {
              setPasted(null);
              say(words);
            }}
          />
        )}
      </Suspense>
    </div>
  );
}

function isInPlan({ job }: Look, part: string): boolean {
  return job.plans.some(({ stacks }) => stacks.some(({ items }) => items.some((item) => item.part === part)));
}
