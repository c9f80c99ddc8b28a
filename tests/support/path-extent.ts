/**
 * A drawing measured as a reader would: from its SVG text alone, with paths followed by the rules of SVG 2 (true arcs by
 * implementation note B.2.4, end point to centre). Shares no code with src/drawing. CSS pixels, y down.
 */
export type Extent = {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
};

/** How far a path reaches. Knows the commands that drawings use; any other throws. */
export function pathExtent(d: string): Extent {
  let extent: Extent = { left: Infinity, right: -Infinity, top: Infinity, bottom: -Infinity };
  const reach = (x: number, y: number): void => {
    extent = {
      left: Math.min(extent.left, x),
      right: Math.max(extent.right, x),
      top: Math.min(extent.top, y),
      bottom: Math.max(extent.bottom, y),
    };
  };
  let at = { x: 0, y: 0 };
  let start = at;
  for (const [, command, rest] of d.matchAll(/([A-Za-z])([^A-Za-z]*)/g)) {
    const numbers = (rest ?? '').match(/-?[\d.]+/g)?.map(Number) ?? [];
    const to = { x: numbers.at(-2) ?? NaN, y: numbers.at(-1) ?? NaN };
    if (command === 'A') arcPoints(at, to, numbers).forEach(({ x, y }) => reach(x, y));
    else if (command !== 'M' && command !== 'L' && command !== 'Z')
      throw new Error(`command ${command ?? ''}`);
    if (command === 'Z') at = start;
    else {
      reach(to.x, to.y);
      at = to;
      if (command === 'M') start = to;
    }
  }
  if (!Number.isFinite(extent.left)) throw new Error('an empty path');
  return extent;
}

type Point = { readonly x: number; readonly y: number };

/** The points of an arc that stand out to a side: where it passes a quarter. Axes along x and y. */
function arcPoints(from: Point, to: Point, numbers: readonly number[]): Point[] {
  const [rxGiven = 0, ryGiven = 0, , large, sweep] = numbers;
  if (rxGiven === 0 || ryGiven === 0) return [];
  const half = { x: (from.x - to.x) / 2, y: (from.y - to.y) / 2 };
  const size = (half.x / rxGiven) ** 2 + (half.y / ryGiven) ** 2;
  if (size === 0) return [];
  const grown = Math.sqrt(Math.max(1, size));
  const [rx, ry] = [rxGiven * grown, ryGiven * grown];
  const across = (rx * half.y) ** 2 + (ry * half.x) ** 2;
  const share = Math.sqrt(Math.max(0, ((rx * ry) ** 2 - across) / across)) * (large === sweep ? -1 : 1);
  const centre = {
    x: (from.x + to.x) / 2 + (share * rx * half.y) / ry,
    y: (from.y + to.y) / 2 - (share * ry * half.x) / rx,
  };
  const angleOf = ({ x, y }: Point): number => Math.atan2((y - centre.y) / ry, (x - centre.x) / rx);
  const first = angleOf(from);
  const full = 2 * Math.PI;
  const turn = ((((angleOf(to) - first) * (sweep === 1 ? 1 : -1)) % full) + full) % full;
  return [0, 1, 2, 3].flatMap((quarter) => {
    const angle = (quarter * Math.PI) / 2;
    const way = ((((angle - first) * (sweep === 1 ? 1 : -1)) % full) + full) % full;
    return way <= turn ? [{ x: centre.x + rx * Math.cos(angle), y: centre.y + ry * Math.sin(angle) }] : [];
  });
}
