/** The verdicts' symbols, drawn in a square of 14 units. */
import type { VerdictSymbol } from '../../drawing/split-words.ts';

export const VERDICT_PATHS: Readonly<Record<Exclude<VerdictSymbol, 'none'>, string>> = {
  turns: 'M2 7.5 5.5 11 12 3',
  rubs: 'M1.5 8.5c1.5-3 3-3 4.5-.5s3.5 3 6-1',
  unsure: 'M4 5a3 2.7 0 1 1 4.3 2.4C7.3 8 7 8.4 7 9.3M7 12v.3',
  stops: 'M3 3l8 8M11 3l-8 8',
};
