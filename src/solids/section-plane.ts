/**
 * The plane that cuts the solids open, and how it looks from a part that has been moved or turned.
 *
 * A point is kept when normal · point >= offset. The face that the cut leaves looks against the normal. Lengths mm.
 */
export type Triple = readonly [number, number, number];

export type SectionPlane = {
  /** Length 1. */
  readonly normal: Triple;
  readonly offset: number;
};

/** Where a part stands: first moved by `shift`, then turned by `turn` about a line along z at height `axisY`. */
export type Placement = {
  readonly shift: Triple;
  readonly turn: number;
  readonly axisY: number;
};

export const UNMOVED: Placement = { shift: [0, 0, 0], turn: 0, axisY: 0 };

/** Builds a plane across one of the axes; `flipped` keeps the other half. */
export function axisPlane(axis: 'x' | 'y' | 'z', offset: number, flipped = false): SectionPlane {
  const sign = flipped ? -1 : 1;
  return {
    normal: [axis === 'x' ? sign : 0, axis === 'y' ? sign : 0, axis === 'z' ? sign : 0],
    offset: sign * offset,
  };
}

/** Gives the plane in the frame of a part that stands at the placement, rounded to 1e-6 so that noise cuts nothing anew. */
export function planeForPart(plane: SectionPlane, placement: Placement): SectionPlane {
  const [x, y, z] = plane.normal;
  const cosine = Math.cos(placement.turn);
  const sine = Math.sin(placement.turn);
  const turned: Triple = [x * cosine + y * sine, y * cosine - x * sine, z];
  // n · (axis + turn (p + shift - axis)) >= offset, solved for p.
  const fromAxis = placement.axisY * (turned[1] - y);
  const moved = turned[0] * placement.shift[0] + turned[1] * placement.shift[1] + z * placement.shift[2];
  return {
    normal: [rounded(turned[0]), rounded(turned[1]), rounded(z)],
    offset: rounded(plane.offset + fromAxis - moved),
  };
}

/** Makes the identity of a plane, or of no cut at all. */
export function planeKey(plane: SectionPlane | null): string {
  return plane ? [...plane.normal, plane.offset].join(' ') : 'whole';
}

/** Directions along a cut face: hatching and outlines are measured along these. */
export function planeAxes(plane: SectionPlane): { readonly across: Triple; readonly up: Triple } {
  const [x, y, z] = plane.normal;
  // Looked at from the side that was cut away, up stays up; a level cut has the plug's length upward instead.
  const level = Math.hypot(x, z);
  if (level < 1e-9) return { across: [0, 0, 1], up: [y > 0 ? -1 : 1, 0, 0] };
  const across: Triple = [-z / level, 0, x / level];
  return { across, up: [(-x * y) / level, level, (-y * z) / level] };
}

function rounded(value: number): number {
  return Math.round(value * 1e6) / 1e6 + 0;
}
