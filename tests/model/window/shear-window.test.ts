import { fc, test } from '@fast-check/vitest';
import { describe, expect, it } from 'vitest';
import { endDrop } from '../../../src/model/end-shape.ts';
import { asRadians, fromDegrees } from '../../../src/model/radians.ts';
import { bindsAt } from '../../../src/model/window/binds-at.ts';
import { rubsFrom } from '../../../src/model/window/no-touch.ts';
import { rideCurve } from '../../../src/model/window/ride-curve.ts';
import { shearWindow } from '../../../src/model/window/shear-window.ts';
import type { WindowInput } from '../../../src/model/window/window-input.ts';
import { inch, REFERENCE, withBottom, withTop } from '../../support/reference-split.ts';
import { between, type EndKind, randomWindow, seededRandom } from '../../support/window-cases.ts';

const ALL: EndKind[] = ['flat', 'bevel', 'radius', 'dome', 'cone', 'cup', 'sphere'];
const seeds = fc.integer({ min: 0, max: 2 ** 31 - 1 });
const anyWindow = (seed: number): WindowInput => randomWindow(seededRandom(seed), ALL, ALL);

describe('shear window', () => {
  it('of the reference cylinder is -.00770 to +.00400, no touch 0', () => {
    const { lowest, noTouch, highest, empty } = shearWindow(REFERENCE);
    expect([lowest, noTouch, highest].map((offset) => offset / 25.4)).toEqual([
      expect.closeTo(-0.0077, 5),
      expect.closeTo(0, 5),
      expect.closeTo(0.004, 5),
    ]);
    expect(empty).toBe(false);
  });

  it('is empty for a flat pin under a sharp flat driver', () => {
    const window = shearWindow({ ...withTop({ kind: 'flat' }), upper: withBottom({ kind: 'flat' }).upper });
    expect(window.empty).toBe(true);
    expect(window.lowest).toBeGreaterThan(window.highest);
  });

  it('serves an outer line with its own radius and play alike', () => {
    const scale = 0.4365 / 0.374;
    const outer: WindowInput = {
      ...REFERENCE,
      lineRadius: REFERENCE.lineRadius * scale,
      clearance: REFERENCE.clearance * scale,
      lower: {
        top: { kind: 'dome', radius: inch(0.4365) },
        radius: REFERENCE.lower.radius * scale,
        sideways: 0,
      },
      upper: {
        bottom: { kind: 'bevel', width: inch(0.005) * scale, angle: fromDegrees(45) },
        radius: REFERENCE.upper.radius * scale,
        sideways: 0,
      },
      innerHole: { ...REFERENCE.innerHole, radius: REFERENCE.innerHole.radius * scale },
    };
    const inner = shearWindow(REFERENCE);
    const scaled = shearWindow(outer);
    expect(scaled.lowest).toBeCloseTo(inner.lowest * scale, 8);
    expect(scaled.highest).toBeCloseTo(inner.highest * scale, 8);
    expect(scaled.noTouch).toBeCloseTo(inner.noTouch * scale, 8);
  });

  test.prop([seeds], { numRuns: 3000 })(
    'is made of real numbers in order, and says when it is empty',
    (seed) => {
      const { lowest, noTouch, highest, empty, noTouchAt, highestAt, lowestAt } = shearWindow(
        anyWindow(seed),
      );
      expect(
        [lowest, noTouch, highest, noTouchAt.angle, highestAt.angle, highestAt.up].every(Number.isFinite),
      ).toBe(true);
      expect(noTouch).toBeLessThanOrEqual(highest + 1e-9);
      expect(empty).toBe(lowest > highest);
      if (lowestAt !== null) {
        expect(
          [lowestAt.turn, lowestAt.height, lowestAt.point.x, lowestAt.point.z].every(Number.isFinite),
        ).toBe(true);
        expect(lowestAt.turn).toBeGreaterThan(0);
      }
    },
  );

  test.prop([seeds, fc.double({ min: 0, max: 0.2, noNaN: true })], { numRuns: 1000 })(
    'is never lowered at the top by more play',
    (seed, more) => {
      const input = anyWindow(seed);
      const wider = shearWindow({ ...input, clearance: input.clearance + more });
      expect(wider.highest).toBeGreaterThanOrEqual(shearWindow(input).highest - 1e-9);
    },
  );

  // not for ends that are too steep by themselves: in a wide hole they meet the edge more squarely; nor for a
  // countersink of a fixed depth, which ends higher up on a wider hole
  test.prop([seeds, fc.double({ min: 0, max: 0.1, noNaN: true })], { numRuns: 1000 })(
    'is never raised at the bottom by a wider hole, for a driver end that can be climbed',
    (seed, more) => {
      const drawn = randomWindow(seededRandom(seed), ['dome'], ['flat', 'bevel', 'dome']);
      const bottom =
        drawn.upper.bottom.kind === 'bevel'
          ? ({ ...drawn.upper.bottom, angle: fromDegrees(40) } as const)
          : drawn.upper.bottom;
      const mouth =
        drawn.innerHole.mouth.kind === 'countersunk' ? ({ kind: 'sharp' } as const) : drawn.innerHole.mouth;
      const input: WindowInput = {
        ...drawn,
        lower: { ...drawn.lower, top: { kind: 'dome', radius: drawn.lineRadius }, sideways: 0 },
        upper: { ...drawn.upper, bottom, sideways: 0 },
        innerHole: { ...drawn.innerHole, mouth },
      };
      const wider = { ...input, innerHole: { ...input.innerHole, radius: input.innerHole.radius + more } };
      expect(shearWindow(wider).lowest).toBeLessThanOrEqual(shearWindow(input).lowest + 1e-6);
    },
  );

  test.prop([seeds], { numRuns: 500 })(
    'is narrowed by sideways play of the lower part, never widened',
    (seed) => {
      const input = anyWindow(seed);
      const still = shearWindow({ ...input, lower: { ...input.lower, sideways: 0 } });
      const moving = shearWindow(input);
      expect(moving.highest).toBeLessThanOrEqual(still.highest + 1e-9);
      expect(moving.noTouch).toBeLessThanOrEqual(still.noTouch + 1e-9);
      expect(moving.lowest).toBeGreaterThanOrEqual(still.lowest - 1e-9);
    },
  );

  test.prop([seeds], { numRuns: 500 })(
    'is the same seen in a mirror: the play is taken on either side',
    (seed) => {
      const input = anyWindow(seed);
      const ride = rideCurve(input, -0.05);
      for (const turn of [0.003, 0.02, 0.1]) expect(ride(asRadians(turn))).toBe(ride(asRadians(-turn)));
      const mirrored = { ...input, lower: { ...input.lower, sideways: -input.lower.sideways } };
      expect(shearWindow(mirrored).noTouch).toBeCloseTo(shearWindow(input).noTouch, 9);
      expect(shearWindow(mirrored).highest).toBeCloseTo(shearWindow(input).highest, 9);
      expect(shearWindow(mirrored).lowest).toBeCloseTo(shearWindow(input).lowest, 9);
    },
  );
});

