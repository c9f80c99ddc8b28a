/**
 * From an offset, its window and their ± to a verdict. Offsets + high, - low; mm.
 *
 * Only the ends of the window (lowest, and where the bottom pin stops the plug) can leave a verdict undecided. The shop
 * rule and the turn angle from which it rubs only choose the words.
 *
 *        too low   |   low, turns      level      high, rubs   |  too high
 *   ---------------+----------------|----+----|----------------+-------------> offset
 *               lowest          -shop rule  +shop rule       highest
 */
import type { Lean, Verdict } from './evaluation.ts';

export type Judged = { readonly verdict: Verdict; readonly lean: Lean; readonly margin: number };

export type Distances = {
  readonly offset: number;
  /** Distance above the lowest end of the window, and below the highest, with their ±. */
  readonly toLowest: number;
  readonly toLowestUncertainty: number;
  readonly toHighest: number;
  readonly toHighestUncertainty: number;
  readonly shopRule: number;
};

/** mm. Ends closer than this to the split are the split: rounding must not decide. */
const ROUNDING_MM = 1e-9;

/** Judges one split at one line. */
export function judge(distances: Distances): Judged {
  const { offset, toLowest, toHighest, shopRule } = distances;
  const margin = Math.min(toLowest, toHighest);
  const low = certainty(toLowest, distances.toLowestUncertainty);
  const high = certainty(toHighest, distances.toHighestUncertainty);
  if (low === 'outside') return { verdict: 'too low', lean: null, margin };
  if (high === 'outside') return { verdict: 'too high', lean: null, margin };
  if (low === 'undecided' || high === 'undecided') {
    const lean = margin >= -ROUNDING_MM ? 'probably turns' : 'probably not';
    return { verdict: "can't say yet", lean, margin };
  }
  if (Math.abs(offset) <= shopRule + ROUNDING_MM) return { verdict: 'level', lean: null, margin };
  return { verdict: offset < 0 ? 'low, turns' : 'high, rubs', lean: null, margin };
}

function certainty(distance: number, uncertainty: number): 'inside' | 'outside' | 'undecided' {
  if (distance >= uncertainty - ROUNDING_MM) return 'inside';
  return distance < -uncertainty - ROUNDING_MM ? 'outside' : 'undecided';
}

/** Does a split with this verdict let the line turn? */
export function letsTurn(verdict: Verdict): boolean {
  return verdict === 'level' || verdict === 'low, turns' || verdict === 'high, rubs';
}

/** Does a split with this verdict surely hold the line? */
export function holds(verdict: Verdict): boolean {
  return verdict === 'too low' || verdict === 'too high' || verdict === 'never turns';
}
