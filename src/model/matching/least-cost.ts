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
  readonly start: readonly number[];
  readonly column: readonly number[];
  /** How many times each column can be used. */
  readonly copies: readonly number[];
};

/** Which edges take part. */
export type EdgeFilter = { readonly value: readonly number[]; readonly atLeast: number };

/**
 * Finds the edge of every row, -1 for a row that stays unfilled. Of several equally good answers it always gives the same
 * one for the same table.
 */
export function leastCost(table: EdgeTable, cost: readonly number[], filter: EdgeFilter): number[] {
  const search = new Search(table, cost, filter);
  for (let row = 0; row < table.rowCount; row++) search.letIn(row);
  return search.edgeOf;
}

/** What one solution keeps between rows: prices, who has what, and the labels of the path being searched. */
class Search {
  readonly edgeOf: number[];
  private readonly table: EdgeTable;
  private readonly cost: readonly number[];
  private readonly filter: EdgeFilter;
  private readonly leftEmpty: number;
  private readonly rowPrice: number[];
  private readonly columnPrice: number[];
  private readonly used: number[];
  /** The rows on a column, as a chain. */
  private readonly firstRow: number[];
  private readonly nextRow: number[];
  private readonly distance: number[];
  /** The edge by which a column was reached, and its row. */
  private readonly via: number[];
  private readonly viaRow: number[];
  private readonly isDone: boolean[];
  private readonly reached: number[] = [];
  private readonly doneRows: number[] = [];
  private readonly doneAt: number[] = [];
  /** The cheapest place so far to end by leaving a row empty. */
  private emptyRow = -1;
  private emptyAt = Infinity;

  constructor(table: EdgeTable, cost: readonly number[], filter: EdgeFilter) {
    const columns = table.copies.length;
    let most = 0;
    for (const each of cost) if (each > most) most = each;
    this.table = table;
    this.cost = cost;
    this.filter = filter;
    this.leftEmpty = (most + 1) * (table.rowCount + 1);
    this.edgeOf = filled(table.rowCount, -1);
    this.nextRow = filled(table.rowCount, -1);
    this.rowPrice = filled(table.rowCount, 0);
    this.columnPrice = filled(columns, 0);
    this.used = filled(columns, 0);
    this.firstRow = filled(columns, -1);
    this.distance = filled(columns, Infinity);
    this.via = filled(columns, 0);
    this.viaRow = filled(columns, 0);
    this.isDone = filled(columns, false);
  }

  letIn(row: number): void {
    this.emptyAt = Infinity;
    this.label(row, 0);
    let end = this.nextColumn();
    while (end >= 0 && at(this.distance, end) < this.emptyAt && this.isFull(end)) {
      this.isDone[end] = true;
      const far = at(this.distance, end);
      for (let on = at(this.firstRow, end); on >= 0; on = at(this.nextRow, on)) this.label(on, far);
      end = this.nextColumn();
    }
    const endsAt = end < 0 ? Infinity : at(this.distance, end);
    this.reprice(Math.min(endsAt, this.emptyAt));
    this.swapAlong(row, endsAt < this.emptyAt ? end : -1);
    this.clear();
  }

  /** Looks at what a row could have instead, at this cost so far. */
  private label(row: number, far: number): void {
    const { start, column } = this.table;
    const { value, atLeast } = this.filter;
    const { cost, distance, columnPrice } = this;
    const price = this.rowPrice[row] ?? 0;
    this.doneRows.push(row);
    this.doneAt.push(far);
    if (far + this.leftEmpty - price < this.emptyAt) {
      this.emptyAt = far + this.leftEmpty - price;
      this.emptyRow = row;
    }
    const to = start[row + 1] ?? 0;
    for (let edge = start[row] ?? 0; edge < to; edge++) {
      if ((value[edge] ?? 0) < atLeast) continue;
      const which = column[edge] ?? 0;
      const reached = far + (cost[edge] ?? 0) - price - (columnPrice[which] ?? 0);
      const before = distance[which] ?? 0;
      if (reached >= before) continue;
      if (before === Infinity) this.reached.push(which);
      distance[which] = reached;
      this.via[which] = edge;
      this.viaRow[which] = row;
    }
  }

  /** The nearest column not looked at yet, a free one before a full one. */
  private nextColumn(): number {
    let best = -1;
    let nearest = Infinity;
    let isFree = false;
    const { reached, isDone, distance } = this;
    for (let i = 0; i < reached.length; i++) {
      const which = reached[i] ?? 0;
      if (isDone[which] === true) continue;
      const far = distance[which] ?? 0;
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
    return (this.used[column] ?? 0) >= (this.table.copies[column] ?? 0);
  }

  private reprice(length: number): void {
    for (let i = 0; i < this.doneRows.length; i++) {
      const row = this.doneRows[i] ?? 0;
      this.rowPrice[row] = at(this.rowPrice, row) + length - (this.doneAt[i] ?? 0);
    }
    for (const which of this.reached) {
      if (this.isDone[which] !== true) continue;
      this.columnPrice[which] = at(this.columnPrice, which) - length + at(this.distance, which);
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
      const edge = at(this.via, column);
      const row = at(this.viaRow, column);
      const left = row === newRow ? -1 : this.release(row);
      this.edgeOf[row] = edge;
      this.nextRow[row] = at(this.firstRow, column);
      this.firstRow[column] = row;
      this.used[column] = at(this.used, column) + 1;
      if (left < 0) return;
      column = left;
    }
  }

  /** Takes a row off its column and gives the column. */
  private release(row: number): number {
    const column = at(this.table.column, at(this.edgeOf, row));
    const after = at(this.nextRow, row);
    if (at(this.firstRow, column) === row) this.firstRow[column] = after;
    else {
      let before = at(this.firstRow, column);
      while (at(this.nextRow, before) !== row) before = at(this.nextRow, before);
      this.nextRow[before] = after;
    }
    this.nextRow[row] = -1;
    this.edgeOf[row] = -1;
    this.used[column] = at(this.used, column) - 1;
    return column;
  }

  private clear(): void {
    for (const which of this.reached) {
      this.distance[which] = Infinity;
      this.isDone[which] = false;
    }
    this.reached.length = 0;
    this.doneRows.length = 0;
    this.doneAt.length = 0;
  }
}

/** Plain lists: short ones are made faster than typed ones, and a solution makes many. */
function filled<T>(length: number, value: T): T[] {
  return new Array<T>(length).fill(value);
}

/** Every place asked for exists: the tables are built together. */
function at(list: readonly number[], place: number): number {
  return list[place] ?? 0;
}
