import { fc, test } from '@fast-check/vitest';
import { describe, expect } from 'vitest';
import { flattenOutline } from '../../src/geometry/flatten.ts';
import {
  arcTo,
  boundsOf,
  circle,
  lineTo,
  mirroredAcross,
  moved,
  type Outline,
  rectangle,
  regionArea,
  reversed,
  signedArea,
  turned,
} from '../../src/geometry/outline.ts';
import { polygonArea } from '../../src/geometry/polygon.ts';

/** A half disc of radius 2 on a line. */
const HALF_DISC: Outline = {
  start: { x: 2, y: 0 },
  edges: [arcTo({ x: -2, y: 0 }, { x: 0, y: 0 }, false), lineTo(2, 0)],
};

describe('outlines', () => {
  test('measures areas of arcs exactly', () => {
    expect(signedArea(HALF_DISC)).toBeCloseTo(2 * Math.PI, 12);
    expect(signedArea(reversed(HALF_DISC))).toBeCloseTo(-2 * Math.PI, 12);
    expect(signedArea(circle({ x: 3, y: -1 }, 1.5))).toBeCloseTo(Math.PI * 2.25, 12);
  });

  test('counts a loop inside a loop as a hole', () => {
    const region = [rectangle({ left: 0, right: 4, bottom: 0, top: 3 }), circle({ x: 2, y: 1.5 }, 1)];
    expect(regionArea(region)).toBeCloseTo(12 - Math.PI, 12);
    expect(regionArea([...region].reverse())).toBeCloseTo(12 - Math.PI, 12);
  });

  test('bounds an arc with its bulge', () => {
    expect(boundsOf([HALF_DISC])).toEqual({ left: -2, right: 2, bottom: 0, top: 2 });
    const upsideDown = turned(HALF_DISC, Math.PI, { x: 0, y: 0 });
    expect(boundsOf([upsideDown]).bottom).toBeCloseTo(-2, 12);
    expect(boundsOf([upsideDown]).top).toBeCloseTo(0, 12);
  });

  test.prop([
    fc.double({ min: -3, max: 3, noNaN: true }),
    fc.double({ min: -20, max: 20, noNaN: true }),
    fc.double({ min: -20, max: 20, noNaN: true }),
  ])('keeps areas when moved and turned, and turns them over when mirrored', (angle, x, y) => {
    expect(signedArea(turned(moved(HALF_DISC, x, y), angle, { x, y }))).toBeCloseTo(2 * Math.PI, 9);
    expect(signedArea(mirroredAcross(HALF_DISC))).toBeCloseTo(-2 * Math.PI, 12);
  });

  test.prop([fc.double({ min: 1e-4, max: 0.3, noNaN: true })])(
    'flattens arcs within the tolerance asked for',
    (tolerance) => {
      const points = flattenOutline(HALF_DISC, tolerance);
      points.slice(0, -1).forEach((point, i) => {
        const next = points[i + 1]!;
        const middle = Math.hypot((point.x + next.x) / 2, (point.y + next.y) / 2);
        expect(2 - middle).toBeLessThanOrEqual(tolerance * (1 + 1e-9));
      });
      expect(Math.abs(polygonArea(points) - 2 * Math.PI)).toBeLessThanOrEqual(tolerance * 2 * Math.PI);
    },
  );
});
