/**
 * Sizes of plug, sleeve and shell that nobody measures but every picture and solid needs: how the plug is held front and
 * back, how thick the shell is, how high the keyway. They decide nothing; they are chosen so that they never reach into
 * what was measured. One place, so that drawing and solids agree. Frame of assembly.ts; mm.
 *
 *    flange |        tower         | roof
 *     ______|   ____________      |________
 *    |      |__|            |_____|   |  retainer
 *    | plug    |  chamber   |         |#|___
 *    |_________|____________|_________|#|___|  plug's end
 *    z = 0
 */
import { known } from '../model/assert.ts';
import { endDrop } from '../model/end-shape.ts';
import type { Assembly, AssemblyBody, AssemblyChamber } from '../model/assembly/assembly.ts';
import { perObject } from './per-object.ts';

/** Shares of the plug's radius, unless the name says otherwise. Looks only. */
const LOOKS = {
  flangeThickness: 0.2,
  flangeRise: 0.17,
  tail: 0.3,
  retainerThickness: 0.09,
  retainerGroove: 0.1,
  retainerRise: 0.14,
  /** metal of a body left before the first and behind the last chamber */
  endMetal: 0.1,
  barrelWall: 0.42,
  roof: 0.2,
  towerWall: 0.3,
  keyPlayAbove: 0.025,
  metalOverKeyway: 0.12,
} as const;

export type Span = { readonly front: number; readonly back: number };
export type Slot = { readonly halfWidth: number; readonly bottomY: number; readonly topY: number };
export type Retainer = {
  readonly inner: AssemblyBody;
  readonly span: Span;
  readonly innerRadius: number;
  readonly outerRadius: number;
};
export type ShellShape = {
  readonly barrelRadius: number;
  readonly axisY: number;
  readonly towerHalfWidth: number;
  readonly topY: number;
};

/**
 * Gives where each body is drawn to start and end along the plug, inside to outside. An outer body starts behind the
 * flange of the one inside it and ends before its retainer; when the lengths entered leave no room, the inner one is
 * drawn longer.
 */
export function bodySpans(assembly: Assembly): readonly Span[] {
  return remembered.bodySpans(assembly);
}

function workBodySpans(assembly: Assembly): Span[] {
  const { bodies } = assembly;
  const radius = plugRadius(assembly);
  const { first, last } = chamberEnds(assembly);
  const metal = LOOKS.endMetal * radius;
  const plugFront = known(bodies[0], 'plug').frontZ;
  const room = (first - metal - plugFront) / Math.max(1, bodies.length - 1);
  const flange = Math.max(0, Math.min(LOOKS.flangeThickness * radius, room));
  const tail = LOOKS.tail * radius;
  const spans: Span[] = [];
  for (let i = bodies.length - 1; i >= 0; i--) {
    const body = known(bodies[i], `body ${i}`);
    const outer = spans[0];
    const asLongAs = bodies.slice(0, i + 1).map(({ backZ }, j) => backZ - tail * (i - j));
    const leastBack = outer === undefined ? last + metal : outer.back + tail;
    spans.unshift({
      front: Math.max(plugFront + flange * i, Math.min(body.frontZ, first - metal)),
      back: Math.max(leastBack, Math.min(...asLongAs)),
    });
  }
  return spans;
}

/** Front and back edge of the outermost chambers' holes. */
function chamberEnds(assembly: Assembly): { first: number; last: number } {
  const edges = assembly.chambers.map(({ z, holes }) => {
    const widest = Math.max(0, ...holes.map((hole) => hole.radius));
    return { first: z - widest, last: z + widest };
  });
  const radius = plugRadius(assembly);
  if (edges.length === 0) return { first: radius, last: radius * 3 };
  return { first: Math.min(...edges.map((e) => e.first)), last: Math.max(...edges.map((e) => e.last)) };
}

export function plugRadius(assembly: Assembly): number {
  return known(assembly.bodies[0], 'plug').outerRadius;
}

/** Radius of the flange by which a body is stopped at the front of the one around it. */
export function flangeRadius(assembly: Assembly, bodyIndex: number): number {
  const line = known(assembly.lines[bodyIndex], `line ${bodyIndex}`);
  return line.radius + line.clearance / 2 + LOOKS.flangeRise * plugRadius(assembly);
}

