/**
 * An offset judged in its window with the doubt of both, and which heights would surely do. Offsets + high, - low; mm.
 */
import { combine, type Estimate, expandedUncertainty } from '../estimate/estimate.ts';
import { lengthOf } from '../measured/part-ends.ts';
import type { Bench } from '../measured/selection.ts';
import { judge } from './judge.ts';
import type { WindowEstimate } from './window-estimate.ts';

export type Judgement = {
  readonly toLowest: Estimate;
  readonly toHighest: Estimate;
  readonly toLowestUncertainty: number;
  readonly toHighestUncertainty: number;
  readonly judgement: ReturnType<typeof judge>;
};

/** Judges an offset in a window. */
export function judged(offset: Estimate, window: WindowEstimate, bench: Bench): Judgement {
  const toLowest = combine([
    [1, offset],
    [-1, window.lowest],
  ]);
  const toHighest = combine([
    [1, window.highest],
    [-1, offset],
  ]);
  const toLowestUncertainty = expandedUncertainty(toLowest);
  const toHighestUncertainty = expandedUncertainty(toHighest);
  const judgement = window.empty
    ? ({ verdict: 'never turns', lean: null, margin: Math.min(toLowest.value, toHighest.value) } as const)
    : judge({
        offset: offset.value,
        toLowest: toLowest.value,
        toLowestUncertainty,
        toHighest: toHighest.value,
        toHighestUncertainty,
        shopRule: lengthOf(bench.job.settings.shopRule, 0.0254),
      });
  return { toLowest, toHighest, toLowestUncertainty, toHighestUncertainty, judgement };
}

export type UsableRange = {
  readonly from: number;
  readonly to: number;
  readonly best: number;
  readonly noneCertain: boolean;
};

/**
 * The heights of this split that surely turn and are never above level; the middle when none is sure.
 *
 * @param level the height that would stand at the line's radius
 */
export function usable(
  level: number,
  window: WindowEstimate,
  { toLowestUncertainty, toHighestUncertainty }: Judgement,
): UsableRange {
  const from = level + window.lowest.value + toLowestUncertainty;
  const to = level + Math.min(0, window.highest.value - toHighestUncertainty);
  const best = level + Math.min(0, window.highest.value);
  if (from <= to) return { from, to, best, noneCertain: false };
  const middle = level + Math.min(0, (window.lowest.value + window.highest.value) / 2);
  return { from: middle, to: middle, best, noneCertain: true };
}
