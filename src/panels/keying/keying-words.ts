/** Counts of keys in words and figures. */
import type { KeyOutcome } from '../../model/keying/key-outcomes.ts';
import { type KeysByTable, stepsOfKey } from '../../model/keying/operating-keys.ts';
import { marksOfKey } from '../../model/keying/key-system.ts';
import type { Look } from '../shared/look.ts';
import { lookAt } from '../shared/look.ts';

/** "1,000,000,000" */
export function grouped(count: bigint): string {
  return count.toString().replace(/\B(?=(?:\d{3})+$)/gu, ',');
}

/** "no key", "one key", "64 keys" */
export function keysWord(count: bigint): string {
  if (count === 0n) return 'no key';
  return count === 1n ? 'one key' : `${grouped(count)} keys`;
}

/** A key of the job as it stands in a table. */
export type PlacedKey = {
  readonly label: string;
  readonly steps: readonly number[];
  readonly isMeant: boolean;
};

/** The keys of the job that lie on the steps of a table. */
export function keysInTable(
  { job, selection }: Look,
  byTable: KeysByTable,
  outcomes: readonly KeyOutcome[],
): PlacedKey[] {
  return outcomes.flatMap(({ key, label, meant }): PlacedKey[] => {
    const { evaluation } = lookAt(job, { ...selection, key });
    const heights = byTable.chambers.map(
      ({ chamber }) => evaluation.chambers.find((each) => each.chamber === chamber)?.contactHeight ?? null,
    );
    const steps = stepsOfKey(byTable, heights);
    return steps === null ? [] : [{ label, steps, isMeant: meant !== null && meant !== 'nothing' }];
  });
}

/** How many of the keys that operate are keys of the job that are meant to. */
export function meantCount({ system }: KeysByTable, keys: readonly PlacedKey[]): bigint {
  const different = new Set(
    keys
      .filter(({ isMeant, steps }) => isMeant && marksOfKey(system, steps) > 0)
      .map(({ steps }) => steps.join()),
  );
  return BigInt(different.size);
}
