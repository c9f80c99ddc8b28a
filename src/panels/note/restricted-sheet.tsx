/** The page to be kept locked: measurements, parts, the true section, and the load sheet. A key can be cut from it. */
import { RESTRICTED_FIELDS } from '../../model/note/note-fields.ts';
import {
  commonMeasures,
  type Measured,
  type PinningRow,
  pinningRows,
} from '../../model/note/pinning-rows.ts';
import { formatLength } from '../../model/units/format-length.ts';
import type { JobUnit } from '../../model/units/length-unit.ts';
import type { Look } from '../shared/look.ts';
import { LoadSheetView } from './load-sheet-view.tsx';
import { NoteFields } from './note-field.tsx';
import { PaperPicture } from './paper-picture.tsx';
import { latestState, STATE_NAMES } from './note-states.ts';
import { ChamberRowHead, SheetPart } from './shareable-sheet.tsx';

type SheetProps = { readonly look: Look; readonly states: readonly Look[] };

export function RestrictedSheet({ look, states }: SheetProps) {
  const { job } = look;
  const { unit } = job.settings;
  const number = job.note.shared['jobNumber'] ?? '';
  const latest = latestState(states, look);
  return (
    <article className="note-sheet is-restricted" aria-labelledby="restricted-title">
      <header className="sheet-head">
        <h2 id="restricted-title">Measurements</h2>
        <p className="sheet-title">{number === '' ? 'Job without a number' : `Job ${number}`}</p>
        <p className="sheet-mark">
          Restricted: a key can be cut from this sheet. Keep it locked, and apart from the one that may be
          shared
        </p>
      </header>
      <NoteFields fields={RESTRICTED_FIELDS} page="restricted" />
      <SheetPart title="Measured once">
        <CommonMeasures look={look} />
      </SheetPart>
      <SheetPart title="The key, and what it calls for">
        <KeyTable look={look} />
      </SheetPart>
      <SheetPart title="In the holes">
        <HoleTable states={states} unit={unit} />
      </SheetPart>
      <PaperPicture look={latest} isHidden={false} />
      <SheetPart title="Load sheet">
        <LoadSheetView look={latest} />
      </SheetPart>
    </article>
  );
}

function CommonMeasures({ look }: { readonly look: Look }) {
  const { unit } = look.job.settings;
  const instrument = look.job.instruments.find(({ id }) => id === look.job.settings.instrument);
  const zero = look.job.sessions.find(({ id }) => id === look.job.settings.session)?.closedReading;
  const zeroMm = zero?.readings[0]?.value;
  return (
    <dl className="sheet-measures">
      {commonMeasures(look.bench).map(({ label, value }) => (
        <div key={label}>
          <dt>{label}</dt>
          <dd>
            <Length value={value} unit={unit} />
          </dd>
        </div>
      ))}
      {instrument === undefined ? null : (
        <div>
          <dt>Read with</dt>
          <dd>
            {instrument.label}
            {zeroMm === undefined ? '' : `, closed ${formatLength(zeroMm, { unit, hasUnit: true })}`}
          </dd>
        </div>
      )}
      <div>
        <dt>Numbers in</dt>
        <dd>{unit === 'in' ? 'inches' : 'millimetres'}, ± nineteen times in twenty</dd>
      </div>
    </dl>
  );
}

