/**
 * Independent solvers for the assignment problem, behind one question: which choice of at most one part per row and one row
 * per part costs least, filling as many rows as can be filled. A cell that is null cannot be used.
 */
import highsLoader from 'highs';
import { linearSumAssignment } from 'linear-sum-assignment';
import munkres from 'munkres-js';

/** Rows by columns. */
export type Costs = readonly (readonly (number | null)[])[];
export type Solved = { readonly filled: number; readonly cost: number };
export type Solver = (costs: Costs) => Solved;

/** Large enough to outweigh every real cell, square enough for solvers that want squares. */
function padded(costs: Costs): { cells: number[][]; outOfReach: number } {
  const columns = Math.max(costs.length, costs[0]?.length ?? 0);
  const dearest = costs.flat().reduce<number>((most, each) => Math.max(most, each ?? 0), 0);
  const outOfReach = (dearest + 1) * (costs.length + 1);
  const cells = costs.map((row) => Array.from({ length: columns }, (_, column) => row[column] ?? outOfReach));
  return { cells, outOfReach };
}

function counted(costs: Costs, pairs: readonly (readonly [number, number])[]): Solved {
  const used = pairs.flatMap(([row, column]) => {
    const cost = costs[row]?.[column];
    return cost === undefined || cost === null ? [] : [cost];
  });
  return { filled: used.length, cost: used.reduce((sum, each) => sum + each, 0) };
}

export function byMunkres(costs: Costs): Solved {
  if (costs.length === 0) return { filled: 0, cost: 0 };
  return counted(costs, munkres(padded(costs).cells));
}

export function byShortestPaths(costs: Costs): Solved {
  if (costs.length === 0) return { filled: 0, cost: 0 };
  const { cells } = padded(costs);
  const { rowAssignments } = linearSumAssignment(cells, { maximaze: false });
  return counted(
    costs,
    [...rowAssignments].map((column, row) => [row, column]),
  );
}

/** A linear program: the polytope of assignments has whole corners. */
export async function linearProgramSolver(): Promise<Solver> {
  const highs = await highsLoader();
  return (costs) => {
    const cells = costs.flatMap((row, i) =>
      row.flatMap((cost, t) => (cost === null ? [] : [{ name: `x${i}_${t}`, row: i, column: t, cost }])),
    );
    if (cells.length === 0) return { filled: 0, cost: 0 };
    const { outOfReach } = padded(costs);
    const solution = highs.solve(linearProgram(cells, outOfReach), { output_flag: false });
    if (solution.Status !== 'Optimal') throw new Error(`highs says ${solution.Status}`);
    const used = cells.filter(({ name }) => (solution.Columns[name]?.Primal ?? 0) > 0.5);
    return { filled: used.length, cost: used.reduce((sum, { cost }) => sum + cost, 0) };
  };
}

type Cell = { name: string; row: number; column: number; cost: number };

/** Every cell used saves what it costs to leave a row empty. */
function linearProgram(cells: readonly Cell[], outOfReach: number): string {
  const terms = cells.map(({ name, cost }) => `- ${outOfReach - cost} ${name}`).join(' ');
  const limits = (which: 'row' | 'column') => {
    const groups = new Map<number, string[]>();
    for (const cell of cells) {
      const before = groups.get(cell[which]);
      if (before === undefined) groups.set(cell[which], [cell.name]);
      else before.push(cell.name);
    }
    return [...groups.entries()].map(([number, names]) => ` ${which}${number}: ${names.join(' + ')} <= 1`);
  };
  return ['Minimize', ` cost: ${terms}`, 'Subject To', ...limits('row'), ...limits('column'), 'End'].join(
    '\n',
  );
}
