import { describe, expect, it } from 'vitest';
import { silhouetteDrop } from '../../../src/model/end-shape.ts';
import { outlineDrop, outlineOf, outlineSlope } from '../../../src/model/window/end-outline.ts';
import { between, type EndKind, randomWindow, seededRandom } from '../../support/window-cases.ts';

const KINDS: EndKind[] = ['flat', 'bevel', 'radius', 'dome', 'cone', 'cup', 'sphere'];

describe('end outline', () => {
  it.each(KINDS)('has the drop and the slope of the end shape: %s', (kind) => {
    const random = seededRandom(21);
    for (let i = 0; i < 200; i++) {
      const { top, radius } = randomWindow(random, [kind], ['flat']).lower;
      const outline = outlineOf(top, radius);
      const at = between(random, 0, radius * 0.999);
      const drop = (distance: number): number => silhouetteDrop(top, radius, distance);
      expect(outlineDrop(outline, at)).toBeCloseTo(drop(at), 9);
      const step = 1e-6;
      const isAtCorner = Math.abs(at - outline.faceRadius) < 2 * step;
      if (at > step && !isAtCorner) {
        const slope = (drop(at + step) - drop(at - step)) / (2 * step);
        expect(outlineSlope(outline, at) / Math.max(1, slope)).toBeCloseTo(slope / Math.max(1, slope), 4);
      }
    }
  });

  it('gives the slope just inside at a corner, and a finite one at an upright rim', () => {
    const bevel = outlineOf({ kind: 'bevel', width: 0.2, angle: 0.7 as never }, 2);
    expect(outlineSlope(bevel, 1.8)).toBe(0);
    expect(outlineSlope(bevel, 1.8 + 1e-12)).toBeCloseTo(Math.tan(0.7), 12);
    const ball = outlineOf({ kind: 'sphere' }, 2);
    expect(Number.isFinite(outlineSlope(ball, 2))).toBe(true);
    expect(outlineSlope(ball, 2)).toBeGreaterThan(1e9);
  });

  it('cuts sizes larger than the part down to it', () => {
    expect(outlineOf({ kind: 'radius', radius: 5 }, 2)).toEqual(outlineOf({ kind: 'sphere' }, 2));
    expect(outlineOf({ kind: 'dome', radius: 1 }, 2).arcRadius).toBe(2);
    expect(outlineOf({ kind: 'bevel', width: 3, angle: 0.7 as never }, 2).faceRadius).toBe(0);
  });
});
