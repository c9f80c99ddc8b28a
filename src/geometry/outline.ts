/**
 * Outlines of cut faces: closed loops of straight lines and circular arcs, exact, in mm.
 *
 * Frame: of a picture plane, x to the right and y up. In the long section x is the distance along the plug (z of the
 * model), in an end view it is the distance across. Several loops together make a region; what lies inside an odd
 * number of them is metal (even-odd), so a hole is a loop inside a loop.
 */
export type Point = { readonly x: number; readonly y: number };

export type Edge =
  | { readonly kind: 'line'; readonly to: Point }
  /** Around `centre`; clockwise as seen with y up. */
  | {
      readonly kind: 'arc';
      readonly to: Point;
      readonly centre: Point;
      readonly radius: number;
      readonly clockwise: boolean;
    };

/** A path from `start` along its edges. */
export type Path = { readonly start: Point; readonly edges: readonly Edge[] };

/** A path whose last edge ends where it starts; when it does not, a straight line closes it. */
export type Outline = Path;

export type Region = readonly Outline[];

export type Bounds = {
  readonly left: number;
  readonly right: number;
  readonly bottom: number;
  readonly top: number;
};

export function lineTo(x: number, y: number): Edge {
  return { kind: 'line', to: { x, y } };
}

export function arcTo(to: Point, centre: Point, clockwise: boolean): Edge {
  const radius = Math.hypot(to.x - centre.x, to.y - centre.y);
  return { kind: 'arc', to, centre, radius, clockwise };
}

/** Makes a loop of straight lines. Points that repeat the one before are left out. */
export function polygonOutline(points: readonly Point[]): Outline {
  const distinct = points.filter((point, i) => i === 0 || !samePoint(point, points[i - 1]));
  const [start = { x: 0, y: 0 }, ...rest] = distinct;
  return { start, edges: rest.map((to) => ({ kind: 'line', to })) };
}

export function rectangle(bounds: Bounds): Outline {
  const { left, right, bottom, top } = bounds;
  return polygonOutline([
    { x: left, y: bottom },
    { x: right, y: bottom },
    { x: right, y: top },
    { x: left, y: top },
  ]);
}

export function circle(centre: Point, radius: number): Outline {
  const right = { x: centre.x + radius, y: centre.y };
  const left = { x: centre.x - radius, y: centre.y };
  return {
    start: right,
    edges: [
      { kind: 'arc', to: left, centre, radius, clockwise: false },
      { kind: 'arc', to: right, centre, radius, clockwise: false },
    ],
  };
}

/** Where a path ends. */
export function endOf(path: Path): Point {
  return path.edges.at(-1)?.to ?? path.start;
}

/** The same path walked the other way. */
export function reversed(path: Path): Path {
  const ends = [path.start, ...path.edges.map((edge) => edge.to)];
  const edges = path.edges.map((edge, i): Edge => {
    const to = ends[i] ?? path.start;
    return edge.kind === 'line' ? { kind: 'line', to } : { ...edge, to, clockwise: !edge.clockwise };
  });
  return { start: endOf(path), edges: edges.reverse() };
}

/** Mirrors at the vertical line x = 0. */
export function mirroredAcross(path: Path): Path {
  return mapped(path, (point) => ({ x: -point.x, y: point.y }), true);
}

/** Mirrors at the level `axisY`. */
export function mirroredUpsideDown(path: Path, axisY: number): Path {
  return mapped(path, (point) => ({ x: point.x, y: 2 * axisY - point.y }), true);
}

export function moved(path: Path, x: number, y: number): Path {
  return mapped(path, (point) => ({ x: point.x + x, y: point.y + y }), false);
}

/** Turns about a centre; a positive angle (radians) turns anticlockwise as seen with y up. */
export function turned(path: Path, angle: number, centre: Point): Path {
  if (angle === 0) return path;
  const cos = Math.cos(angle);
  const sin = Math.sin(angle);
  const turn = ({ x, y }: Point): Point => ({
    x: centre.x + (x - centre.x) * cos - (y - centre.y) * sin,
    y: centre.y + (x - centre.x) * sin + (y - centre.y) * cos,
  });
  return mapped(path, turn, false);
}

