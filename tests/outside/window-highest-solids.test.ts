/**
 * How high a split may stand, and up to where nothing touches, against solid bodies.
 *
 * Solid bodies: general-purpose solid geometry (manifold-3d). A part 2e-5 in clear of the engine's height shares no
 * volume with the other, 2e-5 in the other way it does. Volumes are only compared with nothing: a threshold would hide
 * errors, overlaps of 2e-5 in are as small as 1e-11 mm3.
 */
import type { Manifold as Solid } from 'manifold-3d';
import { beforeAll, describe, expect, it } from 'vitest';
import { asRadians } from '../../src/model/radians.ts';
import { noTouchAt, tightestAt } from '../../src/model/window/no-touch.ts';
import { shearWindow } from '../../src/model/window/shear-window.ts';
import { BATCHES, CASES_PER_BATCH, casesOf, NEAR } from '../support/window-batches.ts';
import { between } from '../support/window-cases.ts';
import { boreSolid, type Kernel, loadKernel, topSolid } from '../support/window-solids.ts';

let kernel: Kernel;
beforeAll(async () => {
  kernel = await loadKernel();
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
        for (let other = 0; other < 2; other++) {
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
