/**
 * Retention, end play and loading angle against solid bodies (manifold-3d), few seeded cases. mm, radians. Facets: round
 * bodies have 256 sides; a body made with its corners on the round is smaller than the round by at most r (1 - cos(pi/256)),
 * so tests stand NEAR away from the worked answer, on both sides of it.
 */
import type { Manifold as Solid } from 'manifold-3d';
import { beforeAll, describe, expect, test } from 'vitest';
import { restResults } from '../../src/model/rest/rest-results.ts';
import { loadingAngle, roomToPass } from '../../src/model/travel/passing.ts';
import { wayResults } from '../../src/model/travel/way-results.ts';
import { lookAt } from '../support/cylinder-h.ts';
import { buildJob } from '../support/job-builder.ts';
import { seededRandom } from '../support/random-job.ts';
import { type Kernel, loadKernel } from '../support/window-solids.ts';

const SIDES = 256;
/** mm, and the same as a share for angles. */
const NEAR = 0.004;
const LONG = 40;
const SEEDS = [1, 2, 3, 4, 5, 6];

let kernel: Kernel;
beforeAll(async () => {
  kernel = await loadKernel();
});

/** A round rod upright (along y) from one height to another, at z. */
function upright(radius: number, from: number, to: number, z: number, x = 0): Solid {
  return kernel.Manifold.cylinder(to - from, radius, radius, SIDES)
    .rotate([-90, 0, 0])
    .translate([x, from, z]);
}

/** A round rod along z around the axis. */
function along(radius: number): Solid {
  return kernel.Manifold.cylinder(LONG, radius, radius, SIDES, true);
}

const meets = (one: Solid, other: Solid) => one.intersect(other).volume() > 0;
const between = (random: () => number, least: number, most: number) => least + (most - least) * random();

describe('loading angle', () => {
  test.each(SEEDS)('the hole has just left the driver, seed %i', (seed) => {
    const random = seededRandom(seed);
    const radius = between(random, 6, 10);
    const hole = radius * between(random, 0.18, 0.24);
    const driver = hole * between(random, 0.92, 0.99);
    const angle = loadingAngle(radius, hole, driver);
    // the driver's end, a thin disc that reaches just into the plug's round at the driver's own rim
    const rim = Math.sqrt(radius ** 2 - driver ** 2);
    const drop = upright(driver, rim - 1e-3, rim + 2, 0);
    const isOver = (turn: number) => {
      const empty = upright(hole, 0, 2 * radius, 0).rotate([0, 0, (turn * 180) / Math.PI]);
      return meets(empty, drop);
    };
    expect(isOver(angle - NEAR)).toBe(true);
    expect(isOver(angle + NEAR)).toBe(false);
  });
});

describe('end play', () => {
  test.each(SEEDS)('a pin passes from hole to hole up to the room worked out, seed %i', (seed) => {
    const random = seededRandom(seed + 100);
    const pin = between(random, 1.3, 2);
    const [inner, outer] = [pin + between(random, 0.03, 0.1), pin + between(random, 0.03, 0.1)];
    const room = roomToPass(inner, outer, pin);
    const passes = (play: number) => {
      // A wall with a hole under another with a hole, out of line by the play; the pin stands where both leave most.
      const block = (hole: number, from: number, z: number) =>
        kernel.Manifold.cube([8, 1, 8], true)
          .translate([0, from + 0.5, z])
          .subtract(upright(hole, from, from + 1, z));
      const walls = block(inner, 0, 0).add(block(outer, 1, play));
      const share = (inner - pin) / (inner - pin + (outer - pin));
      return !meets(walls, upright(pin, -1, 3, play * share));
    };
    expect(passes(room - NEAR)).toBe(true);
    expect(passes(room + NEAR)).toBe(false);
  });
});

describe('what holds the turned key', () => {
  test.each(SEEDS)('the lower stack strikes the closed bore on the peak, or not, seed %i', (seed) => {
    const random = seededRandom(seed + 200);
    const roots = [0, 0].map(() => Math.round(between(random, 0.2, 0.3) * 1e4) / 1e4);
    const job = buildJob({
      chambers: roots.map((rootDepth) => ({ rootDepth, restDepth: 0.1 })),
      bladeHeight: Math.round(between(random, 0.21, 0.34) * 1e4) / 1e4,
      tip: { position: 0.6, noseHeight: 0.05, rampDeg: 45 },
    });
    const { bench, assembly } = lookAt(job);
    const { chambers } = wayResults(bench, assembly, restResults(bench, assembly));
    const line = assembly.lines[0]!;
    // The shell, with its bore half the play above the plug's axis; its holes are turned away from the pins.
    const shell = kernel.Manifold.cube([30, 30, LONG], true).subtract(
      along(line.radius + line.clearance / 2).translate([0, line.clearance / 2, 0]),
    );
    let looked = 0;
    for (const [i, { holdsKey, highest }] of chambers.entries()) {
      if (holdsKey === null || Math.abs(holdsKey) < NEAR) continue;
      const pin = assembly.stacks[i]!.parts[0]!;
      const top = assembly.key!.bottomY + highest + pin.length;
      // domed to the plug: a thin needle on its axis reaches as high as the whole pin
      const needle = upright(0.05, 0, top, 0);
      expect(meets(shell, needle), `chamber ${i + 1}: ${holdsKey}`).toBe(holdsKey > 0);
      looked += 1;
    }
    expect(looked).toBeGreaterThan(0);
  });
});
