/**
 * An invented key with six cuts, worked by hand in inches, for all tests of this folder. Lengths are handed to the model
 * in mm.
 */
import type { KeyShape } from '../../../src/model/contact/key-profile.ts';
import { fromDegrees } from '../../../src/model/radians.ts';

export const INCH = 25.4;
export const ROOT_DEPTHS_IN = [0.369, 0.421, 0.333, 0.393, 0.453, 0.303] as const;
export const BALL_IN = 0.15625;

/** s of a cut, z of the chamber it belongs to; numbered from 1. */
export function cutAtMm(number: number): number {
  return (0.35 + 0.25 * (number - 1)) * INCH;
}

export const SIX_CUTS: KeyShape = {
  bladeHeight: 0.5 * INCH,
  stop: 'shoulder',
  tipAt: 1.95 * INCH,
  tipHeight: 0.06 * INCH,
  tipRamp: fromDegrees(45),
  cuts: ROOT_DEPTHS_IN.map((root, i) => ({
    id: `cut ${i + 1}`,
    at: cutAtMm(i + 1),
    rootDepth: root * INCH,
    rootFlat: 0.06 * INCH,
    includedAngle: fromDegrees(90),
  })),
};

/** A tall blade with one cut, root depth 0.3 in, 1 in from the stop and far from its tip. */
export function oneCut({ flatIn, degrees }: { flatIn: number; degrees: number }): KeyShape {
  return {
    bladeHeight: INCH,
    stop: 'shoulder',
    tipAt: 4 * INCH,
    tipHeight: 0.06 * INCH,
    tipRamp: fromDegrees(45),
    cuts: [
      {
        id: 'cut',
        at: INCH,
        rootDepth: 0.3 * INCH,
        rootFlat: flatIn * INCH,
        includedAngle: fromDegrees(degrees),
      },
    ],
  };
}