function mapped(path: Path, map: (point: Point) => Point, mirrors: boolean): Path {
  return {
    start: map(path.start),
    edges: path.edges.map((edge) =>
      edge.kind === 'line'
        ? { kind: 'line', to: map(edge.to) }
        : {
            ...edge,
            to: map(edge.to),
            centre: map(edge.centre),
            clockwise: mirrors ? !edge.clockwise : edge.clockwise,
          },
    ),
  };
}

/** Measures the area a loop encloses, exactly; positive when it runs anticlockwise. */
export function signedArea(outline: Outline): number {
  let sum = 0;
  let from = outline.start;
  for (const edge of outline.edges) {
    sum += (from.x * edge.to.y - edge.to.x * from.y) / 2;
    if (edge.kind === 'arc') {
      const sweep = sweepOf(edge, from);
      sum += (edge.radius ** 2 / 2) * (sweep - Math.sin(sweep));
    }
    from = edge.to;
  }
  return sum + (from.x * outline.start.y - outline.start.x * from.y) / 2;
}

/** Measures a region whose loops do not cross: outer loops less the holes in them, whatever way each runs. */
export function regionArea(region: Region): number {
  return region.reduce((sum, outline, i) => {
    const inside = region.filter((other, j) => j !== i && encloses(other, outline)).length;
    return sum + (inside % 2 === 0 ? 1 : -1) * Math.abs(signedArea(outline));
  }, 0);
}

function encloses(outer: Outline, inner: Outline): boolean {
  const a = boundsOf([outer]);
  const b = boundsOf([inner]);
  const within = a.left <= b.left && a.right >= b.right && a.bottom <= b.bottom && a.top >= b.top;
  return within && Math.abs(signedArea(outer)) > Math.abs(signedArea(inner));
}

/** Angle an arc sweeps, radians: positive anticlockwise. */
export function sweepOf(edge: Extract<Edge, { kind: 'arc' }>, from: Point): number {
  const start = Math.atan2(from.y - edge.centre.y, from.x - edge.centre.x);
  const end = Math.atan2(edge.to.y - edge.centre.y, edge.to.x - edge.centre.x);
  const turn = 2 * Math.PI;
  const sweep = edge.clockwise
    ? -((((start - end) % turn) + turn) % turn)
    : (((end - start) % turn) + turn) % turn;
  return sweep === 0 ? 0 : sweep;
}

/** Measures the box around a region; arcs count with their bulge. */
export function boundsOf(region: Region): Bounds {
  let left = Infinity;
  let right = -Infinity;
  let bottom = Infinity;
  let top = -Infinity;
  const take = ({ x, y }: Point): void => {
    left = Math.min(left, x);
    right = Math.max(right, x);
    bottom = Math.min(bottom, y);
    top = Math.max(top, y);
  };
  for (const outline of region) {
    take(outline.start);
    let from = outline.start;
    for (const edge of outline.edges) {
      take(edge.to);
      if (edge.kind === 'arc') quadrantPoints(edge, from).forEach(take);
      from = edge.to;
    }
  }
  return { left, right, bottom, top };
}

/** The points of an arc furthest left, right, up and down, as far as it passes them. */
function quadrantPoints(edge: Extract<Edge, { kind: 'arc' }>, from: Point): Point[] {
  const start = Math.atan2(from.y - edge.centre.y, from.x - edge.centre.x);
  const sweep = sweepOf(edge, from);
  return [0, 1, 2, 3].flatMap((quarter) => {
    const angle = (quarter * Math.PI) / 2;
    const turn = 2 * Math.PI;
    const along =
      sweep >= 0 ? (((angle - start) % turn) + turn) % turn : (((start - angle) % turn) + turn) % turn;
    if (along > Math.abs(sweep)) return [];
    return {
      x: edge.centre.x + edge.radius * Math.round(Math.cos(angle)),
      y: edge.centre.y + edge.radius * Math.round(Math.sin(angle)),
    };
  });
}

function samePoint(a: Point, b: Point | undefined): boolean {
  return b !== undefined && a.x === b.x && a.y === b.y;
}
