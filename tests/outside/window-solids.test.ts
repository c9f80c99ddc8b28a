/**
 * The window of a split against two outside judges.
 *
 * Solid bodies: general-purpose solid geometry (manifold-3d). A part 2e-5 in clear of the engine's height shares no
 * volume with the other, 2e-5 in the other way it does. Volumes are only compared with nothing: a threshold would hide
 * errors, overlaps of 2e-5 in are as small as 1e-11 mm3.
 * Dense sampling: `tests/support/dense-window.ts`, no code shared with the engine.
 */
import type { Manifold as Solid } from 'manifold-3d';
import { beforeAll, describe, expect, it } from 'vitest';
import { asRadians } from '../../src/model/radians.ts';
import { arrivalAt } from '../../src/model/window/arrival.ts';
import { mouthEdge, mouthOf, mouthReach } from '../../src/model/window/mouth-edge.ts';
import { noTouchAt, tightestAt } from '../../src/model/window/no-touch.ts';
import { mouthContact } from '../../src/model/window/ride-curve.ts';
import { ridingEnd } from '../../src/model/window/riding-end.ts';
import { shearWindow } from '../../src/model/window/shear-window.ts';
import type { WindowInput } from '../../src/model/window/window-input.ts';
import { denseHeld, denseLowest, denseRide, denseSteepness } from '../support/dense-window.ts';
import { between, type Random, randomWindow, seededRandom } from '../support/window-cases.ts';
import {
  boreSolid,
  innerSolid,
  type Kernel,
  loadKernel,
  topSolid,
  upperSolid,
} from '../support/window-solids.ts';

const MM_PER_INCH = 25.4;
const NEAR = 2e-5 * MM_PER_INCH;
const SAME = 1e-6 * MM_PER_INCH;
const CASES_PER_BATCH = 250;
const BATCHES = [1, 2, 3, 4, 5, 6, 7, 8];
const ENDS = ['flat', 'bevel', 'radius', 'dome'] as const;
const TOPS = ['flat', 'bevel', 'dome'] as const;

let kernel: Kernel;
beforeAll(async () => {
  kernel = await loadKernel();
});

function casesOf(seed: number): { input: WindowInput; random: Random; name: string }[] {
  const random = seededRandom(seed);
  return Array.from({ length: CASES_PER_BATCH }, (_, i) => {
    const input = randomWindow(random, TOPS, ENDS);
    return { input, random, name: `seed ${seed} case ${i}: ${JSON.stringify(input)}` };
  });
}

describe('the ride against solid bodies', () => {
  it.each(BATCHES)(
    'is clear above and overlaps below at 8 arcs of 250 cases, seed %i',
    { timeout: 600_000 },
    (seed) => {
      let arcs = 0;
      for (const [i, { input, random, name }] of casesOf(seed).entries()) {
        const mouth = mouthOf(input);
        const end = ridingEnd(input.upper);
        const arrival = arrivalAt(mouthEdge(mouth, 0), end).turn;
        const passed = Math.asin(mouthReach(mouth) / mouth.bodyRadius);
        for (let arc = 0; arc < 8; arc++) {
          const along = ((arc + between(random, 0.1, 0.9)) / 8) ** 2;
          const turn = asRadians(arrival + (passed - arrival) * along);
          const contact = mouthContact(mouth, end, turn);
          expect(contact, name).not.toBeNull();
          if (contact === null) continue;
          const inner = innerSolid(kernel, input, turn, contact.point, i % 25 === 0);
          const upper = upperSolid(kernel, input, contact.height, contact.point, i % 25 === 0);
          expect(inner.status() + upper.status(), name).toBe('NoErrorNoError');
          const above = upper.translate(0, NEAR, 0);
          const below = upper.translate(0, -NEAR, 0);
          const over = inner.intersect(above);
          const under = inner.intersect(below);
          if (over.volume() > 0 || !(under.volume() > 0)) {
            expect(
              { clear: over.volume(), overlap: under.volume() },
              `arc ${arc} turn ${turn}, ${name}`,
            ).toBeNull();
          }
          for (const body of [inner, upper, above, below, over, under]) body.delete();
          arcs++;
        }
      }
      expect(arcs).toBe(8 * CASES_PER_BATCH);
    },
  );
});

