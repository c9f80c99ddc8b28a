/**
 * The foot of a lower stack: the end that rests on the key, seen from the side. A ball, or a pin's lower end.
 *
 * Frame: `across` along the key from the part's axis, growing towards the tip; the drop is how far the foot's surface
 * lies above its own lowest point, so a part with its lowest point at `contact` touches a key whose height is
 * contact + drop. mm.
 *
 *    ball              cone with a small flat      dome               radius             bevel
 *     .--.              |      |                   |      |           |      |           |      |
 *    (    )              \    /                    '.    .'           |      |           |      |
 *     '--'                \__/                       '--'             '.____.'            \____/
 *
 * Every foot is as wide below as its part allows and never hollow: a dimple that faces the key rests on its rim and is
 * taken as a flat. Past the rim there is no part: the drop is infinite.
 */
import { assert } from '../assert.ts';
import type { EndShape } from '../end-shape.ts';

export type FootPiece =
  /** `drop` is that at `from`. */
  | {
      readonly kind: 'straight';
      readonly from: number;
      readonly to: number;
      readonly drop: number;
      readonly slope: number;
    }
  /** Around a centre `radius` above the foot's lowest level. */
  | {
      readonly kind: 'arc';
      readonly from: number;
      readonly to: number;
      readonly centre: number;
      readonly radius: number;
    };

/** Pieces join from rim to rim and bend one way only. */
export type Foot = { readonly radius: number; readonly pieces: readonly FootPiece[] };

/** A stretch, of distance across or of slopes. */
export type Span = { readonly from: number; readonly to: number };

/** Builds the foot of a part from the shape of its lower end. */
export function buildFoot(end: EndShape, partRadius: number): Foot {
  assert(partRadius > 0 && Number.isFinite(partRadius), `part radius ${partRadius} mm`);
  return { radius: partRadius, pieces: footPieces(end, partRadius).filter(({ from, to }) => from < to) };
}

/** Builds the foot of a ball. */
export function buildBallFoot(ballDiameter: number): Foot {
  return buildFoot({ kind: 'sphere' }, ballDiameter / 2);
}

/** Measures the drop; infinite past the rim. */
export function footDrop(foot: Foot, across: number): number {
  for (const piece of foot.pieces) {
    if (across <= piece.to && across >= piece.from) return pieceDrop(piece, across);
  }
  return Infinity;
}

/** Finds where a straight edge of this slope touches the foot from below: one point, or a whole straight piece. */
export function footSupport(foot: Foot, slope: number): Span {
  let from = -foot.radius;
  for (const piece of foot.pieces) {
    if (piece.kind === 'straight') {
      if (piece.slope > slope) return { from, to: piece.from };
      if (piece.slope === slope) return { from: piece.from, to: piece.to };
    } else {
      const tangent = piece.centre + (piece.radius * slope) / Math.sqrt(1 + slope * slope);
      if (tangent < piece.from) return { from, to: piece.from };
      if (tangent <= piece.to) return { from: tangent, to: tangent };
    }
    from = piece.to;
  }
  return { from: foot.radius, to: foot.radius };
}

/** Slopes of all straight edges that can touch the foot at this point: one, or at a corner of the foot a span. */
export function footSlopes(foot: Foot, across: number): Span {
  let from = -Infinity;
  for (const piece of foot.pieces) {
    if (across < piece.from) break;
    if (across === piece.from) return { from, to: pieceSlope(piece, across) };
    from = pieceSlope(piece, Math.min(across, piece.to));
    if (across < piece.to) return { from, to: from };
  }
  return { from, to: Infinity };
}

function pieceDrop(piece: FootPiece, across: number): number {
  if (piece.kind === 'straight') return piece.drop + piece.slope * (across - piece.from);
  const along = across - piece.centre;
  return piece.radius - Math.sqrt(Math.max(0, piece.radius * piece.radius - along * along));
}

function pieceSlope(piece: FootPiece, across: number): number {
  if (piece.kind === 'straight') return piece.slope;
  const along = across - piece.centre;
  if (along === 0) return 0;
  return along / Math.sqrt(Math.max(0, piece.radius * piece.radius - along * along));
}

function footPieces(end: EndShape, radius: number): FootPiece[] {
  switch (end.kind) {
    case 'flat':
    case 'cup':
      return [{ kind: 'straight', from: -radius, to: radius, drop: 0, slope: 0 }];
    case 'sphere':
      return [{ kind: 'arc', from: -radius, to: radius, centre: 0, radius }];
    case 'dome':
      assert(end.radius >= radius, `crown ${end.radius} mm on a part of radius ${radius} mm`);
      return [{ kind: 'arc', from: -radius, to: radius, centre: 0, radius: end.radius }];
    case 'radius': {
      const inner = radius - end.radius;
      assert(inner >= 0 && end.radius >= 0, `rounded edge ${end.radius} mm on a part of radius ${radius} mm`);
      return [
        { kind: 'arc', from: -radius, to: -inner, centre: -inner, radius: end.radius },
        { kind: 'straight', from: -inner, to: inner, drop: 0, slope: 0 },
        { kind: 'arc', from: inner, to: radius, centre: inner, radius: end.radius },
      ];
    }
    case 'bevel':
      assert(end.width >= 0 && end.width <= radius, `bevel ${end.width} mm on a part of radius ${radius} mm`);
      assert(end.angle > 0 && end.angle < Math.PI / 2, `bevel angle ${end.angle} rad`);
      return slopedPieces(radius, radius - end.width, Math.tan(end.angle));
    case 'cone':
      assert(end.includedAngle > 0 && end.includedAngle < Math.PI, `tip angle ${end.includedAngle} rad`);
      return slopedPieces(
        radius,
        Math.min(radius, end.tipFlatDiameter / 2),
        1 / Math.tan(end.includedAngle / 2),
      );
  }
}

function slopedPieces(radius: number, inner: number, rise: number): FootPiece[] {
  return [
    { kind: 'straight', from: -radius, to: -inner, drop: (radius - inner) * rise, slope: -rise },
    { kind: 'straight', from: -inner, to: inner, drop: 0, slope: 0 },
    { kind: 'straight', from: inner, to: radius, drop: 0, slope: rise },
  ];
}
