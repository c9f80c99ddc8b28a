/**
 * Hatching: parallel lines cut off exactly at the edges of a region of polygons (even-odd). The unit is the caller's,
 * usually paper (CSS pixels), so that the pitch is the same at every scale. Angles are radians from the x axis.
 *
 *       ________________
 *      | /  /  /|  |/  /|     lines lie at whole multiples of the pitch from the frame's origin, so that pieces of one
 *      |/  /  / |__/  / |     body line up
 *      |__/__/__/__/__/_|
 *
 * A line through a corner: of the two sides that meet there exactly one counts when they pass through the line, none or
 * both when they only touch it (a side owns its start, not its end), so no span is lost or doubled.
 */
import type { Point } from './outline.ts';
import type { Polygon } from './polygon.ts';

export type HatchStyle = { readonly angle: number; readonly pitch: number };
export type HatchLine = { readonly from: Point; readonly to: Point };

/** Hatches a region. Lines run from one edge to the next, in the order of their distance from the origin. */
export function hatchLines(polygons: readonly Polygon[], style: HatchStyle): HatchLine[] {
  const { angle, pitch } = style;
  const along = { x: Math.cos(angle), y: Math.sin(angle) };
  const levels = polygons.map((polygon) =>
    polygon.map((point) => ({
      along: point.x * along.x + point.y * along.y,
      level: (point.y * along.x - point.x * along.y) / pitch,
    })),
  );
  const crossings = new Map<number, number[]>();
  for (const loop of levels) {
    loop.forEach((from, i) => {
      const to = loop[(i + 1) % loop.length] ?? from;
      const low = Math.min(from.level, to.level);
      const high = Math.max(from.level, to.level);
      // Half open: a level counts from the lower end, not to the upper end.
      for (let level = Math.ceil(low); level < high; level++) {
        const share = (level - from.level) / (to.level - from.level);
        const at = from.along + share * (to.along - from.along);
        const row = crossings.get(level);
        if (row === undefined) crossings.set(level, [at]);
        else row.push(at);
      }
    });
  }
  const place = (level: number, at: number): Point => ({
    x: at * along.x - level * pitch * along.y,
    y: at * along.y + level * pitch * along.x,
  });
  return [...crossings.entries()]
    .sort(([a], [b]) => a - b)
    .flatMap(([level, row]) =>
      spans(row).map(([from, to]) => ({ from: place(level, from), to: place(level, to) })),
    );
}

/** Pairs of crossings with metal between them; spans shorter than nothing are left out. */
function spans(row: number[]): [number, number][] {
  const sorted = row.sort((a, b) => a - b);
  const pairs: [number, number][] = [];
  for (let i = 0; i + 1 < sorted.length; i += 2) {
    const [from, to] = [sorted[i] ?? 0, sorted[i + 1] ?? 0];
    if (to > from) pairs.push([from, to]);
  }
  return pairs;
}

/** Two-way hatching, for what cannot be: metal in metal. */
export function crossHatch(polygons: readonly Polygon[], style: HatchStyle): HatchLine[] {
  return [
    ...hatchLines(polygons, style),
    ...hatchLines(polygons, { angle: style.angle + Math.PI / 2, pitch: style.pitch }),
  ];
}
