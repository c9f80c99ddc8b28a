import { describe, expect, test } from 'vitest';
import type { DrawingNode } from '../../src/drawing/node.ts';
import { forceAt, forceText, springForceChart } from '../../src/drawing/spring-force-curve.ts';

const forces = [
  { travel: 20, force: 2 },
  { travel: 10, force: 6 },
  { travel: 0, force: 4 },
];
const size = { width: 500, height: 150, unit: 'mm' as const };

function all(node: DrawingNode): DrawingNode[] {
  return [node, ...node.children.flatMap((child) => (typeof child === 'string' ? [] : all(child)))];
}

describe('the chart of spring forces', () => {
  test('is left out while forces are not known', () => {
    expect(springForceChart([], 0, size)).toBeNull();
    expect(springForceChart(forces.slice(0, 1), 0, size)).toBeNull();
  });

  test('is in proportion: zero on the frame, the middle force half way between the others it is half way between', () => {
    const chart = springForceChart(forces, 5, size);
    const nodes = chart === null ? [] : all(chart);
    const [trace] = nodes.filter(({ attributes }) => attributes['class'] === 'trace trace-picked');
    const numbers =
      String(trace?.attributes['d'])
        .match(/-?\d+(?:\.\d+)?/g)
        ?.map(Number) ?? [];
    const [x1 = 0, y1 = 0, x2 = 0, y2 = 0, x3 = 0, y3 = 0] = numbers;
    expect(x2 - x1).toBeCloseTo(x3 - x2, 0);
    // 2 N, 6 N, 4 N: up four, down two.
    expect((y1 - y2) / (y3 - y2)).toBeCloseTo(2, 1);
    const [dot] = nodes.filter(({ attributes }) => attributes['class'] === 'travel-dot');
    expect(Number(dot?.attributes['cy'])).toBeCloseTo((y2 + y3) / 2, 0);
  });

  test('reads between two places in proportion, and at the ends what is there', () => {
    expect(forceAt(forces, 15)).toBeCloseTo(4, 12);
    expect(forceAt(forces, 2.5)).toBeCloseTo(4.5, 12);
    expect(forceAt(forces, 99)).toBe(2);
    expect(forceAt(forces, -1)).toBe(4);
    expect(forceAt([], 0)).toBeNull();
  });

  test('says pounds beside inches: a pound of force is 0.45359237 kg at 9.80665 m/s² (NIST SP 811, from memory)', () => {
    expect(forceText(0.45359237 * 9.80665, 'in')).toBe('1 lb');
    expect(forceText(10, 'mm')).toBe('10 N');
  });
});
