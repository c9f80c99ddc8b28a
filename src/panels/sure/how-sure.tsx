/**
 * How sure, in words; what would make it surer; and a test that proves it, for the picked chamber. Figures that stand on guesses
 * (how a caliper errs) only where somebody opens them. Worked out while it is open, after what is more urgent.
 */
import { useDeferredValue, useMemo, useState } from 'react';
import { provedOn } from '../../model/sureness/good-one.ts';
import { type Sureness, sureness } from '../../model/sureness/sureness.ts';
import { lengthOf } from '../../model/measured/part-ends.ts';
import { formatLength } from '../../model/units/format-length.ts';
import type { Look } from '../shared/look.ts';
import { useView } from '../shared/services.tsx';
import { StepsOfKey } from './steps-of-key.tsx';
import './how-sure.css';

/** More than these are told, nobody goes and does. */
const MOST_HELPS = 3;

export function HowSure({ look }: { readonly look: Look }) {
  const [isOpen, setOpen] = useState(false);
  return (
    <details className="fold how-sure" onToggle={({ currentTarget }) => setOpen(currentTarget.open)}>
      <summary>
        <span className="fold-title">How sure</span>
        <span className="fold-summary">and what would make it surer</span>
      </summary>
      {isOpen ? <Body look={look} /> : null}
    </details>
  );
}

function Body({ look }: { readonly look: Look }) {
  const settled = useDeferredValue(look);
  const sure = useMemo(() => sureness(settled.bench, settled.assembly), [settled]);
  const isKnownSet = settled.bench.seating?.knownSets.includes(settled.selection.plan) === true;
  const { settings } = settled.job;
  const proved =
    isKnownSet || settled.bench.plan.kind === 'as found'
      ? provedOn(settled.evaluation, lengthOf(settings.shopRule, 0.0254), settings.unit)
      : null;
  return (
    <div className="how-sure-body">
      {sure.lines.map((line, i) => (
        <p key={line.line}>
          {lineName(i, sure.lines.length)}: <strong>{line.words}</strong>.
        </p>
      ))}
      {proved === null ? null : <p>{proved.sentence}</p>}
      <Helps sure={sure} />
      <Bracket look={settled} sure={sure} />
      <StepsOfKey look={settled} />
      <Figures look={settled} sure={sure} />
    </div>
  );
}

function lineName(index: number, count: number): string {
  if (count === 1) return 'Every stack lets the plug turn';
  return index === 0 ? 'Every stack is clear at the inner line' : 'Every stack is clear at the outer line';
}

function Helps({ sure }: { readonly sure: Sureness }) {
  if (sure.helps.length === 0) return null;
  return (
    <>
      <h3>What would help most</h3>
      <ol className="helps">
        {sure.helps.slice(0, MOST_HELPS).map((help) => (
          <li key={help.sentence}>{help.sentence}</li>
        ))}
      </ol>
    </>
  );
}

/** Three pins in one chamber: what each should do. What they did is entered under One chamber at a time. */
function Bracket({ look, sure }: { readonly look: Look; readonly sure: Sureness }) {
  const picked = useView((view) => view.pickedChamber);
  const bracket = sure.brackets.find(({ chamber }) => chamber === picked) ?? sure.brackets[0];
  const row = look.rows.rows.find(({ chamber }) => chamber.id === bracket?.chamber);
  if (bracket === undefined || row === undefined) return null;
  const { unit } = look.job.settings;
  const say = (mm: number) => formatLength(Math.abs(mm), { unit, hasUnit: true, keepsPlaces: true });
  return (
    <>
      <h3>Prove it in chamber {row.number}</h3>
      <p className="small quiet">
        Three stacks, one after the other, alone in that chamber with the key in. If they do what is written
        here, the readings can be trusted; enter what they did under One chamber at a time.
      </p>
      <div className="bracket-frame">
        <table className="bracket">
          <thead>
            <tr>
              <th scope="col">Ball + bottom pin</th>
              <th scope="col">In the empty shell</th>
              <th scope="col">With its driver</th>
            </tr>
          </thead>
          <tbody>
            {bracket.pins.map(({ by, height, alone, withDriver }) => (
              <tr key={by}>
                <th scope="row">
                  {say(height)}
                  <span className="quiet small">
                    {by === 0 ? ' as planned' : ` ${say(by)} ${by > 0 ? 'longer' : 'shorter'}`}
                  </span>
                </th>
                <td>{alone}</td>
                <td>{withDriver}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </>
  );
}

function Figures({ look, sure }: { readonly look: Look; readonly sure: Sureness }) {
  const percent = (share: number | null) =>
    share === null ? 'not known' : `${(share * 100).toFixed(share > 0.99 ? 1 : 0)} %`;
  return (
    <details className="fold sure-figures">
      <summary className="small">Figures behind the words</summary>
      <p className="small quiet">
        Shares of ten thousand draws from what the readings leave open. They stand on guesses: how a caliper
        errs, and how assumed sizes spread. What is common to all chambers is drawn once for all.
      </p>
      {sure.lines.map((line, i) => (
        <p key={line.line} className="small">
          {lineName(i, sure.lines.length)}: {percent(line.allTurn)}. Chamber by chamber:{' '}
          {line.chambers
            .map(({ chamber, turns }) => {
              const number = look.rows.rows.find((row) => row.chamber.id === chamber)?.number ?? '';
              return `${number}: ${percent(turns)}`;
            })
            .join(', ')}
          .
        </p>
      ))}
    </details>
  );
}
