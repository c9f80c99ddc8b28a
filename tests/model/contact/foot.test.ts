import { test as propertyTest } from '@fast-check/vitest';
import { describe, expect, test } from 'vitest';
import { buildFoot, footDrop, footSlopes, footSupport } from '../../../src/model/contact/foot.ts';
import { silhouetteDrop } from '../../../src/model/end-shape.ts';
import { fromDegrees } from '../../../src/model/radians.ts';
import { anyFoot, between } from './random-keys.ts';

const SEED = 20_703;

describe(`random feet, seed ${SEED}`, () => {
  propertyTest.prop([anyFoot, between(-1, 1)], { seed: SEED, numRuns: 500, endOnFailure: true })(
    'drop as the end of the part does',
    ({ foot, end, radius }, share) => {
      const across = share * radius;
      expect(footDrop(foot, across)).toBeCloseTo(silhouetteDrop(end, radius, across), 9);
    },
  );

  propertyTest.prop([anyFoot, between(-6, 6)], { seed: SEED, numRuns: 500, endOnFailure: true })(
    'are touched by a straight edge where it lies lowest under them',
    ({ foot, radius }, slope) => {
      const support = footSupport(foot, slope);
      const room = (across: number): number => footDrop(foot, across) - slope * across;
      const least = room((support.from + support.to) / 2);
      expect(room(support.from)).toBeCloseTo(least, 9);
      expect(room(support.to)).toBeCloseTo(least, 9);
      const rooms = Array.from({ length: 401 }, (_, i) => room(((i - 200) / 200) * radius));
      expect(Math.min(...rooms)).toBeGreaterThanOrEqual(least - 1e-9);
    },
  );

  propertyTest.prop([anyFoot, between(-6, 6)], { seed: SEED, numRuns: 500, endOnFailure: true })(
    'give back the slope that touches them',
    ({ foot }, slope) => {
      const support = footSupport(foot, slope);
      const slopes = footSlopes(foot, (support.from + support.to) / 2);
      expect(slopes.from).toBeLessThanOrEqual(slope + 1e-9);
      expect(slopes.to).toBeGreaterThanOrEqual(slope - 1e-9);
    },
  );
});

describe('a foot', () => {
  test('ends at its rim', () => {
    const foot = buildFoot({ kind: 'flat' }, 2);
    expect(footDrop(foot, 2)).toBe(0);
    expect(footDrop(foot, 2.001)).toBe(Infinity);
    expect(footSlopes(foot, 2)).toEqual({ from: 0, to: Infinity });
    expect(footSlopes(foot, -2)).toEqual({ from: -Infinity, to: 0 });
  });

  test('with a small flat lies on level metal with all of it', () => {
    const foot = buildFoot({ kind: 'cone', tipFlatDiameter: 1, includedAngle: fromDegrees(90) }, 2);
    expect(footSupport(foot, 0)).toEqual({ from: -0.5, to: 0.5 });
    expect(footSupport(foot, 0.4)).toEqual({ from: 0.5, to: 0.5 });
    expect(footSupport(foot, 3)).toEqual({ from: 2, to: 2 });
  });

  test('of a ball is upright at its widest', () => {
    const foot = buildFoot({ kind: 'sphere' }, 2);
    expect(footSlopes(foot, 2)).toEqual({ from: Infinity, to: Infinity });
    expect(footSlopes(foot, -2)).toEqual({ from: -Infinity, to: -Infinity });
  });

  test('wider than its crown is a bad call', () => {
    expect(() => buildFoot({ kind: 'dome', radius: 1 }, 2)).toThrow('crown 1 mm');
  });
});
