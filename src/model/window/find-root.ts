/** Finds where a function changes sign. No units: the tolerance is in the unit of the argument. */

/** A bracket halves at least every other step, so that this many always reach the rounding of a double. */
const MAX_STEPS = 120;

/**
 * Finds a change of sign between two arguments (Chandrupatla's method: inverse quadratic steps where they are safe,
 * halving elsewhere). A jump through zero counts as a root. Without a change of sign it gives the end whose value is
 * nearer to zero.
 */
export function findRoot(
  value: (at: number) => number,
  low: number,
  high: number,
  tolerance: number,
): number {
  let newest = low;
  let opposite = high;
  let previous = high;
  let newestValue = value(low);
  let oppositeValue = value(high);
  let previousValue = oppositeValue;
  if (newestValue === 0) return low;
  if (oppositeValue === 0) return high;
  if (newestValue > 0 === oppositeValue > 0)
    return Math.abs(newestValue) < Math.abs(oppositeValue) ? low : high;
  let fraction = 0.5;
  for (let step = 0; step < MAX_STEPS; step++) {
    const at = newest + fraction * (opposite - newest);
    const atValue = value(at);
    if (atValue > 0 === newestValue > 0) {
      previous = newest;
      previousValue = newestValue;
    } else {
      previous = opposite;
      previousValue = oppositeValue;
      opposite = newest;
      oppositeValue = newestValue;
    }
    newest = at;
    newestValue = atValue;
    const width = Math.abs(opposite - newest);
    if (newestValue === 0 || width <= tolerance) break;
    fraction = nextFraction();
    const least = tolerance / 2 / width;
    fraction = Math.min(1 - least, Math.max(least, fraction));
  }
  return Math.abs(newestValue) <= Math.abs(oppositeValue) ? newest : opposite;

  /** Inverse quadratic step when the three points allow it (Chandrupatla 1997), else the middle. */
  function nextFraction(): number {
    const along = (newest - opposite) / (previous - opposite);
    const risen = (newestValue - oppositeValue) / (previousValue - oppositeValue);
    const isSafe = 1 - Math.sqrt(1 - along) < risen && risen < Math.sqrt(along);
    if (!isSafe || !Number.isFinite(newestValue + oppositeValue + previousValue)) return 0.5;
    const first =
      (newestValue / (oppositeValue - newestValue)) * (previousValue / (oppositeValue - previousValue));
    const second =
      ((previous - newest) / (opposite - newest)) *
      (newestValue / (previousValue - newestValue)) *
      (oppositeValue / (previousValue - oppositeValue));
    return first + second;
  }
}
