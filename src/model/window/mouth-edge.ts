/**
 * The mouth of the inner body's hole as a family of edges.
 *
 * Where hole and surface meet there is a curve in space; a broken edge is a strip between two such curves, and every
 * curve between them is again one of the family, `inward` from the wall of the hole. Frame of the inner body: across
 * and z as in `window-input.ts`, up along the hole, so that the curve stays where it is while the body turns.
 *
 *      up
 *      |   wall edge       surface edge
 *      |      ._________________.-----------   surface, radius of the body
 *      |      |`. strip     .'                  sharp: both edges are one
 *      |______|__`______.'___ across
 *           hole radius
 *
 * Each edge lies on a round body of radius `bodyRadius`, is cut off at the height `ceiling` (Infinity: not at all), and
 * stands over a circle of radius `holeRadius` in plan. The outer edge of a countersink on a round body is the one that
 * does not: it is the curve where cone and surface meet, and its plan distance from the hole's axis grows with its
 * height (`coneFoot`: the height at which that cone would come to its point).
 */
import type { MouthShape, WindowInput } from './window-input.ts';

export type MouthEdge = {
  readonly bodyRadius: number;
  readonly ceiling: number;
  readonly holeRadius: number;
  readonly coneFoot: number | null;
  /** The greatest distance across at which the edge exists. */
  readonly widest: number;
};

/** The mouth with all lengths settled: the body's radius is that of its crest where the hole is. */
export type Mouth = {
  readonly bodyRadius: number;
  readonly holeRadius: number;
  readonly kind: MouthShape['kind'];
  readonly size: number;
};

/** Reads the mouth of an input; a worn crest is taken as a rounder, smaller body around the hole. */
export function mouthOf(input: WindowInput): Mouth {
  const { mouth, radius } = input.innerHole;
  return {
    bodyRadius: input.lineRadius - input.crestDrop,
    holeRadius: radius,
    kind: mouth.kind === 'sharp' || mouth.size <= 0 ? 'sharp' : mouth.kind,
    size: mouth.kind === 'sharp' ? 0 : Math.max(0, mouth.size),
  };
}

/** Gives the edge of the family that lies `inward` (0 at the wall, up to the mouth's size) from the wall of the hole. */
export function mouthEdge(mouth: Mouth, inward: number): MouthEdge {
  const holeRadius = mouth.holeRadius + inward;
  const bodyRadius =
    mouth.kind === 'deburred along' ? mouth.bodyRadius - mouth.size + inward : mouth.bodyRadius;
  const ceiling = mouth.kind === 'countersunk' ? mouth.bodyRadius - mouth.size + inward : Infinity;
  return { bodyRadius, ceiling, holeRadius, coneFoot: null, widest: holeRadius };
}

/** Gives the outermost edge of a broken mouth, where strip and surface meet; null if the mouth is sharp. */
export function surfaceEdge(mouth: Mouth): MouthEdge | null {
  if (mouth.kind === 'sharp') return null;
  if (mouth.kind === 'deburred along') return mouthEdge(mouth, mouth.size);
  const coneFoot = coneFootOf(mouth);
  return {
    bodyRadius: mouth.bodyRadius,
    ceiling: Infinity,
    holeRadius: mouth.holeRadius,
    coneFoot,
    widest: Math.min(widestOfCone(mouth), widestAtWall(mouth)),
  };
}

/** Distance across, at z = 0, beyond which the body's surface is untouched. mm. */
export function mouthReach(mouth: Mouth): number {
  if (mouth.kind === 'sharp') return mouth.holeRadius;
  if (mouth.kind === 'deburred along') return mouth.holeRadius + mouth.size;
  return Math.max(mouth.holeRadius, widestOfCone(mouth));
}

/** Height of an edge, mm. */
export function edgeUp(edge: MouthEdge, across: number): number {
  return Math.min(edge.ceiling, Math.sqrt(edge.bodyRadius ** 2 - across * across));
}

/** Square of an edge's distance along z from the hole's axis, mm2. */
export function edgeDepthSquared(edge: MouthEdge, across: number): number {
  if (edge.coneFoot === null) return edge.holeRadius ** 2 - across * across;
  return (Math.sqrt(edge.bodyRadius ** 2 - across * across) - edge.coneFoot) ** 2 - across * across;
}

/** Half the rate of that square, per mm across. mm. */
export function edgeDepthRate(edge: MouthEdge, across: number): number {
  if (edge.coneFoot === null) return -across;
  const up = Math.sqrt(edge.bodyRadius ** 2 - across * across);
  return -(up - edge.coneFoot) * (across / up) - across;
}

/** How far across the edge is where it stands this far along z from the hole's axis; 0 if it never gets there. mm. */
export function edgeAcrossAtDepth(edge: MouthEdge, depth: number): number {
  if (edge.coneFoot === null) return Math.sqrt(Math.max(0, edge.holeRadius ** 2 - depth * depth));
  const foot = edge.coneFoot;
  const up = (foot + Math.sqrt(2 * (depth * depth + edge.bodyRadius ** 2) - foot * foot)) / 2;
  return Math.sqrt(Math.max(0, edge.bodyRadius ** 2 - up * up));
}

/** Where the ceiling cuts the round edge: further in than this the edge is level. mm; 0 if it never does. */
export function ceilingReach(edge: MouthEdge): number {
  if (edge.ceiling >= edge.bodyRadius) return 0;
  return Math.sqrt(edge.bodyRadius ** 2 - edge.ceiling ** 2);
}

function coneFootOf(mouth: Mouth): number {
  return mouth.bodyRadius - mouth.size - mouth.holeRadius;
}

/** Across at z = 0 where cone and surface meet: across + foot = sqrt(body radius^2 - across^2). */
function widestOfCone(mouth: Mouth): number {
  const foot = coneFootOf(mouth);
  return (Math.sqrt(2 * mouth.bodyRadius ** 2 - foot * foot) - foot) / 2;
}

/** Across where the outer edge of a countersink runs into the wall of the hole. */
function widestAtWall(mouth: Mouth): number {
  return Math.sqrt(mouth.bodyRadius ** 2 - (mouth.bodyRadius - mouth.size) ** 2);
}
