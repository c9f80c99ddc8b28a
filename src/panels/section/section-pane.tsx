/** The cylinder in section beside the station: long section or solid view, a close-up of each stack, the key's travel. */
import { type CSSProperties, lazy, Suspense, useState } from 'react';
import type { Look } from '../shared/look.ts';
import { useServices, useView } from '../shared/services.tsx';
import { ONE_COLUMN, ONE_HAND, useMedia } from '../shared/use-media.ts';
import { useWindowHeight } from '../shared/use-window-height.ts';
import { LongSectionView } from './long-section-view.tsx';
import { pictureHeight } from './picture-height.ts';
import { SectionTools } from './section-tools.tsx';
import { TravelSlider } from './travel-slider.tsx';
import './section-pane.css';

// The long section is the first picture; everything else follows it.
const CloseUpRow = lazy(async () => ({ default: (await import('./close-up-row.tsx')).CloseUpRow }));
const TurnView = lazy(async () => ({ default: (await import('./turn-view.tsx')).TurnView }));
const PickedChamber = lazy(async () => ({
  default: (await import('../check/picked-chamber.tsx')).PickedChamber,
}));

type SectionPaneProps = {
  readonly look: Look;
  /** Beside a station that needs the room: on a phone, close-ups are left to the station that is for looking. */
  readonly isBeside: boolean;
};

export function SectionPane({ look, isBeside }: SectionPaneProps) {
  const isOneColumn = useMedia(ONE_COLUMN);
  const isOneHand = useMedia(ONE_HAND);
  const windowHeight = useWindowHeight();
  const maxHeight = pictureHeight({ windowHeight, isBeside, isOneColumn, isOneHand });
  const { key } = look.assembly;
  const closeUps = (
    <div className="close-ups-place">
      <Suspense fallback={null}>
        <CloseUpRow look={look} isKeyHome={isBeside} />
      </Suspense>
    </div>
  );
  return (
    <section className="section-pane" id="section" tabIndex={-1} aria-label="The cylinder in section">
      <SectionTools look={look} />
      <Picture look={look} maxHeight={maxHeight} />
      {isOneColumn ? null : closeUps}
      {key === null ? null : <TravelSlider look={look} way={key} />}
      {isOneColumn && !(isOneHand && isBeside) ? (
        <details className="fold">
          <summary>
            <span className="fold-title">Close-ups at the shear line</span>
          </summary>
          {closeUps}
        </details>
      ) : null}
      {isBeside || isOneColumn ? null : (
        <Suspense fallback={null}>
          <PickedChamber look={look} />
        </Suspense>
      )}
    </section>
  );
}

/** Drawing or solid view. The solid view, once opened, stays there for the session, hidden while the drawing is shown. */
function Picture({ look, maxHeight }: { readonly look: Look; readonly maxHeight: number }) {
  const { SolidView } = useServices();
  const isSolid = useView((view) => view.picture === 'solid') && SolidView !== null;
  const isTurning = useView((view) => view.turn !== 0 || view.playing === 'turn');
  const [wasSolid, setWasSolid] = useState(false);
  if (isSolid && !wasSolid) setWasSolid(true);
  return (
    <>
      {isSolid ? null : isTurning ? (
        <Suspense fallback={null}>
          <TurnView look={look} maxHeight={maxHeight} />
        </Suspense>
      ) : (
        <LongSectionView look={look} maxHeight={maxHeight} />
      )}
      {SolidView !== null && wasSolid ? (
        <div
          className="solid-place"
          hidden={!isSolid}
          style={{ '--picture-height': `${maxHeight}px` } as CSSProperties}
        >
          <Suspense fallback={<p className="loading quiet">Loading the solid view…</p>}>
            <SolidView />
          </Suspense>
        </div>
      ) : null}
    </>
  );
}
