/** What Check keeps closed until it is wanted. Nothing of it is loaded or worked out before its fold is opened. */
import { type ComponentType, lazy, Suspense, useState } from 'react';
import type { Look } from '../shared/look.ts';
import './check-folds.css';

type Body = ComponentType<{ readonly look: Look }>;

type Fold = { readonly id: string; readonly title: string; readonly summary: string; readonly Body: Body };

const FOLDS: readonly Fold[] = [
  {
    id: 'drivers',
    title: 'Drivers and springs',
    summary: 'key out, and as the peaks pass',
    Body: lazy(async () => ({ default: (await import('./driver-table.tsx')).DriverTable })),
  },
  {
    id: 'way',
    title: 'In and out',
    summary: 'steep sides, what holds the turned key',
    Body: lazy(async () => ({ default: (await import('./way-table.tsx')).WayTable })),
  },
  {
    id: 'symptoms',
    title: 'From what you see',
    summary: 'back to what would explain it',
    Body: lazy(async () => ({ default: (await import('./symptom-search.tsx')).SymptomSearch })),
  },
  {
    id: 'load-sheet',
    title: 'Load sheet',
    summary: 'order, which way up, tests after it',
    Body: lazy(async () => ({ default: (await import('./load-sheet-view.tsx')).LoadSheetView })),
  },
  {
    id: 'thresholds',
    title: 'What is worth a word',
    summary: 'your own limits',
    Body: lazy(async () => ({ default: (await import('./thresholds-block.tsx')).ThresholdsBlock })),
  },
];

export function CheckFolds({ look }: { readonly look: Look }) {
  return (
    <div className="check-folds">
      {FOLDS.map((fold) => (
        <CheckFold key={fold.id} fold={fold} look={look} />
      ))}
    </div>
  );
}

function CheckFold({
  fold: { id, title, summary, Body },
  look,
}: {
  readonly fold: Fold;
  readonly look: Look;
}) {
  const [isOpen, setOpen] = useState(false);
  return (
    <details className="fold" data-fold={id} onToggle={({ currentTarget }) => setOpen(currentTarget.open)}>
      <summary>
        <h2 className="fold-title">{title}</h2>
        <span className="fold-summary quiet">{summary}</span>
      </summary>
      {isOpen ? (
        <div className="check-fold-body">
          <Suspense fallback={<p className="quiet">Loading…</p>}>
            <Body look={look} />
          </Suspense>
        </div>
      ) : null}
    </details>
  );
}
