/**
 * The bottleneck level: how much the tightest place can have to spare when as many places are filled as can be. Edges come
 * in by how much they have to spare, most first; each time one more row can be filled, the level is noted. The last note is
 * the answer, since nothing that comes later fills another row. Rows, columns, edges as in least-cost.ts.
 */
import type { EdgeTable } from './least-cost.ts';

/** Finds the level; null when no row can be filled. `value` is each edge's, whole numbers. */
export function tightestOf(table: EdgeTable, value: Float64Array): number | null {
  const filling = new Filling(table);
  const rows = rowsOf(table);
  const count = value.length;
  // level and edge in one number, so that plain numbers are sorted: edge - level * count
  const inOrder = new Float64Array(count);
  for (let edge = 0; edge < count; edge++) inOrder[edge] = edge - (value[edge] ?? 0) * count;
  inOrder.sort();
  let level: number | null = null;
  for (let i = 0; i < count && !filling.isFull(); ) {
    const at = -Math.floor((inOrder[i] ?? 0) / count);
    for (; i < count; i++) {
      const edge = (inOrder[i] ?? 0) + at * count;
      if (edge >= count) break;
      filling.add(rows[edge] ?? 0, table.column[edge] ?? 0);
    }
    if (filling.grow()) level = at;
  }
  return level;
}

function rowsOf({ rowCount, start, column }: EdgeTable): Int32Array {
  const rows = new Int32Array(column.length);
  for (let row = 0; row < rowCount; row++) rows.fill(row, start[row], start[row + 1]);
  return rows;
}

/** As many rows filled as the edges so far allow: augmenting paths, kept while edges are added. */
class Filling {
  private readonly table: EdgeTable;
  /** Columns each row could have. */
  private readonly columns: number[][] = [];
  private readonly isFilled: boolean[] = [];
  /** Rows on each column, once it has any. */
  private readonly rowsOn: (number[] | undefined)[] = [];
  private readonly seen: number[] = [];
  private round = 0;
  private filled = 0;

  constructor(table: EdgeTable) {
    this.table = table;
    for (let row = 0; row < table.rowCount; row++) {
      this.columns.push([]);
      this.isFilled.push(false);
    }
    for (let column = 0; column < table.copies.length; column++) {
      this.rowsOn.push(undefined);
      this.seen.push(0);
    }
  }

  add(row: number, column: number): void {
    this.columns[row]?.push(column);
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
    for (const column of this.columns[row] ?? []) {
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
