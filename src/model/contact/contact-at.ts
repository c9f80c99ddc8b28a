/**
 * Where a foot rests on the key: the follower on a profile, in closed form.
 *
 * Frame: `axis` is the s of the key under the part's axis: axis = z + travel for a chamber at z from the key-stop plane
 * and a key still `travel` out. The foot rests as high as the key lifts it:
 *
 *     contact = max over `across` of [ profile(axis + across) - footDrop(across) ]
 *
 * On a straight stretch of the profile that maximum lies where the stretch is tangent to the foot, or at the nearer end
 * of the stretch or of the foot. From valley to valley the profile bends one way only, so each such run touches in one
 * place; a ball that bridges a narrow cut touches two runs at once. mm; heights above the key's bottom edge.
 */
import { SAME_CONTACT_MM } from '../tolerances.ts';
import { type Foot, footDrop, footSlopes, footSupport } from './foot.ts';
import { type KeyFeature, type KeyProfile, type ProfilePoint, segmentIndexAt } from './key-profile.ts';

export type Touch = {
  /** Touched point of the key. */
  readonly s: number;
  readonly height: number;
  /** Of the edge that key and foot share there; the contact height changes at this rate as the key is drawn out. */
  readonly slope: number;
  /** The touched feature; at a corner of the key the one that carries more. */
  readonly from: KeyFeature;
  /** What carries the foot: one feature, or at a corner of the key two whose shares add up to 1. */
  readonly sides: readonly { readonly from: KeyFeature; readonly share: number }[];
};

/** `height` is -Infinity, without touches, when no key is under the foot: the stack is where it rests without a key. */
export type Contact = { readonly height: number; readonly touches: readonly Touch[] };

type Candidate = {
  readonly segment: number;
  readonly from: number;
  readonly to: number;
  readonly value: number;
};

/** Finds the contact height and every place that holds the foot, bow to tip. */
export function contactAt(profile: KeyProfile, foot: Foot, z: number, travel: number): Contact {
  const axis = z + travel;
  const runs = bestOfEachRun(profile, foot, axis);
  const height = runs.reduce((best, { value }) => Math.max(best, value), -Infinity);
  const touches = runs
    .filter(({ value }) => value >= height - SAME_CONTACT_MM)
    .map((candidate) => toTouch(profile, foot, axis, candidate));
  return { height, touches };
}

/** The height of `contactAt` alone, without allocating: for loops. */
export function contactHeightAt(profile: KeyProfile, foot: Foot, z: number, travel: number): number {
  const { points } = profile;
  const axis = z + travel;
  const reachTo = axis + foot.radius;
  let best = -Infinity;
  for (let i = segmentIndexAt(profile, axis - foot.radius); i + 1 < points.length; i++) {
    const start = points[i];
    const end = points[i + 1];
    if (!start || !end || (i > 0 && start.s > reachTo)) break;
    const from = Math.max(i > 0 ? start.s : -Infinity, axis - foot.radius);
    const to = Math.min(end.s, reachTo);
    if (from > to) continue;
    const support = footSupport(foot, start.slope);
    const s = clamp(axis + (support.from + support.to) / 2, from, to);
    best = Math.max(best, heightOver(start, s) - dropAt(foot, s - axis));
  }
  return best;
}

function bestOfEachRun(profile: KeyProfile, foot: Foot, axis: number): Candidate[] {
  const { points } = profile;
  const reachTo = axis + foot.radius;
  const runs: Candidate[] = [];
  let best: Candidate | undefined;
  let slopeBefore = Infinity;
  for (let i = segmentIndexAt(profile, axis - foot.radius); i + 1 < points.length; i++) {
    const start = points[i];
    const end = points[i + 1];
    if (!start || !end || (i > 0 && start.s > reachTo)) break;
    const from = Math.max(i > 0 ? start.s : -Infinity, axis - foot.radius);
    const to = Math.min(end.s, reachTo);
    if (from > to) continue;
    if (best && start.slope > slopeBefore) {
      runs.push(best);
      best = undefined;
    }
    slopeBefore = start.slope;
    const support = footSupport(foot, start.slope);
    const left = clamp(axis + support.from, from, to);
    const right = clamp(axis + support.to, from, to);
    const middle = (left + right) / 2;
    const value = heightOver(start, middle) - dropAt(foot, middle - axis);
    best = better(best, { segment: i, from: left, to: right, value });
  }
  if (best) runs.push(best);
  return runs;
}

/** A face that lies against the foot wins over its own corner, which rounding may put a hair higher. */
function better(best: Candidate | undefined, next: Candidate): Candidate {
  if (!best) return next;
  const isFace = next.from < next.to;
  const hasFace = best.from < best.to;
  if (isFace === hasFace) return next.value > best.value ? next : best;
  const head = next.value - best.value;
  return isFace ? (head >= -SAME_CONTACT_MM ? next : best) : head > SAME_CONTACT_MM ? next : best;
}

function toTouch(profile: KeyProfile, foot: Foot, axis: number, candidate: Candidate): Touch {
  const { segment, from, to } = candidate;
  const s = (from + to) / 2;
  const start = profile.points[segment];
  const end = profile.points[segment + 1];
  const before = segment > 0 ? profile.points[segment - 1] : undefined;
  if (!start || !end) return { s, height: 0, slope: 0, from: { kind: 'tip' }, sides: [] };
  if (from === to && s === end.s && end.slope < start.slope) return cornerTouch(foot, axis, start, end);
  if (from === to && s === start.s && before && before.slope > start.slope)
    return cornerTouch(foot, axis, before, start);
  const sides = [{ from: start.from, share: 1 }];
  return { s, height: heightOver(start, s), slope: start.slope, from: start.from, sides };
}

/**
 * The foot on a peak of the key. The shared edge is that of the foot at this point; each side of the peak carries what
 * makes its own slope add up to it, so that small changes of either side move the contact by their share.
 */
function cornerTouch(foot: Foot, axis: number, before: ProfilePoint, corner: ProfilePoint): Touch {
  const fits = footSlopes(foot, clamp(corner.s - axis, -foot.radius, foot.radius));
  const slope = clamp(0, Math.max(corner.slope, fits.from), Math.min(before.slope, fits.to));
  const { s, height } = corner;
  if (corner.slope === -Infinity) {
    return { s, height, slope, from: before.from, sides: [{ from: before.from, share: 1 }] };
  }
  const share = (slope - corner.slope) / (before.slope - corner.slope);
  const sides = [
    { from: before.from, share },
    { from: corner.from, share: 1 - share },
  ];
  return { s, height, slope, from: share >= 0.5 ? before.from : corner.from, sides };
}

function heightOver(start: ProfilePoint, s: number): number {
  return start.height + start.slope * (s - start.s);
}

/** Rounding may put a point of the rim a hair past it. */
function dropAt(foot: Foot, across: number): number {
  return footDrop(foot, clamp(across, -foot.radius, foot.radius));
}

function clamp(value: number, low: number, high: number): number {
  return Math.max(low, Math.min(high, value));
}
