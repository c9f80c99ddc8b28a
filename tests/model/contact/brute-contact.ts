/**
 * The contact height by trying many points, with no code of the model but the drop of an end: the height of the key is
 * the least of its cutters, written down directly; the best points are looked at again ever closer.
 */
import type { KeyShape } from '../../../src/model/contact/key-profile.ts';
import { type EndShape, silhouetteDrop } from '../../../src/model/end-shape.ts';

const COARSE = 2000;
const FINE = 100;
const LEVELS = 6; // the last step is about 1e-11 mm
const KEPT = 8;

export function bruteKeyHeight(shape: KeyShape, s: number): number {
  if (s > shape.tipAt) return -Infinity;
  const isSquare = shape.tipRamp > 1.57; // no ramp
  const ramp = isSquare ? Infinity : shape.tipHeight + (shape.tipAt - s) * Math.tan(shape.tipRamp);
  let lowest = Math.min(shape.bladeHeight, ramp);
  for (const { at, rootDepth, rootFlat, includedAngle } of shape.cuts) {
    const out = Math.max(0, Math.abs(s - at) - rootFlat / 2);
    lowest = Math.min(lowest, rootDepth + out / Math.tan(includedAngle / 2));
  }
  return lowest;
}

export function bruteContact(shape: KeyShape, end: EndShape, radius: number, axis: number): number {
  const clearance = (across: number): number =>
    bruteKeyHeight(shape, axis + across) - silhouetteDrop(end, radius, across);
  const tip = shape.tipAt - axis;
  const last = Math.min(radius, tip);
  if (last < -radius) return -Infinity;
  // The tip itself, said without rounding axis + tip: the key ends exactly there.
  const atTip =
    tip <= radius
      ? bruteKeyHeight(shape, shape.tipAt) - silhouetteDrop(end, radius, Math.max(-radius, tip))
      : -Infinity;
  let windows = [{ from: -radius, to: last }];
  let best = atTip;
  for (let level = 0; level < LEVELS; level++) {
    const steps = level === 0 ? COARSE : FINE;
    const peaks = windows.flatMap(({ from, to }) => peaksIn(clearance, from, to, steps));
    peaks.sort((one, other) => other.value - one.value);
    windows = peaks.slice(0, KEPT);
    best = Math.max(best, peaks[0]?.value ?? -Infinity);
  }
  return best;
}

function peaksIn(
  value: (across: number) => number,
  from: number,
  to: number,
  steps: number,
): { value: number; from: number; to: number }[] {
  const places = Array.from({ length: steps + 1 }, (_, i) =>
    i === steps ? to : from + ((to - from) * i) / steps,
  );
  const values = places.map(value);
  return places.flatMap((_, i) => {
    const here = values[i] ?? -Infinity;
    const isPeak = here >= (values[i - 1] ?? -Infinity) && here >= (values[i + 1] ?? -Infinity);
    if (!isPeak || here === -Infinity) return [];
    return [{ value: here, from: places[i - 1] ?? from, to: places[i + 1] ?? to }];
  });
}
