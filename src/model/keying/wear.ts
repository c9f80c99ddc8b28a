/**
 * How many more keys operate a cylinder that is worn, or whose plug was filed: every window opened by an amount, and the keys
 * counted again. A lower crest moves the lowest end down by all of it; a wider bore moves the highest end up. mm.
 */
import { AS_MEASURED, type WindowShift } from './key-heights.ts';
import { type DepthTable, type Evaluated, keysThatTurn, operatingKeys } from './operating-keys.ts';

export type Wear = Pick<WindowShift, 'lowered' | 'raised'>;

/** Counts the keys of a table that turn anything now, and with the wear; null while something is not measured. */
export function keysWithWear(
  evaluated: Evaluated,
  table: DepthTable,
  wear: Wear,
): { readonly now: bigint; readonly worn: bigint } | null {
  const count = (shift: WindowShift): bigint | null => {
    const result = operatingKeys(evaluated, table, shift);
    return result.type === 'known' && result.keys.byTable !== null ? keysThatTurn(result.keys.byTable) : null;
  };
  const now = count(AS_MEASURED);
  const worn = count({ ...AS_MEASURED, ...wear });
  return now === null || worn === null ? null : { now, worn };
}
