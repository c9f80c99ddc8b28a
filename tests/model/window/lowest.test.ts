/**
 * How low a split may sit. The figures in inches were worked out before the engine, by sweeping the mouth's edge under
 * the part in small steps and reading where the slope falls to tan 60 deg; solid bodies and dense sampling are in
 * `tests/outside/window-solids.test.ts`.
 */
import { describe, expect, it } from 'vitest';
import { fromDegrees } from '../../../src/model/radians.ts';
import { edgeContact } from '../../../src/model/window/edge-contact.ts';
import { mouthEdge, mouthOf } from '../../../src/model/window/mouth-edge.ts';
import { ridingEnd } from '../../../src/model/window/riding-end.ts';
import { shearWindow } from '../../../src/model/window/shear-window.ts';
import type { MouthShape, WindowInput } from '../../../src/model/window/window-input.ts';
import { bevelOf, domeOf, inch, REFERENCE, withBottom, withTop } from '../../support/reference-split.ts';
import { randomWindow, seededRandom } from '../../support/window-cases.ts';

const lowestInches = (input: WindowInput): number => shearWindow(input).lowest / 25.4;

const withMouth = (mouth: MouthShape, input: WindowInput = withBottom({ kind: 'flat' })): WindowInput => ({
  ...input,
  innerHole: { ...input.innerHole, mouth },
});

describe('lowest', () => {
  it.each([
    ['sharp', withBottom({ kind: 'flat' }), -0.0027, 5],
    ['edge radius .005', withBottom({ kind: 'radius', radius: inch(0.005) }), -0.0062, 4],
    ['bevel .005', REFERENCE, -0.0077, 5],
    ['bevel .010', withBottom(bevelOf(0.01)), -0.0127, 5],
    ['dome of the line', withBottom(domeOf(0.374)), -0.0109, 4],
    ['sharp, pushed .002 with the turn', withBottom({ kind: 'flat' }, inch(0.002)), -0.00253, 5],
  ] as const)('is the known figure for a driver end: %s', (_, input, inches, digits) => {
    expect(lowestInches(input)).toBeCloseTo(inches, digits);
  });

  it('differs between a mouth deburred along its edge and a countersunk one of the same size', () => {
    expect(lowestInches(withMouth({ kind: 'deburred along', size: inch(0.005) }))).toBeCloseTo(-0.0077, 4);
    expect(lowestInches(withMouth({ kind: 'countersunk', size: inch(0.005) }))).toBeCloseTo(-0.0046, 4);
  });

  it('is where a countersink on a round body ends on the wall of the hole', () => {
    // worked by hand: the wall's edge leaves the round surface where that lies .005 below the crest
    const { lowestAt } = shearWindow(withMouth({ kind: 'countersunk', size: inch(0.005) }));
    const across = Math.sqrt(0.374 ** 2 - 0.369 ** 2);
    const turn = lowestAt?.turn ?? 0;
    expect((lowestAt?.height ?? 0) / 25.4).toBeCloseTo(across * Math.sin(turn) + 0.369 * Math.cos(turn), 9);
  });

  it('leaves the depth of a straight bevel below that of a sharp end', () => {
    const sharp = shearWindow(withBottom({ kind: 'flat' })).lowestAt?.height ?? 0;
    const bevelled = shearWindow(REFERENCE).lowestAt?.height ?? 0;
    expect(sharp - bevelled).toBeCloseTo(inch(0.005), 9);
  });

  it('falls by the whole of a worn crest', () => {
    const worn = shearWindow({ ...REFERENCE, lineRadius: inch(0.374), crestDrop: inch(0.003) });
    const smaller = shearWindow({ ...REFERENCE, lineRadius: inch(0.371) });
    // the slope is still counted along the line's radius: hence not to the last digit
    expect((worn.lowest - (smaller.lowest - inch(0.003))) / 25.4).toBeCloseTo(0, 4);
    expect(worn.highest).toBeCloseTo(shearWindow(REFERENCE).highest, 12);
  });

  it('is lower under a flat lower part, whose corner lifts the driver before the edge comes', () => {
    const domed = shearWindow(withBottom({ kind: 'flat' }));
    const flat = shearWindow({ ...withTop({ kind: 'flat' }), upper: withBottom({ kind: 'flat' }).upper });
    // worked by hand: the corner of a flat top, .078 from the axis, is lifted to .078 sin turn + top cos turn
    const turn = flat.lowestAt?.turn ?? 0;
    const top = ((flat.lowestAt?.height ?? 0) - inch(0.078) * Math.sin(turn)) / Math.cos(turn);
    expect(flat.lowest).toBeCloseTo(top - inch(0.374), 8);
    expect(domed.lowest - flat.lowest).toBeGreaterThan(inch(0.0006));
  });

  it('rises with the steepest ramp falling', () => {
    const at = (degrees: number): number =>
      lowestInches({ ...REFERENCE, steepestRamp: fromDegrees(degrees) });
    expect(at(70)).toBeLessThan(at(60));
    expect(at(60)).toBeLessThan(at(50));
  });

  it('is no limit for a driver that is wider than the hole', () => {
    const wide = { ...REFERENCE, upper: { ...REFERENCE.upper, radius: inch(0.081) } };
    expect(shearWindow(wide).lowest).toBe(-wide.lineRadius);
    expect(shearWindow(wide).lowestAt).toBeNull();
  });

  it('counts a part that sinks into a dimple by how far it sinks', () => {
    const dimpled = withTop({ kind: 'cup', mouthDiameter: inch(0.09), includedAngle: fromDegrees(90) });
    const input = { ...dimpled, upper: { ...REFERENCE.upper, bottom: domeOf(0.374) } };
    const { lowest, lowestAt } = shearWindow(input);
    const sunk = 0.374 - Math.sqrt(0.374 ** 2 - 0.045 ** 2); // worked by hand: a sphere on a round rim
    expect((lowest + input.lineRadius - (lowestAt?.height ?? 0)) / 25.4).toBeCloseTo(sunk, 9);
  });

  it('reports a contact whose slope is the steepest ramp', () => {
    const random = seededRandom(11);
    let compared = 0;
    for (let i = 0; i < 300; i++) {
      const input = randomWindow(random, ['dome'], ['flat', 'dome']);
      if (input.innerHole.mouth.kind === 'countersunk') continue; // there the slope jumps past it
      const { lowestAt } = shearWindow(input);
      const edge = mouthEdge(mouthOf(input), 0);
      if (lowestAt === null) continue;
      const contact = edgeContact(edge, ridingEnd(input.upper), lowestAt.turn);
      if (contact === null) continue; // the first contact is already gentle
      const slope = contact.rise / input.lineRadius;
      if (lowestAt.point.z > 0.05) {
        expect(slope, JSON.stringify(input)).toBeCloseTo(Math.tan(input.steepestRamp), 3);
        compared++;
      }
    }
    expect(compared).toBeGreaterThan(100);
  });
});
