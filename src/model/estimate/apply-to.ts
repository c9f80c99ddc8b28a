/**
 * Carries doubt through any smooth function by central differences over one standard uncertainty each way
 * (JCGM 100:2008, 5.1.3 note 2). At a corner the larger side counts.
 */
import { type Estimate, standardUncertainty, type Term } from './estimate.ts';

/** Applies a function of several estimated numbers, keeping the causes of doubt apart. */
export function applyTo(inputs: readonly Estimate[], of: (values: readonly number[]) => number): Estimate {
  const values = inputs.map((input) => input.value);
  const value = of(values);
  const weights = new Map<string, Term>();
  inputs.forEach((input, i) => {
    const step = standardUncertainty(input);
    if (step === 0) return;
    const slope = slopeAt(values, i, step, value, of);
    for (const { cause, weight } of input.terms) {
      const before = weights.get(cause.id)?.weight ?? 0;
      weights.set(cause.id, { cause, weight: before + slope * weight });
    }
  });
  return { value, terms: [...weights.values()].filter((term) => term.weight !== 0) };
}

function slopeAt(
  values: readonly number[],
  which: number,
  step: number,
  middle: number,
  of: (values: readonly number[]) => number,
): number {
  const at = (by: number) => of(values.map((value, i) => (i === which ? value + by : value)));
  const up = at(step) - middle;
  const down = middle - at(-step);
  const sameWay = up * down >= 0;
  return (sameWay ? (up + down) / 2 : Math.abs(up) > Math.abs(down) ? up : down) / step;
}
