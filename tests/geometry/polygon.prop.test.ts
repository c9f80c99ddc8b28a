import { fc, test } from '@fast-check/vitest';
import { describe, expect } from 'vitest';
import { brokenOff } from '../../src/geometry/broken-off.ts';
import { flattenOutline } from '../../src/geometry/flatten.ts';
import { circle, rectangle } from '../../src/geometry/outline.ts';
import { clipToBand, insetLoop, isInside, metalSides, polygonArea } from '../../src/geometry/polygon.ts';

describe('polygons', () => {
  test.prop([fc.double({ min: 0.5, max: 40, noNaN: true }), fc.double({ min: 0.01, max: 0.4, noNaN: true })])(
    'have inset outlines whose line never reaches the true edge',
    (radius, distance) => {
      const loop = flattenOutline(circle({ x: 1, y: 2 }, radius), 0.001);
      for (const { x, y } of insetLoop(loop, distance, true)) {
        expect(Math.hypot(x - 1, y - 2)).toBeLessThanOrEqual(radius - distance * (1 - 1e-6));
      }
    },
  );

  test('have the inset of a hole outside the hole', () => {
    const outside = flattenOutline(rectangle({ left: 0, right: 10, bottom: 0, top: 8 }), 0.01);
    const hole = flattenOutline(rectangle({ left: 4, right: 6, bottom: 3, top: 5 }), 0.01);
    const sides = metalSides([outside, hole]);
    expect(polygonArea(insetLoop(outside, 0.5, sides[0]!))).toBeCloseTo(9 * 7, 9);
    expect(polygonArea(insetLoop(hole, 0.5, sides[1]!))).toBeCloseTo(3 * 3, 9);
    expect(metalSides([[...outside].reverse(), hole])).toEqual([false, false]);
  });

  test.prop([fc.double({ min: -3, max: 3, noNaN: true }), fc.double({ min: 0.1, max: 3, noNaN: true })])(
    'are cut to a band exactly',
    (low, height) => {
      const disc = flattenOutline(circle({ x: 0, y: 0 }, 2), 1e-4);
      const band = clipToBand(disc, low, low + height);
      for (const { y } of band) expect(y >= low - 1e-12 && y <= low + height + 1e-12).toBe(true);
      const [from, to] = [Math.max(-2, low), Math.min(2, low + height)];
      const primitive = (y: number): number =>
        y * Math.sqrt(Math.max(0, 4 - y * y)) + 4 * Math.asin(Math.max(-1, Math.min(1, y / 2)));
      expect(Math.abs(polygonArea(band))).toBeCloseTo(to > from ? primitive(to) - primitive(from) : 0, 2);
    },
  );

  test('break off with a wave that keeps what lies to the right', () => {
    const blade = rectangle({ left: -40, right: 30, bottom: -5, top: 6 });
    const [kept] = brokenOff([blade], { x: -8, amplitude: 0.2, wavelength: 3, tolerance: 0.01 });
    const loop = flattenOutline(kept!, 0.01);
    expect(Math.min(...loop.map(({ x }) => x))).toBeGreaterThanOrEqual(-8.2);
    expect(Math.min(...loop.map(({ x }) => x))).toBeLessThan(-8.1);
    expect(isInside([loop], { x: -7.5, y: 0 })).toBe(true);
    expect(brokenOff([blade], { x: 31, amplitude: 0.2, wavelength: 3, tolerance: 0.01 })).toEqual([]);
  });
});
