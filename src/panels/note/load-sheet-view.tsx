/** The load sheet: tools, the tray chamber by chamber with which way up each part goes, and the tests with what to expect. */
import { useMemo } from 'react';
import { gatherFacts } from '../../model/findings/facts.ts';
import { type LoadPart, type LoadRow, loadSheet, type LoadTools } from '../../model/load-sheet/load-sheet.ts';
import { toDegrees } from '../../model/radians.ts';
import { formatLength } from '../../model/units/format-length.ts';
import type { JobUnit } from '../../model/units/length-unit.ts';
import type { Look } from '../shared/look.ts';
import { ChamberRowHead } from './shareable-sheet.tsx';

const ROLES: Readonly<Record<LoadPart['role'], string>> = {
  ball: 'ball',
  bottomPin: 'bottom pin',
  masterPin: 'master pin',
  driver: 'driver',
  spring: 'spring',
};

export function LoadSheetView({ look }: { readonly look: Look }) {
  const { unit } = look.job.settings;
  const sheet = useMemo(() => loadSheet(gatherFacts(look.bench, look.assembly, look.evaluation)), [look]);
  return (
    <>
      {sheet.tools.map((tools) => (
        <p key={tools.line} className="sheet-line">
          {sayTools(tools, unit)}
        </p>
      ))}
      <div className="sheet-scroll" tabIndex={0} role="region" aria-label="Load sheet, by chamber">
        <table className="sheet-table" role="table">
          <caption className="visually-hidden">The tray, in the order of loading</caption>
          <thead role="rowgroup">
            <tr role="row">
              <th role="columnheader" scope="col">
                Chamber
              </th>
              <th role="columnheader" scope="col">
                Into the plug, in this order
              </th>
              <th role="columnheader" scope="col" className="sheet-narrow">
                Together
              </th>
              <th role="columnheader" scope="col">
                Into the shell, in this order
              </th>
              <th role="columnheader" scope="col" className="sheet-narrow">
                Done
              </th>
            </tr>
          </thead>
          <tbody role="rowgroup">
            {sheet.rows.map((row) => (
              <TrayRow key={row.chamber} row={row} unit={unit} />
            ))}
          </tbody>
        </table>
      </div>
      <h4>Tests, in order</h4>
      <ol className="sheet-load-tests">
        {sheet.tests.map(({ what, expected }) => (
          <li key={what}>
            <span className="sheet-tick" aria-hidden="true" />
            <span>
              {what}: <em>{expected}</em>
            </span>
          </li>
        ))}
      </ol>
    </>
  );
}

function TrayRow({ row, unit }: { readonly row: LoadRow; readonly unit: JobUnit }) {
  return (
    <tr role="row">
      <ChamberRowHead number={row.number} />
      <td role="cell" data-title="Into the plug">
        <PartList parts={row.inPlug} unit={unit} />
      </td>
      <td role="cell" className="number" data-title="Together">
        {row.inPlugHeight === null ? '–' : formatLength(row.inPlugHeight, { unit, keepsPlaces: true })}
      </td>
      <td role="cell" data-title="Into the shell">
        <PartList parts={row.inShell} unit={unit} />
      </td>
      <td role="cell" data-title="Done">
        <span className="sheet-tick" aria-hidden="true" />
      </td>
    </tr>
  );
}

function PartList({ parts, unit }: { readonly parts: readonly LoadPart[]; readonly unit: JobUnit }) {
  if (parts.length === 0) return '–';
  return (
    <ul className="sheet-parts">
      {parts.map(({ part, role, label, length, wayUp }) => (
        <li key={part}>
          <span className="quiet">{ROLES[role]}</span>{' '}
          {length === null ? null : (
            <span className="number">{formatLength(length, { unit, keepsPlaces: true })}</span>
          )}
          {label.toLowerCase().startsWith(ROLES[role]) ? null : ` (${label})`}
          {wayUp === null || wayUp === 'either way up' ? null : <span className="small">, {wayUp}</span>}
        </li>
      ))}
    </ul>
  );
}

function sayTools({ turnAtLeast, followerFrom, followerTo, shimUpTo }: LoadTools, unit: JobUnit): string {
  const length = (mm: number) => formatLength(mm, { unit, hasUnit: true });
  const follower =
    followerFrom === null
      ? `up to ${length(followerTo)}`
      : `from ${length(followerFrom)} to ${length(followerTo)}`;
  const angle = Math.ceil(toDegrees(turnAtLeast));
  return `Follower ${follower} across. Turn the plug at least ${angle}° before it slides past the drivers. Shim up to ${length(shimUpTo)} thick.`;
}
