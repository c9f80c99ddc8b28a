import { fc, test as propertyTest } from '@fast-check/vitest';
import { describe, expect, test } from 'vitest';
import { contactAt, contactHeightAt } from '../../../src/model/contact/contact-at.ts';
import { buildContactCurve, curveEnd, curveHeightAt } from '../../../src/model/contact/contact-curve.ts';
import { buildFoot, footDrop } from '../../../src/model/contact/foot.ts';
import { buildKeyProfile, type KeyShape, profileHeightAt } from '../../../src/model/contact/key-profile.ts';
import { slopeOn } from '../../../src/model/contact/pieces.ts';
import { bruteContact } from './brute-contact.ts';
import { anyBall, anyFoot, anyKey, anyShare, axisAt, between } from './random-keys.ts';

const SEED = 20_704;
const RUNS = { seed: SEED, numRuns: 500, endOnFailure: true };
/** mm. Closed form against trying points; the last step of the trial is finer than this. */
const AGREES = 1e-9;

function withCuts(
  shape: KeyShape,
  change: (cut: KeyShape['cuts'][number]) => Partial<KeyShape['cuts'][number]>,
): KeyShape {
  return { ...shape, cuts: shape.cuts.map((cut) => ({ ...cut, ...change(cut) })) };
}

describe(`random keys and feet, seed ${SEED}`, () => {
  propertyTest.prop([anyKey, anyFoot, anyShare], RUNS)(
    'rest where trying many points finds them',
    (shape, any, share) => {
      const axis = axisAt(shape, any.foot, share);
      const found = contactHeightAt(buildKeyProfile(shape), any.foot, axis, 0);
      const tried = bruteContact(shape, any.end, any.radius, axis);
      if (tried === -Infinity) expect(found).toBe(-Infinity);
      else expect(Math.abs(found - tried)).toBeLessThan(AGREES);
    },
  );

  propertyTest.prop([anyKey, anyFoot, anyShare], RUNS)(
    'touch the key in every place reported',
    (shape, any, share) => {
      const profile = buildKeyProfile(shape);
      const axis = axisAt(shape, any.foot, share);
      const { height, touches } = contactAt(profile, any.foot, axis, 0);
      expect(height).toBeCloseTo(contactHeightAt(profile, any.foot, axis, 0), 12);
      expect(touches.length).toBeGreaterThan(0);
      for (const touch of touches) {
        const across = Math.max(-any.radius, Math.min(any.radius, touch.s - axis));
        expect(touch.height).toBeCloseTo(profileHeightAt(profile, touch.s), 9);
        expect(touch.height - footDrop(any.foot, across)).toBeCloseTo(height, 8);
        expect(touch.sides.reduce((sum, side) => sum + side.share, 0)).toBeCloseTo(1, 12);
        for (const { share: part } of touch.sides) expect(part).toBeGreaterThanOrEqual(-1e-9);
      }
    },
  );

  propertyTest.prop([anyKey, anyFoot, fc.array(anyShare, { minLength: 30, maxLength: 30 })], {
    seed: SEED,
    numRuns: 300,
  })('follow the curve that is built for all places at once', (shape, { foot }, shares) => {
    const profile = buildKeyProfile(shape);
    const curve = buildContactCurve(profile, foot);
    expect(curveEnd(curve)).toBeCloseTo(shape.tipAt + foot.radius, 9);
    const gaps = shares.map((share) => {
      const axis = axisAt(shape, foot, share);
      return Math.abs(curveHeightAt(curve, axis) - contactHeightAt(profile, foot, axis, 0));
    });
    expect(Math.max(...gaps)).toBeLessThan(AGREES);
  });

  propertyTest.prop([anyKey, anyFoot, anyShare, between(-90, 90)], RUNS)(
    'rest as high wherever the stop is',
    (shape, { foot }, share, by) => {
      const axis = axisAt(shape, foot, share);
      const moved = { ...withCuts(shape, (cut) => ({ at: cut.at + by })), tipAt: shape.tipAt + by };
      const here = contactHeightAt(buildKeyProfile(shape), foot, axis, 0);
      const there = contactHeightAt(buildKeyProfile(moved), foot, axis + by, 0);
      const slope = Math.max(
        ...contactAt(buildKeyProfile(shape), foot, axis, 0).touches.map((touch) => Math.abs(touch.slope)),
      );
      // Moving rounds the place to about 1e-14 mm, which counts by the slope; near a ball's widest place that is much.
      if (slope < 1e4) expect(Math.abs(here - there)).toBeLessThan(AGREES);
    },
  );

  propertyTest.prop([anyKey, anyFoot, anyShare], RUNS)(
    'rest as high on the mirrored key',
    (shape, { foot }, share) => {
      const endless = { ...shape, tipAt: 500 }; // both tips out of reach
      const mirrored = withCuts(endless, (cut) => ({ at: -cut.at }));
      const axis = axisAt(shape, foot, share);
      const here = contactAt(buildKeyProfile(endless), foot, axis, 0);
      const there = contactAt(buildKeyProfile(mirrored), foot, -axis, 0);
      expect(Math.abs(here.height - there.height)).toBeLessThan(AGREES);
      expect(there.touches).toHaveLength(here.touches.length);
      there.touches.toReversed().forEach((touch, i) => {
        expect(touch.slope).toBeCloseTo(-(here.touches[i]?.slope ?? NaN), 6);
      });
    },
  );

  propertyTest.prop([anyKey, anyFoot, anyShare, between(0, 2)], RUNS)(
    'never rest higher on a key cut deeper, wider or more open',
    (shape, { foot }, share, more) => {
      const axis = axisAt(shape, foot, share);
      const before = contactHeightAt(buildKeyProfile(shape), foot, axis, 0);
      for (const change of [
        withCuts(shape, (cut) => ({ rootDepth: cut.rootDepth - more })),
        withCuts(shape, (cut) => ({ rootFlat: cut.rootFlat + more })),
        { ...shape, bladeHeight: shape.bladeHeight - more },
      ]) {
        expect(contactHeightAt(buildKeyProfile(change), foot, axis, 0)).toBeLessThanOrEqual(before + AGREES);
      }
    },
  );

  propertyTest.prop([anyKey, anyShare, between(0.5, 2), between(0, 1)], RUNS)(
    'hold a bigger ball no lower',
    (shape, share, radius, more) => {
      const profile = buildKeyProfile(shape);
      const [small, big] = [radius, radius + more].map((size) => buildFoot({ kind: 'sphere' }, size));
      if (!small || !big) throw new Error('two feet expected');
      const axis = axisAt(shape, small, share);
      const higher = contactHeightAt(profile, big, axis, 0);
      expect(higher).toBeGreaterThanOrEqual(contactHeightAt(profile, small, axis, 0) - AGREES);
    },
  );

  let valleys = 0;
  propertyTest.prop([anyKey, anyBall], RUNS)(
    'hold a ball in two places at every valley of its curve',
    (shape, foot) => {
      const profile = buildKeyProfile(shape);
      const { pieces } = buildContactCurve(profile, foot);
      pieces.slice(1).forEach((piece, i) => {
        const before = pieces[i];
        if (!before || slopeOn(piece.curve, piece.from) - slopeOn(before.curve, before.to) < 1e-3) return;
        valleys++;
        const { touches } = contactAt(profile, foot, piece.from, 0);
        expect(touches.length).toBeGreaterThanOrEqual(2);
      });
    },
  );

  test('bridged many valleys', () => {
    expect(valleys).toBeGreaterThan(1000);
  });
});
