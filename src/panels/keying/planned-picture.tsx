/** One planned stack, drawn in section with its lengths as dimensions. */
import { endView } from '../../drawing/end-view.ts';
import type { Id } from '../../model/schema/leaf.ts';
import { homePose } from '../section/use-pose.ts';
import { DrawingSvg } from '../shared/drawing-svg.tsx';
import type { Look } from '../shared/look.ts';
import { useWidth } from '../shared/use-width.ts';

/** px */
const MOST_HEIGHT = 420;
const LEAST_WIDTH = 280;
/** Below this, smaller letters leave room for the dimensions. */
const NARROW = 400;

export function PlannedPicture({ look, chamber }: { readonly look: Look; readonly chamber: Id }) {
  const [frame, width] = useWidth<HTMLDivElement>();
  const { unit } = look.job.settings;
  return (
    <div ref={frame} className="planned-picture">
      {width === 0 ? null : (
        <DrawingSvg
          drawing={endView(look.assembly, homePose(look), look.evaluation, {
            chamber,
            width: Math.max(LEAST_WIDTH, width),
            maxHeight: MOST_HEIGHT,
            unit,
            textScale: width < NARROW ? 0.9 : 1,
          })}
        />
      )}
      <p className="small quiet">As planned, with {look.bench.key?.label ?? 'no key'} in.</p>
    </div>
  );
}