function KeyTable({ look }: { readonly look: Look }) {
  const { unit } = look.job.settings;
  const rows = pinningRows(look.bench, look.evaluation);
  const hasOverBall = rows.some(({ overBall }) => overBall !== null);
  return (
    <div className="sheet-scroll" tabIndex={0} role="region" aria-label="The key, by chamber">
      <table className="sheet-table" role="table">
        <caption className="visually-hidden">Root depths and the lower stacks they call for</caption>
        <thead role="rowgroup">
          <tr role="row">
            <th role="columnheader" scope="col">
              Chamber
            </th>
            <th role="columnheader" scope="col">
              Root depth
            </th>
            <th role="columnheader" scope="col">
              Readings
            </th>
            {hasOverBall ? (
              <th role="columnheader" scope="col">
                Over the ball
              </th>
            ) : null}
            <th role="columnheader" scope="col">
              Calls for
            </th>
          </tr>
        </thead>
        <tbody role="rowgroup">
          {rows.map((row) => (
            <tr role="row" key={row.chamber}>
              <ChamberRowHead number={row.number} />
              <td role="cell" data-title="Root depth">
                <Length value={row.rootDepth} unit={unit} />
              </td>
              <td role="cell" data-title="Readings">
                {readingsOf(row)}
              </td>
              {hasOverBall ? (
                <td role="cell" data-title="Over the ball">
                  <Length value={row.overBall} unit={unit} />
                </td>
              ) : null}
              <td role="cell" data-title="Calls for">
                <Length value={row.needed} unit={unit} />
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}

function readingsOf({ rootDepth, overBall }: PinningRow): string {
  const count = rootDepth?.readings ?? overBall?.readings ?? 0;
  return count === 0 ? '–' : String(count);
}

/** Chambers down, states across, each with its parts from the key up. */
function HoleTable({ states, unit }: { readonly states: readonly Look[]; readonly unit: JobUnit }) {
  const all = states.map((state) => ({
    kind: state.bench.plan.kind,
    rows: pinningRows(state.bench, state.evaluation),
  }));
  const [first] = all;
  if (first === undefined) return null;
  return (
    <div className="sheet-scroll" tabIndex={0} role="region" aria-label="Parts in the holes, by chamber">
      <table className="sheet-table" role="table">
        <caption className="visually-hidden">Parts in each hole, from the key up, by state</caption>
        <thead role="rowgroup">
          <tr role="row">
            <th role="columnheader" scope="col">
              Chamber
            </th>
            {all.map(({ kind }) => (
              <th key={kind} role="columnheader" scope="col">
                {STATE_NAMES[kind]}
              </th>
            ))}
          </tr>
        </thead>
        <tbody role="rowgroup">
          {first.rows.map(({ chamber, number }) => (
            <tr role="row" key={chamber}>
              <ChamberRowHead number={number} />
              {all.map(({ kind, rows }) => (
                <td role="cell" key={kind} data-title={STATE_NAMES[kind]}>
                  <Parts row={rows.find((each) => each.chamber === chamber)} unit={unit} />
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}

function Parts({ row, unit }: { readonly row: PinningRow | undefined; readonly unit: JobUnit }) {
  const named: readonly (readonly [string, Measured | null])[] =
    row === undefined
      ? []
      : [
          ['ball', row.ball],
          ['bottom pin', row.bottomPin],
          ['together', row.together],
          ...row.masterPins.map((pin) => ['master pin', pin] as const),
          ['driver', row.driver],
          ['spring', row.spring],
        ];
  const there = named.filter(([, value]) => value !== null);
  if (there.length === 0) return '–';
  return (
    <ul className="sheet-parts">
      {there.map(([name, value], i) => (
        <li key={`${name} ${i}`}>
          <span className="quiet">{name}</span> <Length value={value} unit={unit} />
        </li>
      ))}
    </ul>
  );
}

type Told = { readonly mm: number; readonly plusMinus: number; readonly basis?: Measured['basis'] };

function Length({ value, unit }: { readonly value: Told | null; readonly unit: JobUnit }) {
  if (value === null) return '–';
  const places = unit === 'in' ? 4 : 2;
  const small = value.plusMinus < 0.5 * 10 ** -places * (unit === 'in' ? 25.4 : 1);
  return (
    <span className="sheet-length">
      <span className="number">{formatLength(value.mm, { unit, keepsPlaces: true })}</span>
      {small ? null : (
        <span className="quiet"> ±{formatLength(value.plusMinus, { unit, keepsPlaces: true })}</span>
      )}
      {value.basis === 'assumed' ? <span className="quiet"> assumed</span> : null}
    </span>
  );
}
