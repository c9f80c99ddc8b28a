/**
 * Half widths of a chamber along the plug where the long section's plane cuts it, lowest first, for
 * piece-with-holes.ts. Frame and units of turned-plane.ts; heights those of the plane.
 *
 * Upright, the mouths are drawn as they are. In a body that has turned the plane leaves the hole through its side and
 * the mouths are left out: the rows follow the bare hole.
 */
import type { AssemblyHole } from '../model/assembly/assembly.ts';
import { type MouthPoint, mouthAlong } from './mouth-curve.ts';
import type { HoleRow } from './piece-with-holes.ts';
import { TURNED_ROW_MM } from './tolerances.ts';
import { acrossAt, isUpright, type TurnedPlane } from './turned-plane.ts';

/** The surfaces a hole runs between; `innerRadius` null when it starts inside the body (at its floor or the keyway). */
export type HoleReach = {
  readonly from: number;
  readonly to: number;
  readonly innerRadius: number | null;
  readonly outerRadius: number | null;
};

/** Measures a chamber between two heights of the plane; empty where the plane passes it by. */
export function chamberRows(hole: AssemblyHole, plane: TurnedPlane, reach: HoleReach): HoleRow[] {
  const points = isUpright(plane) ? uprightPoints(hole, plane, reach) : turnedPoints(hole, reach);
  return points.flatMap(({ y, radius }) => {
    const across = acrossAt(plane, y) - hole.sideways;
    const square = radius ** 2 - across ** 2;
    return square > 0 ? [{ y, halfWidth: Math.sqrt(square) }] : [];
  });
}

function uprightPoints(hole: AssemblyHole, plane: TurnedPlane, reach: HoleReach): MouthPoint[] {
  const { innerRadius, outerRadius, from, to } = reach;
  const offset = plane.offset;
  const mouth = (radius: number, surface: 'outer' | 'inner'): MouthPoint[] =>
    mouthAlong(
      surface === 'outer' ? hole.outerMouth : hole.innerMouth,
      hole.radius,
      radius,
      surface,
      offset,
    ).map((point) => ({ ...point, y: point.y + plane.axisY }));
  const lower =
    innerRadius === null ? [{ y: from, radius: hole.radius }] : mouth(innerRadius, 'inner').reverse();
  const upper = outerRadius === null ? [{ y: to, radius: hole.radius }] : mouth(outerRadius, 'outer');
  return [...lower, ...upper].filter(({ y }) => y >= from && y <= to);
}

function turnedPoints(hole: AssemblyHole, { from, to }: HoleReach): MouthPoint[] {
  const steps = Math.max(1, Math.ceil((to - from) / TURNED_ROW_MM));
  return Array.from({ length: steps + 1 }, (_, i) => ({
    y: i === steps ? to : from + ((to - from) * i) / steps,
    radius: hole.radius,
  }));
}
