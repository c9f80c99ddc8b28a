/**
 * How the contact height answers to small changes of the key and of the chamber's place, one touch at a time.
 *
 * The touched point moves too, but to first order that changes nothing: the foot is tangent there. At a corner of the
 * key each side counts with its share. Where several places hold the foot at once, the height follows whichever of them
 * rises most. mm per mm, and mm per radian for angles. Frame as in contact-at.ts.
 */
import { known } from '../assert.ts';
import type { Touch } from './contact-at.ts';
import { flankRise, type KeyCut, type KeyFeature, type KeyShape } from './key-profile.ts';

export type CutPartials = {
  readonly cut: string;
  readonly rootDepth: number;
  readonly rootFlat: number;
  /** Per radian of the included angle. */
  readonly includedAngle: number;
  /** Of the cut's place on the key. */
  readonly at: number;
};

export type TouchPartials = {
  /** The touched cuts: none, one, or at a corner between two cuts both. */
  readonly cuts: readonly CutPartials[];
  /** Of the chamber's place, of the stop, or of the key not being home: all three move the key under the chamber. */
  readonly chamber: number;
  readonly bladeHeight: number;
  readonly tipAt: number;
  readonly tipHeight: number;
  /** Per radian of the ramp's angle. */
  readonly tipRamp: number;
};

type CutFeature = Extract<KeyFeature, { readonly cut: string }>;

/** Measures the partial derivatives of the contact height at one touch. */
export function touchPartials(touch: Touch, shape: KeyShape): TouchPartials {
  const totals = { bladeHeight: 0, tipAt: 0, tipHeight: 0, tipRamp: 0 };
  const cuts = new Map<string, CutPartials>();
  for (const { from, share } of touch.sides) {
    if (from.kind === 'blade') totals.bladeHeight += share;
    else if (from.kind === 'tip') {
      totals.tipHeight += share;
      totals.tipAt += share * Math.tan(shape.tipRamp);
      totals.tipRamp += (share * (shape.tipAt - touch.s)) / Math.cos(shape.tipRamp) ** 2;
    } else {
      const cut = cutOf(shape, from.cut);
      cuts.set(cut.id, sum(cuts.get(cut.id), cutPartials(cut, from, share, touch.s)));
    }
  }
  if (touch.s === shape.tipAt) totals.tipAt += featureSlope(touch.from, shape) - touch.slope;
  return { cuts: [...cuts.values()], chamber: touch.slope, ...totals };
}

/** How much higher a ball is held per mm of its radius, where it touches at this slope. */
export function ballRadiusPartial(touch: Touch): number {
  return Math.sqrt(1 + touch.slope ** 2) - 1;
}

function cutPartials(cut: KeyCut, from: CutFeature, share: number, s: number): CutPartials {
  const only = { cut: cut.id, rootDepth: share };
  if (from.kind === 'root') return { ...only, rootFlat: 0, includedAngle: 0, at: 0 };
  const rise = flankRise(cut);
  const out = Math.abs(s - cut.at) - cut.rootFlat / 2; // from the edge of the flat along the key
  return {
    ...only,
    rootFlat: (-share * rise) / 2,
    includedAngle: -share * out * 0.5 * (1 + rise ** 2),
    at: from.side === 'tip' ? -share * rise : share * rise,
  };
}

function sum(one: CutPartials | undefined, other: CutPartials): CutPartials {
  if (!one) return other;
  return {
    cut: one.cut,
    rootDepth: one.rootDepth + other.rootDepth,
    rootFlat: one.rootFlat + other.rootFlat,
    includedAngle: one.includedAngle + other.includedAngle,
    at: one.at + other.at,
  };
}

function featureSlope(from: KeyFeature, shape: KeyShape): number {
  switch (from.kind) {
    case 'tip':
      return -Math.tan(shape.tipRamp);
    case 'flank':
      return flankRise(cutOf(shape, from.cut)) * (from.side === 'tip' ? 1 : -1);
    case 'blade':
    case 'root':
      return 0;
  }
}

function cutOf(shape: KeyShape, id: string): KeyCut {
  return known(
    shape.cuts.find((cut) => cut.id === id),
    `cut ${id}`,
  );
}
