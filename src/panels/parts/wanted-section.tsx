/** What to look for: each chamber's range as a band over the lengths of the bag, and the figures to lock the caliper at. */
import { useDeferredValue, useMemo } from 'react';
import { bagChart } from '../../drawing/bag-chart.ts';
import { restResults } from '../../model/rest/rest-results.ts';
import { formatLength } from '../../model/units/format-length.ts';
import { formatRange } from '../../model/units/format-range.ts';
import { DrawingSvg } from '../shared/drawing-svg.tsx';
import type { Look } from '../shared/look.ts';
import { useView } from '../shared/services.tsx';
import { useWidth } from '../shared/use-width.ts';
import { bagOf, gapWords, type WantedRange, wantedRanges, whatIsMeasured } from './bag.ts';
import './wanted-section.css';

export function WantedSection({ look }: { readonly look: Look }) {
  // A bag of thousands is held against the ranges after the field that was written in has answered.
  const settled = useDeferredValue(look);
  const picked = useView((view) => view.pickedChamber);
  const bag = useMemo(() => bagOf(settled), [settled]);
  const ranges = useMemo(() => wantedRanges(settled, bag, picked), [settled, bag, picked]);
  const [frame, width] = useWidth<HTMLDivElement>();
  const { unit } = settled.job.settings;
  const what = whatIsMeasured(settled);
  if (ranges.length === 0) return <NoRanges />;
  return (
    <section className="wanted" aria-labelledby="wanted-title">
      <h3 id="wanted-title">Ranges wanted</h3>
      <p className="wanted-gaps">{gapWords(ranges)}</p>
      <div ref={frame} className="wanted-chart">
        {width === 0 ? null : <DrawingSvg drawing={bagChart(bag.heights, ranges, { width, unit, what })} />}
      </div>
      <p className="small quiet">
        {bag.ballWords === null ? '' : `${bag.ballWords} `}A range holds what surely turns and is not above
        level. Choosing parts, below, also takes what probably turns, and says so.
      </p>
      <RangeTable look={settled} ranges={ranges} />
      <DriverLengths look={settled} />
    </section>
  );
}

function NoRanges() {
  return (
    <section className="wanted" aria-labelledby="wanted-title">
      <h3 id="wanted-title">Ranges wanted</h3>
      <p>
        The lengths to look for come from the plug, the metal under the key and the cuts.{' '}
        <a href="#measure">Measure those first</a>; parts can be entered before.
      </p>
    </section>
  );
}

/** For a person with a caliper whose jaws are locked: two figures for each chamber sort a bag without reading one pin. */
function RangeTable({ look, ranges }: { readonly look: Look; readonly ranges: readonly WantedRange[] }) {
  const pick = useView((view) => view.pickChamber);
  const { unit } = look.job.settings;
  const text = (mm: number) => formatLength(mm, { unit, form: 'bench', keepsPlaces: true });
  const what = whatIsMeasured(look);
  const held = what === 'bottom pin' ? 'a pin' : 'a pin on its ball';
  return (
    <details className="fold">
      <summary>
        <span className="fold-title">Sort with a locked caliper</span>
        <span className="quiet small">two figures for each chamber, no reading</span>
      </summary>
      <p className="small">
        Lock the jaws at the larger figure: {held} that does not pass is too long. Lock them at the smaller
        one: {held} that passes is too short. Measure only what is left between.
      </p>
      <table className="range-table">
        <caption className="visually-hidden">Lengths of {what} to sort by, each chamber</caption>
        <thead>
          <tr>
            <th scope="col">Chamber</th>
            <th scope="col">Must pass at</th>
            <th scope="col">Must not pass at</th>
            <th scope="col">Best</th>
            <th scope="col">On hand</th>
          </tr>
        </thead>
        <tbody>
          {ranges.map((range) => {
            const [least, most] = formatRange(range.from, range.to, unit);
            return (
              <tr key={range.chamber} data-picked={range.isPicked}>
                <th scope="row">
                  <button type="button" className="range-pick" onClick={() => pick(range.chamber)}>
                    {range.number}
                  </button>
                </th>
                {range.isAbout ? (
                  <td colSpan={2}>
                    <span className="quiet">about</span> <span className="number">{text(range.from)}</span>
                  </td>
                ) : (
                  <>
                    <td className="number">{most}</td>
                    <td className="number">{least}</td>
                  </>
                )}
                <td className="number">{range.best === null ? '–' : text(range.best)}</td>
                <td>{range.words}</td>
              </tr>
            );
          })}
        </tbody>
      </table>
    </details>
  );
}

/** Drivers that may stand on them, as far as the springs and the shell are measured. */
function DriverLengths({ look }: { readonly look: Look }) {
  const { unit } = look.job.settings;
  const { chambers, commonDriver } = useMemo(() => restResults(look.bench, look.assembly), [look]);
  const range = (from: number, to: number) => formatRange(from, to, unit).join(' to ');
  const told = chambers.flatMap(({ number, driver }) =>
    driver.shortest === null || driver.longest === null
      ? []
      : [{ number, shortest: driver.shortest, longest: driver.longest }],
  );
  if (told.length === 0) return null;
  return (
    <p className="small">
      <span className="quiet">Drivers: </span>
      {commonDriver === null
        ? told
            .map(({ number, shortest, longest }) =>
              shortest > longest ? `chamber ${number} none` : `chamber ${number} ${range(shortest, longest)}`,
            )
            .join('; ')
        : `${range(commonDriver.shortest, commonDriver.longest)} ${unit} suits every chamber`}
      .
    </p>
  );
}
