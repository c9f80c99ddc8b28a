import { test as propertyTest } from '@fast-check/vitest';
import { describe, expect } from 'vitest';
import { contactHeightAt } from '../../../src/model/contact/contact-at.ts';
import { buildContactCurve } from '../../../src/model/contact/contact-curve.ts';
import type { Foot } from '../../../src/model/contact/foot.ts';
import { buildKeyProfile, type KeyProfile, type KeyShape } from '../../../src/model/contact/key-profile.ts';
import {
  highestOn,
  type LiftCurve,
  liftAt,
  liftCurve,
  steepestOn,
} from '../../../src/model/contact/lift-curve.ts';
import { anyFoot, anyKey, between } from './random-keys.ts';

const SEED = 20_710;
const RUNS = { seed: SEED, numRuns: 250, endOnFailure: true };
const SAMPLES = 4000;

type Case = {
  readonly profile: KeyProfile;
  readonly foot: Foot;
  readonly z: number;
  readonly curve: LiftCurve;
};

/** A chamber somewhere under the key, a rest somewhere below its blade, the key coming from wholly outside. */
function caseOf(shape: KeyShape, foot: Foot, zShare: number, restShare: number): Case {
  const profile = buildKeyProfile(shape);
  const contact = buildContactCurve(profile, foot);
  const z = zShare * shape.tipAt;
  const range = {
    rest: restShare * shape.bladeHeight,
    fromTravel: shape.tipAt - z + foot.radius + 1,
    toTravel: 0,
  };
  return { profile, foot, z, curve: liftCurve(contact, z, range) };
}

function sampled({ profile, foot, z, curve }: Case): { travel: number; height: number }[] {
  return Array.from({ length: SAMPLES + 1 }, (_, i) => {
    const travel = (curve.fromTravel * i) / SAMPLES;
    return { travel, height: Math.max(curve.rest, contactHeightAt(profile, foot, z, travel)) };
  });
}

describe(`random lifts, seed ${SEED}`, () => {
  const input = [anyKey, anyFoot.map(({ foot }) => foot), between(0, 1), between(0, 0.9)] as const;

  propertyTest.prop([...input], RUNS)('are contact or rest, whichever is higher', (...given) => {
    const here = caseOf(...given);
    const strays = sampled(here).map(({ travel, height }) => {
      // A hair from the tip's arrival a ball is met at its widest, where rounding counts without bound.
      const isArrival = Math.abs(travel - (here.curve.fromTravel - 1)) < 1e-3;
      return isArrival ? 0 : Math.abs(liftAt(here.curve, travel) - height);
    });
    expect(Math.max(...strays)).toBeLessThan(1e-9);
  });

  propertyTest.prop([...input], RUNS)('are without gaps, in order, over the whole way', (...given) => {
    const { pieces, fromTravel } = caseOf(...given).curve;
    expect(pieces[0]?.from).toBe(0);
    expect(pieces.at(-1)?.to).toBe(fromTravel);
    pieces.slice(1).forEach(({ from }, i) => expect(from).toBe(pieces[i]?.to));
  });

  propertyTest.prop([...input], RUNS)('are nowhere higher than the largest, and reach it', (...given) => {
    const here = caseOf(...given);
    const { height, travel, until } = highestOn(here.curve);
    const highestSample = Math.max(...sampled(here).map((sample) => sample.height));
    expect(highestSample).toBeLessThanOrEqual(height + 1e-9);
    expect(liftAt(here.curve, travel)).toBeCloseTo(height, 9);
    expect(liftAt(here.curve, until)).toBeCloseTo(height, 9);
    expect(liftAt(here.curve, (travel + until) / 2)).toBeCloseTo(height, 9);
    const before = sampled(here).filter((sample) => sample.travel > travel + 1e-3);
    expect(Math.max(-Infinity, ...before.map((sample) => sample.height))).toBeLessThan(height);
  });

  propertyTest.prop([...input], RUNS)(
    'climb nowhere steeper than the steepest, and that steep there',
    (...given) => {
      const here = caseOf(...given);
      const { goingIn, comingOut } = steepestOn(here.curve);
      const samples = sampled(here);
      const rises = samples.slice(1).map(({ travel, height }, i) => {
        const before = samples[i] ?? { travel: 0, height };
        return (height - before.height) / (travel - before.travel);
      });
      const steepestIn = Math.atan(Math.max(0, ...rises.map((rise) => -rise)));
      const steepestOut = Math.atan(Math.max(0, ...rises));
      expect(steepestIn).toBeLessThanOrEqual((goingIn?.angle ?? 0) + 1e-6);
      expect(steepestOut).toBeLessThanOrEqual((comingOut?.angle ?? 0) + 1e-6);
      const step = 1e-6;
      if (goingIn && goingIn.angle < 1.3 && goingIn.travel > step) {
        const rise = (liftAt(here.curve, goingIn.travel - step) - liftAt(here.curve, goingIn.travel)) / step;
        expect(Math.abs(Math.atan(rise) - goingIn.angle)).toBeLessThan(1e-4);
      }
      if (comingOut && comingOut.angle < 1.3) {
        const rise =
          (liftAt(here.curve, comingOut.travel + step) - liftAt(here.curve, comingOut.travel)) / step;
        expect(Math.abs(Math.atan(rise) - comingOut.angle)).toBeLessThan(1e-4);
      }
    },
  );
});
