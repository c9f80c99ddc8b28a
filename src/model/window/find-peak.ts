/** Finds the top of a function with a single peak. No units: the tolerance is in the unit of the argument. */

const GOLDEN = (Math.sqrt(5) - 1) / 2;

/** Finds the argument of the greatest value (golden section), the best of all that were tried; the ends count. */
export function findPeak(
  value: (at: number) => number,
  low: number,
  high: number,
  tolerance: number,
): number {
  let best = low;
  let bestValue = value(low);
  let from = low;
  let to = high;
  tried(high);
  let left = to - GOLDEN * (to - from);
  let right = from + GOLDEN * (to - from);
  let leftValue = tried(left);
  let rightValue = tried(right);
  while (to - from > tolerance && left < right) {
    if (leftValue > rightValue) {
      to = right;
      right = left;
      rightValue = leftValue;
      left = to - GOLDEN * (to - from);
      leftValue = tried(left);
    } else {
      from = left;
      left = right;
      leftValue = rightValue;
      right = from + GOLDEN * (to - from);
      rightValue = tried(right);
    }
  }
  return best;

  function tried(at: number): number {
    const found = value(at);
    if (found > bestValue) {
      best = at;
      bestValue = found;
    }
    return found;
  }
}
