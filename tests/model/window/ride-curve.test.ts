/** The ride. The depths in inches were found by sweeping the mouth's edge under the part, and by solid bodies. */
import { describe, expect, it } from 'vitest';
import { asRadians, fromDegrees } from '../../../src/model/radians.ts';
import { arrivalAt } from '../../../src/model/window/arrival.ts';
import {
  ceilingReach,
  edgeDepthSquared,
  edgeUp,
  mouthEdge,
  mouthOf,
  mouthReach,
  surfaceEdge,
} from '../../../src/model/window/mouth-edge.ts';
import { mouthContact, rideCurve, rideMarks } from '../../../src/model/window/ride-curve.ts';
import { ridingEnd } from '../../../src/model/window/riding-end.ts';
import type { WindowInput } from '../../../src/model/window/window-input.ts';
import { denseRide } from '../../support/dense-window.ts';
import { bevelOf, domeOf, inch, REFERENCE, withBottom, withTop } from '../../support/reference-split.ts';
import { between, type EndKind, randomWindow, seededRandom } from '../../support/window-cases.ts';

const KINDS: EndKind[] = ['flat', 'bevel', 'radius', 'dome', 'cone', 'sphere'];

const arcOf = (input: WindowInput, inches: number) => asRadians(inch(inches) / input.lineRadius);

describe('ride curve', () => {
  it.each([
    [0.0025, 0.0053],
    [0.003, 0.0036],
    [0.004, 0.0019],
    [0.005, 0.0011],
    [0.006, 0.0007],
  ])('lets a sharp driver at arc %f in hang in %f in', (arc, depth) => {
    const input = withBottom({ kind: 'flat' });
    const height = rideCurve(input)(arcOf(input, arc));
    expect((input.lineRadius - (height ?? 0)) / 25.4).toBeCloseTo(depth, 4);
  });

  it('asks for nothing before the mouth comes under the part', () => {
    const input = withBottom({ kind: 'flat' });
    const needed = rideCurve(input);
    // worked by hand: rim .078 and edge .080 from the axis on the same circle
    const arrival = Math.asin(0.08 / 0.374) - Math.asin(0.078 / 0.374);
    expect(needed(asRadians(arrival - 1e-9))).toBeNull();
    expect(needed(asRadians(arrival + 1e-6))).not.toBeNull();
    expect(arrivalAt(mouthEdge(mouthOf(input), 0), ridingEnd(input.upper)).turn).toBeCloseTo(arrival, 12);
  });

  it('ends on the crest and stays there, the same in both directions', () => {
    for (const input of [REFERENCE, withBottom(domeOf(0.374)), withBottom({ kind: 'sphere' })]) {
      const needed = rideCurve(input);
      const passed = asRadians(Math.asin(0.08 / 0.374));
      expect(needed(passed)).toBeCloseTo(input.lineRadius, 9);
      expect(needed(asRadians(2))).toBeCloseTo(input.lineRadius, 9);
      expect(needed(asRadians(-0.02))).toBe(needed(asRadians(0.02)));
    }
  });

  it('never falls while it turns', () => {
    const random = seededRandom(41);
    for (let i = 0; i < 60; i++) {
      const input = randomWindow(random, ['dome'], KINDS);
      let before = -Infinity;
      for (const { height } of rideMarks(input, 40)) {
        expect(height, JSON.stringify(input)).toBeGreaterThan(before - 1e-6);
        before = height;
      }
    }
  });

  it('agrees with dense sampling for every end and mouth', () => {
    const random = seededRandom(42);
    let compared = 0;
    for (let i = 0; i < 250; i++) {
      const input = randomWindow(random, ['dome'], KINDS);
      const mouth = mouthOf(input);
      const arrival = arrivalAt(mouthEdge(mouth, 0), ridingEnd(input.upper)).turn;
      const passed = Math.asin(mouthReach(mouth) / mouth.bodyRadius);
      for (let arc = 0; arc < 4; arc++) {
        const turn = asRadians(arrival + (passed * 1.02 - arrival) * random() ** 2);
        const height = rideCurve(input)(turn);
        expect(height, JSON.stringify(input)).not.toBeNull();
        const difference = Math.abs((height ?? 0) - denseRide(input, turn));
        expect(difference, `turn ${turn} ${JSON.stringify(input)}`).toBeLessThan(1e-6);
        compared++;
      }
    }
    expect(compared).toBe(1000);
  });

  it('knows its own slope', () => {
    const random = seededRandom(43);
    let compared = 0;
    for (let i = 0; i < 400; i++) {
      const input = randomWindow(random, ['dome'], KINDS);
      if (input.innerHole.mouth.kind !== 'sharp') continue;
      const mouth = mouthOf(input);
      const end = ridingEnd(input.upper);
      const arrival = arrivalAt(mouthEdge(mouth, 0), end).turn;
      const passed = Math.asin(mouthReach(mouth) / mouth.bodyRadius);
      const turn = arrival + (passed - arrival) * between(random, 0.1, 0.9);
      const contacts = [turn - 1e-6, turn, turn + 1e-6].map((at) => mouthContact(mouth, end, asRadians(at)));
      const [before, here, after] = contacts;
      if (!before || !here || !after) throw new Error(`no contact: ${JSON.stringify(input)}`);
      const rise = (after.height - before.height) / 2e-6;
      const isKink = Math.abs(after.height - 2 * here.height + before.height) > 1e-9;
      if (isKink) continue;
      expect(here.rise, JSON.stringify(input)).toBeCloseTo(rise, 2);
      compared++;
    }
    expect(compared).toBeGreaterThan(150);
  });

  it('stands on the lower part first when there is one', () => {
    const flat = { ...withTop({ kind: 'flat' }), upper: withBottom({ kind: 'flat' }).upper };
    const ride = rideCurve(flat, inch(-0.003));
    expect(ride(asRadians(0))).toBeCloseTo(inch(0.371), 9);
    const turn = asRadians(0.004); // the mouth has not come yet
    expect(ride(turn)).toBeCloseTo(inch(0.078) * Math.sin(turn) + inch(0.371) * Math.cos(turn), 9);
    expect(ride(arcOf(flat, 0.0025))).toBeGreaterThanOrEqual(rideCurve(flat)(arcOf(flat, 0.0025)) ?? 0);
    const dimpled = withTop({ kind: 'cup', mouthDiameter: inch(0.09), includedAngle: fromDegrees(90) });
    const nested = rideCurve({ ...dimpled, upper: { ...dimpled.upper, bottom: domeOf(0.374) } }, 0);
    expect(nested(asRadians(0))).toBeLessThan(inch(0.3732));
  });

  it('samples for a chart from the first contact to the crest', () => {
    const marks = rideMarks(REFERENCE, 30);
    expect(marks.length).toBeGreaterThanOrEqual(29);
    expect(marks[marks.length - 1]?.height).toBeCloseTo(REFERENCE.lineRadius, 9);
    expect((marks[1]?.turn ?? 0) - (marks[0]?.turn ?? 0)).toBeLessThan(0.005);
  });
});