describe('binds at', () => {
  it('is nowhere inside the window, by the driver below it and by the pin above it', () => {
    expect(bindsAt(REFERENCE, 0)).toBeNull();
    expect(bindsAt(REFERENCE, inch(-0.0076))).toBeNull();
    expect(bindsAt(REFERENCE, inch(-0.0078))?.side).toBe('upper part');
    expect(bindsAt(REFERENCE, inch(0.0041))?.side).toBe('lower part');
  });

  it('is the side of a driver that hangs deep, as soon as the edge reaches it', () => {
    const binding = bindsAt(REFERENCE, inch(-0.03));
    expect(binding?.turn).toBeCloseTo(Math.asin(0.08 / 0.374) - Math.asin(0.078 / 0.374), 9);
    expect((binding?.contact.x ?? 0) / 25.4).toBeCloseTo(0.078, 9);
    expect(binding?.contact.z).toBeCloseTo(0, 9);
  });

  it('is the edge of the outer hole for a flat pin that stands out', () => {
    const flat: WindowInput = { ...withTop({ kind: 'flat' }), outerHole: { radius: inch(0.08) } };
    const binding = bindsAt(flat, inch(0.01));
    // worked by hand: the corner, .078 out and .384 up, is turned until it is .080 out
    const reach = Math.hypot(0.078, 0.384);
    expect(binding?.turn).toBeCloseTo(Math.asin(0.08 / reach) - Math.asin(0.078 / reach), 9);
    expect((binding?.contact.x ?? 0) / 25.4).toBeCloseTo(-0.08, 9);
    expect((binding?.contact.y ?? 0) / 25.4).toBeCloseTo(Math.sqrt(reach ** 2 - 0.08 ** 2), 9);
  });

  it('is later for a domed pin, whose edge slips under', () => {
    const flat: WindowInput = { ...withTop({ kind: 'flat' }), outerHole: { radius: inch(0.08) } };
    const domed: WindowInput = {
      ...REFERENCE,
      lower: { ...REFERENCE.lower, top: { kind: 'dome', radius: inch(0.2) } },
      outerHole: { radius: inch(0.08) },
    };
    expect(bindsAt(domed, inch(0.0041))?.turn).toBeGreaterThan(
      (bindsAt(flat, inch(0.0041))?.turn ?? 1) + 0.01,
    );
  });

  it('is beyond reach when the cylinder does not turn that far', () => {
    const short = { ...REFERENCE, turn: { angle: asRadians(0.004) } };
    expect(bindsAt(short, inch(-0.03))).toBeNull();
  });

  test.prop([seeds, fc.double({ min: 1e-4, max: 0.5, noNaN: true })], { numRuns: 1000 })(
    'stops every turn outside the window and none inside',
    (seed, off) => {
      const input = { ...anyWindow(seed), turn: { angle: asRadians(Math.PI) } };
      const { lowest, highest, empty, lowestAt } = shearWindow(input);
      const low = bindsAt(input, lowest - off);
      if (lowestAt !== null) {
        expect(low).not.toBeNull();
        if (low?.side === 'upper part') expect(low.turn).toBeLessThanOrEqual(lowestAt.turn + 1e-6);
      }
      const high = bindsAt(input, highest + off);
      const isInside = input.lower.radius + input.lower.sideways <= input.upper.radius + input.upper.sideways;
      if (isInside || high !== null) expect(high).not.toBeNull();
      if (!empty) expect(bindsAt(input, (lowest + highest) / 2)).toBeNull();
      for (const binding of [low, high]) {
        if (binding) expect(Object.values(binding.contact).every(Number.isFinite)).toBe(true);
      }
    },
  );

  test.prop([seeds], { numRuns: 500 })(
    'comes close to the last steep place as the offset nears the lowest',
    (seed) => {
      const input = randomWindow(seededRandom(seed), ['flat', 'dome'], ['flat', 'dome']);
      const { lowest, lowestAt, highest } = shearWindow(input);
      if (lowestAt === null || lowest > highest) return;
      const binding = bindsAt({ ...input, turn: { angle: asRadians(Math.PI) } }, lowest - 1e-5);
      expect(Math.abs((binding?.turn ?? 0) - lowestAt.turn)).toBeLessThan(2e-3);
    },
  );

  it('is where a point of a pin first comes to the edge of the outer hole further out than the bore, if it is too high', () => {
    const random = seededRandom(71);
    for (let i = 0; i < 40; i++) {
      const drawn = randomWindow(random, ['flat', 'bevel', 'dome'], ['flat']);
      const hole = drawn.upper.radius + between(random, 0, 0.2);
      const input: WindowInput = {
        ...drawn,
        lower: { ...drawn.lower, radius: Math.min(drawn.lower.radius, hole - drawn.lower.sideways - 0.01) },
        outerHole: { radius: hole },
        turn: { angle: asRadians(Math.PI) },
      };
      const { lower, lineRadius, clearance } = input;
      const top = lineRadius + shearWindow(input).highest + between(random, 0.001, 0.2);
      const binding = bindsAt(input, top - lineRadius);
      if (binding?.side !== 'lower part') continue;
      const isStopped = (turn: number): boolean => {
        for (let off = -300; off <= 300; off++) {
          const fromAxis = (lower.radius * off) / 300;
          const across = lower.sideways + fromAxis;
          const up = top - endDrop(lower.top, lower.radius, Math.abs(fromAxis));
          const x = across * Math.cos(turn) - up * Math.sin(turn);
          const y = across * Math.sin(turn) + up * Math.cos(turn);
          const isAtEdge = x <= -hole && x > -hole - 0.005;
          if (isAtEdge && Math.hypot(x, y - clearance / 2) > lineRadius + clearance / 2 + 1e-9) return true;
        }
        return false;
      };
      let first = 0;
      while (!isStopped(first)) first += 1e-4;
      expect(Math.abs(first - binding.turn), JSON.stringify({ top, input })).toBeLessThan(2e-3);
    }
  });

  it('comes before the rubbing ends: a pin that binds also rubs', () => {
    expect(rubsFrom(REFERENCE, inch(0.0041))).toBe(0);
  });
});
