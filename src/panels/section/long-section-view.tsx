import { withCaptions } from '../../drawing/captions.ts';
import { useCaptions } from '../shared/captions-context.ts';
import { DrawingSvg } from '../shared/drawing-svg.tsx';
import { firstWidths } from '../shared/first-widths.ts';
import { type Look, useLine } from '../shared/look.ts';
import { useView } from '../shared/services.tsx';
import { useWidth } from '../shared/use-width.ts';
import { drawnSection } from './drawn-section.ts';
import { usePose } from './use-pose.ts';

/** The long section, as wide as there is room. */
export function LongSectionView({ look, maxHeight }: { readonly look: Look; readonly maxHeight: number }) {
  const [frame, width] = useWidth<HTMLDivElement>(firstWidths().section);
  const pose = usePose(look);
  const pickedChamber = useView((view) => view.pickedChamber);
  const flaggedLine = useLine(look);
  const captions = useCaptions();
  return (
    <div ref={frame} className="long-section">
      {width === 0 ? null : (
        <DrawingSvg
          drawing={withCaptions(captions, () =>
            drawnSection(look, pose, { width, maxHeight, pickedChamber, flaggedLine }),
          )}
        />
      )}
    </div>
  );
}
