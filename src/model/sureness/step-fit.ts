/**
 * Worn keys: do the root depths lie on even steps? Fits depth = deepest + step × number with whole numbers, and tells how far
 * each cut is from its step. A hypothesis, never a measurement: any depths lie on steps that are fine enough, so the fit is
 * judged against what depths at random would do. Wear makes cuts deeper, so a good fit off to one side is worn. mm.
 */

export type StepFit = {
  /** The depth of number 0, and the distance between numbers. */
  readonly deepest: number;
  readonly step: number;
  readonly cuts: readonly { readonly number: number; readonly residual: number }[];
  /** Root mean square of the residuals. */
  readonly rms: number;
  /** How much tighter than depths at random would lie: 1 no tighter, 0 exactly on the steps. */
  readonly againstChance: number;
};

/** Fewer cuts fit any steps. */
const ENOUGH_CUTS = 4;
/** As much tighter than chance as a fit has to be to be worth telling. */
export const WORTH_TELLING = 0.35;

/**
 * Fits one step size: the zero of the scale that leaves the smallest squares. Null with fewer than four cuts.
 *
 * @param depths root depths
 * @param step distance between depths, more than 0
 */
export function fitSteps(depths: readonly number[], step: number): StepFit | null {
  if (depths.length < ENOUGH_CUTS || !(step > 0) || depths.some((each) => !Number.isFinite(each)))
    return null;
  const least = Math.min(...depths);
  let best: StepFit | null = null;
  // Between two zeros at which a cut changes its number the squares are smallest at the mean: one try for each stretch.
  const edges = depths.map((depth) => mod(depth - least + step / 2, step)).sort((a, b) => a - b);
  for (const edge of edges) {
    const numbers = depths.map((depth) => Math.round((depth - least - edge) / step - 1e-9));
    const zero = depths.reduce((sum, depth, i) => sum + depth - step * (numbers[i] ?? 0), 0) / depths.length;
    const residuals = depths.map((depth, i) => depth - zero - step * (numbers[i] ?? 0));
    const rms = Math.sqrt(residuals.reduce((sum, each) => sum + each ** 2, 0) / depths.length);
    if (best !== null && rms >= best.rms) continue;
    const lowest = Math.min(...numbers);
    best = {
      deepest: zero + step * lowest,
      step,
      cuts: numbers.map((number, i) => ({ number: number - lowest, residual: residuals[i] ?? 0 })),
      rms,
      againstChance: rms / byChance(step, depths.length),
    };
  }
  return best;
}

/** Tries step sizes and gives the fit that is tightest against chance; null when none is worth telling. */
export function findSteps(depths: readonly number[], steps: readonly number[]): StepFit | null {
  const fits = steps.flatMap((step) => fitSteps(depths, step) ?? []);
  const best = fits.sort((one, other) => one.againstChance - other.againstChance)[0];
  return best !== undefined && best.againstChance <= WORTH_TELLING ? best : null;
}

/** Spread of depths anywhere between steps (half-width step / 2), one degree of freedom spent on the zero. */
function byChance(step: number, count: number): number {
  return (step / Math.sqrt(12)) * Math.sqrt((count - 1) / count);
}

function mod(value: number, by: number): number {
  return ((value % by) + by) % by;
}
