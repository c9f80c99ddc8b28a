/**
 * Solid bodies of one split at its line, in general-purpose solid geometry (manifold-3d), to hold the window against.
 *
 * Frame of the line (origin on the body's axis, y up, x across, z along, mm), moved down by the line's radius so that
 * single-precision vertices are good to 5e-7 mm. Both bodies are mirror-symmetric in z, and only the half of the mouth
 * that comes towards the upper part can meet it, so a quarter of each is built, a little more than that where it is cut.
 * Facets are fine around one point, given by the caller, where vertices lie exactly on it; elsewhere facets stay on the
 * inner side of the surface by less than 1e-4 mm (the wall of the hole) or a few 1e-4 mm (crest and domes).
 */
import ManifoldModule, { type Manifold as Solid, type ManifoldToplevel } from 'manifold-3d';
import { endDrop } from '../../src/model/end-shape.ts';
import type { LinePoint, WindowInput } from '../../src/model/window/window-input.ts';

export type Kernel = ManifoldToplevel;

export async function loadKernel(): Promise<Kernel> {
  const kernel = await ManifoldModule();
  kernel.setup();
  return kernel;
}

type Point = [number, number, number];

const DEG = Math.PI / 180;

/** A solid between a grid of surface points and a flat base; `up`: the surface is on top of the base. */
function solidUnder(kernel: Kernel, surface: Point[][], base: (point: Point) => Point, up: boolean): Solid {
  const columns = surface.length;
  const rings = surface[0]!.length;
  const vertices: number[] = [];
  const add = (point: Point): number => {
    vertices.push(...point);
    return vertices.length / 3 - 1;
  };
  const top = surface.map((column) => column.map(add));
  const inner = surface.map((column) => add(base(column[0]!)));
  const outer = surface.map((column) => add(base(column[rings - 1]!)));
  const triangles: number[] = [];
  const quad = (a: number, b: number, c: number, d: number): void => {
    triangles.push(...(up ? [a, b, c, a, c, d] : [a, c, b, a, d, c]));
  };
  for (let i = 0; i + 1 < columns; i++) {
    const here = top[i]!;
    const next = top[i + 1]!;
    for (let j = 0; j + 1 < rings; j++) quad(here[j]!, next[j]!, next[j + 1]!, here[j + 1]!);
    quad(inner[i]!, outer[i]!, outer[i + 1]!, inner[i + 1]!);
    quad(inner[i]!, inner[i + 1]!, next[0]!, here[0]!);
    quad(outer[i]!, here[rings - 1]!, next[rings - 1]!, outer[i + 1]!);
  }
  for (const [i, first] of [
    [0, true],
    [columns - 1, false],
  ] as const) {
    const column = [...top[i]!, outer[i]!];
    for (let j = 0; j + 1 < column.length; j++) {
      const face = [inner[i]!, column[j]!, column[j + 1]!];
      if (first !== up) face.reverse();
      triangles.push(...face);
    }
  }
  return new kernel.Manifold(
    new kernel.Mesh({
      numProp: 3,
      vertProperties: new Float32Array(vertices),
      triVerts: new Uint32Array(triangles),
    }),
  );
}

/** How much of a body is fine: all of it, what lies around one point, or nothing but that is there. */
export type Detail = 'all' | 'fine at the point' | 'around the point';

/**
 * Angles from a little before 0 to a little past 90 deg, a quarter of a degree apart around one of them and exactly on it,
 * a degree apart near it and, unless all are wanted, five degrees apart elsewhere. rad. Each with the factor by which a
 * circle through these angles must be larger for its chords to touch it from outside.
 */
