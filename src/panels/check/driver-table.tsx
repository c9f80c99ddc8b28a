/** Which drivers each chamber takes, as bars on one scale, where the chosen one lies, and what the springs do. */
import { useDeferredValue } from 'react';
import type { RestResult, RestResults } from '../../model/rest/rest-result.ts';
import { formatLength } from '../../model/units/format-length.ts';
import type { JobUnit } from '../../model/units/length-unit.ts';
import { capital, listWords } from '../answer/list-words.ts';
import type { Look } from '../shared/look.ts';
import { VerdictMark } from '../shared/verdict-mark.tsx';
import { checkFacts } from './check-facts.ts';
import { ChamberHead, CheckTableHead } from './check-table-head.tsx';
import { type Said, sayDriver, sayRange, sayRest, saySpring } from './driver-words.ts';

type Scale = { readonly from: number; readonly to: number };

export function DriverTable({ look }: { readonly look: Look }) {
  const { facts } = checkFacts(useDeferredValue(look));
  const { rest, unit, thresholds } = facts;
  const scale = scaleOf(rest);
  return (
    <>
      <p className="check-lead">{commonText(rest, unit)}</p>
      <table className="check-table" role="table">
        <CheckTableHead
          titles={['Chamber', 'Key out', 'Driver lengths that do', 'Driver', 'Spring, at the peak']}
        />
        <tbody role="rowgroup">
          {rest.chambers.map((result) => (
            <tr key={result.chamber} role="row">
              <ChamberHead number={result.number} />
              <Cell title="Key out" said={sayRest(result.atLines, result.spring !== null)} />
              <td role="cell" data-title="Driver lengths that do">
                <span className="number">{sayRange(result.driver, unit)}</span>
                {scale === null ? null : (
                  <RangeBar result={result} scale={scale} common={rest.commonDriver} />
                )}
              </td>
              <Cell title="Driver" said={withLength(sayDriver(result.driver), result.driver.length, unit)} />
              <Cell
                title="Spring, at the peak"
                said={saySpring(result.spring, thresholds.springMargin, unit)}
              />
            </tr>
          ))}
        </tbody>
      </table>
      <Missing rest={rest} />
    </>
  );
}

function withLength(said: Said, length: number | null, unit: JobUnit): Said {
  if (length === null) return said;
  return { ...said, text: `${formatLength(length, { unit, keepsPlaces: true })} ${said.text}` };
}

function Cell({ title, said }: { readonly title: string; readonly said: Said }) {
  return (
    <td role="cell" data-title={title}>
      <span className="check-said" data-verdict={said.symbol}>
        <VerdictMark symbol={said.symbol} />
        <span>{said.text}</span>
      </span>
    </td>
  );
}

function commonText({ chambers, commonDriver }: RestResults, unit: JobUnit): string {
  if (chambers.some(({ driver }) => driver.shortest === null || driver.longest === null))
    return 'Which drivers do is known once what is missing below is measured.';
  if (commonDriver === null) return 'No one length does in every chamber: take different drivers.';
  return `One length does in every chamber: ${sayRange(commonDriver, unit)} ${unit}.`;
}

/** From the shortest to the longest of all, with a little air. */
function scaleOf({ chambers }: RestResults): Scale | null {
  const ends = chambers.flatMap(({ driver }) => [driver.shortest, driver.longest, driver.length]);
  const known = ends.filter((end) => end !== null);
  if (known.length < 2) return null;
  const [from, to] = [Math.min(...known), Math.max(...known)];
  const air = Math.max(0.1, (to - from) * 0.04);
  return { from: from - air, to: to + air };
}

/** px of the drawing; it stretches to its cell. */
const WIDTH = 200;
const HEIGHT = 22;

/** The range as a bar, what suits all chambers as a band behind it, the chosen driver as a mark. Said in the cells beside it. */
function RangeBar({
  result: { driver },
  scale,
  common,
}: {
  readonly result: RestResult;
  readonly scale: Scale;
  readonly common: RestResults['commonDriver'];
}) {
  const at = (mm: number) => ((mm - scale.from) / (scale.to - scale.from)) * WIDTH;
  const { shortest, longest, length } = driver;
  return (
    <svg
      className="range-bar"
      viewBox={`0 0 ${WIDTH} ${HEIGHT}`}
      preserveAspectRatio="none"
      aria-hidden="true"
    >
      {common === null ? null : (
        <rect
          className="range-common"
          x={at(common.shortest)}
          y={0}
          width={at(common.longest) - at(common.shortest)}
          height={HEIGHT}
        />
      )}
      <path className="range-scale" d={`M0 ${HEIGHT / 2}H${WIDTH}`} />
      {shortest === null || longest === null || shortest > longest ? null : (
        <path
          className="range-does"
          d={`M${at(shortest)} 5V${HEIGHT - 5}M${at(shortest)} ${HEIGHT / 2}H${at(longest)}M${at(longest)} 5V${HEIGHT - 5}`}
        />
      )}
      {length === null ? null : <path className="range-chosen" d={`M${at(length)} 1V${HEIGHT - 1}`} />}
    </svg>
  );
}

/** What is still to be measured, said once for all chambers that lack it. */
function Missing({ rest }: { readonly rest: RestResults }) {
  const lacking = new Map<string, number[]>();
  for (const { number, missing } of rest.chambers) {
    for (const what of missing) {
      if (what.startsWith("the spring's force")) continue;
      lacking.set(what, [...(lacking.get(what) ?? []), number]);
    }
  }
  if (lacking.size === 0) return null;
  return (
    <>
      <h3>Still to measure</h3>
      <ul className="check-list">
        {[...lacking].map(([what, numbers]) => (
          <li key={what}>
            {capital(what)}
            {numbers.length === rest.chambers.length ? '' : `, chamber ${listWords(numbers)}`}
          </li>
        ))}
      </ul>
    </>
  );
}
