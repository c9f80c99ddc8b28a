/**
 * Where chambers and cuts lie. They are different things: a key that was not cut for this plug may sit off its chambers,
 * so all cuts can be slid along, and each can be placed by itself.
 */
import { setChamberPosition } from '../../model/edit/edit-cylinder.ts';
import { setCutPosition, setStop, slideCuts } from '../../model/edit/edit-key.ts';
import { spaceChambers, spaceCuts, spacingOf } from '../../model/edit/spacing.ts';
import { assumedValue, statedValue } from '../../model/edit/values.ts';
import { lengthOf } from '../../model/measured/part-ends.ts';
import type { Job } from '../../model/schema/job-schema.ts';
import type { Id, LengthValue } from '../../model/schema/leaf.ts';
import { formatLength, formatOffset } from '../../model/units/format-length.ts';
import type { JobUnit } from '../../model/units/length-unit.ts';
import { Choice } from '../shared/choice.tsx';
import type { Look } from '../shared/look.ts';
import { useEdit } from '../shared/services.tsx';
import { type FieldSpec, PLAUSIBLE } from './field-spec.ts';
import { LengthField } from './length-field.tsx';
import { SlideCuts } from './slide-cuts.tsx';

export function PlacesBlock({ look, cutKey }: { readonly look: Look; readonly cutKey: Id }) {
  const { rows, job } = look;
  const { unit } = job.settings;
  const cutTitle = `Cut, from the ${look.bench.key?.stop.kind === 'tip' ? 'tip' : 'shoulder'}`;
  const chambers = spacingFields(look, cutKey, 'chambers');
  const cuts = spacingFields(look, cutKey, 'cuts');
  return (
    <details className="fold">
      <summary>
        <h2 className="fold-title">Where cuts and chambers lie</h2>
        <span className="fold-summary quiet">{placesSummary(look)}</span>
      </summary>
      <div className="fold-body">
        <StopQuestion look={look} cutKey={cutKey} />
        <div className="field-grid" data-walk="spacing">
          {[...chambers, ...cuts].map((field) => (
            <LengthField key={field.id} field={field} column="spacing" isLabelShown />
          ))}
        </div>
        <SlideCuts unit={unit} onSlide={(byMm) => (before: Job) => slideCuts(before, cutKey, byMm)} />
        <table className="plain-table" role="table" data-walk="places">
          <thead role="rowgroup">
            <tr role="row">
              <th role="columnheader" scope="col">
                Chamber
              </th>
              <th role="columnheader" scope="col">
                Centre, from the front
              </th>
              <th role="columnheader" scope="col">
                {cutTitle}
              </th>
              <th role="columnheader" scope="col">
                Lies off by
              </th>
            </tr>
          </thead>
          <tbody role="rowgroup">
            {rows.rows.map((row) => (
              <tr role="row" key={row.chamber.id}>
                <th role="rowheader" scope="row">
                  {row.number}
                </th>
                <td role="cell" data-column-title="Centre, from the front">
                  <LengthField field={chamberPlace(look, row.chamber.id, row.number)} column="chamber" />
                </td>
                <td role="cell" data-column-title={cutTitle}>
                  {row.under === null ? (
                    <span className="quiet">no cut here</span>
                  ) : (
                    <LengthField
                      field={cutPlace(cutKey, row.under.cut.id, row.under.number, row.under.cut.position)}
                      column="cut"
                    />
                  )}
                </td>
                <td role="cell" className="places-off" data-column-title="Lies off by">
                  {offWords(row.under === null ? null : row.offBy, unit)}
                </td>
              </tr>
            ))}
            {rows.looseCuts.map(({ cut, number }) => (
              <tr role="row" key={cut.id}>
                <th role="rowheader" scope="row">
                  –
                </th>
                <td role="cell" className="quiet">
                  no chamber over cut {number}
                </td>
                <td role="cell" data-column-title={cutTitle}>
                  <LengthField field={cutPlace(cutKey, cut.id, number, cut.position)} column="cut" />
                </td>
                <td role="cell" />
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </details>
  );
}

/** "under it", or by how much further in (+) the cut lies. */
function offWords(offBy: number | null, unit: JobUnit): string {
  if (offBy === null) return '';
  const text = formatOffset(offBy, unit);
  return /[1-9]/.test(text) ? text : 'under it';
}

function placesSummary({ rows, bench, job }: Look): string {
  const { unit } = job.settings;
  const off = Math.max(0, ...rows.rows.map((row) => Math.abs(row.offBy)));
  const chambers = bench.cylinder.chambers;
  const spacing = spacingOf(
    chambers.map((chamber) => chamber.position),
    unit,
  );
  const isAssumed = chambers.every((chamber) => chamber.position.basis === 'assumed');
  const apart =
    spacing === null
      ? ''
      : `${formatLength(spacing.spacing * (unit === 'in' ? 25.4 : 1), { unit, keepsPlaces: true })} apart${isAssumed ? ', assumed' : ''}`;
  const most = formatLength(off, { unit, form: 'bench' });
  return Number(most) === 0 ? `${apart}, cuts under their chambers` : `${apart}, cuts up to ${most} off`;
}

function StopQuestion({ look, cutKey }: { readonly look: Look; readonly cutKey: Id }) {
  const edit = useEdit();
  const { cylinder } = look.selection;
  const stop = look.bench.key?.stop.kind ?? null;
  const tip = look.assembly.key?.shape.tipAt ?? 0;
  return (
    <Choice
      question="What stops the key?"
      options={[
        { value: 'shoulder', label: 'Its shoulder' },
        { value: 'tip', label: 'Its tip' },
      ]}
      value={stop}
      onChoose={(kind) =>
        edit(`The ${kind} stops the key`, (job) => {
          const { unit } = job.settings;
          const at = formatLength(tip, { unit, form: 'export' });
          return setStop(job, cylinder, cutKey, kind, statedValue(at, unit));
        })
      }
    />
  );
}

function chamberPlace({ selection, rows }: Look, chamber: Id, number: number): FieldSpec {
  const value = rows.rows.find((row) => row.chamber.id === chamber)?.chamber.position;
  return {
    id: `chamber/${chamber}/position`,
    label: `Centre of chamber ${number}`,
    value,
    set: (job, next) =>
      next === undefined ? job : setChamberPosition(job, selection.cylinder, chamber, next),
    plausible: PLAUSIBLE.position,
    help: 'chamber position',
  };
}

function cutPlace(key: Id, cut: Id, number: number, value: LengthValue): FieldSpec {
  return {
    id: `cut/${cut}/position`,
    label: `Place of cut ${number}`,
    value,
    set: (job, next) => (next === undefined ? job : setCutPosition(job, key, cut, next)),
    plausible: PLAUSIBLE.position,
    help: 'cut position',
  };
}

/** First place and spacing, as two fields that lay out a whole row. */
function spacingFields(look: Look, key: Id, what: 'chambers' | 'cuts'): FieldSpec[] {
  const { unit } = look.job.settings;
  const list = what === 'chambers' ? look.bench.cylinder.chambers : (look.bench.key?.cuts ?? []);
  const now = spacingOf(
    list.map((each) => each.position),
    unit,
  );
  if (now === null) return [];
  const isAssumed = list.every((each) => each.position.basis === 'assumed');
  const show = (value: number): LengthValue => {
    const text = value.toFixed(unit === 'in' ? 4 : 2);
    return isAssumed ? assumedValue([text, text, text], unit) : statedValue(text, unit);
  };
  const lay = (job: Job, even: { first: number; spacing: number }) =>
    what === 'chambers' ? spaceChambers(job, { ...look.selection, key }, even) : spaceCuts(job, key, even);
  const inUnit = (value: LengthValue) => lengthOf(value, 0) / (unit === 'in' ? 25.4 : 1);
  const one = what === 'chambers' ? 'chamber' : 'cut';
  return [
    {
      id: `${what}/all/first`,
      label: `First ${one} at`,
      value: show(now.first),
      set: (job, value) => (value === undefined ? job : lay(job, { ...now, first: inUnit(value) })),
      plausible: PLAUSIBLE.position,
      help: what === 'chambers' ? 'chamber position' : 'cut position',
    },
    {
      id: `${what}/all/spacing`,
      label: `${what === 'chambers' ? 'Chambers' : 'Cuts'} apart`,
      value: show(now.spacing),
      set: (job, value) => (value === undefined ? job : lay(job, { ...now, spacing: inUnit(value) })),
      plausible: { fromMm: 2, toMm: 15 },
      help: what === 'chambers' ? 'chamber position' : 'cut position',
    },
  ];
}
