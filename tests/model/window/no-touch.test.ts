/** The high side. The figures in inches were worked out beforehand from the circle of the bore and by solid bodies. */
import { describe, expect, it } from 'vitest';
import { type EndShape, endCorners, silhouetteDrop } from '../../../src/model/end-shape.ts';
import { asRadians, fromDegrees } from '../../../src/model/radians.ts';
import { noTouchAt, noTouchUpTo, rubsFrom } from '../../../src/model/window/no-touch.ts';
import { shearWindow } from '../../../src/model/window/shear-window.ts';
import type { WindowInput } from '../../../src/model/window/window-input.ts';
import { bevelOf, domeOf, inch, REFERENCE, withTop } from '../../support/reference-split.ts';
import { between, type EndKind, randomWindow, seededRandom } from '../../support/window-cases.ts';

const KINDS: EndKind[] = ['flat', 'bevel', 'radius', 'dome', 'cone', 'cup', 'sphere'];

/** Independent of the engine: the smallest room over four thousand points of the top and its corners. */
function sampledRoom(input: WindowInput, aside: number, boreAxis: { across: number; up: number }): number {
  const { top, radius } = input.lower;
  const bore = input.lineRadius + input.clearance / 2;
  const offs = endCorners(top, radius).flatMap((corner) => [-corner, corner]);
  for (let i = -2000; i <= 2000; i++) offs.push((radius * i) / 2000);
  let least = Infinity;
  for (const off of offs) {
    const under = boreAxis.up + Math.sqrt(bore ** 2 - (aside + off - boreAxis.across) ** 2);
    least = Math.min(least, under + silhouetteDrop(top, radius, off));
  }
  return least;
}

describe('no touch', () => {
  it.each([
    [0, 0.004, -0.00418],
    [30, 0.00356, -0.00466],
    [60, 0.00267, -0.00555],
    [90, 0.00161, -0.00661],
    [180, 0, -0.00818],
  ])('at a turn of %f deg is %f in for a domed, %f in for a flat top', (degrees, domed, flat) => {
    expect(noTouchAt(REFERENCE, fromDegrees(degrees)) / 25.4).toBeCloseTo(domed, 5);
    expect(noTouchAt(withTop({ kind: 'flat' }), fromDegrees(degrees)) / 25.4).toBeCloseTo(flat, 5);
  });

  it('up to a turn counts a corner that has passed the tightest place on the way', () => {
    // worked by hand: the corner, .078 out, must stay inside the line's own circle
    const flush = Math.sqrt(0.374 ** 2 - 0.078 ** 2) - 0.374;
    expect(noTouchUpTo(withTop({ kind: 'flat' }), fromDegrees(180)) / 25.4).toBeCloseTo(flush, 9);
    expect(flush).toBeLessThan(-0.00818);
  });

  it('up to a turn is the least of all turns on the way', () => {
    const random = seededRandom(51);
    for (let i = 0; i < 150; i++) {
      const input = randomWindow(random, KINDS, ['flat']);
      const end = between(random, 0, Math.PI);
      let least = Infinity;
      for (let step = 0; step <= 400; step++) {
        least = Math.min(least, noTouchAt(input, asRadians((end * step) / 400)));
      }
      const found = noTouchUpTo(input, asRadians(end));
      expect(found, JSON.stringify(input)).toBeLessThanOrEqual(least + 1e-9);
      expect(found, JSON.stringify(input)).toBeGreaterThan(least - 2e-5);
    }
  });

  it('agrees with thousands of points of the top, whichever side it stands', () => {
    const random = seededRandom(52);
    for (let i = 0; i < 200; i++) {
      const input = randomWindow(random, KINDS, ['flat']);
      const turn = between(random, -Math.PI, Math.PI);
      const off = input.innerLies === 'centred' ? 0 : input.clearance / 2;
      const axis = { across: off * Math.sin(turn), up: off * Math.cos(turn) };
      const { sideways } = input.lower;
      const sampled = Math.min(sampledRoom(input, sideways, axis), sampledRoom(input, -sideways, axis));
      expect(noTouchAt(input, asRadians(turn)) + input.lineRadius, JSON.stringify(input)).toBeCloseTo(
        sampled,
        5,
      );
    }
  });

  it('is half the play over the line for a domed top in a body held in the middle, at every angle', () => {
    const centred = { ...REFERENCE, innerLies: 'centred' } as const;
    for (const degrees of [0, 90, 180]) {
      expect(noTouchAt(centred, fromDegrees(degrees))).toBeCloseTo(inch(0.002), 9);
    }
  });
});

