/** Springs, fits and balls against published figures. */
import { describe, expect, test } from 'vitest';
import { activeCoils, solidLength, springForce, springRate } from '../../src/model/rest/spring-formulas.ts';
import { toDegrees } from '../../src/model/radians.ts';
import { steepestClimbable } from '../../src/model/travel/climbable.ts';
import { roomToPass } from '../../src/model/travel/passing.ts';
import { parseLength } from '../../src/model/units/parse-length.ts';

const INCH = 25.4;
const POUND = 0.45359237 * 9.80665;
const PSI_TO_GPA = 6894.757293168e-9;

describe("Shigley's Mechanical Engineering Design, example 10-1, from memory", () => {
  // Music wire .037 in, outside diameter 7/16 in, squared ends, 12.5 coils; G 11.85 Mpsi. The book rounds D to .400 in and
  // gives k 4.13 lbf/in, F 6.46 lbf, y 1.56 in, solid .500 in, free 2.06 in.
  const wire = 0.037 * INCH;
  const meanDiameter = 0.4 * INCH;
  const active = activeCoils(12.5, 'closed');
  const rate = springRate({ wire, meanDiameter, activeCoils: active, shearModulusGPa: 11.85e6 * PSI_TO_GPA });
  const solid = solidLength(wire, 12.5, 'closed');

  test('coils that work, rate, solid length', () => {
    expect(active).toBe(10.5);
    expect(((rate ?? 0) * INCH) / POUND).toBeCloseTo(4.13, 2);
    // printed to three places
    expect(Math.abs(solid / INCH - 0.5)).toBeLessThanOrEqual(5.1e-4);
  });

  test('from solid length and force to the free length', () => {
    const free = 2.06 * INCH;
    expect(springForce(rate ?? 0, free, solid) / POUND).toBeCloseTo(6.46, 1);
  });
});

describe('a spring computed by hand, and a public answer that is wrong', () => {
  // Wire 4 mm, outside 30 mm, 11 coils of which 9 work, squared and ground, G 79.3 GPa.
  test('16.042 N/mm, solid 44 mm', () => {
    expect(activeCoils(11, 'closed and ground')).toBe(9);
    expect(springRate({ wire: 4, meanDiameter: 26, activeCoils: 9, shearModulusGPa: 79.3 })).toBeCloseTo(
      16.042,
      3,
    );
    expect(solidLength(4, 11, 'closed and ground')).toBe(44);
  });

  // qammunity.org gives 15.8 N/mm for wire 2.5 mm, outside 31 mm, 14 coils: ten times too stiff.
  test('1.406 N/mm, not 15.8', () => {
    expect(springRate({ wire: 2.5, meanDiameter: 28.5, activeCoils: 12, shearModulusGPa: 80 })).toBeCloseTo(
      1.406,
      2,
    );
  });
});

describe('ISO 286 fits: the play of a round part in its hole', () => {
  // Limits in µm. H7, H8: deepri.com; g6, f7: eicac.co.uk, ISO 286-2 shaft fits.
  const H7 = { 12.7: [0, 18], 22.2: [0, 21] } as const;
  const H8 = { 12.7: [0, 27], 22.2: [0, 33] } as const;
  const g6 = { 12.7: [-17, -6], 22.2: [-20, -7] } as const;
  const f7 = { 12.7: [-34, -16], 22.2: [-41, -20] } as const;
  test.each([
    [12.7, 6, 35, H7, g6],
    [22.2, 7, 41, H7, g6],
    [12.7, 16, 61, H8, f7],
    [22.2, 20, 74, H8, f7],
  ] as const)('%f mm: from %i to %i µm', (nominal, least, most, hole, shaft) => {
    const [smallestHole, largestHole] = hole[nominal].map((limit) => nominal + limit / 1000) as [
      number,
      number,
    ];
    const [thinnest, thickest] = shaft[nominal].map((limit) => nominal + limit / 1000) as [number, number];
    // In two holes alike, a pin lets them slip by the whole of its play in diameter.
    const slip = (bore: number, pin: number) => roomToPass(bore / 2, bore / 2, pin / 2) * 1000;
    expect(slip(smallestHole, thickest)).toBeCloseTo(least, 6);
    expect(slip(largestHole, thinnest)).toBeCloseTo(most, 6);
  });
});

describe('sides of a key seen as a cam', () => {
  // R. L. Norton, Cam Design and Manufacturing Handbook, 2nd ed., 2009: a translating follower wants a pressure angle of at
  // most about 30 degrees. Context only: keys go beyond it (45 for a cut of 90 degrees) and are climbed by hand.
  test('the everyday cut of 90 degrees is steeper than a cam may be, and is climbed', () => {
    const steepest = toDegrees(steepestClimbable({ friction: 0.22, overhang: 0, guided: 1 }));
    expect(steepest).toBeGreaterThan(90 - 90 / 2);
    expect(90 - 90 / 2).toBeGreaterThan(30);
  });
});

describe('bearing balls, typed as fractions', () => {
  // ISO 3290 list of nominal diameters as printed by technoball.it, mm; a fraction of an inch is exact to 1e-4 mm or rounded.
  test.each([
    [1, 16, 1.5875],
    [3, 32, 2.3812],
    [7, 64, 2.7781],
    [1, 8, 3.175],
    [5, 32, 3.9688],
    [3, 16, 4.7625],
  ])('%i/%i in is %f mm', (top, bottom, printed) => {
    const read = parseLength(`${top}/${bottom}`, { unit: 'in' });
    expect(read.type === 'length' && Math.abs(read.mm - printed) <= 6e-5, JSON.stringify(read)).toBe(true);
  });
});
