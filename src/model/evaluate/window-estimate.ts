/**
 * The window with its doubt: how the ends move with the play, the chamber and the parts' diameters. Shapes of ends are
 * scenarios and do not count here. Only quantities that carry doubt are varied. mm.
 */
import { type Estimate, standardUncertainty, type Term } from '../estimate/estimate.ts';
import type { MeasuredChamber } from '../measured/measured-cylinder.ts';
import type { WindowInput } from '../window/window-input.ts';
import type { LinePlace, SplitPlace } from './split-place.ts';
import type { WindowOf } from './window-memo.ts';

export type WindowEstimate = {
  readonly lowest: Estimate;
  readonly noTouch: number;
  readonly highest: Estimate;
  readonly empty: boolean;
};

/** Estimates the window of a split. */
export function estimateWindow(
  input: WindowInput,
  from: { readonly line: LinePlace; readonly place: SplitPlace; readonly chamber: MeasuredChamber },
  windowOf: WindowOf,
): WindowEstimate {
  const window = windowOf(input);
  const lowest: Term[] = [];
  const highest: Term[] = [];
  for (const [estimate, vary] of varied(input, from)) {
    const step = standardUncertainty(estimate);
    if (step === 0) continue;
    const moved = windowOf(vary(step));
    const lowSlope = (moved.lowest - window.lowest) / step;
    const highSlope = (moved.highest - window.highest) / step;
    for (const { cause, weight } of estimate.terms) {
      if (lowSlope !== 0) lowest.push({ cause, weight: weight * lowSlope });
      if (highSlope !== 0) highest.push({ cause, weight: weight * highSlope });
    }
  }
  return {
    lowest: { value: window.lowest, terms: lowest },
    noTouch: window.noTouch,
    highest: { value: window.highest, terms: highest },
    empty: window.empty,
  };
}

/** The quantities that move the ends of the window, each with the input it makes when it is off by so much. */
function varied(
  input: WindowInput,
  {
    line,
    place,
    chamber,
  }: { readonly line: LinePlace; readonly place: SplitPlace; readonly chamber: MeasuredChamber },
): [Estimate, (by: number) => WindowInput][] {
  const { lower, upper, innerHole } = input;
  const hole = chamber.holes[line.index]?.radius;
  const list: [Estimate, (by: number) => WindowInput][] = [
    [line.measured.clearance, (by) => ({ ...input, clearance: input.clearance + by })],
    [line.measured.radius, (by) => ({ ...input, lineRadius: input.lineRadius + by })],
    [
      place.below.radius,
      (by) => ({ ...input, lower: { ...lower, radius: Math.max(0.02, lower.radius - by) } }),
    ],
  ];
  if (hole !== undefined) {
    list.push([hole, (by) => ({ ...input, innerHole: { ...innerHole, radius: innerHole.radius + by } })]);
  }
  if (place.above !== null) {
    list.push([
      place.above.radius,
      (by) => ({ ...input, upper: { ...upper, radius: Math.max(0.02, upper.radius - by) } }),
    ]);
  }
  return list;
}
