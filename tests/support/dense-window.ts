/**
 * The window by brute force, to hold the engine against: points are sampled and the neighbourhood of the best one is
 * sampled again, ever finer. No roots, no slopes in closed form, no code of `src/model/window`; only its input type.
 *
 * Frame and units as there: the line's axis is the origin, y up, x across, z along; mm, radians; the top turns to -x.
 */
import { endDrop } from '../../src/model/end-shape.ts';
import type { WindowInput } from '../../src/model/window/window-input.ts';

/** Samples a function between two bounds and again around the best sample, until the samples lie this close. */
export function densest(
  value: (at: number) => number,
  low: number,
  high: number,
  { first, again, until }: { first: number; again: number; until: number },
): { at: number; value: number } {
  let best = { at: low, value: -Infinity };
  let from = low;
  let to = high;
  let count = first;
  for (;;) {
    const step = (to - from) / count;
    for (let i = 0; i <= count; i++) {
      const at = from + i * step;
      const found = value(at);
      if (found > best.value) best = { at, value: found };
    }
    if (step <= until || best.value === -Infinity) return best;
    from = Math.max(low, best.at - step);
    to = Math.min(high, best.at + step);
    count = again;
  }
}

/** Height the mouth of the turned body asks of the upper part; -Infinity while nothing of it is under the part. */
export function denseRide(input: WindowInput, turn: number, isRough = false): number {
  const { upper, innerHole } = input;
  const mouth = innerHole.mouth;
  const crest = input.lineRadius - input.crestDrop;
  const size = mouth.kind === 'sharp' ? 0 : mouth.size;
  const axis = -upper.sideways;
  const cos = Math.cos(turn);
  const sin = Math.sin(turn);
  const along = (inward: number) => {
    const plan = innerHole.radius + inward;
    const round = mouth.kind === 'deburred along' ? crest - size + inward : crest;
    const ceiling = mouth.kind === 'countersunk' ? crest - size + inward : Infinity;
    const carried = (around: number): number => {
      const across = plan * Math.sin(around);
      const z = plan * Math.cos(around);
      const up = Math.min(ceiling, Math.sqrt(round ** 2 - across ** 2));
      const x = across * cos - up * sin;
      const y = across * sin + up * cos;
      const distance = Math.sqrt((x - axis) ** 2 + z ** 2);
      return distance > upper.radius ? -Infinity : y - endDrop(upper.bottom, upper.radius, distance);
    };
    return densest(
      carried,
      0,
      Math.PI / 2,
      isRough ? { first: 120, again: 10, until: 1e-7 } : { first: 120, again: 10, until: 1e-12 },
    ).value;
  };
  const ofMouth =
    size === 0
      ? along(0)
      : densest(
          along,
          0,
          size,
          isRough
            ? { first: 12, again: 6, until: size * 1e-2 }
            : { first: 12, again: 8, until: size * 1e-10 },
        ).value;
  return Math.max(ofMouth, onCrest());

  /** The whole surface beyond the mouth, at z = 0 and where the end's face is level. */
  function onCrest(): number {
    const reach =
      mouth.kind === 'countersunk' ? Math.max(innerHole.radius, widestCone()) : innerHole.radius + size;
    const edge = crest * Math.sin(Math.asin(reach / crest) - turn);
    if (edge > 0) return -Infinity;
    const standing = (x: number) =>
      Math.abs(x - axis) > upper.radius
        ? -Infinity
        : Math.sqrt(crest ** 2 - x ** 2) - endDrop(upper.bottom, upper.radius, Math.abs(x - axis));
    return densest(standing, Math.max(edge, axis), 0, { first: 50, again: 10, until: 1e-9 }).value;
  }
  function widestCone(): number {
    const gap = (at: number) =>
      -Math.abs(Math.sqrt(crest ** 2 - at ** 2) - (crest - size - innerHole.radius + at));
    return densest(gap, 0, innerHole.radius + size, { first: 200, again: 10, until: 1e-11 }).at;
  }
}

