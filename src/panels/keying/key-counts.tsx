/** How many keys operate: sets of heights without a table, keys of a table with one; and what wear would add. */
import { type ReactNode, useMemo, useState } from 'react';
import { depthTableOf } from '../../model/keying/depth-table.ts';
import type { KeyOutcome } from '../../model/keying/key-outcomes.ts';
import {
  type DepthTable,
  type KeysByTable,
  keysAtLine,
  keysThatTurn,
  type OperatingKeys,
  operatingKeys,
} from '../../model/keying/operating-keys.ts';
import { keysWithWear } from '../../model/keying/wear.ts';
import { parseLength } from '../../model/units/parse-length.ts';
import { listWords } from '../answer/list-words.ts';
import type { Look } from '../shared/look.ts';
import { DepthsForm } from './depths-form.tsx';
import { KeyListPart } from './key-list.tsx';
import { grouped, keysInTable, keysWord, meantCount } from './keying-words.ts';

export function KeyCountsPart({
  look,
  outcomes,
}: {
  readonly look: Look;
  readonly outcomes: readonly KeyOutcome[];
}) {
  const table = useMemo(() => depthTableOf(look.job), [look.job]);
  const result = useMemo(() => operatingKeys(look, table), [look, table]);
  return (
    <section className="key-counts" aria-labelledby="key-counts">
      <h3 id="key-counts">How many keys would turn it</h3>
      {result.type === 'missing' ? (
        <p>{result.message}</p>
      ) : (
        <>
          <HeightsWords keys={result.keys} />
          <DepthsForm />
          {result.keys.byTable === null || table === null ? null : (
            <TableWords look={look} table={table} byTable={result.keys.byTable} outcomes={outcomes} />
          )}
        </>
      )}
    </section>
  );
}

/** How many different heights clear each chamber. */
function HeightsWords({ keys }: { readonly keys: OperatingKeys }) {
  const hasSleeve = keys.setsOfHeights.length > 1;
  return keys.setsOfHeights.map(({ line, count }, i) => {
    const perChamber = keys.chambers.map(({ lines }) => lines[i]?.length ?? 0);
    const what = !hasSleeve ? 'the plug' : i === 0 ? 'the plug alone' : 'plug and sleeve together';
    const sets = count === 1n ? ' set of cut heights turns ' : ' sets of cut heights turn ';
    return (
      <p key={line}>
        <strong>{grouped(count)}</strong>
        {sets}
        {what}: {perChamberWords(perChamber, keys)}.
      </p>
    );
  });
}

/** "one height in each chamber", "2, 1 and 2 in chambers 1, 2 and 3" */
function perChamberWords(perChamber: readonly number[], { chambers }: OperatingKeys): string {
  if (perChamber.every((each) => each === 1)) return 'one height in each chamber';
  return `${listWords(perChamber)} in chambers ${listWords(chambers.map(({ number }) => number))}`;
}

type TableWordsProps = {
  readonly look: Look;
  readonly table: DepthTable;
  readonly byTable: KeysByTable;
  readonly outcomes: readonly KeyOutcome[];
};

function TableWords({ look, table, byTable, outcomes }: TableWordsProps) {
  const placed = useMemo(() => keysInTable(look, byTable, outcomes), [look, byTable, outcomes]);
  const { counts } = byTable;
  const hasSleeve = look.evaluation.lines.length > 1;
  const turning = keysThatTurn(byTable);
  const unmeant = turning - meantCount(byTable, placed);
  return (
    <>
      <p data-testid="keys-by-table">
        Of {keysWord(counts.all)} that can be cut to these depths, <strong>{grouped(turning)}</strong>{' '}
        {turning === 1n ? 'operates' : 'operate'} it
        {hasSleeve ? (
          <>
            : {grouped(counts.plugAlone)} the plug alone, {grouped(counts.together)} plug and sleeve together,{' '}
            {grouped(counts.either)} either
          </>
        ) : null}
        . <Unmeant turning={turning} unmeant={unmeant} />
      </p>
      <WithoutLimit byTable={byTable} hasSleeve={hasSleeve} />
      <Worn look={look} table={table} />
      <KeyListPart byTable={byTable} placed={placed} hasSleeve={hasSleeve} />
    </>
  );
}

function Unmeant({ turning, unmeant }: { readonly turning: bigint; readonly unmeant: bigint }): ReactNode {
  if (turning === 0n) return 'No key lies on this table and in the windows at once.';
  if (unmeant === 0n) return 'All of them are meant to.';
  return unmeant === 1n ? 'One of them nobody meant.' : `${grouped(unmeant)} of them nobody meant.`;
}

/** What the limit between neighbours takes away. */
function WithoutLimit({
  byTable,
  hasSleeve,
}: {
  readonly byTable: KeysByTable;
  readonly hasSleeve: boolean;
}) {
  if (byTable.system.largestStep === null) return null;
  const lines = hasSleeve ? [0, 1] : [0];
  const words = lines.flatMap((i) => {
    const { count, withoutLimit } = keysAtLine(byTable, i);
    const where = !hasSleeve ? '' : i === 0 ? ' at the inner line' : ' at the outer line';
    return withoutLimit === count ? [] : [`${grouped(withoutLimit - count)}${where}`];
  });
  if (words.length === 0) return null;
  return (
    <p className="small quiet">
      Left out, because neighbouring cuts differ by more than {byTable.system.largestStep}: {listWords(words)}
      .
    </p>
  );
}

function Worn({ look, table }: { readonly look: Look; readonly table: DepthTable }) {
  const [text, setText] = useState('');
  const { unit } = look.job.settings;
  const example = unit === 'in' ? '.005' : '0.1';
  const read = text.trim() === '' ? null : parseLength(text, { unit });
  const lowered = read?.type === 'length' ? read.mm : null;
  const keys = useMemo(
    () => (lowered === null ? null : keysWithWear(look, table, { lowered, raised: 0 })),
    [look, table, lowered],
  );
  return (
    <div className="worn">
      <label className="keying-field">
        <span>Plug filed or worn down by another</span>
        <input
          className="keying-input"
          type="text"
          inputMode="decimal"
          autoComplete="off"
          value={text}
          placeholder={example}
          onChange={({ target }) => setText(target.value)}
        />
      </label>
      <p role="status">
        {read !== null && lowered === null ? `"${text}" is no length, for example ${example}.` : null}
        {keys === null ? null : wornWords(keys)}
      </p>
    </div>
  );
}

function wornWords({ now, worn }: { readonly now: bigint; readonly worn: bigint }): string {
  if (worn === now) return 'No other key would operate it.';
  return `${keysWord(worn - now)} more would operate it: ${grouped(worn)} in all.`;
}
