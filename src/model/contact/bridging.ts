/**
 * A ball in one cut with a flat root and straight sides, the cut's sides long enough to hold it. mm, radians.
 *
 *      \   .--.   /
 *       \ (    ) /         a ball too big for the root touches both sides and bridges it
 *        \'-..-'/
 *         \____/  flat
 *
 * The closed forms for one cut alone. On a whole key the profile decides (contact-at.ts); these say why.
 */
import type { Radians } from '../radians.ts';

/** Flat, and angle between the sides. */
export type CutForm = { readonly rootFlat: number; readonly includedAngle: Radians };

/** Narrowest flat whose root the ball still reaches. */
export function flatToReachRoot(ballRadius: number, includedAngle: Radians): number {
  const half = includedAngle / 2;
  return (2 * ballRadius * (1 - Math.sin(half))) / Math.cos(half);
}

/** How far above the root a centred ball stands; 0 when it reaches the root. */
export function bridgingLift(ballRadius: number, cut: CutForm): number {
  const half = cut.includedAngle / 2;
  const centre = (ballRadius - (cut.rootFlat / 2) * Math.cos(half)) / Math.sin(half);
  return Math.max(0, centre - ballRadius);
}

/** How far above the root the sides must go up for a centred ball to touch them; 0 when it reaches the root. */
export function heightOfSides(ballRadius: number, cut: CutForm): number {
  const half = cut.includedAngle / 2;
  if (cut.rootFlat >= flatToReachRoot(ballRadius, cut.includedAngle)) return 0;
  return (ballRadius * Math.cos(half) - cut.rootFlat / 2) / Math.tan(half);
}

/** How far a cut may lie off its chamber, either way, before the ball leaves the root; 0 when it bridges. */
export function freeFloat(ballRadius: number, cut: CutForm): number {
  return Math.max(0, (cut.rootFlat - flatToReachRoot(ballRadius, cut.includedAngle)) / 2);
}
