/**
 * The half profile of a ball, pin or driver: what a lathe would turn. x is the distance from the axis (never negative),
 * y the height above the part's lowest point. mm. The path starts on the axis at the lower end, runs around the
 * outside and ends on the axis at the upper end.
 *
 *        y
 *        |______.        upper end
 *        |       \
 *        |        |      side
 *        |     .--'
 *        |     |         waist: spool (narrow, corners filled), mushroom (flares up), serrated (grooves)
 *        |     '--.
 *        |        |
 *        |______./       lower end
 *        +----------- x
 */
import type { StackPart } from '../model/assembly/assembly.ts';
import { endCurve } from './end-curve.ts';
import { flattenPath } from './flatten.ts';
import { arcTo, type Edge, endOf, lineTo, mirroredUpsideDown, type Path, reversed } from './outline.ts';
import { perObject } from './per-object.ts';
import { CURVE_TOLERANCE_MM } from './tolerances.ts';

/** Share of the groove's depth that its corners are rounded by. For looks: nothing is measured in a waist's corner. */
const WAIST_FILLET_SHARE = 0.45;
/** mm. Grooves of a serrated driver, one groove and one land. Common practice, no source; for looks. */
const SERRATION_PITCH_MM = 0.7;

type TurnedPart = Pick<StackPart, 'radius' | 'length' | 'lower' | 'upper' | 'waist' | 'role'>;

/** Draws the half profile. Ends that would run into each other (a part shorter than its ends) are flattened to fit. */
export function partProfile(part: TurnedPart): Path {
  return remembered(part);
}

function workProfile(part: TurnedPart): Path {
  const { length } = part;
  const [lower, upper] = fitEnds(
    endCurve(part.lower, part.radius),
    endCurve(part.upper, part.radius),
    length,
  );
  const upperPath = reversed(mirroredUpsideDown(upper, length / 2));
  const from = endOf(lower);
  const side = sideEdges(part, from.y, upperPath.start.y);
  return { start: lower.start, edges: [...lower.edges, ...side, ...upperPath.edges] };
}

/** Sound parts pass unchanged; a dimple deeper than the part, or two crowns that meet, cannot be and are flattened. */
function fitEnds(lower: Path, upper: Path, length: number): [Path, Path] {
  const [one, other] = [flattenedTo(lower, length), flattenedTo(upper, length)];
  const rims = endOf(one).y + endOf(other).y;
  if (rims <= length * (1 + 1e-12)) return [one, other];
  return [scaledUp(one, length / rims), scaledUp(other, length / rims)];
}

function flattenedTo(end: Path, length: number): Path {
  const highest = Math.max(end.start.y, endOf(end).y);
  return highest < length ? end : scaledUp(end, length / 2 / highest);
}

function scaledUp(end: Path, factor: number): Path {
  const [start = end.start, ...rest] = flattenPath(end, CURVE_TOLERANCE_MM);
  return {
    start: { x: start.x, y: start.y * factor },
    edges: rest.map(({ x, y }) => lineTo(x, y * factor)),
  };
}

function sideEdges(part: TurnedPart, from: number, to: number): Edge[] {
  if (to <= from) return [];
  const { waist, radius } = part;
  if (waist === null || waist.radius >= radius || waist.length <= 0) return [lineTo(radius, to)];
  const low = Math.min(to, Math.max(from, waist.from));
  const high = Math.min(to, Math.max(low, waist.from + waist.length));
  if (high <= low) return [lineTo(radius, to)];
  const edges: Edge[] = low > from ? [lineTo(radius, low)] : [];
  edges.push(...waistEdges(waist.kind, { radius, narrow: Math.max(0, waist.radius), low, high }));
  return high < to ? [...edges, lineTo(radius, to)] : edges;
}

type Waist = {
  readonly radius: number;
  readonly narrow: number;
  readonly low: number;
  readonly high: number;
};

function waistEdges(kind: 'spool' | 'serrated' | 'mushroom', waist: Waist): Edge[] {
  const { radius, narrow, low, high } = waist;
  switch (kind) {
    case 'spool':
      return spoolEdges(waist);
    case 'mushroom':
      return [lineTo(narrow, low), lineTo(radius, high)];
    case 'serrated': {
      const count = Math.max(1, Math.round((high - low) / SERRATION_PITCH_MM));
      const step = (high - low) / (2 * count - 1);
      return Array.from({ length: count }, (_, i) => low + 2 * i * step).flatMap((y) => [
        lineTo(radius, y),
        lineTo(narrow, y),
        lineTo(narrow, y + step),
        lineTo(radius, y + step),
      ]);
    }
  }
}

function spoolEdges({ radius, narrow, low, high }: Waist): Edge[] {
  const fillet = Math.min((radius - narrow) * WAIST_FILLET_SHARE, (high - low) / 2);
  const inner = narrow + fillet;
  return [
    lineTo(inner, low),
    arcTo({ x: narrow, y: low + fillet }, { x: inner, y: low + fillet }, true),
    lineTo(narrow, high - fillet),
    arcTo({ x: inner, y: high }, { x: inner, y: high - fillet }, true),
    lineTo(radius, high),
  ];
}

const remembered = perObject(workProfile);
