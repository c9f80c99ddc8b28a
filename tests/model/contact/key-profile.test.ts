import { fc, test as propertyTest } from '@fast-check/vitest';
import { describe, expect, test } from 'vitest';
import { buildKeyProfile, profileHeightAt } from '../../../src/model/contact/key-profile.ts';
import { fromDegrees } from '../../../src/model/radians.ts';
import { bruteKeyHeight } from './brute-contact.ts';
import { anyKey, anyShare } from './random-keys.ts';
import { INCH, oneCut, SIX_CUTS } from './six-chamber-key.ts';

const SEED = 20_701;

describe('the profile of a key with six cuts', () => {
  const profile = buildKeyProfile(SIX_CUTS);

  test('has its corners where the cutters meet', () => {
    // Worked by hand: the peak between cuts 1 and 2 lies where .369 + (s - .38) = .421 + (.57 - s).
    const corner = profile.points.find(({ from }) => from.kind === 'flank' && from.cut === 'cut 2');
    expect((corner?.s ?? 0) / INCH).toBeCloseTo(0.501, 12);
    expect((corner?.height ?? 0) / INCH).toBeCloseTo(0.49, 12);
    expect(corner?.from).toEqual({ kind: 'flank', cut: 'cut 2', side: 'bow' });
    expect(corner?.slope).toBeCloseTo(-1, 12);
  });

  test('keeps the whole blade between cuts 4 and 5 only', () => {
    const blade = profile.points.filter(({ from }) => from.kind === 'blade').map(({ s }) => s / INCH);
    expect(blade).toHaveLength(2);
    expect(blade[1]).toBeCloseTo(1.237, 12);
  });

  test('ends in the nose, with no key beyond', () => {
    expect(profile.points.at(-1)).toMatchObject({ s: SIX_CUTS.tipAt, slope: -Infinity });
    expect(profileHeightAt(profile, SIX_CUTS.tipAt)).toBeCloseTo(SIX_CUTS.tipHeight, 12);
    expect(profileHeightAt(profile, SIX_CUTS.tipAt + 1e-9)).toBe(0);
  });

  test('goes on level towards the bow', () => {
    expect(profileHeightAt(profile, -1000)).toBe(SIX_CUTS.bladeHeight);
  });
});

test('a key that stops at its tip has its cuts at negative s and the same profile, moved', () => {
  const moved = {
    ...SIX_CUTS,
    stop: 'tip' as const,
    tipAt: 0,
    cuts: SIX_CUTS.cuts.map((cut) => ({ ...cut, at: cut.at - SIX_CUTS.tipAt })),
  };
  const [here, there] = [buildKeyProfile(SIX_CUTS), buildKeyProfile(moved)];
  expect(there.points).toHaveLength(here.points.length);
  there.points.slice(1).forEach((point, i) => {
    expect(point.s + SIX_CUTS.tipAt).toBeCloseTo(here.points[i + 1]?.s ?? NaN, 10);
    expect(point.from).toEqual(here.points[i + 1]?.from);
  });
});

test('a cut shallower than the blade is high leaves no trace', () => {
  const shape = oneCut({ flatIn: 0.06, degrees: 90 });
  const shallow = {
    ...shape,
    cuts: shape.cuts.map((cut) => ({ ...cut, rootDepth: shape.bladeHeight + 0.1 })),
  };
  const { points } = buildKeyProfile(shallow);
  expect(points.map(({ from }) => from.kind)).toEqual(['blade', 'tip', 'tip']);
});

test('a key without a ramp keeps its height up to a square end', () => {
  const { points } = buildKeyProfile({ ...SIX_CUTS, cuts: [], tipRamp: fromDegrees(90) });
  expect(points.at(-1)).toMatchObject({ s: SIX_CUTS.tipAt, height: SIX_CUTS.bladeHeight });
});

describe(`random keys, seed ${SEED}`, () => {
  propertyTest.prop([anyKey, fc.array(anyShare, { minLength: 40, maxLength: 40 })], {
    seed: SEED,
    numRuns: 300,
  })('are the lowest of their cutters everywhere', (shape, shares) => {
    const profile = buildKeyProfile(shape);
    for (const share of shares) {
      const s = Math.min(shape.tipAt, -5 + share * (shape.tipAt + 5));
      expect(Math.abs(profileHeightAt(profile, s) - bruteKeyHeight(shape, s))).toBeLessThan(1e-10);
    }
    for (const { s, height } of profile.points.slice(0, -1)) {
      expect(Math.abs(height - bruteKeyHeight(shape, s))).toBeLessThan(1e-10);
    }
  });

  propertyTest.prop([anyKey], { seed: SEED, numRuns: 300, endOnFailure: true })(
    'have corners in order that join',
    (shape) => {
      const { points } = buildKeyProfile(shape);
      points.slice(1).forEach((point, i) => {
        const before = points[i];
        if (!before) throw new Error('no point before');
        expect(point.s).toBeGreaterThan(before.s);
        // A square tip is a slope of about 1e16: only there the joint is not worth a digit.
        if (Math.abs(before.slope) < 1e6) {
          expect(Math.abs(before.height + before.slope * (point.s - before.s) - point.height)).toBeLessThan(
            1e-9,
          );
        }
      });
    },
  );
});
