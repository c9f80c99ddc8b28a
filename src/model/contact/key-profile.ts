/**
 * The upper edge of a key's blade: what is left after every cutter, the tip ramp and the blade's own height.
 *
 * Frame: s along the key from its stop, growing towards the tip; heights above the bottom edge of the blade. mm, radians.
 * A key that stops at its tip has its cuts at negative s and its tip at s = 0. Towards the bow the blade goes on level
 * without end (the shoulder never comes under a chamber). Beyond the tip there is no key.
 *
 *   blade ________                 ________
 *                 \  bow     tip  /        \
 *                  \ side   side /          \  tip ramp
 *                   \___________/            \
 *                    root (flat)              |  nose height
 *   __________________________________________|__  s
 *   stop              at                      tipAt
 *
 * Each cutter is a flat of width `rootFlat` at `rootDepth` with sides at half the included angle from upright. The
 * profile is the lowest of them all, so a cutter that eats its neighbour's flat needs no case of its own.
 */
import { assert } from '../assert.ts';
import type { Radians } from '../radians.ts';
import { SAME_CONTACT_MM } from '../tolerances.ts';
import { envelopeOfAll, heightOn, type Piece } from './pieces.ts';

export type KeyCut = {
  readonly id: string;
  /** s of the middle of the cut. */
  readonly at: number;
  /** Metal left under the cut. */
  readonly rootDepth: number;
  readonly rootFlat: number;
  readonly includedAngle: Radians;
};

export type KeyShape = {
  readonly bladeHeight: number;
  readonly stop: 'shoulder' | 'tip';
  /** s of the tip, where the key ends. */
  readonly tipAt: number;
  /** Nose height: of the upper edge where the key ends. */
  readonly tipHeight: number;
  /** Of the ramp up from the nose, from level; a right angle is a square end, without a ramp or a nose. */
  readonly tipRamp: Radians;
  readonly cuts: readonly KeyCut[];
};

/** What made a stretch of the profile. */
export type KeyFeature =
  | { readonly kind: 'blade' }
  | { readonly kind: 'tip' }
  | { readonly kind: 'root'; readonly cut: string }
  | { readonly kind: 'flank'; readonly cut: string; readonly side: 'bow' | 'tip' };

/** A corner of the profile; `slope` and `from` belong to the segment after it. */
export type ProfilePoint = {
  readonly s: number;
  readonly height: number;
  readonly slope: number;
  readonly from: KeyFeature;
};

/**
 * Corners from bow to tip, at least two. The segment after the first point is level and goes on towards the bow. After
 * the last point comes the key's end face: slope -Infinity, part of the tip.
 */
export type KeyProfile = { readonly points: readonly ProfilePoint[] };

const BLADE: KeyFeature = { kind: 'blade' };
const TIP: KeyFeature = { kind: 'tip' };

/** Builds the profile with exact corners. A cut shallower than the blade's height leaves no trace. */
export function buildKeyProfile(shape: KeyShape): KeyProfile {
  checkShape(shape);
  const level: Piece<KeyFeature> = {
    from: -Infinity,
    to: shape.tipAt,
    curve: { kind: 'straight', at: shape.tipAt, height: shape.bladeHeight, slope: 0 },
    mark: BLADE,
  };
  const ramp: Piece<KeyFeature> = {
    from: -Infinity,
    to: shape.tipAt,
    curve: { kind: 'straight', at: shape.tipAt, height: shape.tipHeight, slope: -Math.tan(shape.tipRamp) },
    mark: TIP,
  };
  const cutters = shape.cuts.map((cut) => cutterPieces(cut, shape.tipAt));
  const ramps = hasRamp(shape) ? [[ramp]] : [];
  return { points: cornersOf(envelopeOfAll([[level], ...cutters, ...ramps], 'lower'), shape) };
}

/** Measures the height of the profile; 0 beyond the tip, where there is no key. */
export function profileHeightAt(profile: KeyProfile, s: number): number {
  const tip = profile.points.at(-1);
  if (!tip || s > tip.s) return 0;
  const start = profile.points[segmentIndexAt(profile, s)];
  return start ? start.height + start.slope * (s - start.s) : 0;
}

/** Finds the segment over s, by the index of the point it starts at; the outermost ones before and beyond the ends. */
export function segmentIndexAt(profile: KeyProfile, s: number): number {
  let low = 0;
  let high = profile.points.length - 2;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if ((profile.points[middle]?.s ?? Infinity) <= s) low = middle;
    else high = middle - 1;
  }
  return low;
}

/** Rise per run of a cut's sides. */
export function flankRise(cut: { readonly includedAngle: Radians }): number {
  return 1 / Math.tan(cut.includedAngle / 2);
}

function cutterPieces(cut: KeyCut, end: number): Piece<KeyFeature>[] {
  const rise = flankRise(cut);
  const bowEdge = cut.at - cut.rootFlat / 2;
  const tipEdge = cut.at + cut.rootFlat / 2;
  const stretch = (
    from: number,
    to: number,
    at: number,
    slope: number,
    mark: KeyFeature,
  ): Piece<KeyFeature> => ({
    from,
    to: Math.min(to, end),
    curve: { kind: 'straight', at, height: cut.rootDepth, slope },
    mark,
  });
  return [
    stretch(-Infinity, bowEdge, bowEdge, -rise, { kind: 'flank', cut: cut.id, side: 'bow' }),
    stretch(bowEdge, tipEdge, bowEdge, 0, { kind: 'root', cut: cut.id }),
    stretch(tipEdge, Infinity, tipEdge, rise, { kind: 'flank', cut: cut.id, side: 'tip' }),
  ].filter((piece) => piece.from < piece.to);
}

function cornersOf(pieces: readonly Piece<KeyFeature>[], shape: KeyShape): ProfilePoint[] {
  const firstCorner = pieces[0]?.to ?? shape.tipAt;
  const lead = Math.min(0, firstCorner) - shape.bladeHeight; // far enough towards the bow for any drawing
  const points = pieces.map((piece): ProfilePoint => {
    const s = Math.max(piece.from, lead);
    const slope = piece.curve.kind === 'straight' ? piece.curve.slope : 0;
    return { s, height: heightOn(piece.curve, s), slope, from: piece.mark };
  });
  const last = pieces.at(-1);
  const height = last ? heightOn(last.curve, shape.tipAt) : 0;
  return [...points, { s: shape.tipAt, height, slope: -Infinity, from: TIP }];
}

/** A ramp too steep to have a length of its own is the key's square end face. */
function hasRamp(shape: KeyShape): boolean {
  return (shape.bladeHeight - shape.tipHeight) / Math.tan(shape.tipRamp) > SAME_CONTACT_MM;
}

function checkShape(shape: KeyShape): void {
  assert(shape.bladeHeight > 0, `blade height ${shape.bladeHeight} mm`);
  assert(
    Number.isFinite(shape.tipAt + shape.tipHeight),
    `tip at ${shape.tipAt} mm, ${shape.tipHeight} mm high`,
  );
  assert(shape.tipRamp > 0 && shape.tipRamp <= Math.PI / 2, `tip ramp ${shape.tipRamp} rad`);
  for (const cut of shape.cuts) {
    assert(cut.includedAngle > 0 && cut.includedAngle < Math.PI, `cut angle ${cut.includedAngle} rad`);
    assert(cut.rootFlat >= 0, `root flat ${cut.rootFlat} mm`);
    assert(Number.isFinite(cut.at) && Number.isFinite(cut.rootDepth), `cut ${cut.id} has no place or depth`);
  }
}
