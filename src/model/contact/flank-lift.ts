/**
 * Why a stack stands higher than the root of its cut. Plain subtraction takes it to rest on the root; this is the
 * difference, in the parts a person can do something about. mm; frame as in contact-at.ts.
 */
import { contactHeightAt } from './contact-at.ts';
import type { Foot } from './foot.ts';
import { buildKeyProfile, type KeyCut, type KeyProfile, type KeyShape } from './key-profile.ts';

export type FlankLift = {
  /** The cut whose middle lies nearest under the chamber. */
  readonly cut: string;
  /** How far the cut's middle lies off the chamber, + towards the tip. */
  readonly outOfLine: number;
  /** Contact height minus root depth: the sum of the three below. */
  readonly lift: number;
  /** Because the foot, centred, does not reach the root between the sides of this cut. */
  readonly bridging: number;
  /** Because neighbours, or the tip, took metal that would have held it: 0 or negative. */
  readonly neighbours: number;
  /** Because the cut is out of line with its chamber. */
  readonly outOfLineLift: number;
};

/** Splits the lift above the root; undefined for a key without cuts, or with no key under the foot. */
export function flankLift(
  shape: KeyShape,
  profile: KeyProfile,
  foot: Foot,
  z: number,
  travel = 0,
): FlankLift | undefined {
  const axis = z + travel;
  const cut = nearestCut(shape.cuts, axis);
  const here = contactHeightAt(profile, foot, z, travel);
  if (!cut || here === -Infinity) return undefined;
  const centred = contactHeightAt(profile, foot, cut.at, 0);
  const alone = contactHeightAt(lone(shape, cut, foot), foot, cut.at, 0);
  return {
    cut: cut.id,
    outOfLine: cut.at - axis,
    lift: here - cut.rootDepth,
    bridging: alone - cut.rootDepth,
    neighbours: centred - alone,
    outOfLineLift: here - centred,
  };
}

/** Finds the cut whose middle is nearest, the one towards the bow when two are equally near. */
export function nearestCut(cuts: readonly KeyCut[], axis: number): KeyCut | undefined {
  return cuts.reduce<KeyCut | undefined>(
    (best, cut) => (best && Math.abs(best.at - axis) <= Math.abs(cut.at - axis) ? best : cut),
    undefined,
  );
}

/** The same blade with this cut only, and the tip out of reach. */
function lone(shape: KeyShape, cut: KeyCut, foot: Foot): KeyProfile {
  const ramp = Math.max(0, shape.bladeHeight - shape.tipHeight) / Math.tan(shape.tipRamp);
  return buildKeyProfile({ ...shape, tipAt: cut.at + 2 * foot.radius + ramp, cuts: [cut] });
}
