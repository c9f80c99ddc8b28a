/**
 * Plug, sleeve, shell and the rings that hold them, as recipes. Sizes nobody measures come from geometry/body-sizes.ts, so
 * that the solids and the drawn section are the same thing. Frame and units of assembly.ts.
 *
 *      flange  crest                    groove  tail
 *       ____   ________________________      ____
 *      |    |_|   ||      ||      ||   |____|    |      chambers drilled from outside down to the ledges
 *      |    keyway: a slot from end to end            z
 */
import { known } from '../model/assert.ts';
import type { Assembly, AssemblyChamber, AssemblyHole } from '../model/assembly/assembly.ts';
import {
  bodySpans,
  chamberFloorY,
  crestDropAt,
  flangeRadius,
  retainers,
  shellShape,
  slotOf,
} from '../geometry/body-sizes.ts';
import { facetCount, unitCircle } from './facets.ts';
import type { ProfilePoint } from './lathe-mesh.ts';
import { mouthTool } from './mouth-tool.ts';
import type { Lathe, PlanePoint, Prism, Recipe } from './recipe.ts';

/** mm. How far tools reach beyond the metal they take off, so that no two faces coincide. */
const OVERRUN_MM = 1;

/** Builds the recipe of a body by its place, inside to outside. */
export function bodyRecipe(assembly: Assembly, bodyIndex: number): Recipe {
  const isShell = bodyIndex === assembly.bodies.length - 1;
  const blank = isShell ? shellBlank(assembly) : turnedBlank(assembly, bodyIndex);
  const slot = bodyIndex === 0 ? [keywaySlot(assembly)] : [bore(assembly, bodyIndex)];
  const drilled = assembly.chambers
    .filter((chamber) => !chamber.closed)
    .flatMap((chamber) => chamberTools(assembly, bodyIndex, chamber));
  const worn = isShell ? [] : wornCrests(assembly, bodyIndex);
  return { kind: 'difference', from: blank, take: [...slot, ...drilled, ...worn] };
}

/** Builds the recipe of the ring that keeps the inner body of a line from coming forward. */
export function retainerRecipe(assembly: Assembly, lineIndex: number): Recipe {
  const ring = known(retainers(assembly)[lineIndex], `retainer ${lineIndex}`);
  const { front, back } = ring.span;
  return alongPlug(
    [
      { r: ring.innerRadius, y: front },
      { r: ring.outerRadius, y: front },
      { r: ring.outerRadius, y: back },
      { r: ring.innerRadius, y: back },
    ],
    ring.inner.axisY,
    true,
  );
}

/** Flange, round, groove for the ring, tail. */
function turnedBlank(assembly: Assembly, bodyIndex: number): Lathe {
  const spans = bodySpans(assembly);
  const body = known(assembly.bodies[bodyIndex], `body ${bodyIndex}`);
  const span = known(spans[bodyIndex], `span ${bodyIndex}`);
  const outer = known(spans[bodyIndex + 1], `span ${bodyIndex + 1}`);
  const ring = known(retainers(assembly)[bodyIndex], `retainer ${bodyIndex}`);
  const stretches = [
    { from: span.front, to: outer.front, radius: flangeRadius(assembly, bodyIndex) },
    { from: Math.max(span.front, outer.front), to: ring.span.front, radius: body.outerRadius },
    { from: ring.span.front, to: ring.span.back, radius: ring.innerRadius },
    { from: ring.span.back, to: span.back, radius: body.outerRadius },
  ].filter(({ from, to }) => to > from);
  const steps = stretches.flatMap(({ from, to, radius }) => [
    { r: radius, y: from },
    { r: radius, y: to },
  ]);
  return alongPlug([{ r: 0, y: span.front }, ...steps, { r: 0, y: span.back }], body.axisY);
}

/** A barrel around the bore with a tower over it. */
function shellBlank(assembly: Assembly): Recipe {
  const span = known(bodySpans(assembly).at(-1), 'span of the shell');
  const { barrelRadius, axisY, towerHalfWidth, topY } = shellShape(assembly);
  const barrel = alongPlug(
    [
      { r: 0, y: span.front },
      { r: barrelRadius, y: span.front },
      { r: barrelRadius, y: span.back },
      { r: 0, y: span.back },
    ],
    axisY,
  );
  const tower: Prism = {
    kind: 'prism',
    along: 'z',
    from: span.front,
    to: span.back,
    loops: [rectangle(-towerHalfWidth, axisY, towerHalfWidth, topY)],
  };
  return { kind: 'union', of: [barrel, tower] };
}

