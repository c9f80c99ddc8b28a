/**
 * All keys that could be cut to a table of depths, and what each would turn: for every chamber and step of the table,
 * which lines are clear there. Counting (`count-keys.ts`) and listing (`list-keys.ts`) work on this alone.
 *
 * Lines are marked by powers of two, inside to outside: 1 the inner or only line, 2 the outer line. A key turns the lines
 * that are clear at its step in every chamber: the marks of all chambers, and-ed.
 */

export const INNER = 1;
export const OUTER = 2;

/** Marks of the lines that are clear; 0: none. */
export type LineMarks = number;

export type Column = {
  /** For each step of the table, the lines that are clear in this chamber. */
  readonly marks: readonly LineMarks[];
  /** The cut before lies next to this one, so that the largest step counts between them. */
  readonly isNextToBefore: boolean;
};

export type KeySystem = {
  /** Front to back. */
  readonly columns: readonly Column[];
  readonly stepCount: number;
  /** The most steps that neighbouring cuts may differ by; null: any. */
  readonly largestStep: number | null;
};

/** Which keys are counted or listed. */
export type KeyFilter = {
  /** The marks a key may end with: [1] the inner line alone, [1, 3] the inner line whatever the outer does. */
  readonly turns: readonly LineMarks[];
  /** For each column the steps that are asked for; null: any. Missing: any everywhere. */
  readonly steps?: readonly (readonly number[] | null)[];
};

/** May this step stand next to the one before? `before` is null at the first cut. */
export function mayFollow(
  { largestStep }: KeySystem,
  column: Column,
  before: number | null,
  step: number,
): boolean {
  if (largestStep === null || before === null || !column.isNextToBefore) return true;
  return Math.abs(step - before) <= largestStep;
}

/** Is this step asked for in this column? */
export function isWanted({ steps }: KeyFilter, column: number, step: number): boolean {
  return steps?.[column]?.includes(step) ?? true;
}

/** Marks at a step. */
export function marksAt(column: Column, step: number): LineMarks {
  return column.marks[step] ?? 0;
}

/** The lines a key with these steps turns. Columns left out are not looked at. */
export function marksOfKey({ columns }: KeySystem, steps: readonly number[]): LineMarks {
  return columns.reduce((marks, column, i) => marks & marksAt(column, steps[i] ?? -1), INNER | OUTER);
}