describe('mouth edges', () => {
  const countersunk = mouthOf({
    ...REFERENCE,
    innerHole: { radius: inch(0.08), mouth: { kind: 'countersunk', size: inch(0.005) } },
  });

  it('of a countersink lie on cone and surface', () => {
    const outer = surfaceEdge(countersunk);
    if (outer === null) throw new Error('no surface edge');
    for (const share of [0, 0.3, 0.7, 1]) {
      const across = outer.widest * share;
      const up = edgeUp(outer, across);
      const plan = Math.sqrt(edgeDepthSquared(outer, across) + across * across);
      expect(Math.hypot(across, up)).toBeCloseTo(inch(0.374), 9);
      expect(up).toBeCloseTo(inch(0.374 - 0.005) + plan - inch(0.08), 9);
    }
    // at its widest it runs into the wall
    expect(Math.sqrt(edgeDepthSquared(outer, outer.widest) + outer.widest ** 2)).toBeCloseTo(inch(0.08), 9);
    expect(ceilingReach(mouthEdge(countersunk, 0))).toBeCloseTo(outer.widest, 9);
    expect(mouthReach(countersunk)).toBe(inch(0.08));
  });

  it('of a deep countersink go all round', () => {
    const deep = mouthOf({
      ...REFERENCE,
      innerHole: { radius: inch(0.08), mouth: { kind: 'countersunk', size: inch(0.02) } },
    });
    const outer = surfaceEdge(deep);
    expect(mouthReach(deep)).toBeGreaterThan(inch(0.08));
    expect(edgeDepthSquared(outer ?? mouthEdge(deep, 0), mouthReach(deep))).toBeCloseTo(0, 9);
  });

  it('are one and the same for a sharp mouth, and for a size of nothing', () => {
    expect(surfaceEdge(mouthOf(REFERENCE))).toBeNull();
    const nothing = mouthOf({
      ...REFERENCE,
      innerHole: { radius: inch(0.08), mouth: { kind: 'countersunk', size: 0 } },
    });
    expect(nothing.kind).toBe('sharp');
    expect(bevelOf(0.005).kind).toBe('bevel');
  });
});
