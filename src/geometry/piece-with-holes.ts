/**
 * A piece of a body between a lower and an upper edge, with chambers cut out of it. Frame of the long section: x along
 * the plug, y up. mm.
 *
 *      upper edge, in steps from left to right
 *      __________     ____     _____
 *     |          |   |    |   |     |     open at the top: a notch
 *     |          |   |     \_/      |     open at top and bottom: splits the piece
 *     |__________|   |______________|
 *      lower edge
 *
 * Chambers are given by their half widths at heights, lowest first; one that reaches the edge is open there.
 */
import { type Outline, type Point, polygonOutline } from './outline.ts';

/** A level stretch of an edge. Stretches follow each other from left to right. */
export type Step = { readonly from: number; readonly to: number; readonly y: number };

export type HoleRow = { readonly y: number; readonly halfWidth: number };
export type Hole = {
  readonly x: number;
  /** Lowest first. */
  readonly rows: readonly HoleRow[];
  readonly isOpenBelow: boolean;
  readonly isOpenAbove: boolean;
};

export type Piece = {
  readonly lower: readonly Step[];
  readonly upper: readonly Step[];
  readonly holes: readonly Hole[];
};

/** Builds the loops of a piece: one for every stretch between chambers that split it, and one for every closed hole. */
export function pieceOutlines(piece: Piece): Outline[] {
  const splits = piece.holes.filter((hole) => hole.isOpenBelow && hole.isOpenAbove);
  const notches = piece.holes.filter((hole) => hole.isOpenBelow !== hole.isOpenAbove);
  const inside = piece.holes.filter((hole) => !hole.isOpenBelow && !hole.isOpenAbove);
  const left = piece.upper[0]?.from ?? 0;
  const right = piece.upper.at(-1)?.to ?? 0;
  const columns = [...splits, null].map((end, i): Outline | null => {
    const start = splits[i - 1];
    const from = start?.x ?? left;
    const to = end?.x ?? right;
    const own = notches.filter((hole) => hole.x > from && hole.x < to);
    const startWall = start === undefined ? null : wall(start, 1);
    const endWall = end === null ? null : wall(end, -1);
    return columnOutline(piece, own, { from, to, startWall, endWall });
  });
  const loops = columns.filter((outline) => outline !== null);
  return [...loops, ...inside.map((hole) => polygonOutline([...wall(hole, 1), ...wall(hole, -1).reverse()]))];
}

type Column = {
  readonly from: number;
  readonly to: number;
  /** Right side of the chamber to the left, upwards; null at the end of the piece. */
  readonly startWall: readonly Point[] | null;
  readonly endWall: readonly Point[] | null;
};

function columnOutline(piece: Piece, notches: readonly Hole[], column: Column): Outline | null {
  const { startWall, endWall } = column;
  const lowFrom = startWall?.[0]?.x ?? column.from;
  const lowTo = endWall?.[0]?.x ?? column.to;
  const highFrom = startWall?.at(-1)?.x ?? column.from;
  const highTo = endWall?.at(-1)?.x ?? column.to;
  if (lowTo <= lowFrom && highTo <= highFrom) return null;
  const lower = edgePoints(
    piece.lower,
    notches.filter((hole) => hole.isOpenBelow),
    lowFrom,
    lowTo,
    'below',
  );
  const upper = edgePoints(
    piece.upper,
    notches.filter((hole) => hole.isOpenAbove),
    highFrom,
    highTo,
    'above',
  );
  return polygonOutline([
    ...lower,
    ...(endWall ?? []),
    ...upper.reverse(),
    ...[...(startWall ?? [])].reverse(),
  ]);
}

/** An edge from left to right with the notches that open in it. */
function edgePoints(
  steps: readonly Step[],
  notches: readonly Hole[],
  from: number,
  to: number,
  side: 'below' | 'above',
): Point[] {
  const points: Point[] = [];
  for (const step of steps) {
    const start = Math.max(from, step.from);
    const end = Math.min(to, step.to);
    if (end <= start) continue;
    points.push({ x: start, y: step.y });
    for (const hole of notches.filter(({ x }) => x > start && x < end)) {
      const [near, far] = [wall(hole, -1), wall(hole, 1)];
      points.push(...(side === 'below' ? [...near, ...far.reverse()] : [...near.reverse(), ...far]));
    }
    points.push({ x: end, y: step.y });
  }
  return points;
}

/** One side of a chamber, upwards. */
function wall(hole: Hole, side: 1 | -1): Point[] {
  return hole.rows.map(({ y, halfWidth }) => ({ x: hole.x + side * halfWidth, y }));
}
