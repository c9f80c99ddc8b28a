/**
 * The bag as a list: a row for each part, of which only those in sight (and the one being written in) are on the page, so
 * that thousands scroll like sixty.
 */
import { type ReactNode, useState } from 'react';
import { isLoose, type BagFilter, type BagRow } from './bag-rows.ts';
import { inRem } from '../shared/use-width.ts';
import { useWidth } from '../shared/use-width.ts';
import './bag-list.css';

type BagListProps = {
  readonly rows: readonly BagRow[];
  readonly renderRow: (row: BagRow, place: RowPlace) => ReactNode;
};

export type RowPlace = {
  /** Place in the list, from 1. */
  readonly index: number;
  readonly top: number;
  readonly height: number;
  readonly isFolded: boolean;
};

/** px of a row at the usual text size: in one line, and folded into two. */
const ROW_REM = 4.125;
const FOLDED_ROW_REM = 5.125;
const FOLDED_BELOW_REM = 36;
/** Rows beyond what is in sight, each way. */
const MARGIN = 6;
const SHOWN_ROWS = 8;

export function BagList({ rows, renderRow }: BagListProps) {
  const [frame, width] = useWidth<HTMLDivElement>();
  const [scrolled, setScrolled] = useState(0);
  const [held, setHeld] = useState<string | null>(null);
  const rem = width === 0 ? 16 : width / inRem(width);
  const isFolded = width > 0 && width / rem < FOLDED_BELOW_REM;
  const height = Math.round((isFolded ? FOLDED_ROW_REM : ROW_REM) * rem);
  const sight = Math.min(rows.length, SHOWN_ROWS) * height;
  const from = Math.max(0, Math.floor(scrolled / height) - MARGIN);
  const to = Math.min(rows.length, Math.ceil((scrolled + sight) / height) + MARGIN);
  const inSight = rows.slice(from, to).map((row, i) => ({ row, at: from + i }));
  const heldAt = held === null ? -1 : rows.findIndex(({ part }) => part.id === held);
  const isHeldOutside = heldAt >= 0 && (heldAt < from || heldAt >= to);
  const heldRow = isHeldOutside ? rows[heldAt] : undefined;
  const rendered = heldRow === undefined ? inSight : [...inSight, { row: heldRow, at: heldAt }];
  rendered.sort((one, other) => one.at - other.at);
  return (
    <div ref={frame} className="bag-frame">
      <div
        className="bag-scroll"
        style={{ height: sight + 1 }}
        onScroll={(event) => setScrolled(event.currentTarget.scrollTop)}
        role="table"
        aria-label="Parts in the bag"
        aria-rowcount={rows.length}
        data-walk="bag"
        // biome-ignore lint/a11y/noNoninteractiveTabindex: a list that scrolls must be reachable without a pointer
        tabIndex={0}
      >
        <div className="bag-rows" role="rowgroup" style={{ height: rows.length * height }}>
          {rendered.map(({ row, at }) => (
            <div
              key={row.part.id}
              role="presentation"
              onFocus={() => setHeld(row.part.id)}
              onBlur={() => setHeld((before) => (before === row.part.id ? null : before))}
            >
              {renderRow(row, { index: at + 1, top: at * height, height, isFolded })}
            </div>
          ))}
        </div>
      </div>
    </div>
  );
}

type BagToolsProps = {
  readonly filter: BagFilter;
  readonly setFilter: (changes: Partial<BagFilter>) => void;
  readonly rows: readonly BagRow[];
  readonly shown: number;
};

/** Finding one's way in a large bag. */
export function BagTools({ filter, setFilter, rows, shown }: BagToolsProps) {
  const loose = rows.filter(isLoose).length;
  return (
    <div className="bag-tools">
      <label>
        <span>Show</span>
        <select
          value={filter.place}
          onChange={(event) => setFilter({ place: event.target.value as BagFilter['place'] })}
        >
          <option value="loose">loose parts ({loose})</option>
          <option value="in use">parts in a cylinder ({rows.length - loose})</option>
          <option value="all">all parts ({rows.length})</option>
        </select>
      </label>
      <label>
        <span>Kind</span>
        <select
          value={filter.kind}
          onChange={(event) => setFilter({ kind: event.target.value as BagFilter['kind'] })}
        >
          <option value="all">every kind</option>
          <option value="pin">pins</option>
          <option value="ball">balls</option>
          <option value="spring">springs</option>
        </select>
      </label>
      <label>
        <span>In order of</span>
        <select
          value={filter.sort}
          onChange={(event) => setFilter({ sort: event.target.value as BagFilter['sort'] })}
        >
          <option value="last entered">last entered</option>
          <option value="label">label</option>
          <option value="length">length</option>
        </select>
      </label>
      <label className="bag-find">
        <span>Label or where from</span>
        <input
          type="search"
          value={filter.text}
          onChange={(event) => setFilter({ text: event.target.value })}
        />
      </label>
      <output className="small quiet bag-count">
        {shown === 1 ? 'one part' : `${shown.toLocaleString('en')} parts`}
      </output>
    </div>
  );
}
