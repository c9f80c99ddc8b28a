/** Whether each line turns: every chamber must have a split in the line's window. A verdict per line, never mixed. */
import type { Id } from '../schema/leaf.ts';
import type { ChamberResult, LineResult } from './evaluation.ts';
import { holds, letsTurn } from './judge.ts';

/** Sums up the chambers for one line. */
export function lineResult(line: Id, chambers: readonly ChamberResult[]): LineResult {
  const at = chambers.map((chamber) => {
    const found = chamber.verdicts.find((each) => each.line === line);
    const split = found?.split == null ? undefined : chamber.splits[found.split];
    return {
      chamber: chamber.chamber,
      verdict: found?.verdict ?? ('unknown' as const),
      lean: split?.lean ?? null,
    };
  });
  const holding = at.filter((each) => holds(each.verdict));
  if (holding.length > 0) {
    return { line, verdict: 'will not turn', lean: null, blockedBy: holding.map((each) => each.chamber) };
  }
  const unknown = at.filter((each) => each.verdict === 'unknown');
  if (unknown.length > 0 || at.length === 0) {
    return { line, verdict: 'unknown', lean: null, blockedBy: unknown.map((each) => each.chamber) };
  }
  const open = at.filter((each) => !letsTurn(each.verdict));
  if (open.length === 0) return { line, verdict: 'turns', lean: null, blockedBy: [] };
  const lean = open.every((each) => each.lean === 'probably turns') ? 'probably turns' : 'probably not';
  return { line, verdict: "can't say yet", lean, blockedBy: open.map((each) => each.chamber) };
}

/**
 * The chambers that an answer names as what is in the way at a line: those that surely or probably hold it; where none does,
 * all that leave it open.
 */
export function namedChambers({ line, blockedBy }: LineResult, chambers: readonly ChamberResult[]): Id[] {
  const against = chambers.filter(({ chamber, verdicts, splits }) => {
    const found = verdicts.find((each) => each.line === line);
    const split = found?.split == null ? undefined : splits[found.split];
    return blockedBy.includes(chamber) && split?.lean === 'probably not';
  });
  return against.length > 0 ? against.map(({ chamber }) => chamber) : [...blockedBy];
}
