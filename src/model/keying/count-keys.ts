/**
 * How many keys turn a line: without a limit between neighbours the product over the chambers of how many steps clear it;
 * with one, counted from the last chamber forwards, for each step before and each set of lines still open. Exact for
 * any number of keys.
 */
import { known } from '../assert.ts';
import {
  INNER,
  isWanted,
  type KeyFilter,
  type KeySystem,
  type LineMarks,
  marksAt,
  mayFollow,
  OUTER,
} from './key-system.ts';

/** Counts in closed form the keys that turn a line, whatever the other line does. The largest step is left out of it. */
export function productOfSteps({ columns }: KeySystem, line: LineMarks): bigint {
  return columns.reduce(
    (product, { marks }) => product * BigInt(marks.filter((each) => (each & line) === line).length),
    1n,
  );
}

export type KeyCounts = {
  /** Turn the inner or only line and nothing else. */
  readonly plugAlone: bigint;
  /** Turn the outer line and nothing else: plug and sleeve together. */
  readonly together: bigint;
  /** Clear both lines: either may turn. */
  readonly either: bigint;
  /** All keys that can be cut, whatever they turn. */
  readonly all: bigint;
};

/** Counts the keys of a system by what they turn. */
export function countKeys(system: KeySystem, steps?: KeyFilter['steps']): KeyCounts {
  const count = (...turns: LineMarks[]) =>
    waysToFinish(system, { turns, ...(steps !== undefined && { steps }) }).total;
  return {
    plugAlone: count(INNER),
    together: count(OUTER),
    either: count(INNER | OUTER),
    all: count(0, INNER, OUTER, INNER | OUTER),
  };
}

export type WaysToFinish = {
  readonly total: bigint;
  /** Keys that go on from this column, with this step before it (null at the first) and these lines still open. */
  readonly from: (column: number, before: number | null, open: LineMarks) => bigint;
};

const SETS_OF_LINES = 4;

/** For every place in a key, counts in how many ways it can be finished so that the filter is met. */
export function waysToFinish(system: KeySystem, filter: KeyFilter): WaysToFinish {
  const { columns, stepCount } = system;
  const end = Array.from({ length: SETS_OF_LINES }, (_, open) => (filter.turns.includes(open) ? 1n : 0n));
  // the last row of each table stands for "no step before"
  let after: bigint[][] = Array.from({ length: stepCount + 1 }, () => end);
  const tables: bigint[][][] = [after];
  for (let i = columns.length - 1; i >= 0; i--) {
    const column = known(columns[i], `column ${i}`);
    const next = after;
    after = Array.from({ length: stepCount + 1 }, (_, row) => {
      const before = row === stepCount ? null : row;
      const ways = Array.from({ length: SETS_OF_LINES }, () => 0n);
      for (let step = 0; step < stepCount; step++) {
        if (!isWanted(filter, i, step) || !mayFollow(system, column, before, step)) continue;
        const marks = marksAt(column, step);
        for (let open = 0; open < SETS_OF_LINES; open++)
          ways[open] = (ways[open] ?? 0n) + (next[step]?.[open & marks] ?? 0n);
      }
      return ways;
    });
    tables.unshift(after);
  }
  const from = (column: number, before: number | null, open: LineMarks): bigint =>
    tables[column]?.[before ?? stepCount]?.[open] ?? 0n;
  return { total: from(0, null, INNER | OUTER), from };
}
