/**
 * What a finger felt and what the bench test said, used as a go/no-go gauge: it bounds the height the key calls for, and
 * so narrows an estimate. The estimate is taken as normal and cut off at the bounds; its causes shrink together, so what
 * is common to other chambers stays common. mm.
 */
import { type Estimate, standardUncertainty } from '../estimate/estimate.ts';

export type Bounds = { readonly least: number; readonly most: number };

export const UNBOUNDED: Bounds = { least: -Infinity, most: Infinity };

/** Both bounds together. */
export function within(one: Bounds, other: Bounds): Bounds {
  return { least: Math.max(one.least, other.least), most: Math.min(one.most, other.most) };
}

/** Bounds an estimate did not expect: farther out than this many standard uncertainties. */
const SURPRISE = 4;

export type Tightened = {
  readonly estimate: Estimate /** The bounds contradict the readings. */;
  readonly contradicts: boolean;
};

/** Narrows an estimate to bounds. Bounds that leave nothing are not used, and reported as contradicting. */
export function tighten(estimate: Estimate, bounds: Bounds): Tightened {
  const spread = standardUncertainty(estimate);
  const { least, most } = bounds;
  if (least === -Infinity && most === Infinity) return { estimate, contradicts: false };
  if (least > most) return { estimate, contradicts: true };
  if (spread === 0) return { estimate, contradicts: estimate.value < least || estimate.value > most };
  const from = (least - estimate.value) / spread;
  const to = (most - estimate.value) / spread;
  if (from > SURPRISE || to < -SURPRISE) return { estimate, contradicts: true };
  const share = cumulative(to) - cumulative(from);
  const low = density(from);
  const high = density(to);
  const shift = (low - high) / share;
  const edge = (edgeTerm(from, low) - edgeTerm(to, high)) / share;
  const factor = Math.sqrt(Math.max(1e-6, 1 + edge - shift * shift));
  return {
    estimate: {
      value: estimate.value + shift * spread,
      terms: estimate.terms.map(({ cause, weight }) => ({ cause, weight: weight * factor })),
    },
    contradicts: false,
  };
}

function edgeTerm(at: number, height: number): number {
  return Number.isFinite(at) ? at * height : 0;
}

function density(at: number): number {
  return Math.exp(-(at ** 2) / 2) / Math.sqrt(2 * Math.PI);
}

/** Standard normal cumulative (Abramowitz and Stegun 1964, 26.2.17: absolute error below 7.5e-8). */
function cumulative(at: number): number {
  if (at === Infinity) return 1;
  if (at === -Infinity) return 0;
  const t = 1 / (1 + 0.2316419 * Math.abs(at));
  const tail =
    density(at) *
    t *
    (0.31938153 + t * (-0.356563782 + t * (1.781477937 + t * (-1.821255978 + t * 1.330274429))));
  return at >= 0 ? 1 - tail : tail;
}
