/**
 * The ride of a driver over the edge of the hole, against solid bodies.
 *
 * Solid bodies: general-purpose solid geometry (manifold-3d). A part 2e-5 in clear of the engine's height shares no
 * volume with the other, 2e-5 in the other way it does. Volumes are only compared with nothing: a threshold would hide
 * errors, overlaps of 2e-5 in are as small as 1e-11 mm3.
 */
import { beforeAll, describe, expect, it } from 'vitest';
import { asRadians } from '../../src/model/radians.ts';
import { arrivalAt } from '../../src/model/window/arrival.ts';
import { mouthEdge, mouthOf, mouthReach } from '../../src/model/window/mouth-edge.ts';
import { mouthContact } from '../../src/model/window/ride-curve.ts';
import { ridingEnd } from '../../src/model/window/riding-end.ts';
import { BATCHES, CASES_PER_BATCH, casesOf, NEAR } from '../support/window-batches.ts';
import { between } from '../support/window-cases.ts';
import { innerSolid, type Kernel, loadKernel, upperSolid } from '../support/window-solids.ts';

/** A way is tried in so many stretches; each case takes two of them in turn, or all of them (RIDE_STRETCHES=8). */
const STRETCHES = 8;
const PER_CASE = Number(process.env['RIDE_STRETCHES'] ?? 2);

let kernel: Kernel;
beforeAll(async () => {
  kernel = await loadKernel();
});

describe('the ride against solid bodies', () => {
  it.each(BATCHES)(
    'is clear above and overlaps below along the way of 250 cases, seed %i',
    { timeout: 600_000 },
    (seed) => {
      let tried = 0;
      for (const [i, { input, random, name }] of casesOf(seed).entries()) {
        const mouth = mouthOf(input);
        const end = ridingEnd(input.upper);
        const arrival = arrivalAt(mouthEdge(mouth, 0), end).turn;
        const passed = Math.asin(mouthReach(mouth) / mouth.bodyRadius);
        for (let each = 0; each < PER_CASE; each++) {
          const stretch = (i * PER_CASE + each) % STRETCHES;
          const along = ((stretch + between(random, 0.1, 0.9)) / STRETCHES) ** 2;
          const turn = asRadians(arrival + (passed - arrival) * along);
          const contact = mouthContact(mouth, end, turn);
          expect(contact, name).not.toBeNull();
          if (contact === null) continue;
          const detail = i % 25 === 0 ? 'all' : 'fine at the point';
          const inner = innerSolid(kernel, input, turn, contact.point, detail);
          const upper = upperSolid(kernel, input, contact.height, contact.point, detail);
          expect(inner.status() + upper.status(), name).toBe('NoErrorNoError');
          const above = upper.translate(0, NEAR, 0);
          // What overlaps does so where it touches: a small piece shows it, and is quicker to cut.
          const below = upperSolid(kernel, input, contact.height - NEAR, contact.point, 'around the point');
          const over = inner.intersect(above);
          const under = inner.intersect(below);
          if (over.volume() > 0 || !(under.volume() > 0)) {
            expect(
              { clear: over.volume(), overlap: under.volume() },
              `stretch ${stretch} turn ${turn}, ${name}`,
            ).toBeNull();
          }
          for (const body of [inner, upper, above, below, over, under]) body.delete();
          tried++;
        }
      }
      expect(tried).toBe(PER_CASE * CASES_PER_BATCH);
    },
  );
});
