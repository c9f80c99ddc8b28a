/** Starts the app: the example first, so that there is a finished cylinder to look at before anything is entered. */
import '../panels/fonts.css';
import '../panels/tokens.css';
import '../panels/base.css';
import { lazy, StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { assert } from '../model/assert.ts';
import { createWorkshop, emptyJob, loadExample } from './create-workshop.ts';
import { Shell } from './shell.tsx';
import { startTheme } from './theme.ts';

/** Brings three and the solids along: loaded when it is first asked for. */
const SolidView = lazy(async () => ({ default: (await import('./solid-view.tsx')).SolidView }));

const root = document.getElementById('root');
assert(root !== null, 'index.html has an element #root');

async function start(element: HTMLElement): Promise<void> {
  const example = await loadExample().catch(() => null);
  const job = example ?? (await emptyJob('in'));
  const workshop = createWorkshop(job, example?.id ?? null, SolidView);
  startTheme(workshop.preferences);
  // Whoever comes back sees their own job, not the example first; but nobody waits for a slow disk.
  if (workshop.isComingBack) await Promise.race([workshop.keeper, patience()]);
  createRoot(element).render(
    <StrictMode>
      <Shell workshop={workshop} />
    </StrictMode>,
  );
}

/** ms. After this the example is shown, and the job when it is there. */
const PATIENCE_MS = 800;

function patience(): Promise<void> {
  return new Promise((resolve) => {
    setTimeout(resolve, PATIENCE_MS);
  });
}

void start(root);
