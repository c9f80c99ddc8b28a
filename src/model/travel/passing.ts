/**
 * Sizes that decide when the plug is drawn, pushed or put together. mm, radians.
 *
 *    end play      the key drags the plug forward; pins must still pass from hole to hole
 *    loading       the plug is turned until its holes have left the drivers, then slides past them
 *    follower      round rod that keeps the drivers up behind the plug; lies on the bottom of the bore like the plug
 *    shim          curved strip between plug and bore that holds the drivers up
 */
import type { Assembly, AssemblyChamber, AssemblyLine } from '../assembly/assembly.ts';
import { endDrop } from '../end-shape.ts';
import { lengthOf } from '../measured/part-ends.ts';
import type { Bench } from '../measured/selection.ts';
import { asRadians, type Radians } from '../radians.ts';

export type EndPlay = {
  /** Null when nobody measured it. */
  readonly play: number | null;
  /** How far the plug may come forward before a pin no longer passes; null without chambers. */
  readonly room: number | null;
  readonly tightest: string | null;
  readonly catches: boolean | null;
};

export type Loading = {
  readonly line: string;
  /** Turned at least so far, the holes have left the drivers. */
  readonly angle: Radians;
  readonly follower: {
    /** Smallest over which the drivers' broken ends still ride from follower to plug; null without drivers. */
    readonly smallest: number | null;
    readonly largest: number;
  };
  readonly thickestShim: number;
};

/** Turn after which a hole in the plug has left a driver altogether. */
export function loadingAngle(plugRadius: number, holeRadius: number, driverRadius: number): Radians {
  const half = (radius: number) => Math.asin(Math.min(1, radius / plugRadius));
  return asRadians(half(holeRadius) + half(driverRadius));
}

/** How far two holes may be out of line for a part to pass: what is to spare in both, added. */
export function roomToPass(innerHoleRadius: number, outerHoleRadius: number, partRadius: number): number {
  return Math.max(0, innerHoleRadius - partRadius + (outerHoleRadius - partRadius));
}

/** Compares the plug's end play with what the pins need. */
export function endPlay(bench: Bench, assembly: Assembly): EndPlay {
  const play = bench.cylinder.endPlay === undefined ? null : lengthOf(bench.cylinder.endPlay, 0);
  let room: number | null = null;
  let tightest: string | null = null;
  for (const chamber of assembly.chambers) {
    if (chamber.closed) continue;
    const here = roomIn(assembly, chamber);
    if (here !== null && (room === null || here < room)) {
      room = here;
      tightest = chamber.id;
    }
  }
  return { play, room, tightest, catches: play === null || room === null ? null : play > room };
}

function roomIn(assembly: Assembly, chamber: AssemblyChamber): number | null {
  const [plug, next] = chamber.holes;
  const parts = assembly.stacks.find((each) => each.chamber === chamber.id)?.parts ?? [];
  const widest = Math.max(
    ...parts.filter((part) => part.role !== 'spring' && part.role !== 'ball').map((part) => part.radius),
  );
  if (plug === undefined || next === undefined || !Number.isFinite(widest)) return null;
  return roomToPass(plug.radius, next.radius, widest);
}

/** What putting it together needs, line by line, inside to outside. */
export function loading(assembly: Assembly): Loading[] {
  return assembly.lines.map((line, i) => loadingAt(assembly, line, i));
}

function loadingAt(assembly: Assembly, line: AssemblyLine, i: number): Loading {
  let angle = 0;
  let bevel: number | null = null;
  for (const stack of assembly.stacks) {
    const chamber = assembly.chambers.find((each) => each.id === stack.chamber);
    const driver = stack.parts.find((part) => part.role === 'driver');
    const hole = chamber?.holes[i];
    if (hole === undefined) continue;
    angle = Math.max(angle, loadingAngle(line.radius, hole.radius, driver?.radius ?? hole.radius));
    if (driver === undefined) continue;
    const drop = endDrop(driver.lower, driver.radius, driver.radius);
    bevel = Math.min(bevel ?? Infinity, drop);
  }
  return {
    line: line.id,
    angle: asRadians(angle),
    follower: {
      smallest: bevel === null ? null : Math.max(0, 2 * line.radius - bevel),
      largest: 2 * line.radius + line.clearance,
    },
    thickestShim: line.clearance,
  };
}
