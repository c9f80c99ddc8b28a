/**
 * The end of a turned part: the top of a bottom pin, the lower end of a driver, a pin's tip, a ball.
 *
 * Frame: the end is looked at with its own highest point up; `distance` is measured across, from the part's axis.
 * An end's drop is how far its surface lies below its highest point. All lengths mm, drops never negative.
 *
 *        flat            bevel             radius            dome             cone              cup
 *      ________         ______            .------.          .-""-.            ____            _      _
 *     |        |       /      \          (        )        /      \          /    \          | \    / |
 *     |        |      |        |         |        |       |        |        /      \         |  \  /  |
 *
 *  bevel   width: how far the bevel reaches in from the rim; angle: between bevel and face (45 deg: as deep as wide)
 *  radius  radius: of the rounded edge (a quarter circle, at most the part's radius)
 *  dome    radius: of the crown, at least the part's radius
 *  cone    tipFlatDiameter: of the small flat at the point; includedAngle: of the cone
 *  cup     mouthDiameter, includedAngle: of the conical dimple; the rim around it is flat
 *  sphere  a ball: a dome whose radius is the part's own
 */
import type { Radians } from './radians.ts';

export type EndShape =
  | { readonly kind: 'flat' }
  | { readonly kind: 'bevel'; readonly width: number; readonly angle: Radians }
  | { readonly kind: 'radius'; readonly radius: number }
  | { readonly kind: 'dome'; readonly radius: number }
  | { readonly kind: 'cone'; readonly tipFlatDiameter: number; readonly includedAngle: Radians }
  | { readonly kind: 'cup'; readonly mouthDiameter: number; readonly includedAngle: Radians }
  | { readonly kind: 'sphere' };

/**
 * Measures the drop of an end below its highest point.
 *
 * @param partRadius radius of the part, mm
 * @param distance from the part's axis, mm; beyond the part's radius the drop is infinite (there is no part)
 */
export function endDrop(shape: EndShape, partRadius: number, distance: number): number {
  const across = Math.abs(distance);
  if (across > partRadius) return Infinity;
  switch (shape.kind) {
    case 'flat':
      return 0;
    case 'bevel':
      return Math.max(0, across - (partRadius - shape.width)) * Math.tan(shape.angle);
    case 'radius': {
      const inward = across - (partRadius - shape.radius);
      return inward <= 0 ? 0 : shape.radius - Math.sqrt(Math.max(0, shape.radius ** 2 - inward ** 2));
    }
    case 'dome':
      return shape.radius - Math.sqrt(shape.radius ** 2 - across ** 2);
    case 'sphere':
      return partRadius - Math.sqrt(Math.max(0, partRadius ** 2 - across ** 2));
    case 'cone':
      return Math.max(0, across - shape.tipFlatDiameter / 2) / Math.tan(shape.includedAngle / 2);
    case 'cup':
      return Math.max(0, shape.mouthDiameter / 2 - across) / Math.tan(shape.includedAngle / 2);
  }
}

/**
 * Measures the drop of an end seen from the side: the least drop over the chord at this signed distance. The same as
 * `endDrop` for every shape but the cup, whose rim hides the dimple.
 */
export function silhouetteDrop(shape: EndShape, partRadius: number, distance: number): number {
  return shape.kind === 'cup' && Math.abs(distance) <= partRadius ? 0 : endDrop(shape, partRadius, distance);
}

/** Distances from the axis at which the drop has a corner, innermost first, the rim last. mm. */
export function endCorners(shape: EndShape, partRadius: number): number[] {
  switch (shape.kind) {
    case 'bevel':
      return [partRadius - shape.width, partRadius];
    case 'radius':
      return [partRadius - shape.radius, partRadius];
    case 'cone':
      return [shape.tipFlatDiameter / 2, partRadius];
    case 'cup':
      return [shape.mouthDiameter / 2, partRadius];
    case 'flat':
    case 'dome':
    case 'sphere':
      return [partRadius];
  }
}