function anglesAround(fine: number, detail: Detail): { angle: number; outside: number }[] {
  const degrees: number[] = [];
  const centre = fine / DEG;
  const all = detail === 'all';
  for (let at = -1.5; at <= 1.5001; at += 0.25) degrees.push(centre + at);
  if (detail === 'around the point') return degrees.map((at) => ({ angle: at * DEG, outside: 1 }));
  for (let step = 2.5; step < 100; step += step < 6 || all ? 1 : 5)
    degrees.push(centre - step, centre + step);
  const sorted = degrees.filter((at) => at >= -4 && at <= 96).sort((one, other) => one - other);
  return sorted.map((at, i) => {
    const gap = Math.max(at - (sorted[i - 1] ?? at), (sorted[i + 1] ?? at) - at);
    return { angle: at * DEG, outside: gap > 0.5 ? 1 / Math.cos((gap / 2) * DEG) : 1 };
  });
}

function sortedApart(values: number[], low: number, high: number, apart: number): number[] {
  const sorted = values.filter((at) => at >= low && at <= high).sort((one, other) => one - other);
  const kept: number[] = [];
  for (const at of sorted) if (kept.length === 0 || at - kept[kept.length - 1]! > apart) kept.push(at);
  return kept;
}

/** The inner body around the half of the mouth that comes, turned by an angle. `fine`: a point on it, turned. */
export function innerSolid(
  kernel: Kernel,
  input: WindowInput,
  turn: number,
  fine: LinePoint,
  detail: Detail,
): Solid {
  const { mouth, radius: hole } = input.innerHole;
  const crest = input.lineRadius - input.crestDrop;
  const size = mouth.kind === 'sharp' ? 0 : mouth.size;
  const sin = Math.sin(turn);
  const cos = Math.cos(turn);
  const fineAcross = fine.x * cos + fine.y * sin;
  const fineRadius = Math.hypot(fineAcross, fine.z);
  const furthest = Math.min(0.8 * crest, 2.4 * hole);
  const surfaceUp = (across: number, radius: number): number => {
    const round = Math.sqrt(crest ** 2 - across ** 2);
    if (mouth.kind === 'countersunk') return Math.min(round, crest - size + radius - hole);
    const drop = Math.max(0, size - (radius - hole));
    return Math.sqrt((crest - drop) ** 2 - across ** 2);
  };
  /** Where the strip of a broken mouth ends, along one direction from the hole's axis. */
  const stripEnd = (cosine: number): number => {
    if (mouth.kind !== 'countersunk') return hole + size;
    let from = hole;
    let to = hole + size;
    for (let i = 0; i < 60; i++) {
      const middle = (from + to) / 2;
      if (crest - size + middle - hole < Math.sqrt(crest ** 2 - (middle * cosine) ** 2)) from = middle;
      else to = middle;
    }
    return Math.max(hole + 1e-4, to);
  };
  const share = (fineRadius - hole) / Math.max(1e-9, stripEnd(fineAcross / fineRadius) - hole);
  const isOnStrip = size > 0 && share > 0.01 && share < 0.99;
  const shares =
    size === 0 ? [] : sortedApart([0, 0.25, 0.5, 0.75, 1, ...(isOnStrip ? [share] : [])], 0, 1, 1e-3);
  const surface = anglesAround(Math.atan2(fine.z, fineAcross), detail).map(({ angle, outside }) => {
    const cosine = Math.cos(angle);
    const end = size === 0 ? hole : stripEnd(cosine);
    const radii = size === 0 ? [hole] : shares.map((at) => hole + at * (end - hole));
    for (const beyond of [0.2, 0.8]) if (end + beyond < furthest - 0.1) radii.push(end + beyond);
    while (radii.length < shares.length + 3) radii.push(radii[radii.length - 1]! + 0.05);
    radii.push(Math.max(furthest, radii[radii.length - 1]! + 0.05));
    return radii.map((radius): Point => {
      const across = radius * outside * cosine;
      return [across, surfaceUp(across, radius), radius * outside * Math.sin(angle)];
    });
  });
  const turned = ([across, up, z]: Point): Point => [
    across * cos - up * sin,
    across * sin + up * cos - input.lineRadius,
    z,
  ];
  // the base is laid in the body's own frame, so the surface is turned afterwards
  const base = (point: Point): Point => {
    const across = point[0] * cos + (point[1] + input.lineRadius) * sin;
    return turned([across, 0.4 * crest, point[2]]);
  };
  return solidUnder(
    kernel,
    surface.map((column) => column.map(turned)),
    base,
    true,
  );
}