/** Height at which the lower part, its highest point at `top` before the turn, holds the upper part. */
export function denseHeld(input: WindowInput, top: number, turn: number): number {
  const { lower, upper } = input;
  const cos = Math.cos(turn);
  const sin = Math.sin(turn);
  const held = [-1, 1].map((side) => {
    const aside = side * lower.sideways;
    const carried = (fromOwnAxis: number): number => {
      const across = aside + fromOwnAxis;
      const up = top - endDrop(lower.top, lower.radius, Math.abs(fromOwnAxis));
      const distance = Math.abs(across * cos - up * sin + upper.sideways);
      return distance > upper.radius
        ? -Infinity
        : across * sin + up * cos - endDrop(upper.bottom, upper.radius, distance);
    };
    return densest(carried, -lower.radius, lower.radius, { first: 120, again: 10, until: 1e-11 }).value;
  });
  return Math.min(...held);
}

/**
 * The lowest offset that turns: scans the whole ride for its last too steep step, narrows it down, then looks for the
 * lower part whose own top has reached that height at that angle.
 */
export function denseLowest(input: WindowInput): {
  offset: number;
  turn: number;
  height: number;
  steepRuns: number;
} {
  const steepest = Math.tan(input.steepestRamp) * input.lineRadius;
  const size = input.innerHole.mouth.kind === 'sharp' ? 0 : input.innerHole.mouth.size;
  const end = Math.asin((input.innerHole.radius + size) / (input.lineRadius - input.crestDrop)) + 0.02;
  const isRough = size > 0;
  const isSteep = (from: number, to: number, rough: boolean): boolean => {
    const high = denseRide(input, to, rough);
    const low = denseRide(input, from, rough);
    return high > -Infinity && (low === -Infinity || high - low > steepest * (to - from));
  };
  const scan = isRough ? 60 : 240;
  const doubt = isRough ? 0.02 * input.lineRadius : 0; // of a slope between two rough heights
  let last = 0;
  let gentle = scan;
  let steepRuns = 0;
  let before = denseRide(input, 0, isRough);
  for (let i = 0; i < scan; i++) {
    const after = denseRide(input, (end * (i + 1)) / scan, isRough);
    const slope = after === -Infinity ? 0 : ((after - before) * scan) / end;
    if (slope > steepest + doubt + 1e-9) {
      if (gentle <= i) steepRuns++;
      last = i;
      gentle = scan;
    } else if (slope < steepest - doubt && gentle === scan && after > -Infinity) gentle = i;
    before = after;
  }
  // the last steep moment may be anywhere between the last surely steep and the next surely gentle step
  let low = (end * last) / scan;
  let high = (end * Math.min(scan, gentle + 1)) / scan;
  const step = 2e-6 / input.lineRadius;
  while (high - low > 1e-8 / input.lineRadius) {
    const middle = (low + high) / 2;
    if (isSteep(middle, middle + step, false) || denseRide(input, middle, false) === -Infinity) low = middle;
    else high = middle;
  }
  const turn = high + step;
  const height = denseRide(input, turn);
  let down = height - 1.5;
  let up = height + 1.5;
  while (up - down > 1e-9) {
    const middle = (up + down) / 2;
    if (denseHeld(input, middle, turn) < height) down = middle;
    else up = middle;
  }
  return { offset: up - input.lineRadius, turn, height, steepRuns: steepRuns + 1 };
}

/** How steep the ride is over a stretch of turn that starts here, mm per mm of arc at the line's radius. */
export function denseSteepness(input: WindowInput, turn: number, stretch: number, isRough = false): number {
  const before = denseRide(input, turn, isRough);
  const after = denseRide(input, turn + stretch, isRough);
  if (after === -Infinity) return 0;
  return before === -Infinity ? Infinity : (after - before) / (stretch * input.lineRadius);
}
