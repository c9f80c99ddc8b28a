/** The turn, looking in from the front at one chamber: the one that stops it, else the picked one, else the first. */
import { withCaptions } from '../../drawing/captions.ts';
import { endView } from '../../drawing/end-view.ts';
import { useCaptions } from '../shared/captions-context.ts';
import { DrawingSvg } from '../shared/drawing-svg.tsx';
import type { Look } from '../shared/look.ts';
import { useView } from '../shared/services.tsx';
import { useWidth } from '../shared/use-width.ts';
import { turnAttempt } from './turn-words.ts';
import { usePose } from './use-pose.ts';

export function TurnView({ look, maxHeight }: { readonly look: Look; readonly maxHeight: number }) {
  const [frame, width] = useWidth<HTMLDivElement>();
  const pose = usePose(look);
  const picked = useView((view) => view.pickedChamber);
  const turn = useView((view) => view.turn);
  const line = useView((view) => view.pickedLine);
  const captions = useCaptions();
  const attempt = turnAttempt(look, line);
  const stop = attempt?.stoppedBy[0];
  const chamber = stop?.chamber ?? picked ?? look.assembly.chambers[0]?.id;
  if (chamber === undefined) return null;
  // A contact is measured from the axis of the line's inner body, the drawing from the plug's.
  const axisY = look.assembly.lines.find(({ id }) => id === attempt?.line)?.innerAxisY ?? 0;
  const isAtStop = attempt !== null && stop !== undefined && turn >= attempt.reach - 1e-6;
  return (
    <div ref={frame} className="turn-view">
      {width === 0 ? null : (
        <DrawingSvg
          drawing={withCaptions(captions, () =>
            endView(look.assembly, pose, look.evaluation, {
              chamber,
              ...(attempt !== null && { line: attempt.line }),
              width,
              maxHeight,
              unit: look.job.settings.unit,
              contact: isAtStop ? { x: stop.binding.contact.x, y: axisY + stop.binding.contact.y } : null,
            }),
          )}
        />
      )}
    </div>
  );
}
