/** How a split is said in the table, under a close-up and on a flag: offset in words, verdict in words, and a symbol. */
import type { ChamberResult, Lean, SplitResult, Verdict } from '../../model/evaluate/evaluation.ts';
import type { Id } from '../../model/schema/leaf.ts';
import { formatLength } from '../../model/units/format-length.ts';
import type { JobUnit } from '../../model/units/length-unit.ts';

/** Says the same as the words, for the eye. */
export type VerdictSymbol = 'turns' | 'rubs' | 'unsure' | 'stops' | 'none';

export type VerdictWords = {
  /** "level", "low .0010", "high .0025". */
  readonly offset: string;
  /** "level", "low, turns", "can't say yet: probably turns". */
  readonly verdict: string;
  readonly symbol: VerdictSymbol;
};

const NOT_YET: VerdictWords = { offset: '–', verdict: 'not measured yet', symbol: 'none' };

/** Words for the split of a chamber that matters at a line; by default its first line. */
export function verdictWords(chamber: ChamberResult, unit: JobUnit, line?: Id): VerdictWords {
  const found = splitThatMatters(chamber, line);
  if (found === null) return NOT_YET;
  return {
    offset: offsetWords(found.split.offset, found.verdict, unit),
    verdict: sayVerdict(found.verdict, found.split.lean),
    symbol: symbolOf(found.verdict),
  };
}

/** The split of a chamber that matters at a line, with its verdict. */
export function splitThatMatters(
  chamber: ChamberResult,
  line?: Id,
): { readonly split: SplitResult; readonly verdict: Verdict } | null {
  const found = chamber.verdicts.find((each) => line === undefined || each.line === line);
  const split = found?.split == null ? undefined : chamber.splits[found.split];
  return found === undefined || split === undefined ? null : { split, verdict: found.verdict };
}

/** "level" within the shop rule, else which way and by how much, to the half thousandth or 0.01 mm. */
export function offsetWords(offset: number, verdict: Verdict, unit: JobUnit): string {
  const amount = formatLength(Math.abs(offset), { unit, form: 'bench', keepsPlaces: true });
  if (verdict === 'level' || Number(amount) === 0) return 'level';
  return `${offset > 0 ? 'high' : 'low'} ${amount}`;
}

/** The verdict with its lean. */
export function sayVerdict(verdict: Verdict, lean: Lean): string {
  if (verdict === 'unknown') return 'not measured yet';
  return lean === null ? verdict : `${verdict}: ${lean}`;
}

/** High is never shown as good. */
export function symbolOf(verdict: Verdict): VerdictSymbol {
  switch (verdict) {
    case 'level':
    case 'low, turns':
      return 'turns';
    case 'high, rubs':
      return 'rubs';
    case "can't say yet":
      return 'unsure';
    case 'too low':
    case 'too high':
    case 'never turns':
      return 'stops';
    case 'unknown':
      return 'none';
  }
}
