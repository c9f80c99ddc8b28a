/** Starts the app: the example first, so that there is a finished cylinder to look at before anything is entered. */
import { lazy, startTransition, StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { assert } from '../model/assert.ts';
import { workOut } from './work-out.ts';
import { breath } from './page-has-time.ts';
import { setFirstWidths } from '../panels/shared/first-widths.ts';
import { createWorkshop, emptyJob, loadExample } from './create-workshop.ts';
import { Shell } from './shell.tsx';
import { startTheme } from './theme.ts';

/** Brings three and the solids along: loaded when it is first asked for. */
const SolidView = lazy(async () => ({ default: (await import('./solid-view.tsx')).SolidView }));

/** Puts the app in the place of the first picture. */
export async function start(): Promise<void> {
  const element = document.getElementById('root');
  assert(element !== null, 'index.html has an element #root');
  const example = await loadExample().catch(() => null);
  const job = example ?? (await emptyJob('in'));
  const widthOf = (place: string) => document.querySelector(place)?.clientWidth ?? 0;
  setFirstWidths({ section: widthOf('.first-picture'), station: widthOf('.first-station') });
  await breath();
  const workshop = createWorkshop(job, example?.id ?? null, SolidView);
  startTheme(workshop.preferences);
  // Whoever comes back sees their own job, not the example first; but nobody waits for a slow disk.
  if (workshop.isComingBack) await Promise.race([workshop.keeper, patience()]);
  await breath();
  await workOut(workshop);
  await breath();
  // As a transition React works in short pieces: a press or a scroll gets in between.
  startTransition(() => {
    createRoot(element).render(
      <StrictMode>
        <Shell workshop={workshop} />
      </StrictMode>,
    );
  });
}

/** ms. After this the example is shown, and the job when it is there. */
const PATIENCE_MS = 800;

function patience(): Promise<void> {
  return new Promise((resolve) => {
    setTimeout(resolve, PATIENCE_MS);
  });
}
