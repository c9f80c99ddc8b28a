/**
 * Where the long section's plane cuts a ball or pin that has turned with its body. The half width along the plug at each
 * height follows from the profile in closed form; the loop runs through rows of it (tolerances.ts says how far apart).
 * Frame as in part-section.ts, heights those of the plane. mm.
 */
import { flattenPath } from './flatten.ts';
import { mirroredUpsideDown, type Outline, type Path, type Point, polygonOutline } from './outline.ts';
import { CURVE_TOLERANCE_MM, TURNED_ROW_MM } from './tolerances.ts';
import { acrossAt, heightInPlane, type TurnedPlane } from './turned-plane.ts';

/**
 * Cuts a turned part.
 *
 * @param baseY height of the part's lowest point before the turn
 * @param sideways of its chamber, in the body's own frame
 */
export function turnedPartSection(profile: Path, plane: TurnedPlane, baseY: number, sideways = 0): Outline[] {
  const rows = flattenPath(profile, CURVE_TOLERANCE_MM * 10);
  const runs: Point[][] = [[]];
  let before: { point: Point; inside: number } | undefined;
  for (const point of withRows(rows)) {
    const y = heightInPlane(plane, baseY + point.y);
    const across = Math.abs(acrossAt(plane, y) - sideways);
    const inside = point.x - across;
    const here = { point: { x: Math.sqrt(Math.max(0, point.x ** 2 - across ** 2)), y }, inside };
    if (before && before.inside < 0 !== inside < 0) {
      const share = before.inside / (before.inside - inside);
      const cut = { x: 0, y: before.point.y + share * (y - before.point.y) };
      if (inside >= 0) runs.push([cut]);
      else runs.at(-1)?.push(cut);
    }
    if (inside >= 0) runs.at(-1)?.push(here.point);
    before = here;
  }
  const loops = runs.filter((run) => run.length > 1).map(mirroredLoop);
  return plane.isUpsideDown ? loops.map((loop) => mirroredUpsideDown(loop, plane.axisY)) : loops;
}

function mirroredLoop(right: readonly Point[]): Outline {
  const left = right.map(({ x, y }) => ({ x: -x, y })).reverse();
  return polygonOutline([...right, ...left.filter((point) => point.x !== 0)]);
}

/** Adds points so that rows lie close enough together. */
function withRows(points: readonly Point[]): Point[] {
  return points.flatMap((point, i) => {
    const next = points[i + 1];
    if (next === undefined) return [point];
    const steps = Math.max(1, Math.ceil(Math.hypot(next.y - point.y, next.x - point.x) / TURNED_ROW_MM));
    return Array.from({ length: steps }, (_, step) => ({
      x: point.x + ((next.x - point.x) * step) / steps,
      y: point.y + ((next.y - point.y) * step) / steps,
    }));
  });
}
