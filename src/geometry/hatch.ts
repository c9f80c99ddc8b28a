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
import type { Bounds, Point } from './outline.ts';
import type { Polygon } from './polygon.ts';

export type HatchStyle = { readonly angle: number; readonly pitch: number };
export type HatchLine = { readonly from: Point; readonly to: Point };

/**
 * Hatches a region, or what a box shows of it. Lines run from one edge to the next, in the order of their distance from
 * the origin.
 */
export function hatchLines(polygons: readonly Polygon[], style: HatchStyle, within?: Bounds): HatchLine[] {
  const frame = hatchFrame(style);
  const [lowest, highest] = within === undefined ? [-Infinity, Infinity] : levelsOf(within, frame);
  const crossings = new Map<number, number[]>();
  for (const polygon of polygons) {
    let from = frame.turn(polygon.at(-1) ?? { x: 0, y: 0 });
    for (const corner of polygon) {
      const to = frame.turn(corner);
      // Half open: a level counts from the lower end, not to the upper end.
      const low = Math.max(lowest, Math.ceil(Math.min(from.level, to.level)));
      const high = Math.min(highest, Math.max(from.level, to.level));
      for (let level = low; level < high; level++) {
        const share = (level - from.level) / (to.level - from.level);
        const at = from.along + share * (to.along - from.along);
        const row = crossings.get(level);
        if (row === undefined) crossings.set(level, [at]);
        else row.push(at);
      }
      from = to;
    }
  }
  return [...crossings.entries()]
    .sort(([a], [b]) => a - b)
    .flatMap(([level, row]) => {
      const [least, most] = within === undefined ? [-Infinity, Infinity] : reachIn(within, frame, level);
      return spans(row).flatMap(([start, end]): HatchLine[] => {
        const [from, to] = [Math.max(start, least), Math.min(end, most)];
        return to > from ? [{ from: frame.place(level, from), to: frame.place(level, to) }] : [];
      });
    });
}

type Turned = { readonly along: number; readonly level: number };
type HatchFrame = {
  readonly turn: (point: Point) => Turned;
  readonly place: (level: number, along: number) => Point;
};

/** Hatching lies level in its own frame: along a line, and from line to line in whole levels. */
function hatchFrame({ angle, pitch }: HatchStyle): HatchFrame {
  const [x, y] = [Math.cos(angle), Math.sin(angle)];
  return {
    turn: (point) => ({ along: point.x * x + point.y * y, level: (point.y * x - point.x * y) / pitch }),
    place: (level, along) => ({ x: along * x - level * pitch * y, y: along * y + level * pitch * x }),
  };
}

function levelsOf(box: Bounds, frame: HatchFrame): [number, number] {
  const levels = cornersOf(box).map((corner) => frame.turn(corner).level);
  return [Math.floor(Math.min(...levels)), Math.ceil(Math.max(...levels))];
}

/** Between which places along a line it runs inside the box. */
function reachIn(box: Bounds, frame: HatchFrame, level: number): [number, number] {
  const origin = frame.place(level, 0);
  const ahead = frame.place(level, 1);
  let [least, most] = [-Infinity, Infinity];
  const narrow = (start: number, step: number, low: number, high: number): void => {
    if (Math.abs(step) < 1e-12) {
      if (start < low || start > high) most = -Infinity;
      return;
    }
    const [one, other] = [(low - start) / step, (high - start) / step];
    least = Math.max(least, Math.min(one, other));
    most = Math.min(most, Math.max(one, other));
  };
  narrow(origin.x, ahead.x - origin.x, box.left, box.right);
  narrow(origin.y, ahead.y - origin.y, box.bottom, box.top);
  return [least, most];
}

function cornersOf({ left, right, bottom, top }: Bounds): Point[] {
  return [
    { x: left, y: bottom },
    { x: right, y: bottom },
    { x: right, y: top },
    { x: left, y: top },
  ];
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
export function crossHatch(polygons: readonly Polygon[], style: HatchStyle, within?: Bounds): HatchLine[] {
  return [
    ...hatchLines(polygons, style, within),
    ...hatchLines(polygons, { angle: style.angle + Math.PI / 2, pitch: style.pitch }, within),
  ];
}
