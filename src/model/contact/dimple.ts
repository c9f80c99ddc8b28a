/**
 * A ball in the conical dimple of a bottom pin's lower end: how far it stands out of the pin's end. mm, radians.
 *
 *     pin |  /\  |               pin |        |
 *         | /  \ |                   |_.    ._|   mouth narrower than the cone would need:
 *         |/.--.\|  on the cone      (        )   on the rim
 *          (    )                     '-.__.-'
 *           '--'
 */
import type { EndShape } from '../end-shape.ts';
import type { Radians } from '../radians.ts';

/** The cupped end of a pin. */
export type Dimple = { readonly mouthDiameter: number; readonly includedAngle: Radians };

/** Says what holds the ball: the cone inside the dimple or its rim. */
export function dimpleSeat(ballRadius: number, dimple: Dimple): 'cone' | 'rim' {
  return ballRadius * Math.cos(dimple.includedAngle / 2) < dimple.mouthDiameter / 2 ? 'cone' : 'rim';
}

/** Measures how far the ball stands out of the pin's end; less than nothing when the dimple swallows it. */
export function ballStandsOut(ballRadius: number, dimple: Dimple): number {
  const half = dimple.includedAngle / 2;
  const mouth = dimple.mouthDiameter / 2;
  if (dimpleSeat(ballRadius, dimple) === 'rim') return ballRadius + Math.sqrt(ballRadius ** 2 - mouth ** 2);
  return ballRadius + ballRadius / Math.sin(half) - mouth / Math.tan(half);
}

/**
 * Gives the height of ball and bottom pin together. Plain addition holds for every end that is not cupped; a cupped one
 * takes the ball in.
 */
export function ballAndPinHeight(ballDiameter: number, pinLength: number, pinLowerEnd: EndShape): number {
  if (pinLowerEnd.kind !== 'cup') return pinLength + ballDiameter;
  return pinLength + Math.max(0, ballStandsOut(ballDiameter / 2, pinLowerEnd));
}
