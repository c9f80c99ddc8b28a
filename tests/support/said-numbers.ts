/**
 * Numbers read back from what a page or a picture says, and held against an evaluation: the words are taken apart here, the
 * rounding is done here, nothing is asked of what wrote them. mm.
 */
import type { ChamberResult, Evaluation, SplitResult } from '../../src/model/evaluate/evaluation.ts';

export type SaidUnit = 'in' | 'mm';

const MM_PER: Readonly<Record<SaidUnit, number>> = { in: 25.4, mm: 1 };
/** To the half thousandth, or to 0.01 mm. */
const STEP: Readonly<Record<SaidUnit, number>> = { in: 0.0005, mm: 0.01 };
/** Values are kept in whole steps of 1e-7 mm, so that a tie may fall either way by this much. In the unit. */
const SLACK = 1e-6;

/** Tells whether a number is a length rounded to the last place that is said. */
export function isRounded(said: number, mm: number, unit: SaidUnit): boolean {
  return Math.abs(said - mm / MM_PER[unit]) <= STEP[unit] / 2 + SLACK;
}

/** Tells whether a number is the end of a range, rounded inwards to the last place that is said. */
export function isRoundedInward(said: number, mm: number, way: 'up' | 'down', unit: SaidUnit): boolean {
  const inside = (way === 'up' ? 1 : -1) * (said - mm / MM_PER[unit]);
  return inside >= -SLACK && inside < STEP[unit] + SLACK;
}

/** Ranges narrower than a step may hold none: they are not rounded inwards. */
export function isNarrow(from: number, to: number, unit: SaidUnit): boolean {
  return (to - from) / MM_PER[unit] < STEP[unit];
}

/** What is wrong with "high .0025", "low .0010", "level" for an offset; null when nothing is. */
export function offsetFault(words: string, { offset, verdict }: SplitResult, unit: SaidUnit): string | null {
  if (words === 'level') {
    const isNothing = isRounded(0, offset, unit);
    return verdict === 'level' || isNothing ? null : `says level for ${offset} mm`;
  }
  const said = /^(high|low) (\d*\.\d+)$/.exec(words);
  if (said === null) return `says "${words}"`;
  const signed = Number(said[2]) * (said[1] === 'high' ? 1 : -1);
  return isRounded(signed, offset, unit) ? null : `says ${words} for ${offset} mm`;
}

export type SaidSplit = {
  readonly chamber: ChamberResult;
  readonly line: string;
  readonly lineIndex: number;
  readonly split: SplitResult;
};

/** Every split that is decided on, or not yet, at a line. */
export function splitsOf({ chambers }: Evaluation): SaidSplit[] {
  return chambers.flatMap((chamber) =>
    chamber.verdicts.flatMap(({ line, split: at, verdict }, lineIndex) => {
      const split = at === null ? undefined : chamber.splits[at];
      return split === undefined || verdict === 'unknown' ? [] : [{ chamber, line, lineIndex, split }];
    }),
  );
}

/** The verdict as words: with its lean where it is open; of what is level, beside that word, that it turns. */
export function verdictOf({ verdict, lean }: SplitResult): string {
  if (verdict === 'level') return 'turns';
  return lean === null ? verdict : `${verdict}: ${lean}`;
}
