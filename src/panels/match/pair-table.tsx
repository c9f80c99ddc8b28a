/**
 * Keys against cylinders: what the bag can fill for each pair looked at alone, and several built at the same time, for keys
 * that are picked or that are chosen. One key for each cylinder.
 */
import { useState } from 'react';
import { planToBuild } from '../../model/edit/edit-plans.ts';
import type { MatchSelection } from '../../model/matching/match.ts';
import type { PairCell } from '../../model/matching/match-many.ts';
import type { CylinderWithPlan } from '../../model/matching/site.ts';
import type { Job } from '../../model/schema/job-schema.ts';
import type { Id } from '../../model/schema/leaf.ts';
import type { Look } from '../shared/look.ts';
import { VerdictMark } from '../shared/verdict-mark.tsx';
import { cellWords } from './match-words.ts';
import { RunStatus } from './run-status.tsx';
import { TogetherResult } from './together-result.tsx';
import { type Matching, useMatching } from './use-matching.ts';
import './pair-table.css';

type PairTableProps = { readonly look: Look; readonly mostFiled: number | null };

export function PairTable({ look: { job, selection }, mostFiled }: PairTableProps) {
  const table = useMatching<'table'>();
  const together = useMatching<'together'>();
  const keys = useMatching<'keys'>();
  const [picks, setPicks] = useState<ReadonlyMap<Id, Id>>(new Map());
  const [eachKeyOnce, setEachKeyOnce] = useState(false);
  const cylinders = job.cylinders.flatMap(({ id }): CylinderWithPlan[] => {
    const plan = planToBuild(job, id, id === selection.cylinder ? selection.plan : null);
    return plan === null ? [] : [{ cylinder: id, plan }];
  });
  const ask = { cylinders, keys: job.keys.map(({ id }) => id), mostFiled };
  const picked = cylinders.flatMap((each): MatchSelection[] => {
    const key = picks.get(each.cylinder);
    return key === undefined || !ask.keys.includes(key) ? [] : [{ ...each, key }];
  });
  const isStale = table.state.type === 'done' && table.state.job !== job;
  const build = () => {
    keys.clear();
    together.start(job, { kind: 'together', selections: picked, mostFiled });
  };
  const choose = () => {
    together.clear();
    keys.start(job, { kind: 'keys', ask: { ...ask, eachKeyOnce } });
  };
  return (
    <section className="pair-table" aria-labelledby="pair-table-title">
      <h3 id="pair-table-title">Keys and cylinders</h3>
      <p className="small quiet">
        Each pair by itself, with everything in the bag that is not in use elsewhere. Pick a key for the
        cylinders you want to build at the same time.
      </p>
      <div className="match-start">
        <button
          type="button"
          className="button"
          data-kind={table.state.type === 'done' && !isStale ? undefined : 'main'}
          onClick={() => table.start(job, { kind: 'table', ask })}
        >
          {table.state.type === 'done' ? 'Fill in the table again' : 'Fill in the table'}
        </button>
      </div>
      <RunStatus state={table.state} what="Trying keys in cylinders" onCancel={table.cancel} />
      {isStale ? (
        <p className="match-stale" role="status">
          Something has changed since the table was filled in.
        </p>
      ) : null}
      {table.state.type === 'done' ? (
        <Cells
          job={job}
          cells={table.state.answer}
          picks={picks}
          onPick={(cylinder, key) => {
            const next = new Map(picks);
            if (picks.get(cylinder) === key) next.delete(cylinder);
            else next.set(cylinder, key);
            setPicks(next);
          }}
        />
      ) : null}
      <div className="pair-actions">
        <button type="button" className="button" disabled={picked.length === 0} onClick={build}>
          {picked.length < 2 ? 'Build the picked pair' : `Build the ${picked.length} picked together`}
        </button>
        <button type="button" className="button" onClick={choose}>
          Choose the keys too
        </button>
        <label className="check-line">
          <input
            type="checkbox"
            checked={eachKeyOnce}
            onChange={({ target }) => setEachKeyOnce(target.checked)}
          />
          <span>each key for one cylinder only</span>
        </label>
      </div>
      <RunStatus state={together.state} what="Building together" onCancel={together.cancel} />
      <RunStatus state={keys.state} what="Choosing keys" onCancel={keys.cancel} />
      <Results job={job} together={together} keys={keys} />
    </section>
  );
}

type ResultsProps = {
  readonly job: Job;
  readonly together: Matching<'together'>;
  readonly keys: Matching<'keys'>;
};

function Results({ job, together, keys }: ResultsProps) {
  if (together.state.type === 'done')
    return (
      <TogetherResult
        job={job}
        from={together.state.job}
        together={together.state.answer}
        choice={null}
        onLanded={together.carryOver}
      />
    );
  if (keys.state.type !== 'done') return null;
  const { choice, together: built } = keys.state.answer;
  if (built === null) return <p>No cylinder got a key: there are not enough keys that fit.</p>;
  return (
    <TogetherResult
      job={job}
      from={keys.state.job}
      together={built}
      choice={choice}
      onLanded={keys.carryOver}
    />
  );
}

type CellsProps = {
  readonly job: Job;
  readonly cells: readonly PairCell[];
  readonly picks: ReadonlyMap<Id, Id>;
  readonly onPick: (cylinder: Id, key: Id) => void;
};

function Cells({ job, cells, picks, onPick }: CellsProps) {
  const rows = job.cylinders.filter(({ id }) => cells.some((cell) => cell.cylinder === id));
  const columns = job.keys.filter(({ id }) => cells.some((cell) => cell.key === id));
  const { unit } = job.settings;
  return (
    <div className="pair-scroll">
      <table className="pair-cells">
        <caption className="visually-hidden">
          For each cylinder and key: chambers filled, to spare at the tightest, what is missing
        </caption>
        <thead>
          <tr>
            <th scope="col">Cylinder</th>
            {columns.map(({ id, label }) => (
              <th key={id} scope="col">
                {label}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map(({ id, label }) => (
            <tr key={id}>
              <th scope="row">{label}</th>
              {columns.map((key) => {
                const cell = cells.find((each) => each.cylinder === id && each.key === key.id);
                if (cell === undefined) return <td key={key.id} />;
                const words = cellWords(cell, unit);
                return (
                  <td key={key.id}>
                    <button
                      type="button"
                      className="pair-cell"
                      aria-pressed={picks.get(id) === key.id}
                      onClick={() => onPick(id, key.id)}
                    >
                      <span className="visually-hidden">
                        {key.label} in {label}:{' '}
                      </span>
                      <span className="pair-cell-key" aria-hidden="true">
                        {key.label}
                      </span>
                      <span className="pair-filled">
                        {cell.filled === cell.of ? <VerdictMark symbol="turns" /> : null}
                        {words.filled}
                      </span>
                      <span className="small quiet">{words.detail}</span>
                    </button>
                  </td>
                );
              })}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
