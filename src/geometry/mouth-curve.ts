/**
 * The mouth of a hole in section: how wide the hole is at which height. The same shapes as window-input.ts describes:
 * deburred along the edge (as deep at the wall as it is wide, all around), countersunk about the hole's axis (45 degrees,
 * as deep at the wall as its size, measured from the crest). mm; heights from the body's own axis.
 *
 *            across               ____ surface of the body
 *      axis  |--->       wall |  /
 *        |   plane at         | /  t = size
 *        |   `offset`         |/   t = 0
 *
 * Two planes are asked for: along the plug (`offset` across, widths run along the plug) and across it through the hole's
 * axis (widths run across, and the surface falls away at the sides).
 */
import type { MouthShape } from '../model/window/window-input.ts';

/** `radius` is that of the hole in plan at this height. */
export type MouthPoint = { readonly y: number; readonly radius: number };

/** Steps of a mouth drawn beside its axis, where its outline bends. */
const MOUTH_STEPS = 6;

export function mouthSize(mouth: MouthShape): number {
  return mouth.kind === 'sharp' ? 0 : Math.max(0, mouth.size);
}

/**
 * Lists heights and hole radii at a mouth in a plane along the plug, from the wall to the surface.
 *
 * @param surface 'outer' for the round of a body, 'inner' for its bore
 */
export function mouthAlong(
  mouth: MouthShape,
  holeRadius: number,
  surfaceRadius: number,
  surface: 'outer' | 'inner',
  offset: number,
): MouthPoint[] {
  const size = mouthSize(mouth);
  const out = surface === 'outer' ? 1 : -1;
  const level = (radius: number): number => Math.sqrt(Math.max(0, radius ** 2 - offset ** 2));
  const at = level(surfaceRadius);
  if (size === 0) return [{ y: at, radius: holeRadius }];
  const wallLevel = surfaceRadius - out * size;
  const steps = offset === 0 ? 1 : MOUTH_STEPS;
  const shares = Array.from({ length: steps + 1 }, (_, i) => (size * i) / steps);
  const surfaceAt = (t: number, y: number): number => (t === size ? at : y);
  if (mouth.kind === 'deburred along')
    return shares.map((t) => ({ y: surfaceAt(t, level(wallLevel + out * t)), radius: holeRadius + t }));
  const depth = out * (at - wallLevel);
  if (depth <= 0) return [{ y: at, radius: holeRadius }];
  return shares.map((t) => ({
    y: surfaceAt(t, wallLevel + (out * depth * t) / size),
    radius: holeRadius + (depth * t) / size,
  }));
}

/** The corner of a mouth seen along the plug, at the hole's side: where its wall ends and where the surface begins. */
export type MouthCorner = {
  readonly wall: { x: number; y: number };
  readonly surface: { x: number; y: number };
};

/**
 * Finds the corner of a mouth in the plane across the plug through the hole's axis, at one side (`side` 1: towards
 * positive x). The hole's axis lies `sideways`; x and y from the body's own axis.
 */
export function mouthAcross(
  mouth: MouthShape,
  hole: { readonly radius: number; readonly sideways: number },
  surfaceRadius: number,
  surface: 'outer' | 'inner',
  side: 1 | -1,
): MouthCorner {
  const size = mouthSize(mouth);
  const out = surface === 'outer' ? 1 : -1;
  const x = (radius: number): number => hole.sideways + side * radius;
  const on = (radius: number, at: number): { x: number; y: number } => ({
    x: at,
    y: Math.sqrt(Math.max(0, radius ** 2 - at ** 2)),
  });
  const sharp = on(surfaceRadius, x(hole.radius));
  if (size === 0) return { wall: sharp, surface: sharp };
  if (mouth.kind === 'deburred along')
    return {
      wall: on(surfaceRadius - out * size, x(hole.radius)),
      surface: on(surfaceRadius, x(hole.radius + size)),
    };
  const wallY = surfaceRadius - out * size;
  if (out * (sharp.y - wallY) <= 0) return { wall: sharp, surface: sharp };
  // On the cone x = sideways +- (radius + out (y - wallY)); on the round x^2 + y^2 = surfaceRadius^2.
  const slope = side * out;
  const start = x(hole.radius) - slope * wallY;
  const root = Math.sqrt(Math.max(0, 2 * surfaceRadius ** 2 - start ** 2));
  const y = (-slope * start + root) / 2;
  return { wall: { x: x(hole.radius), y: wallY }, surface: { x: start + slope * y, y } };
}
