/**
 * What a cylinder with its plan lets turn, whatever key comes: the contact heights that clear each line, how many keys of a
 * depth table turn it, and which of those nobody meant. Heights are of the picked key's blank as it sits in this plug; counted
 * at the sizes as measured unless the ± is asked for. mm.
 */
import type { Assembly } from '../assembly/assembly.ts';
import type { ChamberResult, Evaluation } from '../evaluate/evaluation.ts';
import type { Bench } from '../measured/selection.ts';
import type { Id } from '../schema/leaf.ts';
import { countKeys, type KeyCounts, productOfSteps } from './count-keys.ts';
import { AS_MEASURED, clears, type HeightRange, heightsThatClear, type WindowShift } from './key-heights.ts';
import { type Column, INNER, type KeySystem, OUTER } from './key-system.ts';
import { stepHeights } from './step-heights.ts';

export type DepthTable = {
  /** Root depth of each step, in the table's order. mm. */
  readonly rootDepths: readonly number[];
  /** The most steps that neighbouring cuts may differ by; null: any. */
  readonly largestStep: number | null;
};

/** A job with what is looked at, laid out and evaluated. */
export type Evaluated = {
  readonly bench: Bench;
  readonly assembly: Assembly;
  readonly evaluation: Evaluation;
};

export type ChamberHeights = {
  readonly chamber: Id;
  readonly number: number;
  /** One list for each line, inside to outside. */
  readonly lines: readonly (readonly HeightRange[])[];
};

export type KeysByTable = {
  readonly system: KeySystem;
  /** The chamber of each column. */
  readonly chambers: readonly ChamberHeights[];
  /** For each column the contact heights of the steps; null where the key does not reach. */
  readonly heights: readonly (readonly (number | null)[])[];
  readonly counts: KeyCounts;
};

export type OperatingKeys = {
  readonly chambers: readonly ChamberHeights[];
  /** For each line, how many sets of heights apart from each other turn it: the product over the chambers. */
  readonly setsOfHeights: readonly { readonly line: Id; readonly count: bigint }[];
  /** Null without a table. */
  readonly byTable: KeysByTable | null;
};

export type OperatingKeysResult =
  | { readonly type: 'known'; readonly keys: OperatingKeys }
  /** What is not entered yet, one sentence. */
  | { readonly type: 'missing'; readonly message: string };

/** Works out what operates a cylinder. */
export function operatingKeys(
  { bench, assembly, evaluation }: Evaluated,
  table: DepthTable | null,
  shift: WindowShift = AS_MEASURED,
): OperatingKeysResult {
  const { key } = assembly;
  if (key === null)
    return missing('Pair a key with this cylinder first: the heights are those of its blank.');
  if (evaluation.chambers.length === 0) return missing('This cylinder has no open chamber.');
  const lines = evaluation.lines.map(({ line }) => line);
  const chambers: ChamberHeights[] = [];
  for (const result of evaluation.chambers) {
    const heights = lines.map((line) => heightsThatClear(result, line, key.shape.bladeHeight, shift));
    const known = heights.flatMap((each) => (each === null ? [] : [each]));
    if (known.length < lines.length) return missing(whatIsMissing(result));
    chambers.push({ chamber: result.chamber, number: result.number, lines: known });
  }
  const setsOfHeights = lines.map((line, i) => ({
    line,
    count: chambers.reduce((product, each) => product * BigInt(each.lines[i]?.length ?? 0), 1n),
  }));
  const byTable = table === null ? null : keysByTable({ bench, assembly, evaluation }, chambers, table);
  return { type: 'known', keys: { chambers, setsOfHeights, byTable } };
}

function missing(message: string): OperatingKeysResult {
  return { type: 'missing', message };
}

function whatIsMissing({ missing: said, number }: ChamberResult): string {
  return said[0] ?? `Measure the cut under chamber ${number} first.`;
}

function keysByTable(
  { bench, assembly }: Evaluated,
  chambers: readonly ChamberHeights[],
  { rootDepths, largestStep }: DepthTable,
): KeysByTable | null {
  const { key } = assembly;
  if (key === null || rootDepths.length === 0) return null;
  const heights: (readonly (number | null)[])[] = [];
  let before: number | null = null;
  const columns = chambers.flatMap((each): Column[] => {
    const at = assembly.chambers.findIndex(({ id }) => id === each.chamber);
    const chamber = assembly.chambers[at];
    if (chamber === undefined) return [];
    const here = stepHeights(bench, assembly, key, chamber, rootDepths);
    heights.push(here);
    const isNextToBefore = before !== null && at - before === 1;
    before = at;
    return [{ marks: here.map((height) => marksOf(each.lines, height)), isNextToBefore }];
  });
  const system: KeySystem = { columns, stepCount: rootDepths.length, largestStep };
  return { system, chambers, heights, counts: countKeys(system) };
}

function marksOf(lines: readonly (readonly HeightRange[])[], height: number | null): number {
  if (height === null) return 0;
  const isClear = (line: number) => clears(lines[line] ?? [], height);
  return (isClear(0) ? INNER : 0) + (isClear(1) ? OUTER : 0);
}

/** How many keys of the table turn a line, whatever they do at the other one: with the limit, and in closed form without. */
export function keysAtLine(
  { system, counts }: KeysByTable,
  lineIndex: number,
): { readonly count: bigint; readonly withoutLimit: bigint } {
  const own = lineIndex === 0 ? counts.plugAlone : counts.together;
  return {
    count: own + counts.either,
    withoutLimit: productOfSteps(system, lineIndex === 0 ? INNER : OUTER),
  };
}

/** All keys of the table that turn anything. */
export function keysThatTurn({ counts }: KeysByTable): bigint {
  return counts.plugAlone + counts.together + counts.either;
}

/**
 * The steps of a key in the table: for each column the nearest one.
 *
 * @param contactHeights of the key in each column, mm
 * @returns null when a cut lies more than half a step off the table
 */
export function stepsOfKey(
  { heights }: KeysByTable,
  contactHeights: readonly (number | null)[],
): readonly number[] | null {
  const steps = heights.map((column, i) => nearestStep(column, contactHeights[i] ?? null));
  const known = steps.flatMap((step) => (step === null ? [] : [step]));
  return known.length === heights.length ? known : null;
}

function nearestStep(column: readonly (number | null)[], height: number | null): number | null {
  if (height === null) return null;
  let best: number | null = null;
  let nearest = Infinity;
  for (const [step, at] of column.entries()) {
    const apart = at === null ? Infinity : Math.abs(at - height);
    if (apart < nearest) {
      nearest = apart;
      best = step;
    }
  }
  return nearest <= halfStep(column) ? best : null;
}

/** mm. Half of the least distance between two steps; for a table of one step, what counts as the same depth (.005 in). */
function halfStep(column: readonly (number | null)[]): number {
  const sorted = column.flatMap((at) => (at === null ? [] : [at])).sort((one, other) => one - other);
  const gaps = sorted
    .slice(1)
    .map((at, i) => at - (sorted[i] ?? 0))
    .filter((gap) => gap > 1e-6);
  return gaps.length === 0 ? 0.127 : Math.min(...gaps) / 2;
}
