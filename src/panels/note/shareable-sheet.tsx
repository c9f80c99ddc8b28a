/** The page that may be shared: what was done, where every chamber stands, what the bench said. No key can be cut from it. */
import { type ReactNode, useMemo } from 'react';
import { keepPlanAs } from '../../model/edit/keep-plan.ts';
import type { Evaluation } from '../../model/evaluate/evaluation.ts';
import {
  CAUTIONS,
  CYLINDER_FIELDS,
  HEAD_FIELDS,
  RETURN_FIELDS,
  WORK_FIELDS,
} from '../../model/note/note-fields.ts';
import type { Plan } from '../../model/schema/parts-schema.ts';
import type { ShareableSplit, ShareableView } from '../../model/sharing/shareable-view.ts';
import { offsetWords, symbolOf } from '../../drawing/split-words.ts';
import { sayVerdict } from '../answer/verdict-words.ts';
import type { Look } from '../shared/look.ts';
import { useEdit, useServices } from '../shared/services.tsx';
import { VerdictMark } from '../shared/verdict-mark.tsx';
import { NoteFields } from './note-field.tsx';
import { PaperPicture } from './paper-picture.tsx';
import { latestState, sharedOf, STATE_NAMES } from './note-states.ts';

type SheetProps = { readonly look: Look; readonly states: readonly Look[] };

const KINDS: readonly Plan['kind'][] = ['as found', 'planned', 'as built'];

export function ShareableSheet({ look, states }: SheetProps) {
  const view = useMemo(() => sharedOf(look, states), [look, states]);
  return (
    <article className="note-sheet" aria-labelledby="note-title">
      <header className="sheet-head">
        <h2 id="note-title">Repair note</h2>
        <p className="sheet-title">{view.title}</p>
        <p className="sheet-mark">May be shared: no key can be cut from this sheet</p>
      </header>
      <NoteFields fields={HEAD_FIELDS} page="shared" />
      <SheetPart title="Cylinder">
        <p className="sheet-line">
          {view.cylinder}, {view.chamberCount === 1 ? 'one chamber' : `${view.chamberCount} chambers`}
          {view.key === null ? '' : `, with ${view.key}`}
        </p>
        <NoteFields fields={CYLINDER_FIELDS} page="shared" />
      </SheetPart>
      <SheetPart title="At the shear line">
        <StateTable view={view} cylinderLines={look.bench.cylinder.lines.map(({ id }) => id)} />
        <KeepRecords look={look} states={states} />
      </SheetPart>
      <SheetPart title="Work">
        <NoteFields fields={WORK_FIELDS} page="shared" />
        <Tests view={view} />
      </SheetPart>
      <SheetPart title="Handed back">
        <NoteFields fields={RETURN_FIELDS} page="shared" />
      </SheetPart>
      <SheetPart title="Cautions">
        <ul className="sheet-cautions">
          {CAUTIONS.map((each) => (
            <li key={each}>{each}</li>
          ))}
        </ul>
      </SheetPart>
      <p className="sheet-sign">
        <span>Signed</span>
        <span>Date</span>
      </p>
      <PaperPicture look={latestState(states, look)} isHidden />
    </article>
  );
}

export function SheetPart({ title, children }: { readonly title: string; readonly children: ReactNode }) {
  return (
    <section className="sheet-part">
      <h3>{title}</h3>
      {children}
    </section>
  );
}

/** The heading of a chamber's row; on a phone rows become blocks, and the word stands with the number. */
export function ChamberRowHead({ number }: { readonly number: number }) {
  return (
    <th role="rowheader" scope="row">
      <span className="sheet-card-word">Chamber </span>
      {number}
    </th>
  );
}

