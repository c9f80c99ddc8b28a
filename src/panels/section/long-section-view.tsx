import { withCaptions } from '../../drawing/captions.ts';
import { longSection } from '../../drawing/long-section.ts';
import { useCaptions } from '../shared/captions-context.ts';
import { DrawingSvg } from '../shared/drawing-svg.tsx';
import { type Look, useLine } from '../shared/look.ts';
import { useView } from '../shared/services.tsx';
import { useWidth } from '../shared/use-width.ts';
import { usePose } from './use-pose.ts';

/** px. Narrower than this the drawing does not get; wider it gains nothing. */
const LEAST_WIDTH = 280;
const MOST_WIDTH = 1400;

/** The long section, as wide as there is room. */
export function LongSectionView({ look, maxHeight }: { readonly look: Look; readonly maxHeight: number }) {
  const [frame, width] = useWidth<HTMLDivElement>();
  const pose = usePose(look);
  const pickedChamber = useView((view) => view.pickedChamber);
  const flaggedLine = useLine(look);
  const captions = useCaptions();
  return (
    <div ref={frame} className="long-section">
      {width === 0 ? null : (
        <DrawingSvg
          drawing={withCaptions(captions, () =>
            longSection(look.assembly, pose, look.evaluation, {
              width: Math.min(MOST_WIDTH, Math.max(LEAST_WIDTH, width)),
              maxHeight,
              unit: look.job.settings.unit,
              pickedChamber,
              flaggedLine,
            }),
          )}
        />
      )}
    </div>
  );
}
