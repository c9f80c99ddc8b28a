import { fc, test } from '@fast-check/vitest';
import { describe, expect } from 'vitest';
import { crossHatch, hatchLines, type HatchStyle } from '../../src/geometry/hatch.ts';
import type { Point } from '../../src/geometry/outline.ts';
import { isInside, type Polygon, polygonArea, sidesOf } from '../../src/geometry/polygon.ts';

/** Corners on whole numbers, so that lines at 0 and 45 degrees run through many of them. */
const anyLoop: fc.Arbitrary<Polygon> = fc
  .uniqueArray(fc.record({ x: fc.integer({ min: -9, max: 9 }), y: fc.integer({ min: -9, max: 9 }) }), {
    minLength: 3,
    maxLength: 9,
    selector: ({ x, y }) => `${x} ${y}`,
  })
  .map((points) => {
    const middle = {
      x: points.reduce((sum, { x }) => sum + x, 0) / points.length,
      y: points.reduce((sum, { y }) => sum + y, 0) / points.length,
    };
    const angle = ({ x, y }: Point): number => Math.atan2(y - middle.y, x - middle.x);
    return [...points].sort((a, b) => angle(a) - angle(b));
  });

const anyStyle: fc.Arbitrary<HatchStyle> = fc.oneof(
  fc.constantFrom<HatchStyle>(
    { angle: 0, pitch: 1 },
    { angle: Math.PI / 4, pitch: Math.SQRT1_2 },
    { angle: -Math.PI / 4, pitch: Math.SQRT1_2 },
    { angle: Math.PI / 2, pitch: 0.5 },
  ),
  fc.record({
    angle: fc.double({ min: -3, max: 3, noNaN: true }),
    pitch: fc.double({ min: 0.2, max: 3, noNaN: true }),
  }),
);

function onLine({ from, to }: { from: Point; to: Point }, share: number): Point {
  return { x: from.x + share * (to.x - from.x), y: from.y + share * (to.y - from.y) };
}

function distanceToEdges(polygons: readonly Polygon[], point: Point): number {
  return Math.min(
    ...polygons.flatMap(sidesOf).map(([from, to]) => {
      const [x, y] = [to.x - from.x, to.y - from.y];
      const length = x * x + y * y;
      const share = length === 0 ? 0 : ((point.x - from.x) * x + (point.y - from.y) * y) / length;
      const at = Math.max(0, Math.min(1, share));
      return Math.hypot(from.x + at * x - point.x, from.y + at * y - point.y);
    }),
  );
}

describe('hatching', () => {
  test.prop([fc.array(anyLoop, { minLength: 1, maxLength: 3 }), anyStyle])(
    'lies inside the region and ends on its edges',
    (polygons, style) => {
      for (const line of hatchLines(polygons, style)) {
        expect(distanceToEdges(polygons, line.from)).toBeLessThan(1e-9);
        expect(distanceToEdges(polygons, line.to)).toBeLessThan(1e-9);
        for (const share of [0.11, 0.37, 0.5, 0.83]) {
          const point = onLine(line, share);
          if (distanceToEdges(polygons, point) < 1e-7) continue;
          expect(isInside(polygons, point)).toBe(true);
        }
      }
    },
  );

  test.prop([fc.array(anyLoop, { minLength: 1, maxLength: 2 }), anyStyle, fc.integer({ min: -20, max: 20 })])(
    'leaves no span out, also where a line runs through corners',
    (polygons, style, level) => {
      const along = { x: Math.cos(style.angle), y: Math.sin(style.angle) };
      const lines = hatchLines(polygons, style);
      for (let i = -300; i <= 300; i++) {
        const at = i * 0.0713 + 0.0111;
        const point = {
          x: at * along.x - level * style.pitch * along.y,
          y: at * along.y + level * style.pitch * along.x,
        };
        if (distanceToEdges(polygons, point) < 1e-6) continue;
        const isDrawn = lines.some(({ from, to }) => {
          const start = from.x * along.x + from.y * along.y;
          const end = to.x * along.x + to.y * along.y;
          const off = Math.abs((from.x - point.x) * along.y - (from.y - point.y) * along.x);
          return off < 1e-6 && at > start && at < end;
        });
        expect(isDrawn).toBe(isInside(polygons, point));
      }
    },
  );

  test('covers a region with a hole in proportion to its area', () => {
    const box: Polygon = [
      { x: 0, y: 0 },
      { x: 10, y: 0 },
      { x: 10, y: 6 },
      { x: 0, y: 6 },
    ];
    const hole: Polygon = [
      { x: 3, y: 2 },
      { x: 5, y: 2 },
      { x: 5, y: 4 },
      { x: 3, y: 4 },
    ];
    const pitch = 0.004;
    const length = hatchLines([box, hole], { angle: 0.7, pitch }).reduce(
      (sum, { from, to }) => sum + Math.hypot(to.x - from.x, to.y - from.y),
      0,
    );
    expect(length * pitch).toBeCloseTo(polygonArea(box) - polygonArea(hole), 2);
  });

  test('crosses itself at right angles when two-way', () => {
    const box: Polygon = [
      { x: 0, y: 0 },
      { x: 4, y: 0 },
      { x: 4, y: 4 },
      { x: 0, y: 4 },
    ];
    const lines = crossHatch([box], { angle: Math.PI / 4, pitch: 1 });
    const rising = lines.filter(({ from, to }) => (to.y - from.y) * (to.x - from.x) > 0).length;
    expect(rising).toBeGreaterThan(2);
    expect(lines.length - rising).toBeGreaterThan(2);
  });
});
