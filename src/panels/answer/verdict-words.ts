/** How a split is said in the table and under a close-up: offset in words, verdict in words, and a symbol. */
import { offsetWords, splitAt, symbolOf, type VerdictSymbol } from '../../drawing/split-words.ts';
import type { ChamberResult, Lean, SplitResult, Verdict } from '../../model/evaluate/evaluation.ts';
import type { Id } from '../../model/schema/leaf.ts';
import type { JobUnit } from '../../model/units/length-unit.ts';

export type { VerdictSymbol };

export type VerdictWords = {
  /** "level", "low .0010", "high .0025". */
  readonly offset: string;
  /** "turns" (of what is level), "low, turns", "can't say yet: probably turns". */
  readonly verdict: string;
  readonly symbol: VerdictSymbol;
};

export type AnswerTone = 'turns' | 'stops' | 'unsure' | 'waiting';

/** The symbol before the answer. */
export const ANSWER_SYMBOLS: Readonly<Record<AnswerTone, VerdictSymbol>> = {
  turns: 'turns',
  stops: 'stops',
  unsure: 'unsure',
  waiting: 'none',
};

const NOT_YET: VerdictWords = { offset: '–', verdict: 'not measured yet', symbol: 'none' };

/** Words for the split of a chamber that matters at a line; by default its first line. */
export function verdictWords(chamber: ChamberResult, unit: JobUnit, line?: Id): VerdictWords {
  const found = splitThatMatters(chamber, line);
  if (found === null || found.verdict === 'unknown') return NOT_YET;
  const offset = offsetWords(found.split.offset, found.verdict, unit);
  const verdict = sayVerdict(found.verdict, found.split.lean);
  return {
    offset,
    verdict: verdict === offset ? 'turns' : verdict,
    symbol: symbolOf(found.verdict),
  };
}

/** The split of a chamber that matters at a line, by default its first, with its verdict. */
export function splitThatMatters(
  chamber: ChamberResult,
  line = chamber.verdicts[0]?.line,
): { readonly split: SplitResult; readonly verdict: Verdict } | null {
  return line === undefined ? null : splitAt(chamber, line);
}

/** The verdict with its lean. */
export function sayVerdict(verdict: Verdict, lean: Lean): string {
  if (verdict === 'unknown') return 'not measured yet';
  return lean === null ? verdict : `${verdict}: ${lean}`;
}
