/** The cylinder in section beside the station: long section, a close-up of each stack, and the key's travel. */
import { lazy, type ReactNode, Suspense } from 'react';
import type { Look } from '../shared/look.ts';
import { ONE_COLUMN, ONE_HAND, useMedia } from '../shared/use-media.ts';
import { LongSectionView } from './long-section-view.tsx';
import { SectionTools } from './section-tools.tsx';
import { TravelSlider } from './travel-slider.tsx';
import './section-pane.css';

// The long section is the first picture; the close-ups follow it.
const CloseUpRow = lazy(async () => ({ default: (await import('./close-up-row.tsx')).CloseUpRow }));

type SectionPaneProps = {
  readonly look: Look;
  /** In place of the drawing, when the solid view is chosen. */
  readonly solid?: ReactNode;
  /** Beside a station that needs the room: on a phone, close-ups are left to the station that is for looking. */
  readonly isBeside: boolean;
};

/** px. How high the long section may be, so that what was measured stays in sight. */
const DESK_HEIGHT = 440;
const TABLET_HEIGHT = 320;
const PHONE_HEIGHT = 280;

export function SectionPane({ look, solid, isBeside }: SectionPaneProps) {
  const isOneColumn = useMedia(ONE_COLUMN);
  const isOneHand = useMedia(ONE_HAND);
  const maxHeight = isOneHand ? PHONE_HEIGHT : isOneColumn ? TABLET_HEIGHT : DESK_HEIGHT;
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
      {solid ?? <LongSectionView look={look} maxHeight={maxHeight} />}
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
    </section>
  );
}
