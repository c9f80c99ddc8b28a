/**
 * The cuts of the keys that operate, shown only when asked for, each time. Only the rows in sight are ever made, and only a
 * thousand of them can be scrolled at once; any place of the list is gone to directly.
 */
import { type UIEvent, useMemo, useState } from 'react';
import { INNER, OUTER } from '../../model/keying/key-system.ts';
import { type KeyList, listKeys } from '../../model/keying/list-keys.ts';
import type { KeysByTable } from '../../model/keying/operating-keys.ts';
import { grouped, keysWord, type PlacedKey } from './keying-words.ts';
import { readPattern, type Pattern } from './key-pattern.ts';

type KeyListPartProps = {
  readonly byTable: KeysByTable;
  readonly placed: readonly PlacedKey[];
  readonly hasSleeve: boolean;
};

export function KeyListPart({ byTable, placed, hasSleeve }: KeyListPartProps) {
  // what was asked for belongs to these counts: other ones are hidden again
  const [shownFor, setShownFor] = useState<KeysByTable | null>(null);
  const isShown = shownFor === byTable;
  return (
    <section className="key-list" aria-label="Cuts of the keys that operate it">
      <p className="key-list-warning">
        Whoever reads these cuts can make a key to this cylinder. They are shown on this screen only, and put
        away when you leave.
      </p>
      <button
        type="button"
        className="button"
        aria-expanded={isShown}
        onClick={() => setShownFor(isShown ? null : byTable)}
      >
        {isShown ? 'Put the cuts away' : 'Show the cuts'}
      </button>
      {isShown ? <Shown byTable={byTable} placed={placed} hasSleeve={hasSleeve} /> : null}
    </section>
  );
}

const WHAT_TURNS = {
  any: { words: 'anything', turns: [INNER, OUTER, INNER | OUTER] },
  plug: { words: 'the plug alone', turns: [INNER] },
  together: { words: 'plug and sleeve together', turns: [OUTER] },
  either: { words: 'either', turns: [INNER | OUTER] },
} as const;
type WhatTurns = keyof typeof WHAT_TURNS;

const PAGE = 1000n;

function Shown({ byTable, placed, hasSleeve }: KeyListPartProps) {
  const { system } = byTable;
  const [text, setText] = useState('');
  const [what, setWhat] = useState<WhatTurns>('any');
  const [first, setFirst] = useState(0n);
  const pattern = useMemo(() => readPattern(text, system), [text, system]);
  const list = useMemo(
    () =>
      pattern.type === 'error'
        ? null
        : listKeys(system, { turns: WHAT_TURNS[what].turns, steps: pattern.steps }),
    [system, what, pattern],
  );
  const example = system.columns.map((_, i) => (i === 1 ? '?' : '2')).join(' ');
  return (
    <>
      <div className="keying-fields">
        <label className="keying-field is-wide">
          <span>Only cuts like (? for any)</span>
          <input
            className="keying-input"
            type="text"
            autoComplete="off"
            spellCheck={false}
            value={text}
            placeholder={example}
            onChange={({ target }) => {
              setText(target.value);
              setFirst(0n);
            }}
          />
        </label>
        {hasSleeve ? (
          <label className="keying-field is-wide">
            <span>Only those that turn</span>
            <select
              className="keying-select"
              value={what}
              onChange={({ target }) => {
                setWhat(asWhatTurns(target.value));
                setFirst(0n);
              }}
            >
              {Object.entries(WHAT_TURNS).map(([value, { words }]) => (
                <option key={value} value={value}>
                  {words}
                </option>
              ))}
            </select>
          </label>
        ) : null}
      </div>
      <ListState pattern={pattern} list={list} first={first} />
      {list === null || list.count === 0n ? null : (
        <>
          <Rows
            key={`${first} ${text} ${what}`}
            list={list}
            first={first}
            placed={placed}
            hasSleeve={hasSleeve}
          />
          <Pages list={list} first={first} onFirst={setFirst} />
        </>
      )}
    </>
  );
}

function asWhatTurns(value: string): WhatTurns {
  return value === 'plug' || value === 'together' || value === 'either' ? value : 'any';
}

type ListStateProps = { readonly pattern: Pattern; readonly list: KeyList | null; readonly first: bigint };

