/**
 * The picked chamber whole and in true proportions: at its line, looking along the plug, with window and numbers; across
 * the cylinder, as a chain of dimensions; and how high the key lifts it on the way in.
 */
import { closeUpLarge } from '../../drawing/close-up-large.ts';
import { endView } from '../../drawing/end-view.ts';
import { liftChart } from '../../drawing/lift-curve.ts';
import { DrawingSvg } from '../shared/drawing-svg.tsx';
import { type Look, useLine } from '../shared/look.ts';
import { stackName } from '../shared/part-labels.ts';
import { useView } from '../shared/services.tsx';
import { useWidth } from '../shared/use-width.ts';
import { usePose } from '../section/use-pose.ts';
import './picked-chamber.css';

/** px */
const LIFT_HEIGHT = 150;
const VIEW_HEIGHT = 460;
const LEAST_WIDTH = 280;

export function PickedChamber({ look }: { readonly look: Look }) {
  const chamber = usePicked(look);
  const pose = usePose(look);
  const isMoving = useView((view) => view.playing === 'key in' || view.playing === 'key out');
  const isOut = useView((view) => view.travel > (look.assembly.key?.seatedTravel ?? 0) + 1e-3);
  const [liftFrame, liftWidth] = useWidth<HTMLDivElement>();
  const [largeFrame, largeWidth] = useWidth<HTMLDivElement>();
  const [endFrame, endWidth] = useWidth<HTMLDivElement>();
  const own = useLine(look);
  const { unit } = look.job.settings;
  if (chamber === null) return null;
  const number = look.chamberResults.get(chamber)?.number ?? 0;
  const name = stackName(look.job, look.bench.plan, chamber);
  const lift =
    liftWidth === 0 || !(isMoving || isOut)
      ? null
      : liftChart(look.assembly, pose, {
          width: Math.max(LEAST_WIDTH, liftWidth),
          height: LIFT_HEIGHT,
          unit,
          pickedChamber: chamber,
        });
  // The line that is looked at comes first.
  const lines = look.evaluation.lines
    .map(({ line }) => line)
    .sort((a, b) => Number(b === own) - Number(a === own));
  return (
    <section
      className="picked-chamber"
      id="picked-chamber"
      tabIndex={-1}
      aria-label={`Chamber ${number}, whole`}
    >
      <div ref={liftFrame} className="picked-lift">
        {lift === null ? null : <DrawingSvg drawing={lift} />}
      </div>
      <h2 className="picked-title">Chamber {number}</h2>
      {name === null ? null : <p className="small">In it: {name}</p>}
      <div className="picked-views">
        <div ref={largeFrame} className="picked-view">
          {largeWidth === 0
            ? null
            : lines.map((line) => (
                <DrawingSvg
                  key={line}
                  drawing={closeUpLarge(look.assembly, pose, look.evaluation, {
                    chamber,
                    line,
                    width: Math.max(LEAST_WIDTH, largeWidth),
                    maxHeight: VIEW_HEIGHT,
                    unit,
                  })}
                />
              ))}
        </div>
        <div ref={endFrame} className="picked-view">
          {endWidth === 0 ? null : (
            <DrawingSvg
              drawing={endView(look.assembly, pose, look.evaluation, {
                chamber,
                width: Math.max(LEAST_WIDTH, endWidth),
                maxHeight: VIEW_HEIGHT,
                unit,
              })}
            />
          )}
        </div>
      </div>
    </section>
  );
}

/** The picked chamber; until one is picked, the one that holds the lock, else the first. */
function usePicked(look: Look): string | null {
  const picked = useView((view) => view.pickedChamber);
  if (picked !== null && look.chamberResults.has(picked)) return picked;
  const holding = look.evaluation.lines.flatMap((line) => line.blockedBy)[0];
  return holding ?? look.evaluation.chambers[0]?.chamber ?? null;
}
