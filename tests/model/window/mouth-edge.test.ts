/**
 * The edges of a mouth against the bodies they lie on: every point of an edge is on the round body or under its ceiling, and on the wall
 * of the hole or the 45 degree cone of a countersink. Rates against small differences, inverses by going there and back.
 */
import { describe, expect, test } from 'vitest';
import {
  ceilingReach,
  edgeAcrossAtDepth,
  edgeDepthRate,
  edgeDepthSquared,
  edgeUp,
  mouthEdge,
  mouthReach,
  surfaceEdge,
  type Mouth,
} from '../../../src/model/window/mouth-edge.ts';

const BODY = 6.5;
const HOLE = 1.5;
const SIZE = 0.3;
const mouth = (kind: Mouth['kind'], size = SIZE): Mouth => ({
  bodyRadius: BODY,
  holeRadius: HOLE,
  kind,
  size,
});
const shares = (widest: number) => [0, 0.1, 0.35, 0.6, 0.9, 0.99].map((share) => share * widest);

describe.each([
  ['sharp', mouthEdge(mouth('sharp', 0), 0)],
  ['deburred, inner edge', mouthEdge(mouth('deburred along'), 0)],
  ['deburred, outer edge', surfaceEdge(mouth('deburred along'))!],
  ['countersunk, half way down', mouthEdge(mouth('countersunk'), SIZE / 2)],
  ['countersunk, outer edge', surfaceEdge(mouth('countersunk'))!],
])('%s', (name, edge) => {
  test('lies on its bodies', () => {
    for (const across of shares(edge.widest)) {
      const up = edgeUp(edge, across);
      const depthSquared = edgeDepthSquared(edge, across);
      expect(depthSquared).toBeGreaterThanOrEqual(-1e-9);
      const fromHoleAxis = Math.hypot(across, Math.sqrt(Math.max(0, depthSquared)));
      if (name === 'countersunk, outer edge') {
        expect(Math.hypot(across, up)).toBeCloseTo(BODY, 9);
        // As wide as the hole where it is `size` deep below the crest, a mm wider for every mm up.
        expect(fromHoleAxis - HOLE).toBeCloseTo(up - (BODY - SIZE), 9);
      } else {
        const inward = { 'deburred, outer edge': SIZE, 'countersunk, half way down': SIZE / 2 }[name] ?? 0;
        expect(fromHoleAxis).toBeCloseTo(HOLE + inward, 9);
        if (name === 'deburred, inner edge') expect(Math.hypot(across, up)).toBeCloseTo(BODY - SIZE, 9);
        if (name === 'countersunk, half way down')
          expect(up).toBeCloseTo(Math.min(BODY - SIZE / 2, Math.sqrt(BODY ** 2 - across ** 2)), 9);
      }
    }
  });

  test('turns its depth at the rate of small differences', () => {
    const step = 1e-5;
    for (const across of shares(edge.widest).slice(1, -1)) {
      const rise = edgeDepthSquared(edge, across + step) - edgeDepthSquared(edge, across - step);
      expect(edgeDepthRate(edge, across)).toBeCloseTo(rise / (2 * step) / 2, 6);
    }
  });

  test('is found again from its depth', () => {
    for (const across of shares(edge.widest)) {
      const depth = Math.sqrt(Math.max(0, edgeDepthSquared(edge, across)));
      expect(edgeAcrossAtDepth(edge, depth)).toBeCloseTo(across, 6);
    }
    expect(edgeAcrossAtDepth(edge, 3 * HOLE)).toBe(0);
  });
});

test('a broken edge reaches as far as it is wide, a sharp one to the wall', () => {
  expect(mouthReach(mouth('sharp', 0))).toBe(HOLE);
  expect(mouthReach(mouth('deburred along'))).toBeCloseTo(HOLE + SIZE, 12);
  const reach = mouthReach(mouth('countersunk'));
  // On the round body and on the cone at once.
  expect(Math.sqrt(BODY ** 2 - reach ** 2) - (BODY - SIZE)).toBeCloseTo(reach - HOLE, 9);
  // So small that the body has fallen away before the wall: nothing of it is left there.
  expect(mouthReach(mouth('countersunk', 0.01))).toBe(HOLE);
});

test('a ceiling cuts the round edge where the body is as high', () => {
  const edge = mouthEdge(mouth('countersunk'), 0.1);
  expect(Math.hypot(ceilingReach(edge), edge.ceiling)).toBeCloseTo(BODY, 9);
  expect(ceilingReach(mouthEdge(mouth('sharp', 0), 0))).toBe(0);
  expect(surfaceEdge(mouth('sharp', 0))).toBeNull();
});