function bore(assembly: Assembly, bodyIndex: number): Lathe {
  const body = known(assembly.bodies[bodyIndex], `body ${bodyIndex}`);
  const span = known(bodySpans(assembly)[bodyIndex], `span ${bodyIndex}`);
  const [from, to] = [span.front - OVERRUN_MM, span.back + OVERRUN_MM];
  const r = body.boreRadius;
  return alongPlug(
    [
      { r: 0, y: from },
      { r, y: from },
      { r, y: to },
      { r: 0, y: to },
    ],
    body.axisY,
  );
}

function keywaySlot(assembly: Assembly): Prism {
  const slot = slotOf(assembly);
  const span = known(bodySpans(assembly)[0], 'span of the plug');
  return {
    kind: 'prism',
    along: 'z',
    from: span.front - OVERRUN_MM,
    to: span.back + OVERRUN_MM,
    loops: [rectangle(-slot.halfWidth, slot.bottomY, slot.halfWidth, slot.topY)],
  };
}

/** The drill and the tools for its mouths. */
function chamberTools(assembly: Assembly, bodyIndex: number, chamber: AssemblyChamber): Recipe[] {
  const body = known(assembly.bodies[bodyIndex], `body ${bodyIndex}`);
  const hole = known(chamber.holes[bodyIndex], `hole ${bodyIndex} of chamber ${chamber.number}`);
  const isShell = bodyIndex === assembly.bodies.length - 1;
  const crest = body.outerRadius - crestDropAt(assembly, bodyIndex, chamber);
  const from = bodyIndex === 0 ? chamberFloorY(assembly, chamber) : body.axisY;
  const to = isShell ? chamber.capY : body.axisY + body.outerRadius + OVERRUN_MM;
  const place = { x: hole.sideways, z: chamber.z };
  const outer = isShell ? [] : mouthTool(hole.outerMouth, hole.radius, place, crest, body.axisY, 'outer');
  const inner =
    bodyIndex === 0
      ? []
      : mouthTool(hole.innerMouth, hole.radius, place, body.boreRadius, body.axisY, 'inner');
  return [drill(hole, chamber.z, from, to), ...outer, ...inner];
}

function drill(hole: AssemblyHole, z: number, from: number, to: number): Lathe {
  const r = hole.radius;
  return {
    kind: 'lathe',
    profile: [
      { r: 0, y: from },
      { r, y: from },
      { r, y: to },
      { r: 0, y: to },
    ],
    isRing: false,
    axis: 'y',
    at: { x: hole.sideways, y: 0, z },
    drape: null,
  };
}

/** What wear or a file took off the upper half of the round, halfway to the neighbouring chambers. */
function wornCrests(assembly: Assembly, bodyIndex: number): Prism[] {
  const body = known(assembly.bodies[bodyIndex], `body ${bodyIndex}`);
  const front = known(bodySpans(assembly)[bodyIndex + 1], `span ${bodyIndex + 1}`).front;
  const ring = known(retainers(assembly)[bodyIndex], `retainer ${bodyIndex}`);
  const { chambers } = assembly;
  return chambers.flatMap((chamber, i) => {
    const drop = crestDropAt(assembly, bodyIndex, chamber);
    if (drop <= 0) return [];
    const [before, after] = [chambers[i - 1], chambers[i + 1]];
    return [
      {
        kind: 'prism',
        along: 'z',
        from: before ? (before.z + chamber.z) / 2 : front,
        to: after ? (chamber.z + after.z) / 2 : ring.span.front,
        loops: [halfRing(body.outerRadius - drop, body.outerRadius + OVERRUN_MM, body.axisY)],
      } satisfies Prism,
    ];
  });
}

function halfRing(inner: number, outer: number, axisY: number): PlanePoint[] {
  const facets = facetCount(outer);
  const circle = unitCircle(facets);
  const arc = Array.from({ length: facets / 2 + 1 }, (_, i) => ({
    x: known(circle[2 * i], 'circle point'),
    y: known(circle[2 * i + 1], 'circle point'),
  }));
  return [
    ...arc.map(({ x, y }) => ({ x: outer * x, y: axisY + outer * y })),
    ...arc.map(({ x, y }) => ({ x: inner * x, y: axisY + inner * y })).reverse(),
  ];
}

function rectangle(left: number, bottom: number, right: number, top: number): PlanePoint[] {
  return [
    { x: left, y: bottom },
    { x: right, y: bottom },
    { x: right, y: top },
    { x: left, y: top },
  ];
}

function alongPlug(profile: readonly ProfilePoint[], axisY: number, isRing = false): Lathe {
  return { kind: 'lathe', profile, isRing, axis: 'z', at: { x: 0, y: axisY, z: 0 }, drape: null };
}
