/**
 * Caliper jaws wider than the root: the jaw rests on the sides of the cut and the root reads too high. mm, radians.
 *
 *      \ |    | /
 *       \|jaw |/      false height = (jaw - flat) / 2 / tan(half angle)
 *        \    /
 *         \__/
 */
import type { CutForm } from './bridging.ts';
import { flankRise } from './key-profile.ts';

/**
 * Measures how much too high a jaw reads the root depth; 0 when it reaches the root.
 *
 * @param offCentre how far the jaw's middle is from the cut's, either way, mm
 */
export function jawFalseHeight(jawWidth: number, cut: CutForm, offCentre = 0): number {
  return Math.max(0, jawWidth / 2 + Math.abs(offCentre) - cut.rootFlat / 2) * flankRise(cut);
}