/** The rings that keep inner bodies from coming forward, inside to outside. */
export function retainers(assembly: Assembly): readonly Retainer[] {
  return remembered.retainers(assembly);
}

function workRetainers(assembly: Assembly): Retainer[] {
  const spans = bodySpans(assembly);
  const radius = plugRadius(assembly);
  const underKeyway = Math.max(0.03 * radius, 0.6 * (slotOf(assembly).bottomY + radius));
  const groove = Math.min(LOOKS.retainerGroove * radius, underKeyway);
  return assembly.lines.map((line, i) => {
    const inner = known(assembly.bodies[i], `body ${i}`);
    const front = known(spans[i + 1], `span ${i + 1}`).back;
    return {
      inner,
      span: { front, back: front + LOOKS.retainerThickness * radius },
      innerRadius: inner.outerRadius - groove,
      outerRadius: line.radius + line.clearance / 2 + LOOKS.retainerRise * radius,
    };
  });
}

/** The shell from the end: a barrel around the bore with a tower over it for the springs. */
export function shellShape(assembly: Assembly): ShellShape {
  return remembered.shellShape(assembly);
}

function workShellShape(assembly: Assembly): ShellShape {
  const radius = plugRadius(assembly);
  const shell = known(assembly.bodies.at(-1), 'shell');
  const holes = assembly.chambers.map((chamber) => known(chamber.holes.at(-1), 'shell hole'));
  const widest = Math.max(0, ...holes.map((hole) => hole.radius + Math.abs(hole.sideways)));
  const caps = assembly.chambers.map((chamber) => chamber.capY);
  const barrelRadius = shell.boreRadius + LOOKS.barrelWall * radius;
  return {
    barrelRadius,
    axisY: shell.axisY,
    towerHalfWidth: Math.min(barrelRadius, widest + LOOKS.towerWall * radius),
    topY: Math.max(shell.axisY + barrelRadius, ...caps.map((capY) => capY + LOOKS.roof * radius)),
  };
}

/** The keyway, a plain slot: the key's bottom edge rides on its floor. Without a key it is as high as usual. */
export function slotOf(assembly: Assembly): Slot {
  return remembered.slotOf(assembly);
}

function workSlotOf(assembly: Assembly): Slot {
  const radius = plugRadius(assembly);
  const { key } = assembly;
  const bottomY = key?.bottomY ?? -0.89 * radius;
  const highest = radius * (1 - LOOKS.metalOverKeyway);
  const topY = bottomY + (key?.shape.bladeHeight ?? 1.3 * radius) + LOOKS.keyPlayAbove * radius;
  return {
    halfWidth: Math.max(assembly.keywayWidth, key?.thickness ?? 0) / 2,
    bottomY,
    topY: Math.min(topY, highest),
  };
}

/**
 * Gives how far down a chamber is drilled into the plug: to the ledges beside the keyway on which its stack rests with
 * no key in.
 */
export function chamberFloorY(assembly: Assembly, chamber: AssemblyChamber): number {
  const radius = plugRadius(assembly);
  const stack = assembly.stacks.find((each) => each.chamber === chamber.id);
  const foot = stack?.parts[0];
  const slot = slotOf(assembly);
  const usual = Math.min(-0.3 * radius, slot.topY - 0.1 * radius);
  if (foot === undefined || stack?.restY === null || stack === undefined) return usual;
  const drop = endDrop(foot.lower, foot.radius, slot.halfWidth);
  const rest = Number.isFinite(drop) ? stack.restY + drop : stack.restY;
  return Math.max(-0.85 * radius, Math.min(rest, slot.topY - 0.02 * radius));
}

/** Height of a body's crest at a place along the plug: its radius less what is worn or filed off there. */
export function crestDropAt(assembly: Assembly, bodyIndex: number, chamber: AssemblyChamber): number {
  const drop = chamber.crestDrops[bodyIndex] ?? 0;
  return bodyIndex < assembly.lines.length ? drop : 0;
}

const remembered = {
  bodySpans: perObject(workBodySpans),
  retainers: perObject(workRetainers),
  shellShape: perObject(workShellShape),
  slotOf: perObject(workSlotOf),
};