/** The upper part, its lowest point at `height`, pushed with the turn. `fine`: a point under its end. */
export function upperSolid(
  kernel: Kernel,
  input: WindowInput,
  height: number,
  fine: LinePoint,
  detail: Detail,
): Solid {
  const { bottom, radius, sideways } = input.upper;
  const axis = -sideways;
  const fineRadius = Math.hypot(fine.x - axis, fine.z);
  const rings = [0.001, radius];
  if (bottom.kind === 'bevel') rings.push(radius - bottom.width);
  if (bottom.kind === 'radius') {
    for (let at = 0; at < 90; at += 15) rings.push(radius - bottom.radius * (1 - Math.sin(at * DEG)));
  }
  if (bottom.kind === 'dome') for (let i = 1; i < 7; i++) rings.push((radius * i) / 7);
  const nearRim = fineRadius > radius - 1e-5;
  if (!nearRim) rings.push(fineRadius);
  if (!nearRim && bottom.kind === 'dome') rings.push(fineRadius - 0.05, fineRadius + 0.05);
  const sorted = sortedApart(rings, 0, radius, 1e-5);
  const surface = anglesAround(Math.atan2(fine.z, fine.x - axis), detail).map(({ angle }) =>
    sorted.map((at): Point => {
      const y = height + endDrop(bottom, radius, at) - input.lineRadius;
      return [axis + at * Math.cos(angle), y, at * Math.sin(angle)];
    }),
  );
  return solidUnder(kernel, surface, ([x, , z]) => [x, 3, z], false);
}

/** The top of the lower part, its highest point at `height`, in the frame of the body itself (origin on its axis). */
export function topSolid(
  kernel: Kernel,
  input: WindowInput,
  height: number,
  aside: number,
  across: number,
): Solid {
  const { top, radius } = input.lower;
  const fine = Math.abs(across - aside);
  const rings = [0.001, radius / 2, radius];
  if (top.kind === 'bevel') rings.push(radius - top.width);
  if (top.kind === 'dome') for (let i = 1; i < 10; i++) rings.push((radius * i) / 10);
  for (const off of [-0.03, 0, 0.03]) rings.push(fine + off);
  const sorted = sortedApart(rings, 0.001, radius, 1e-5);
  const surface: Point[][] = [];
  for (let at = -2; at <= 182; at += at < 2 || at >= 178 ? 1 : 8) {
    const angle = at * DEG;
    surface.push(
      sorted.map((ring) => [
        aside + ring * Math.cos(angle),
        height - endDrop(top, radius, ring),
        ring * Math.sin(angle),
      ]),
    );
  }
  return solidUnder(kernel, surface, ([x, , z]) => [x, 0.4 * input.lineRadius, z], true);
}

/**
 * The outer body over the line: what lies outside the bore, 50 deg to either side of a direction (from upright, to +x),
 * around a bore axis in the same frame. Fine around that direction and with a corner exactly there; facets have their
 * corners on the bore and reach into it by less than 2e-4 mm.
 */
export function boreSolid(
  kernel: Kernel,
  radius: number,
  axis: { x: number; y: number },
  towards: number,
): Solid {
  const degrees: number[] = [];
  for (let at = 0; at <= 50; at += at < 0.99 ? 0.2 : 0.6) degrees.push(at, -at);
  const sorted = [...new Set(degrees)].sort((one, other) => one - other);
  const centre = Math.atan2(radius * Math.sin(towards) - axis.x, radius * Math.cos(towards) - axis.y);
  const at = (angle: number, reach: number): [number, number] => [
    axis.x + reach * Math.sin(angle),
    axis.y + reach * Math.cos(angle),
  ];
  const bore = sorted.map((step) => at(centre + step * DEG, radius));
  const back = [50, 25, 0, -25, -50].map((step) => at(centre + step * DEG, 1.6 * radius));
  return kernel.Manifold.extrude([[...bore, ...back]], 2 * radius, 0, 0, [1, 1], true);
}
