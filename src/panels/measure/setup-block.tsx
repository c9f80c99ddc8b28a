/** What is asked first, once: in the order a person can answer it. Folds to one line when all of it is answered. */
import { lazy, Suspense, useState } from 'react';
import type { Id } from '../../model/schema/leaf.ts';
import type { Look } from '../shared/look.ts';
import { setupIsAnswered, setupSummary } from './setup-summary.ts';
import './setup-block.css';

const SetupQuestions = lazy(async () => ({
  default: (await import('./setup-questions.tsx')).SetupQuestions,
}));

type SetupBlockProps = { readonly look: Look; readonly cutKey: Id };

/** Open until it is answered; then as the person leaves it, so that nothing closes under their hands. */
export function SetupBlock({ look, cutKey }: SetupBlockProps) {
  const [isOpen, setOpen] = useState(() => !setupIsAnswered(look));
  return (
    <details className="fold setup" open={isOpen} onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>
        <h2 className="setup-title">First</h2>
        <span className="setup-summary quiet">{setupSummary(look)}</span>
      </summary>
      {isOpen ? (
        <Suspense fallback={null}>
          <SetupQuestions look={look} cutKey={cutKey} />
        </Suspense>
      ) : null}
    </details>
  );
}
