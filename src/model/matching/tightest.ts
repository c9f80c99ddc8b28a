/**
 * The bottleneck level: how much the tightest place can have to spare when as many places are filled as can be. Edges come
 * in by how much they have to spare, most first; each time one more row can be filled, the level is noted. The last note is
 * the answer, since nothing that comes later fills another row. Rows, columns, edges as in least-cost.ts.
 */
import type { EdgeTable } from './least-cost.ts';

/** Finds the level; null when no row can be filled. `value` is each edge's: whole numbers, at least 0. */
export function tightestOf(table: EdgeTable, value: readonly number[]): number | null {
  const filling = new Filling(table);
  const byLevel = chainsByLevel(value);
  let level: number | null = null;
  for (let at = byLevel.first.length - 1; at >= 0 && !filling.isFull(); at--) {
    let edge = byLevel.first[at] ?? -1;
    if (edge < 0) continue;
    for (; edge >= 0; edge = byLevel.next[edge] ?? -1) filling.add(edge);
    if (filling.grow()) level = at;
  }
  return level;
}

/** The edges of each level as a chain: the first of a level, and the next of each edge. -1 ends it. */
function chainsByLevel(value: readonly number[]): { first: number[]; next: number[] } {
  let most = 0;
  for (const each of value) if (each > most) most = each;
  const first = new Array<number>(most + 1).fill(-1);
  const next: number[] = [];
  for (let edge = 0; edge < value.length; edge++) {
    const level = value[edge] ?? 0;
    next.push(first[level] ?? -1);
    first[level] = edge;
  }
  return { first, next };
}

/** As many rows filled as the edges so far allow: augmenting paths, kept while edges are added. */
class Filling {
  private readonly table: EdgeTable;
  /** The row of each edge. */
  private readonly rowOf: number[] = [];
  /** The columns each row could have. */
  private readonly columns: number[][] = [];
  private readonly isFilled: boolean[] = [];
  /** The rows on each column, once it has any. */
  private readonly rowsOn: (number[] | undefined)[];
  private readonly seen: number[];
  private round = 0;
  private filled = 0;

  constructor(table: EdgeTable) {
    this.table = table;
    for (let row = 0; row < table.rowCount; row++) {
      this.columns.push([]);
      this.isFilled.push(false);
      for (let edge = table.start[row] ?? 0; edge < (table.start[row + 1] ?? 0); edge++) this.rowOf.push(row);
    }
    this.rowsOn = new Array<number[] | undefined>(table.copies.length).fill(undefined);
    this.seen = new Array<number>(table.copies.length).fill(0);
  }

  add(edge: number): void {
    this.columns[this.rowOf[edge] ?? 0]?.push(this.table.column[edge] ?? 0);
  }

  isFull(): boolean {
    return this.filled === this.table.rowCount;
  }

  /** Fills what can be filled; true when that is more than before. */
  grow(): boolean {
    const before = this.filled;
    let last = -1;
    while (last < this.filled && !this.isFull()) {
      last = this.filled;
      this.round += 1;
      // a column that led nowhere for one row leads nowhere for the next, until something moved
      for (let row = 0; row < this.table.rowCount; row++) {
        if (this.isFilled[row] === true || !this.fill(row)) continue;
        this.isFilled[row] = true;
        this.filled += 1;
      }
    }
    return this.filled > before;
  }

  private fill(row: number): boolean {
    const columns = this.columns[row] ?? [];
    for (let place = 0; place < columns.length; place++) {
      const column = columns[place] ?? 0;
      if (this.seen[column] === this.round) continue;
      this.seen[column] = this.round;
      const rows = this.rowsOn[column] ?? [];
      if (rows.length < (this.table.copies[column] ?? 0)) {
        if (rows.length === 0) this.rowsOn[column] = rows;
        rows.push(row);
        return true;
      }
      for (let i = 0; i < rows.length; i++) {
        const other = rows[i];
        if (other === undefined || !this.fill(other)) continue;
        rows[i] = row;
        return true;
      }
    }
    return false;
  }
}