describe('the highest offset against solid bodies', () => {
  it.each(BATCHES)(
    'fits just below and is stuck just above, wherever the body moves, seed %i',
    { timeout: 600_000 },
    (seed) => {
      let stuck = 0;
      for (const { input, random, name } of casesOf(100 + seed)) {
        const { highest, highestAt } = shearWindow(input);
        const bore = input.lineRadius + input.clearance / 2;
        const aside = input.lower.sideways;
        const top = topSolid(kernel, input, input.lineRadius + highest, aside, highestAt.across);
        const axis = { x: highestAt.boreAxis.across, y: highestAt.boreAxis.up };
        expect(Math.hypot(axis.x, axis.y), name).toBeLessThanOrEqual(input.clearance / 2 + 1e-12);
        const above = top.translate(0, NEAR, 0);
        const below = top.translate(0, -NEAR, 0);
        const around = boreSolid(kernel, bore, axis, highestAt.angle);
        expect(sharesVolume(below, around), name).toBe(false);
        expect(sharesVolume(above, around), name).toBe(true);
        for (let other = 0; other < 2; other++) {
          const direction = between(random, -Math.PI, Math.PI);
          const play = (input.clearance / 2) * Math.sqrt(random());
          const elsewhere = { x: play * Math.sin(direction), y: play * Math.cos(direction) };
          expect(overlaps(above, boreSolid(kernel, bore, elsewhere, 0)), `${name} ${direction} ${play}`).toBe(
            true,
          );
          stuck++;
        }
        for (let other = 0; other < 4; other++) {
          const turn = between(random, -Math.PI, Math.PI);
          const turned = below.rotate([0, 0, (turn * 180) / Math.PI]);
          const turnedAxis = {
            x: axis.x * Math.cos(turn) - axis.y * Math.sin(turn),
            y: axis.x * Math.sin(turn) + axis.y * Math.cos(turn),
          };
          expect(overlaps(turned, boreSolid(kernel, bore, turnedAxis, highestAt.angle - turn)), name).toBe(
            false,
          );
          turned.delete();
        }
        for (const body of [top, above, below, around]) body.delete();
      }
      expect(stuck).toBe(2 * CASES_PER_BATCH);
    },
  );

  it.each(BATCHES)(
    'does not touch just below the no-touch offset of a turn angle and does just above, seed %i',
    { timeout: 600_000 },
    (seed) => {
      let touched = 0;
      for (const { input, random, name } of casesOf(200 + seed)) {
        const turn = asRadians(between(random, 0, Math.PI));
        const height = input.lineRadius + noTouchAt(input, turn);
        const bore = input.lineRadius + input.clearance / 2;
        const axis = { x: 0, y: input.innerLies === 'centred' ? 0 : input.clearance / 2 };
        const { across, up } = tightestAt(input, turn);
        const shell = boreSolid(kernel, bore, axis, Math.atan2(across, up) - turn);
        const isTouching = (lift: number): boolean =>
          [-1, 1].some((side) => {
            const top = topSolid(kernel, input, height + lift, side * input.lower.sideways, across);
            const turned = top.rotate([0, 0, (turn * 180) / Math.PI]);
            const shared = turned.intersect(shell);
            const found = shared.volume() > 0;
            for (const body of [top, turned, shared]) body.delete();
            return found;
          });
        expect(isTouching(-NEAR), name).toBe(false);
        expect(isTouching(NEAR), name).toBe(true);
        shell.delete();
        touched++;
      }
      expect(touched).toBe(CASES_PER_BATCH);
    },
  );
});

describe('the lowest offset against dense sampling', () => {
  it.each(BATCHES)(
    'is the last too steep place of the ride, to 1e-6 in, seed %i',
    { timeout: 600_000 },
    (seed) => {
      for (const { input, name } of casesOf(300 + seed)) {
        const { lowest, lowestAt } = shearWindow(input);
        expect(lowestAt, name).not.toBeNull();
        if (lowestAt === null) continue;
        const { turn, height } = lowestAt;
        const steepest = Math.tan(input.steepestRamp);
        const arc = 1e-5 / input.lineRadius; // rises less than 1e-6 in on the steepest ramp
        expect(denseSteepness(input, turn - 2 * arc, arc * 1.001, false), name).toSatisfy(
          (slope: number) => slope > steepest - 1e-3 || denseRide(input, turn - arc / 2) === -Infinity,
        );
        expect(denseSteepness(input, turn + arc, arc), name).toBeLessThan(steepest + 1e-3);
        expect(Math.abs(denseRide(input, turn + arc / 10) - height), name).toBeLessThan(SAME);
        const end = Math.asin(Math.min(1, (1.1 * input.innerHole.radius) / input.lineRadius));
        const isRough = input.innerHole.mouth.kind !== 'sharp';
        const steps = isRough ? 16 : 60;
        for (let step = 0; step < steps; step++) {
          const from = turn + arc + ((end - turn) * step) / steps;
          expect(denseSteepness(input, from, (end - turn) / steps, isRough), name).toBeLessThan(
            steepest + 0.02,
          );
        }
        expect(Math.abs(denseHeld(input, input.lineRadius + lowest, turn) - height), name).toBeLessThan(SAME);
      }
    },
  );

  it('is found again by a search that is told nothing, 60 splits at 60 deg', { timeout: 600_000 }, () => {
    const random = seededRandom(400);
    let widest = 0;
    for (let i = 0; i < 60; i++) {
      const input = { ...randomWindow(random, TOPS, ENDS), steepestRamp: asRadians(Math.PI / 3) };
      const { lowest } = shearWindow(input);
      const difference = Math.abs(denseLowest(input).offset - lowest);
      expect(difference, `case ${i} ${JSON.stringify(input)}`).toBeLessThan(SAME);
      widest = Math.max(widest, difference);
    }
    expect(widest).toBeGreaterThan(0);
  });
});

function sharesVolume(one: Solid, other: Solid): boolean {
  const shared = one.intersect(other);
  const found = shared.volume() > 0;
  shared.delete();
  return found;
}

/** The same for a body that is not used again. */
function overlaps(one: Solid, other: Solid): boolean {
  const found = sharesVolume(one, other);
  other.delete();
  return found;
}
