/**
 * The least costly way to give every row one column, filling as many rows as can be filled. A row is a chamber, a column a
 * part, an edge one part in one chamber; a column may be used as many times as there are copies of that part.
 *
 * Shortest augmenting paths with row and column prices (the Hungarian method in its sparse form): rows come in one after
 * the other, and each takes the cheapest chain of swaps that lets it in. Leaving a row unfilled costs more than all edges
 * together, so that filling comes first. Costs are whole numbers, at least 0 and small enough to be added exactly.
 */

/** Edges by row: those of row i are the places start[i] to start[i + 1] of the other lists. */
export type EdgeTable = {
  readonly rowCount: number;
  readonly start: Int32Array;
  readonly column: Int32Array;
  /** How many times each column can be used. */
  readonly copies: readonly number[];
};

/** Which edges take part. */
export type EdgeFilter = { readonly value: Float64Array; readonly atLeast: number };

/**
 * Finds the edge of every row, -1 for a row that stays unfilled. Of several equally good answers it always gives the same
 * one for the same table.
 */
export function leastCost(table: EdgeTable, cost: Float64Array, filter: EdgeFilter | null): Int32Array {
  const search = new Search(table, cost, filter);
  for (let row = 0; row < table.rowCount; row++) search.letIn(row);
  return search.edgeOf;
}

/** What one solution keeps between rows: prices, who has what, and the labels of the path being searched. */
class Search {
  readonly edgeOf: Int32Array;
  private readonly table: EdgeTable;
  private readonly cost: Float64Array;
  private readonly filter: EdgeFilter | null;
  private readonly leftEmpty: number;
  private readonly rowPrice: Float64Array;
  private readonly columnPrice: Float64Array;
  private readonly used: Int32Array;
  /** The rows on a column, as a chain. */
  private readonly firstRow: Int32Array;
  private readonly nextRow: Int32Array;
  private readonly distance: Float64Array;
  /** The edge by which a column was reached, and its row. */
  private readonly via: Int32Array;
  private readonly viaRow: Int32Array;
  private readonly isDone: Uint8Array;
  private readonly reached: number[] = [];
  private readonly doneRows: number[] = [];
  private readonly doneAt: number[] = [];
  /** The cheapest place so far to end by leaving a row empty. */
  private emptyRow = -1;
  private emptyAt = Infinity;

  constructor(table: EdgeTable, cost: Float64Array, filter: EdgeFilter | null) {
    const columns = table.copies.length;
    let most = 0;
    for (const each of cost) if (each > most) most = each;
    this.table = table;
    this.cost = cost;
    this.filter = filter;
    this.leftEmpty = (most + 1) * (table.rowCount + 1);
    this.edgeOf = new Int32Array(table.rowCount).fill(-1);
    this.rowPrice = new Float64Array(table.rowCount);
    this.columnPrice = new Float64Array(columns);
    this.used = new Int32Array(columns);
    this.firstRow = new Int32Array(columns).fill(-1);
    this.nextRow = new Int32Array(table.rowCount).fill(-1);
    this.distance = new Float64Array(columns).fill(Infinity);
    this.via = new Int32Array(columns);
    this.viaRow = new Int32Array(columns);
    this.isDone = new Uint8Array(columns);
  }

  letIn(row: number): void {
    this.emptyAt = Infinity;
    this.label(row, 0);
    let end = this.nextColumn();
    while (end >= 0 && this.at(this.distance, end) < this.emptyAt && this.isFull(end)) {
      this.isDone[end] = 1;
      const far = this.at(this.distance, end);
      for (let on = this.at(this.firstRow, end); on >= 0; on = this.at(this.nextRow, on)) this.label(on, far);
      end = this.nextColumn();
    }
    const endsAt = end < 0 ? Infinity : this.at(this.distance, end);
    this.reprice(Math.min(endsAt, this.emptyAt));
    this.swapAlong(row, endsAt < this.emptyAt ? end : -1);
    this.clear();
  }

  /** Looks at what a row could have instead, at this cost so far. */
  private label(row: number, far: number): void {
    const { start, column } = this.table;
    const { filter } = this;
    const price = this.at(this.rowPrice, row);
    this.doneRows.push(row);
    this.doneAt.push(far);
    if (far + this.leftEmpty - price < this.emptyAt) {
      this.emptyAt = far + this.leftEmpty - price;
      this.emptyRow = row;
    }
    const to = this.at(start, row + 1);
    for (let edge = this.at(start, row); edge < to; edge++) {
      if (filter !== null && this.at(filter.value, edge) < filter.atLeast) continue;
      const which = this.at(column, edge);
      const reached = far + this.at(this.cost, edge) - price - this.at(this.columnPrice, which);
      const before = this.at(this.distance, which);
      if (reached >= before) continue;
      if (before === Infinity) this.reached.push(which);
      this.distance[which] = reached;
      this.via[which] = edge;
      this.viaRow[which] = row;
    }
  }

  /** The nearest column not looked at yet, a free one before a full one. */
  private nextColumn(): number {
    let best = -1;
    let nearest = Infinity;
    let isFree = false;
    for (const which of this.reached) {
      if (this.isDone[which] === 1) continue;
      const far = this.at(this.distance, which);
      if (far > nearest) continue;
      const free = !this.isFull(which);
      if (far === nearest && (isFree || !free)) continue;
      best = which;
      nearest = far;
      isFree = free;
    }
    return best;
  }

  private isFull(column: number): boolean {
    return this.at(this.used, column) >= this.at(this.table.copies, column);
  }

  private reprice(length: number): void {
    this.doneRows.forEach((row, i) => {
      this.rowPrice[row] = this.at(this.rowPrice, row) + length - (this.doneAt[i] ?? 0);
    });
    for (const which of this.reached) {
      if (this.isDone[which] !== 1) continue;
      this.columnPrice[which] = this.at(this.columnPrice, which) - length + this.at(this.distance, which);
    }
  }

  /** Hands the columns on, from the end of the path back to the row that came in. -1: a row is left empty. */
  private swapAlong(newRow: number, endColumn: number): void {
    let column = endColumn;
    if (column < 0) {
      if (this.emptyRow === newRow) return;
      column = this.release(this.emptyRow);
    }
    for (;;) {
      const edge = this.at(this.via, column);
      const row = this.at(this.viaRow, column);
      const left = row === newRow ? -1 : this.release(row);
      this.edgeOf[row] = edge;
      this.nextRow[row] = this.at(this.firstRow, column);
      this.firstRow[column] = row;
      this.used[column] = this.at(this.used, column) + 1;
      if (left < 0) return;
      column = left;
    }
  }

  /** Takes a row off its column and gives the column. */
  private release(row: number): number {
    const column = this.at(this.table.column, this.at(this.edgeOf, row));
    const after = this.at(this.nextRow, row);
    if (this.at(this.firstRow, column) === row) this.firstRow[column] = after;
    else {
      let before = this.at(this.firstRow, column);
      while (this.at(this.nextRow, before) !== row) before = this.at(this.nextRow, before);
      this.nextRow[before] = after;
    }
    this.nextRow[row] = -1;
    this.edgeOf[row] = -1;
    this.used[column] = this.at(this.used, column) - 1;
    return column;
  }

  private clear(): void {
    for (const which of this.reached) {
      this.distance[which] = Infinity;
      this.isDone[which] = 0;
    }
    this.reached.length = 0;
    this.doneRows.length = 0;
    this.doneAt.length = 0;
  }

  /** Every place asked for exists: the tables are built together. */
  private at(list: Int32Array | Float64Array | readonly number[], place: number): number {
    return list[place] ?? 0;
  }
}
