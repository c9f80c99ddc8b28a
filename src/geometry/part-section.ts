/**
 * Where a plane along the plug cuts a ball, pin or driver. In: the half profile (part-profile.ts). Out: loops in the
 * plane, x along the plug from the part's axis, y the height. mm.
 *
 * A plane at distance d from the axis turns each profile point (r, y) into (+-sqrt(r^2 - d^2), y): lines along and
 * across the axis stay lines, a crown or ball around the axis stays an arc (its radius shrinks the same way), and only
 * cones, bevels and rounded edges become other curves, drawn within the stated tolerance. Where r < d there is nothing,
 * so a waist narrower than that splits the section in two.
 */
import { sampleCurve } from './flatten.ts';
import {
  arcTo,
  type Edge,
  endOf,
  lineTo,
  mirroredAcross,
  type Outline,
  type Path,
  type Point,
  reversed,
  sweepOf,
} from './outline.ts';
import { CURVE_TOLERANCE_MM } from './tolerances.ts';

type Arc = Extract<Edge, { kind: 'arc' }>;
/** One edge with where it starts. */
type Stretch = { readonly from: Point; readonly edge: Edge };

/** Cuts a profile with a plane at distance `offset` from its axis. */
export function sectionOfProfile(profile: Path, offset: number): Outline[] {
  const distance = Math.abs(offset);
  return outerRuns(profile, distance).map((run) => {
    const right = joinRun(run.map((stretch) => cutStretch(stretch, distance)));
    const left = reversed(mirroredAcross(right));
    const closes = endOf(right).x === 0 ? [] : [lineTo(left.start.x, left.start.y)];
    return { start: right.start, edges: [...right.edges, ...closes, ...left.edges] };
  });
}

/** The stretches of a profile at or beyond a distance from the axis, in connected runs. */
function outerRuns(profile: Path, distance: number): Stretch[][] {
  const runs: Stretch[][] = [];
  let run: Stretch[] = [];
  const end = (): void => {
    if (run.length > 0) runs.push(run);
    run = [];
  };
  let from = profile.start;
  for (const edge of profile.edges) {
    const kept = keepBeyond({ from, edge }, distance);
    if (kept === null) end();
    else {
      if (kept.from !== from) end();
      run.push(kept);
      if (kept.edge !== edge) end();
    }
    from = edge.to;
  }
  end();
  return runs;
}

/** The part of a stretch at or beyond the distance. Edges here run one way only, out or in. */
function keepBeyond(stretch: Stretch, distance: number): Stretch | null {
  const { from, edge } = stretch;
  const startsInside = from.x < distance;
  const endsInside = edge.to.x < distance;
  if (!startsInside && !endsInside) return stretch;
  if (startsInside && endsInside) return null;
  const cut = pointAtDistance(stretch, distance);
  if (cut.x === edge.to.x && cut.y === edge.to.y) return null;
  return startsInside ? { from: cut, edge } : { from, edge: { ...edge, to: cut } };
}

function pointAtDistance({ from, edge }: Stretch, x: number): Point {
  if (edge.kind === 'line') {
    const share = (x - from.x) / (edge.to.x - from.x);
    return { x, y: from.y + share * (edge.to.y - from.y) };
  }
  const half = Math.sqrt(Math.max(0, edge.radius ** 2 - (x - edge.centre.x) ** 2));
  const isAbove = (from.y + edge.to.y) / 2 > edge.centre.y;
  return { x, y: edge.centre.y + (isAbove ? half : -half) };
}

function cutStretch({ from, edge }: Stretch, distance: number): { start: Point; edges: Edge[] } {
  const cut = ({ x, y }: Point): Point => ({ x: Math.sqrt(Math.max(0, x ** 2 - distance ** 2)), y });
  const start = cut(from);
  const end = cut(edge.to);
  if (distance === 0) return { start: from, edges: [edge] };
  if (edge.kind === 'arc' && edge.centre.x === 0)
    return { start, edges: [arcTo(end, edge.centre, edge.clockwise)] };
  const isStraight = edge.kind === 'line' && (from.y === edge.to.y || from.x === edge.to.x);
  if (isStraight) return { start, edges: [lineTo(end.x, end.y)] };
  const at = edge.kind === 'line' ? alongCone(from, edge.to, distance) : alongRound(edge, from, distance);
  const points = sampleCurve(at, CURVE_TOLERANCE_MM).slice(1, -1);
  return { start, edges: [...points, end].map((to) => ({ kind: 'line', to })) };
}

/** Runs evenly in the section's half width, so that the steep start near the axis is resolved. */
function alongCone(from: Point, to: Point, distance: number): (t: number) => Point {
  const first = Math.sqrt(Math.max(0, from.x ** 2 - distance ** 2));
  const last = Math.sqrt(Math.max(0, to.x ** 2 - distance ** 2));
  return (t) => {
    const x = first + t * (last - first);
    const share = (Math.hypot(x, distance) - from.x) / (to.x - from.x);
    return { x, y: from.y + share * (to.y - from.y) };
  };
}

function alongRound(edge: Arc, from: Point, distance: number): (t: number) => Point {
  const start = Math.atan2(from.y - edge.centre.y, from.x - edge.centre.x);
  const sweep = sweepOf(edge, from);
  return (t) => {
    const angle = start + t * sweep;
    const r = edge.centre.x + edge.radius * Math.cos(angle);
    const y = edge.centre.y + edge.radius * Math.sin(angle);
    return { x: Math.sqrt(Math.max(0, r ** 2 - distance ** 2)), y };
  };
}

function joinRun(stretches: readonly { start: Point; edges: Edge[] }[]): Path {
  const start = stretches[0]?.start ?? { x: 0, y: 0 };
  return { start, edges: stretches.flatMap((stretch) => stretch.edges) };
}