function ListState({ pattern, list, first }: ListStateProps) {
  const words =
    pattern.type === 'error'
      ? pattern.message
      : list === null || list.count === 0n
        ? 'No key is like that.'
        : list.count <= PAGE
          ? `${keysWord(list.count)}.`
          : `${keysWord(list.count)}; here ${grouped(first + 1n)} to ${grouped(lastOf(list, first))}.`;
  return (
    <p role="status">
      {words} Chamber 1 stands first; depth 1 is the shallowest cut. Rows without a name are keys nobody
      meant.
    </p>
  );
}

function lastOf(list: KeyList, first: bigint): bigint {
  return first + PAGE < list.count ? first + PAGE : list.count;
}

/** px; as high as a row is in the style sheet. */
const ROW_HEIGHT = 32;
const ROWS_IN_SIGHT = 10;
const SPARE_ROWS = 6;

type RowsProps = {
  readonly list: KeyList;
  readonly first: bigint;
  readonly placed: readonly PlacedKey[];
  readonly hasSleeve: boolean;
};

function Rows({ list, first, placed, hasSleeve }: RowsProps) {
  const [top, setTop] = useState(0);
  const count = Number(lastOf(list, first) - first);
  const from = Math.max(0, Math.floor(top / ROW_HEIGHT) - SPARE_ROWS);
  const to = Math.min(count, from + ROWS_IN_SIGHT + 2 * SPARE_ROWS);
  const onScroll = ({ currentTarget }: UIEvent<HTMLDivElement>) => setTop(currentTarget.scrollTop);
  const labels = new Map(
    placed.map(({ steps, label, isMeant }) => [steps.join(), isMeant ? label : `${label}, not meant to`]),
  );
  return (
    <div
      className="key-table"
      // a region that scrolls is reached by keyboard
      tabIndex={0}
      role="table"
      aria-label="Keys that operate it"
      aria-rowcount={count}
      style={{ height: Math.min(count, ROWS_IN_SIGHT) * ROW_HEIGHT + 2 }}
      onScroll={onScroll}
    >
      <div role="rowgroup" className="key-table-rows" style={{ height: count * ROW_HEIGHT }}>
        {Array.from({ length: to - from }, (_, i) => {
          const place = first + BigInt(from + i);
          const { steps, turns } = list.at(place);
          return (
            <div
              key={from + i}
              role="row"
              aria-rowindex={from + i + 1}
              className="key-table-row"
              style={{ top: (from + i) * ROW_HEIGHT }}
            >
              <span role="cell" className="key-place quiet">
                {grouped(place + 1n)}
              </span>
              <span role="cell" className="number">
                {steps.map((step) => step + 1).join(' ')}
              </span>
              <span role="cell" className="small">
                {[hasSleeve ? wordsOf(turns) : null, labels.get(steps.join()) ?? null]
                  .filter((each) => each !== null)
                  .join(', ')}
              </span>
            </div>
          );
        })}
      </div>
    </div>
  );
}

function wordsOf(turns: number): string {
  const found = Object.values(WHAT_TURNS).find((each) => each.turns.length === 1 && each.turns[0] === turns);
  return found?.words ?? '';
}

type PagesProps = {
  readonly list: KeyList;
  readonly first: bigint;
  readonly onFirst: (first: bigint) => void;
};

function Pages({ list, first, onFirst }: PagesProps) {
  const [text, setText] = useState('');
  if (list.count <= PAGE) return null;
  const goTo = () => {
    if (!/^[\d\s,]+$/u.test(text.trim())) return;
    const wanted = BigInt(text.replaceAll(/\D/gu, '') || '1') - 1n;
    onFirst(wanted < 0n ? 0n : wanted >= list.count ? list.count - 1n : wanted);
  };
  return (
    <div className="keying-buttons">
      <button
        type="button"
        className="button"
        disabled={first === 0n}
        onClick={() => onFirst(first > PAGE ? first - PAGE : 0n)}
      >
        Earlier ones
      </button>
      <button
        type="button"
        className="button"
        disabled={first + PAGE >= list.count}
        onClick={() => onFirst(first + PAGE)}
      >
        Next ones
      </button>
      <label className="keying-field">
        <span>Go to number</span>
        <input
          className="keying-input"
          type="text"
          inputMode="numeric"
          autoComplete="off"
          value={text}
          onChange={({ target }) => setText(target.value)}
          onBlur={goTo}
          onKeyDown={({ key }) => {
            if (key === 'Enter') goTo();
          }}
        />
      </label>
    </div>
  );
}
