/** Starts the app: the example first, so that there is a finished cylinder to look at before anything is entered. */
import '../panels/fonts.css';
import '../panels/tokens.css';
import '../panels/base.css';
import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { assert } from '../model/assert.ts';
import { createWorkshop, emptyJob, loadExample } from './create-workshop.ts';
import { Shell } from './shell.tsx';
import { startTheme } from './theme.ts';

const root = document.getElementById('root');
assert(root !== null, 'index.html has an element #root');

async function start(element: HTMLElement): Promise<void> {
  const example = await loadExample().catch(() => null);
  const job = example ?? (await emptyJob('in'));
  const workshop = createWorkshop(job, example?.id ?? null, null);
  startTheme(workshop.preferences);
  createRoot(element).render(
    <StrictMode>
      <Shell workshop={workshop} />
    </StrictMode>,
  );
}

void start(root);
