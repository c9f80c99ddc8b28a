/** The frame around the stations: top bar, the station, the section beside it. */
import { lazy, Suspense, useEffect } from 'react';
import { useStore } from 'zustand';
import { SectionPane } from '../panels/section/section-pane.tsx';
import { forgetFirstWidths } from '../panels/shared/first-widths.ts';
import { useLook } from '../panels/shared/look.ts';
import { ServicesProvider, useDocument, useServices, useView } from '../panels/shared/services.tsx';
import type { Workshop } from './create-workshop.ts';
import { pageHasTime } from './page-has-time.ts';
import { ErrorBoundary } from './error-boundary.tsx';
import { STATIONS } from './stations.tsx';
import { TopBar } from './top-bar.tsx';
import { useShortcuts } from './use-shortcuts.ts';
import { useStationInAddress } from './use-station-in-address.ts';
import './shell.css';

const SaveTrouble = lazy(async () => ({ default: (await import('./save-trouble.tsx')).SaveTrouble }));
const UpdateNotice = lazy(async () => {
  await pageHasTime();
  return { default: (await import('./update-notice.tsx')).UpdateNotice };
});

const BenchChoice = lazy(async () => ({
  default: (await import('../panels/bench-choice/bench-choice.tsx')).BenchChoice,
}));

export function Shell({ workshop }: { readonly workshop: Workshop }) {
  return (
    <ServicesProvider value={workshop.services}>
      <Frame workshop={workshop} />
      <ErrorBoundary what="The word of a newer version">
        <Suspense fallback={null}>
          <UpdateNotice workshop={workshop} />
        </Suspense>
      </ErrorBoundary>
    </ServicesProvider>
  );
}

function Frame({ workshop }: { readonly workshop: Workshop }) {
  const station = useView((view) => view.station);
  const entry = STATIONS.find((each) => each.id === station) ?? STATIONS[0];
  const look = useLook();
  const isExample = useStore(workshop.document, ({ job }) => workshop.services.isExample(job));
  const isInTrouble = useDocument(({ saved }) => saved.kind === 'failed' || saved.kind === 'conflict');
  const isNewer = useDocument(({ newer }) => newer !== null);
  useEffect(forgetFirstWidths, []);
  useShortcuts(workshop);
  useStationInAddress(workshop.view);
  if (entry === undefined) return null;
  return (
    <div className="shell" data-station={entry.id} data-section={entry.section}>
      <a className="skip-link" href="#station">
        To the readings
      </a>
      <div className="shell-top">
        <TopBar workshop={workshop} />
        {isInTrouble || isNewer ? (
          <Suspense fallback={null}>
            <SaveTrouble workshop={workshop} />
          </Suspense>
        ) : null}
      </div>
      <main className="desk" id="station" tabIndex={-1}>
        <div className="desk-station">
          {entry.section === 'none' || look === null ? null : (
            <ErrorBoundary what="The choice of cylinder and key">
              <Suspense fallback={<div className="bench-choice-place" />}>
                <BenchChoice look={look} />
              </Suspense>
            </ErrorBoundary>
          )}
          {isExample ? <ExampleNote /> : null}
          <ErrorBoundary what="This station">
            <Suspense fallback={<p className="loading quiet">Loading…</p>}>
              {look === null ? <NoCylinder /> : <entry.View look={look} />}
            </Suspense>
          </ErrorBoundary>
        </div>
        {entry.section === 'none' || look === null ? null : (
          <div className="desk-section">
            <ErrorBoundary what="The picture">
              <SectionPane look={look} isBeside={entry.section === 'beside'} />
            </ErrorBoundary>
          </div>
        )}
      </main>
    </div>
  );
}

function ExampleNote() {
  const { startMyCylinder } = useServices();
  return (
    <div className="example-note">
      <p>An example, invented. Drag its key, or change a number.</p>
      <button type="button" className="button" data-kind="start" onClick={startMyCylinder}>
        Start with my cylinder
      </button>
    </div>
  );
}

function NoCylinder() {
  const { startMyCylinder } = useServices();
  return (
    <div className="example-note">
      <p>This job has no cylinder yet.</p>
      <button type="button" className="button" data-kind="main" onClick={startMyCylinder}>
        Start with my cylinder
      </button>
    </div>
  );
}