describe('rubs from', () => {
  it('is 68 degrees for a domed top .0024 in high', () => {
    expect(((rubsFrom(REFERENCE, inch(0.0024)) ?? 0) * 180) / Math.PI).toBeCloseTo(68, 0);
  });

  it('is the angle at which the no-touch offset comes down to it', () => {
    const random = seededRandom(53);
    let compared = 0;
    for (let i = 0; i < 200; i++) {
      const input = { ...randomWindow(random, KINDS, ['flat']), innerLies: 'away from drivers' } as const;
      const offset = between(random, noTouchUpTo(input, input.turn.angle), noTouchAt(input, asRadians(0)));
      const from = rubsFrom(input, offset);
      expect(from, JSON.stringify(input)).not.toBeNull();
      if (from === null) continue;
      expect(noTouchUpTo(input, from), JSON.stringify(input)).toBeCloseTo(offset, 5);
      compared++;
    }
    expect(compared).toBe(200);
  });

  it('is never for a top inside the line, and at once for one that is too high upright', () => {
    expect(rubsFrom(REFERENCE, inch(-0.0001))).toBeNull();
    expect(rubsFrom(REFERENCE, inch(0.0041))).toBe(0);
    expect(rubsFrom({ ...REFERENCE, turn: { angle: fromDegrees(60) } }, inch(0.0024))).toBeNull();
  });
});

describe('highest', () => {
  it.each([
    ['domed to the line', domeOf(0.374), 0.004],
    ['flat with .012 bevel', bevelOf(0.012), -0.00184],
    ['flat with .005 bevel', bevelOf(0.005), -0.00315],
    // worked by hand: play + square root (.376^2 - .078^2) + .5 - square root (.5^2 - .078^2) - .374, all at .078
    ['dome radius .5', domeOf(0.5), 0.00194],
    ['flat', { kind: 'flat' }, -0.00418],
  ] as [string, EndShape, number][])('is the known figure for a pin top: %s', (_, top, inches) => {
    expect(shearWindow(withTop(top)).highest / 25.4).toBeCloseTo(inches, 5);
  });

  it('does not depend on how the body lies', () => {
    const centred = shearWindow({ ...withTop({ kind: 'flat' }), innerLies: 'centred' });
    expect(centred.highest).toBe(shearWindow(withTop({ kind: 'flat' })).highest);
    expect(centred.noTouch).toBeLessThan(centred.highest);
  });

  it('is the most room that any position of the body leaves', () => {
    const random = seededRandom(54);
    for (let i = 0; i < 60; i++) {
      const input = randomWindow(random, KINDS, ['flat']);
      const { highest } = shearWindow(input);
      let most = -Infinity;
      for (let step = -180; step <= 180; step++) {
        const angle = (step * Math.PI) / 180;
        const axis = {
          across: (input.clearance / 2) * Math.sin(angle),
          up: (input.clearance / 2) * Math.cos(angle),
        };
        most = Math.max(most, sampledRoom(input, input.lower.sideways, axis));
      }
      expect(highest + input.lineRadius, JSON.stringify(input)).toBeGreaterThan(most - 1e-5);
      expect(highest + input.lineRadius, JSON.stringify(input)).toBeLessThan(
        most + 1e-3 * input.clearance + 1e-5,
      );
    }
  });
});
