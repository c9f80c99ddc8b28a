/**
 * Lays the drawn and the solid rendering of one section over each other. A picture is one byte a pixel, top row first: 0 for
 * nothing, otherwise the part's number.
 */
import type { Polygon } from '../../src/geometry/polygon.ts';
import { sidesOf } from '../../src/geometry/polygon.ts';

export type FlatPicture = { readonly bytes: Uint8Array; readonly width: number; readonly height: number };

export type Agreement = {
  /** Pixels that differ. */
  readonly differing: number;
  /** Of them, the one furthest from every drawn outline, px. */
  readonly furthest: number;
  readonly furthestAt: string;
  /** Parts that one of the two does not show. */
  readonly missing: readonly string[];
  readonly shown: number;
};

/** Compares two pictures; `outlines` are all drawn outlines in pixels. */
export function compareSections(
  drawn: FlatPicture,
  solid: FlatPicture,
  outlines: readonly Polygon[],
  nameOf: ReadonlyMap<number, string>,
): Agreement {
  const near = outlineGrid(outlines, drawn);
  let differing = 0;
  let furthest = 0;
  let furthestAt = '';
  for (let i = 0; i < drawn.bytes.length; i++) {
    if (drawn.bytes[i] === solid.bytes[i]) continue;
    differing += 1;
    const x = (i % drawn.width) + 0.5;
    const y = Math.floor(i / drawn.width) + 0.5;
    const away = near(x, y);
    if (away <= furthest) continue;
    furthest = away;
    furthestAt = `(${x}, ${y}): drawn ${name(nameOf, drawn.bytes[i])}, solid ${name(nameOf, solid.bytes[i])}`;
  }
  const [inDrawing, inSolids] = [new Set(drawn.bytes), new Set(solid.bytes)];
  const numbers = [...new Set([...inDrawing, ...inSolids])].filter((number) => number > 0);
  const missing = numbers.filter((number) => !inDrawing.has(number) || !inSolids.has(number));
  return {
    differing,
    furthest,
    furthestAt,
    missing: missing.map((number) => name(nameOf, number)),
    shown: numbers.length,
  };
}

function name(nameOf: ReadonlyMap<number, string>, number: number | undefined): string {
  return number === 0 ? 'nothing' : (nameOf.get(number ?? -1) ?? `number ${String(number)}`);
}

type Side = ReturnType<typeof sidesOf>[number];

/** px. Sides are kept by the cells they pass, so that a pixel looks only at those around it. */
const CELL = 8;

function outlineGrid(outlines: readonly Polygon[], { width }: FlatPicture): (x: number, y: number) => number {
  const columns = Math.ceil(width / CELL) + 2;
  const cells = new Map<number, Side[]>();
  const cellOf = (x: number, y: number) => Math.floor(y / CELL) * columns + Math.floor(x / CELL);
  for (const side of outlines.flatMap(sidesOf)) {
    const [from, to] = side;
    const steps = Math.max(1, Math.ceil((Math.hypot(to.x - from.x, to.y - from.y) * 2) / CELL));
    const passed = new Set<number>();
    for (let i = 0; i <= steps; i++) {
      const t = i / steps;
      passed.add(cellOf(from.x + t * (to.x - from.x), from.y + t * (to.y - from.y)));
    }
    for (const cell of passed) cells.set(cell, [...(cells.get(cell) ?? []), side]);
  }
  return (x, y) => {
    let least = Infinity;
    for (let row = -1; row <= 1; row++) {
      for (let column = -1; column <= 1; column++) {
        for (const side of cells.get(cellOf(x + column * CELL, y + row * CELL)) ?? [])
          least = Math.min(least, distance(side, x, y));
      }
    }
    return least;
  };
}

function distance([from, to]: Side, x: number, y: number): number {
  const [dx, dy] = [to.x - from.x, to.y - from.y];
  const square = dx * dx + dy * dy;
  const t = square === 0 ? 0 : Math.min(1, Math.max(0, ((x - from.x) * dx + (y - from.y) * dy) / square));
  return Math.hypot(x - from.x - t * dx, y - from.y - t * dy);
}
