/** The key's way in and out: the steepest side each stack climbs, and which peaks hold the key while it is turned. */
import { useDeferredValue } from 'react';
import { forceText, springForceChart } from '../../drawing/spring-force-curve.ts';
import { toDegrees } from '../../model/radians.ts';
import type { ChamberWay, Climb, WayResults } from '../../model/travel/way-result.ts';
import type { Facts } from '../../model/findings/facts.ts';
import { formatLength } from '../../model/units/format-length.ts';
import { usePose } from '../section/use-pose.ts';
import { DrawingSvg } from '../shared/drawing-svg.tsx';
import type { Look } from '../shared/look.ts';
import { useWidth } from '../shared/use-width.ts';
import { VerdictMark } from '../shared/verdict-mark.tsx';
import { checkFacts } from './check-facts.ts';
import { ChamberHead, CheckTableHead } from './check-table-head.tsx';
import { ShowMe } from './show-me.tsx';

export function WayTable({ look }: { readonly look: Look }) {
  const { facts } = checkFacts(useDeferredValue(look));
  const { way } = facts;
  if (way.chambers.length === 0) return <p>There is no key yet.</p>;
  return (
    <>
      <p className="check-lead">{heldText(way)}</p>
      <table className="check-table" role="table">
        <CheckTableHead
          titles={['Chamber', 'Going in', 'Coming out', 'Climbs at most', 'Holds the turned key']}
        />
        <tbody role="rowgroup">
          {way.chambers.map((each) => (
            <tr key={each.chamber} role="row">
              <ChamberHead number={each.number} />
              <ClimbCell title="Going in" climb={each.goingIn} />
              <ClimbCell title="Coming out" climb={each.comingOut} />
              <td role="cell" data-title="Climbs at most">
                {Math.round(toDegrees(each.steepest))}°
              </td>
              <td role="cell" data-title="Holds the turned key">
                {holdText(each, facts)}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      <ul className="check-list">
        <li>{playText(facts)}</li>
        <SpringLine way={way} facts={facts} />
      </ul>
      <SpringChart look={look} way={way} />
      <p className="small quiet">
        Expected from friction {look.job.settings.friction} and rigid parts; not measured.
      </p>
    </>
  );
}

function heldText({ keyIsHeld }: WayResults): string {
  if (keyIsHeld === null) return 'What holds the turned key is known once the stacks are measured.';
  return keyIsHeld
    ? 'The key is held while it is turned: to come out it would have to push pins into the shell.'
    : 'Nothing holds the key while it is turned: it can be pulled out.';
}

function ClimbCell({ title, climb }: { readonly title: string; readonly climb: Climb | null }) {
  return (
    <td role="cell" data-title={title}>
      {climb === null ? (
        <span className="quiet">nothing to climb</span>
      ) : (
        <span className="check-said" data-verdict={climb.canClimb ? 'turns' : 'stops'}>
          <VerdictMark symbol={climb.canClimb ? 'turns' : 'stops'} />
          <span>
            {Math.round(toDegrees(climb.angle))}°, {climb.canClimb ? 'climbs' : 'jams'}
          </span>
        </span>
      )}
    </td>
  );
}

function holdText({ holdsKey }: ChamberWay, { unit }: Facts): string {
  if (holdsKey === null) return 'not known yet';
  const by = formatLength(Math.abs(holdsKey), { unit, form: 'bench', keepsPlaces: true });
  return holdsKey > 0 ? `by ${by}` : `no, ${by} below`;
}

function playText({ play, unit }: Facts): string {
  const length = (mm: number) => formatLength(mm, { unit, form: 'bench', hasUnit: true });
  const room = play.room === null ? '' : ` The pins pass up to ${length(play.room)}.`;
  if (play.play === null) return `End play of the plug is not measured.${room}`;
  return `The plug comes forward ${length(play.play)}.${room}`;
}

function SpringLine({ way, facts }: { readonly way: WayResults; readonly facts: Facts }) {
  const most = way.mostForce;
  if (most === null)
    return <li className="quiet">How hard the springs press is not known: read one at two lengths.</li>;
  const force = forceText(most.force, facts.unit);
  const out = formatLength(most.travel, { unit: facts.unit, form: 'bench', hasUnit: true });
  const text = `All springs together press with at most ${force}, the key ${out} out.`;
  return (
    <li className="check-line">
      <span>{text}</span>
      <ShowMe show={{ travel: most.travel, chamber: null, view: 'section' }} about={text} />
    </li>
  );
}

/** px */
const CHART_HEIGHT = 150;
const LEAST_CHART_WIDTH = 280;
const MOST_CHART_WIDTH = 720;

/** How hard they press all the way, and where the key is now. */
function SpringChart({ look, way }: { readonly look: Look; readonly way: WayResults }) {
  const [frame, width] = useWidth<HTMLDivElement>();
  const { travel } = usePose(look);
  const chart =
    width === 0
      ? null
      : springForceChart(way.springs, travel, {
          width: Math.min(MOST_CHART_WIDTH, Math.max(LEAST_CHART_WIDTH, width)),
          height: CHART_HEIGHT,
          unit: look.job.settings.unit,
        });
  return <div ref={frame}>{chart === null ? null : <DrawingSvg drawing={chart} />}</div>;
}
