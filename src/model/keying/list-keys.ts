/**
 * The keys of a system one by one, in the order of their steps, without ever holding the whole list: any place of it is
 * found directly, so a list of a thousand million keys can be opened in its middle.
 */
import { assert, known } from '../assert.ts';
import { waysToFinish } from './count-keys.ts';
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

export type ListedKey = {
  /** Step of the table in each column, front to back. */
  readonly steps: readonly number[];
  readonly turns: LineMarks;
};

export type KeyList = {
  readonly count: bigint;
  /** The key at a place from 0 on; the place must be below `count`. */
  readonly at: (place: bigint) => ListedKey;
  /** From a place to the end, each worked out when it is asked for. */
  readonly from: (place?: bigint) => Generator<ListedKey, void, undefined>;
};

/** Makes the list of the keys that meet a filter. */
export function listKeys(system: KeySystem, filter: KeyFilter): KeyList {
  const ways = waysToFinish(system, filter);
  const at = (place: bigint): ListedKey => {
    assert(place >= 0n && place < ways.total, `place ${place} in a list of ${ways.total}`);
    let left = place;
    let open: LineMarks = INNER | OUTER;
    const steps: number[] = [];
    for (let i = 0; i < system.columns.length; i++) {
      const step = stepAt(i, steps[i - 1] ?? null, open, left);
      left -= step.skipped;
      open = step.open;
      steps.push(step.step);
    }
    return { steps, turns: open };
  };
  const stepAt = (i: number, before: number | null, open: LineMarks, place: bigint) => {
    const column = known(system.columns[i], `column ${i}`);
    let skipped = 0n;
    for (let step = 0; step < system.stepCount; step++) {
      if (!isWanted(filter, i, step) || !mayFollow(system, column, before, step)) continue;
      const stillOpen = open & marksAt(column, step);
      const here = ways.from(i + 1, step, stillOpen);
      if (place < skipped + here) return { step, skipped, open: stillOpen };
      skipped += here;
    }
    throw new Error(`no step in column ${i} for place ${place}`);
  };
  function* from(place = 0n): Generator<ListedKey, void, undefined> {
    for (let i = place; i < ways.total; i++) yield at(i);
  }
  return { count: ways.total, at, from };
}
