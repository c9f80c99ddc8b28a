/**
 * A round part in a V, against published measuring formulas. A wire across a V thread and a ball in a V cut are the same
 * circle between two lines, so the key of these tests is a row of V cuts or one V drawn by its corners.
 */
import { describe, expect, test } from 'vitest';
import { contactAt, contactHeightAt } from '../../src/model/contact/contact-at.ts';
import { buildContactCurve, settledHeight } from '../../src/model/contact/contact-curve.ts';
import { buildBallFoot } from '../../src/model/contact/foot.ts';
import { buildKeyProfile, type KeyProfile, type KeyShape } from '../../src/model/contact/key-profile.ts';
import { fromDegrees } from '../../src/model/radians.ts';

const ROOT = 1;

/** A row of sharp V cuts at this pitch, their roots at height ROOT; a thread, laid out straight. */
function vCuts(pitch: number, degrees: number): KeyShape {
  return {
    bladeHeight: 20,
    stop: 'shoulder',
    tipAt: 40,
    tipHeight: 19,
    tipRamp: fromDegrees(45),
    cuts: [-1, 0, 1].map((i) => ({
      id: `groove ${i}`,
      at: 10 + pitch * i,
      rootDepth: ROOT,
      rootFlat: 0,
      includedAngle: fromDegrees(degrees),
    })),
  };
}

/** How far the outer side of a wire stands above the root of its groove. */
function wireAboveRoot(wire: number, pitch: number, degrees: number): number {
  const profile = buildKeyProfile(vCuts(pitch, degrees));
  return contactHeightAt(profile, buildBallFoot(wire), 10, 0) - ROOT + wire;
}

/** Measurement over wires of a thread whose grooves come to a sharp root at this diameter. */
function overWires(rootDiameter: number, wire: number, pitch: number, degrees: number): number {
  return rootDiameter + 2 * wireAboveRoot(wire, pitch, degrees);
}

describe('pins in a V groove with unequal sides', () => {
  // Machinery's Handbook, 31st ed., p. 703: X = Z + 2R [1 + csc((a + b) / 2) cos((a - b) / 2)]; R .500, Z 1.824, a 45,
  // b 35 degrees give X = 4.374. X is over two pins, Z between the roots of their grooves.
  test('measure over both pins as printed', () => {
    const [left, right] = [45, 35].map((degrees) => 1 / Math.tan(fromDegrees(degrees)));
    const profile: KeyProfile = {
      points: [
        { s: -10, height: 10 * (left ?? 0), slope: -(left ?? 0), from: { kind: 'blade' } },
        { s: 0, height: 0, slope: right ?? 0, from: { kind: 'blade' } },
        { s: 10, height: 10 * (right ?? 0), slope: -Infinity, from: { kind: 'tip' } },
      ],
    };
    const radius = 0.5;
    const settled = settledHeight(buildContactCurve(profile, buildBallFoot(2 * radius)), 0);
    expect(1.824 + 2 * (settled + 2 * radius)).toBeCloseTo(4.374, 3);
  });
});

describe('three wires on a 60 degree thread', () => {
  // neme-s.org, "Three Wire Thread Measuring": M = D + 3 W - 1.5155 / N; 7/16-14 with W .045 gives .464.
  test('of 7/16-14 measure .464 over .045 wires', () => {
    const pitch = 1 / 14;
    // Nominal diameter less twice the sharp thread's basic height: pitch diameter D - .649519 P less .866025 P.
    const rootDiameter = 7 / 16 - 1.5155 * pitch;
    expect(overWires(rootDiameter, 0.045, pitch, 60)).toBeCloseTo(0.464, 3);
  });

  // F. D. Jones, Turning and Boring: D 1.500, pitch 1/6, W .140 gives 1.6674.
  test('of 1 1/2-6 measure 1.6674 over .140 wires', () => {
    const pitch = 1 / 6;
    const rootDiameter = 1.5 - 1.5155 * pitch;
    expect(overWires(rootDiameter, 0.14, pitch, 60)).toBeCloseTo(1.6674, 4);
  });

  // Same book, sharp V thread: M = D - 1.732 p + 3 w.
  test('of a sharp V thread measure D - 1.732 p + 3 w', () => {
    const [diameter, pitch, wire] = [1, 1 / 8, 0.072];
    const rootDiameter = diameter - 2 * pitch * Math.cos(fromDegrees(30)); // the whole height of the sharp V, twice
    expect(overWires(rootDiameter, wire, pitch, 60)).toBeCloseTo(diameter - 1.732 * pitch + 3 * wire, 4);
  });

  // neme-s.org: best wire .57735 p, .041 for 14 to the inch. It touches at the pitch line, half way up the sharp V.
  test('touch at the pitch line with the best wire', () => {
    const pitch = 1 / 14;
    const wire = 0.57735 * pitch;
    expect(wire).toBeCloseTo(0.041, 3);
    const { touches } = contactAt(buildKeyProfile(vCuts(pitch, 60)), buildBallFoot(wire), 10, 0);
    const halfHeight = (pitch * Math.cos(fromDegrees(30))) / 2;
    expect(touches).toHaveLength(2);
    for (const { height } of touches) expect(height - ROOT).toBeCloseTo(halfHeight, 6);
  });
});

describe('three wires on a Whitworth thread, 55 degrees', () => {
  // F. D. Jones, Turning and Boring: M = D - 1.6008 p + 3.1657 w; the wires' part of it.
  test('stand out 3.1657 wire diameters', () => {
    const wire = 0.1;
    expect(2 * wireAboveRoot(wire, 0.18, 55)).toBeCloseTo(3.1657 * wire, 5);
  });
});

describe('a ball on the mouth of a tapered slot', () => {
  // model-engineer.co.uk forum: H = R + R sin A - (W - R cos A) / tan A; R .5, half mouth W .625, sides 15 degrees from
  // upright: .0994 printed, .0993 by its own formula. H is how far the ball stands above the slot's mouth.
  test('stands out as printed', () => {
    const [radius, halfMouth, depth] = [0.5, 0.625, 1.5];
    const halfFlat = halfMouth - depth * Math.tan(fromDegrees(15));
    const shape: KeyShape = {
      ...vCuts(1, 30),
      bladeHeight: 2 + depth,
      cuts: [{ id: 'slot', at: 10, rootDepth: 2, rootFlat: 2 * halfFlat, includedAngle: fromDegrees(30) }],
    };
    const contact = contactHeightAt(buildKeyProfile(shape), buildBallFoot(2 * radius), 10, 0);
    expect(contact + 2 * radius - shape.bladeHeight).toBeCloseTo(0.0993, 4);
  });
});