/** Chambers down, states across: where each split stood, stands on paper, and stands now. */
function StateTable({
  view,
  cylinderLines,
}: {
  readonly view: ShareableView;
  readonly cylinderLines: readonly string[];
}) {
  const numbers = [
    ...new Set(view.states.flatMap(({ chambers }) => chambers.map(({ number }) => number))),
  ].sort((one, other) => one - other);
  const stateOf = (kind: Plan['kind']) => view.states.find((each) => each.kind === kind);
  return (
    <div className="sheet-scroll" tabIndex={0} role="region" aria-label="At the shear line, by chamber">
      <table className="sheet-table" role="table">
        <caption className="visually-hidden">
          Each chamber at the shear line, as found, planned, as built
        </caption>
        <thead role="rowgroup">
          <tr role="row">
            <th role="columnheader" scope="col">
              Chamber
            </th>
            {KINDS.map((kind) => (
              <th key={kind} role="columnheader" scope="col">
                {STATE_NAMES[kind]}
              </th>
            ))}
          </tr>
        </thead>
        <tbody role="rowgroup">
          {numbers.flatMap((number) =>
            cylinderLines.map((line, i) => (
              <tr role="row" key={`${number} ${line}`}>
                <th role="rowheader" scope="row">
                  <span className="sheet-card-word">Chamber </span>
                  {number}
                  {cylinderLines.length > 1 ? (
                    <span className="small quiet"> {i === 0 ? 'inner' : 'outer'}</span>
                  ) : null}
                </th>
                {KINDS.map((kind) => (
                  <SplitCell
                    key={kind}
                    title={STATE_NAMES[kind]}
                    split={stateOf(kind)
                      ?.chambers.find((each) => each.number === number)
                      ?.splits.find((each) => each.line === line)}
                    unit={view.unit}
                  />
                ))}
              </tr>
            )),
          )}
        </tbody>
        <tfoot role="rowgroup">
          {cylinderLines.map((line, i) => (
            <tr role="row" key={line}>
              <th role="rowheader" scope="row">
                {cylinderLines.length > 1 ? (i === 0 ? 'Inner line' : 'Outer line') : 'The plug'}
              </th>
              {KINDS.map((kind) => (
                <td role="cell" key={kind} data-title={STATE_NAMES[kind]}>
                  {sayLine(stateOf(kind)?.lines.find((each) => each.line === line))}
                </td>
              ))}
            </tr>
          ))}
        </tfoot>
      </table>
    </div>
  );
}

function SplitCell({
  title,
  split,
  unit,
}: {
  readonly title: string;
  readonly split: ShareableSplit | undefined;
  readonly unit: ShareableView['unit'];
}) {
  const cell = { role: 'cell', 'data-title': title } as const;
  if (split === undefined)
    return (
      <td {...cell} className="quiet">
        –
      </td>
    );
  if (split.at === null)
    return (
      <td {...cell} className="quiet">
        not measured yet
      </td>
    );
  const symbol = symbolOf(split.verdict);
  const offset = offsetWords(split.at.offset, split.verdict, unit);
  const verdict = sayVerdict(split.verdict, split.lean);
  return (
    <td {...cell}>
      <span className="sheet-offset">{offset}</span>
      <span className="verdict" data-verdict={symbol}>
        <VerdictMark symbol={symbol} />
        {verdict === offset ? 'turns' : verdict}
      </span>
    </td>
  );
}

function sayLine(line: Evaluation['lines'][number] | undefined): string {
  if (line === undefined) return '–';
  switch (line.verdict) {
    case 'turns':
      return 'should turn';
    case 'will not turn':
      return 'will not turn';
    case "can't say yet":
      return line.lean ?? "can't say yet";
    case 'unknown':
      return 'not known yet';
  }
}

/** Where a record is missing, it can be made from what is in the holes now. */
function KeepRecords({ look, states }: SheetProps) {
  const edit = useEdit();
  const { newId } = useServices();
  const missing = (['as found', 'as built'] as const).filter(
    (kind) => !states.some(({ bench }) => bench.plan.kind === kind),
  );
  if (missing.length === 0) return null;
  return (
    <p className="sheet-keep no-print">
      <span className="small quiet">What is in the holes now can be put on record:</span>
      {missing.map((kind) => (
        <button
          key={kind}
          type="button"
          className="button"
          onClick={() => edit(`Kept ${kind}`, (job) => keepPlanAs(job, look.selection.plan, kind, newId))}
        >
          Keep it {kind}
        </button>
      ))}
    </p>
  );
}

function Tests({ view }: { readonly view: ShareableView }) {
  if (view.tests.length === 0) return null;
  return (
    <>
      <h4>Tried at the bench</h4>
      <ul className="sheet-tests">
        {view.tests.map((test) => (
          <li key={`${test.kind} ${test.number ?? 'all'} ${test.at} ${test.turned}`}>
            <span className="sheet-date">{test.at.slice(0, 10)}</span>{' '}
            {test.number === null ? 'all chambers' : `chamber ${test.number} alone`}, {test.kind}:{' '}
            <strong>{test.turned ? 'turned' : 'did not turn'}</strong>
          </li>
        ))}
      </ul>
    </>
  );
}
