/** The two solvers under the choice of parts, on small tables, each against every choice there is. */
import { describe, expect, test } from 'vitest';
import { type EdgeTable, leastCost } from '../../../src/model/matching/least-cost.ts';
import { tightestOf } from '../../../src/model/matching/tightest.ts';
import { seededRandom } from '../../support/random-job.ts';

type Case = { readonly table: EdgeTable; readonly cost: number[]; readonly value: number[] };

function drawnCase(seed: number): Case {
  const random = seededRandom(seed);
  const upTo = (most: number) => Math.floor(random() * (most + 1));
  const rowCount = 1 + upTo(4);
  const columns = 1 + upTo(4);
  const start = [0];
  const column: number[] = [];
  for (let row = 0; row < rowCount; row++) {
    for (let which = 0; which < columns; which++) if (random() < 0.55) column.push(which);
    start.push(column.length);
  }
  const copies = Array.from({ length: columns }, () => upTo(2));
  return {
    table: { rowCount, start, column, copies },
    cost: column.map(() => upTo(9)),
    value: column.map(() => upTo(3)),
  };
}

/** Every choice of edges that uses no column too often: -1 for a row left empty. */
function choicesOf({ table }: Case, isAllowed: (edge: number) => boolean): number[][] {
  const { rowCount, start, column, copies } = table;
  const goOn = (row: number, chosen: readonly number[]): number[][] => {
    if (row === rowCount) return [[...chosen]];
    const edges = column.flatMap((which, edge) => {
      if (edge < start[row]! || edge >= start[row + 1]! || !isAllowed(edge)) return [];
      const used = chosen.filter((each) => column[each] === which).length;
      return used < copies[which]! ? [edge] : [];
    });
    return [-1, ...edges].flatMap((edge) => goOn(row + 1, [...chosen, edge]));
  };
  return goOn(0, []);
}

const filledIn = (edges: readonly number[]) => edges.filter((edge) => edge >= 0).length;
const SEEDS = Array.from({ length: 60 }, (_, i) => i + 1);

describe('the least costly choice', () => {
  test.each(SEEDS)('fills as many rows as any and costs no more, table %i', (seed) => {
    const drawn = drawnCase(seed);
    const { table, cost, value } = drawn;
    for (const atLeast of [0, 2]) {
      const isAllowed = (edge: number) => value[edge]! >= atLeast;
      const costOf = (edges: readonly number[]) =>
        edges.reduce((sum, edge) => sum + (edge < 0 ? 0 : cost[edge]!), 0);
      const found = leastCost(table, cost, { value, atLeast });
      const all = choicesOf(drawn, isAllowed);
      const most = Math.max(...all.map(filledIn));
      const least = Math.min(...all.filter((each) => filledIn(each) === most).map(costOf));
      expect(all.map(String)).toContain(String(found));
      expect([filledIn(found), costOf(found)]).toEqual([most, least]);
    }
  });

  test('of equals the edge listed first is taken, and the row that came first keeps it', () => {
    const table = { rowCount: 3, start: [0, 2, 4, 5], column: [0, 1, 0, 1, 0], copies: [1, 1] };
    const filter = { value: [0, 0, 0, 0, 0], atLeast: 0 };
    expect(leastCost(table, [1, 1, 1, 1, 1], filter)).toEqual([0, 3, -1]);
  });

  test('a row gives way where another one needs its column more', () => {
    // Row 1 has column 0 only; row 0 goes over to column 1, though that is dear.
    const table = { rowCount: 2, start: [0, 2, 3], column: [0, 1, 0], copies: [1, 1] };
    expect(leastCost(table, [0, 7, 3], { value: [0, 0, 0], atLeast: 0 })).toEqual([1, 2]);
  });

  test('a row that came in goes out again for one that costs less', () => {
    const table = { rowCount: 2, start: [0, 1, 2], column: [0, 0], copies: [1] };
    expect(leastCost(table, [5, 4], { value: [0, 0], atLeast: 0 })).toEqual([-1, 1]);
    expect(leastCost(table, [4, 5], { value: [0, 0], atLeast: 0 })).toEqual([0, -1]);
    expect(leastCost(table, [5, 5], { value: [0, 0], atLeast: 0 })).toEqual([0, -1]);
  });

  test('no rows, no edges', () => {
    const none = { rowCount: 0, start: [0], column: [], copies: [] };
    expect(leastCost(none, [], { value: [], atLeast: 0 })).toEqual([]);
    const bare = { rowCount: 2, start: [0, 0, 0], column: [], copies: [] };
    expect(leastCost(bare, [], { value: [], atLeast: 0 })).toEqual([-1, -1]);
  });
});

describe('the tightest level', () => {
  test.each(SEEDS)('is the highest at which as many rows can be filled as at all, table %i', (seed) => {
    const drawn = drawnCase(seed);
    const { table, value } = drawn;
    const mostAt = (level: number) =>
      Math.max(...choicesOf(drawn, (edge) => value[edge]! >= level).map(filledIn));
    const most = mostAt(0);
    const levels = [0, 1, 2, 3].filter((level) => mostAt(level) === most);
    expect(tightestOf(table, value)).toBe(most === 0 ? null : Math.max(...levels));
  });

  test('null where nothing can be filled: no edges, no copies', () => {
    expect(tightestOf({ rowCount: 1, start: [0, 0], column: [], copies: [] }, [])).toBeNull();
    expect(tightestOf({ rowCount: 1, start: [0, 1], column: [0], copies: [0] }, [5])).toBeNull();
  });
});
