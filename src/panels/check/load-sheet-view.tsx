/** The load sheet: tools, one line a chamber in the order of loading, to be ticked off, and the tests after it. */
import { useDeferredValue } from 'react';
import { type LoadPart, type LoadRow, type LoadTools, loadSheet } from '../../model/load-sheet/load-sheet.ts';
import type { LoadTest } from '../../model/load-sheet/load-tests.ts';
import { toDegrees } from '../../model/radians.ts';
import { formatLength } from '../../model/units/format-length.ts';
import type { JobUnit } from '../../model/units/length-unit.ts';
import type { Look } from '../shared/look.ts';
import { VerdictMark } from '../shared/verdict-mark.tsx';
import { checkFacts } from './check-facts.ts';

export function LoadSheetView({ look }: { readonly look: Look }) {
  const settled = useDeferredValue(look);
  const { facts } = checkFacts(settled);
  const { tools, rows, tests } = loadSheet(facts);
  const { unit } = facts;
  return (
    <>
      <h3>Tools</h3>
      <ul className="check-list">
        {tools.map((each, i) => (
          <li key={each.line}>
            {toolText(each, unit, tools.length === 1 ? '' : i === 0 ? 'Inner line: ' : 'Outer line: ')}
          </li>
        ))}
      </ul>
      <h3>Loading, farthest chamber first</h3>
      <p className="small quiet">
        Key fully in. Ball, then pin, into the plug: level with a fingertip. Tick as you go; ticks are not
        kept.
      </p>
      <ol className="load-rows">
        {rows.map((row) => (
          <Row key={row.chamber} row={row} unit={unit} />
        ))}
      </ol>
      <h3>Tests, and what to expect</h3>
      <ol className="load-tests">
        {tests.map((test) => (
          <Test key={test.what} test={test} />
        ))}
      </ol>
    </>
  );
}

function toolText(
  { turnAtLeast, followerFrom, followerTo, shimUpTo }: LoadTools,
  unit: JobUnit,
  where: string,
): string {
  const length = (mm: number) => formatLength(mm, { unit, form: 'bench', hasUnit: true });
  const from = followerFrom === null ? 'up to' : `${length(followerFrom)} to`;
  const angle = Math.ceil(toDegrees(turnAtLeast) - 1e-9);
  return `${where}turn the plug at least ${angle}° before it slides past the drivers; follower ${from} ${length(followerTo)} across, pressed against the plug without a gap; shim under ${length(shimUpTo)} thick.`.replace(
    /^t/u,
    'T',
  );
}

function Row({ row, unit }: { readonly row: LoadRow; readonly unit: JobUnit }) {
  const height =
    row.inPlugHeight === null
      ? ''
      : ` (${formatLength(row.inPlugHeight, { unit, hasUnit: true, keepsPlaces: true })} together)`;
  return (
    <li>
      <label className="load-row">
        <input type="checkbox" />
        <strong>{row.number}</strong>
        <span>
          Plug: {partsText(row.inPlug)}
          {height}. Shell: {partsText(row.inShell)}.
        </span>
      </label>
    </li>
  );
}

function partsText(parts: readonly LoadPart[]): string {
  if (parts.length === 0) return 'nothing';
  return parts.map(({ label, wayUp }) => (wayUp === null ? label : `${label}, ${wayUp}`)).join('; ');
}

function Test({ test: { what, expected, isGood } }: { readonly test: LoadTest }) {
  const symbol = isGood === null ? 'none' : isGood ? 'turns' : 'stops';
  return (
    <li className="load-test">
      <span>{what}</span>
      <span className="check-said" data-verdict={symbol}>
        <VerdictMark symbol={symbol} />
        <span>{expected}</span>
      </span>
    </li>
  );
}
