/** By which ways the height is measured: each adds a column; several can be given, and are compared. */
import { lazy, Suspense, useState } from 'react';
import { WAYS, type WaysChoiceProps } from './height-ways.ts';

const WaysQuestions = lazy(async () => ({ default: (await import('./ways-questions.tsx')).WaysQuestions }));

export function WaysChoice(props: WaysChoiceProps) {
  const [isOpen, setOpen] = useState(false);
  return (
    <details className="fold ways" onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>
        <span className="fold-title">How it is measured</span>
        <span className="fold-summary quiet">
          {WAYS.filter(({ way }) => props.ways.has(way))
            .map(({ label }) => label.toLowerCase())
            .join(', ')}
        </span>
      </summary>
      {isOpen ? (
        <Suspense fallback={null}>
          <WaysQuestions {...props} />
        </Suspense>
      ) : null}
    </details>
  );
}
