/** Cylinder H: retention, trap angles, nose, end play, loading. Worked by hand (our own); inches and degrees. */
import { describe, expect, test } from 'vitest';
import { asRadians, fromDegrees, toDegrees } from '../../../src/model/radians.ts';
import { restResults } from '../../../src/model/rest/rest-results.ts';
import type { Job } from '../../../src/model/schema/job-schema.ts';
import { highestNose, steepestClimbable } from '../../../src/model/travel/climbable.ts';
import { endPlay, loading, loadingAngle } from '../../../src/model/travel/passing.ts';
import { wayResults } from '../../../src/model/travel/way-results.ts';
import { cylinderH, lookAt } from '../../support/cylinder-h.ts';
import { buildJob } from '../../support/job-builder.ts';
import { inches, statedInches } from '../../support/values.ts';

const INCH = 25.4;
const toInches = (mm: number | null | undefined) => (mm ?? Number.NaN) / INCH;

function way(job: Job) {
  const { bench, assembly } = lookAt(job);
  return wayResults(bench, assembly, restResults(bench, assembly));
}

describe('what holds the key while it is turned', () => {
  test('cylinder H, chamber by chamber', () => {
    const { chambers, keyIsHeld } = way(cylinderH());
    const expected = [0.1245, 0.069, 0.158, 0.1, 0.015, 0.035];
    chambers.forEach((each, i) => expect(toInches(each.holdsKey)).toBeCloseTo(expected[i] ?? 0, 5));
    expect(keyIsHeld).toBe(true);
  });

  test('a key whose cuts only descend to the tip holds by −(play + low): it pulls out at any angle', () => {
    const job = cylinderH((changed) => {
      const key = changed.keys[0]!;
      const roots = [0.453, 0.433, 0.413, 0.393, 0.373, 0.353];
      key.bladeHeight = inches(0.453);
      key.tip!.noseHeight = inches(0.01);
      key.cuts.forEach((cut, i) => {
        cut.rootDepth = inches(roots[i]!);
        // so wide that no wall is left between one cut and the next
        cut.rootFlat = inches(0.249);
      });
      // a stack .001 low in every chamber
      changed.groups.forEach((group, i) => (group.height = inches(0.706 - roots[i]! - 0.001)));
    });
    const { chambers, keyIsHeld } = way(job);
    for (const each of chambers) expect(toInches(each.holdsKey)).toBeCloseTo(-0.005, 5);
    expect(keyIsHeld).toBe(false);
  });
});

test('what a stack of cylinder H climbs is a side of a cut; what the first key meets is its tip', () => {
  const kinds = way(cylinderH()).chambers.map(({ goingIn, comingOut }) => [goingIn?.from, comingOut?.from]);
  for (const [, comingOut] of kinds) expect(comingOut).toBe('side');
  expect(new Set(kinds.flat()).has('side')).toBe(true);
  for (const kind of kinds.flat()) expect(['tip', 'side', 'blade', 'root', undefined]).toContain(kind);
});

describe('how steep a side can be climbed', () => {
  test.each([
    [0.15, 72.94, 62.18],
    [0.2, 67.38, 53.67],
    [0.25, 61.93, 45.71],
    [0.35, 51.42, 31.47],
  ])('friction %f: %f° held at its middle, %f° with .08 hanging over .12', (friction, ball, pin) => {
    const bare = toDegrees(steepestClimbable({ friction, overhang: 0, guided: 0.12 }));
    expect(bare).toBeCloseTo(ball, 2);
    // the closed form without overhang: a right angle less twice the angle of friction
    expect(bare).toBeCloseTo(90 - 2 * toDegrees(asRadians(Math.atan(friction))), 9);
    expect(toDegrees(steepestClimbable({ friction, overhang: 0.08, guided: 0.12 }))).toBeCloseTo(pin, 2);
  });

  test('nose: .02357 above the lowest point of a 5/32 ball at 45.71°', () => {
    expect(highestNose(0.078125, fromDegrees(45.71))).toBeCloseTo(0.02357, 5);
  });

  test('cylinder H climbs its own sides of 45°, in and out, and its nose', () => {
    const { chambers } = way(cylinderH());
    for (const each of chambers) {
      expect(toDegrees(each.goingIn?.angle ?? asRadians(0))).toBeCloseTo(45, 6);
      expect(each.goingIn?.canClimb).toBe(true);
      expect(toDegrees(each.steepest)).toBeCloseTo(90 - 2 * toDegrees(asRadians(Math.atan(0.22))), 9);
      expect(toInches(each.noseAboveFoot)).toBeCloseTo(0.06 - 0.2, 5);
      expect(each).toMatchObject({ hangsBy: 0, isReached: true });
    }
    // the first chamber comes out over the wall of its own cut; the last one only has the tip's ramp behind it
    expect(chambers[0]?.comingOut?.canClimb).toBe(true);
  });

  test('a nose above the resting foot meets the ball on its side: cos = (radius − height) / radius', () => {
    const job = cylinderH((changed) => {
      changed.keys[0]!.tip!.noseHeight = inches(0.24);
    });
    const first = way(job).chambers[0]!;
    expect(toInches(first.noseAboveFoot)).toBeCloseTo(0.04, 5);
    const slope = Math.acos((0.078125 - 0.04) / 0.078125);
    expect(toDegrees(first.goingIn?.angle ?? asRadians(0))).toBeCloseTo((slope * 180) / Math.PI, 2);
    expect(first.goingIn).toMatchObject({ from: 'tip', canClimb: true });
    expect(
      way(
        cylinderH((changed) => {
          changed.keys[0]!.tip!.noseHeight = inches(0.27);
        }),
      ).chambers[0]?.goingIn,
    ).toMatchObject({ from: 'tip', canClimb: false });
  });

  test('a short pointed pin leans: the same side is too steep for it', () => {
    const job = (length: number) =>
      buildJob({
        chambers: [{ rootDepth: 0.26, bottomPin: length }],
        pinFoot: { kind: 'cone', tipFlatDiameter: 0.03, includedAngleDeg: 86 },
      });
    const [long, short] = [0.17, 0.07].map((length) => way(job(length)).chambers[0]!);
    expect(long?.goingIn?.canClimb).toBe(true);
    expect(short?.goingIn?.canClimb).toBe(false);
    expect(short?.steepest).toBeLessThan(long?.steepest ?? 0);
  });
});

describe('springs along the way', () => {
  const pressed = (job: Job) =>
    job.parts.forEach((part) => {
      if (part.kind !== 'spring') return;
      part.pressed = [
        { length: inches(0.6), newtons: 1 },
        { length: inches(0.4), newtons: 3 },
      ];
    });

  test('add up to the sum of the single ones at every place, and most is the most of them', () => {
    const job = cylinderH(pressed);
    const { springs, mostForce } = way(job);
    const { bench, assembly } = lookAt(job);
    const { chambers } = restResults(bench, assembly);
    const resting = chambers.reduce((sum, each) => sum + (each.spring?.forceAtRest ?? 0), 0);
    expect(springs[0]?.force).toBeCloseTo(resting, 9);
    const most = chambers.reduce((sum, each) => sum + (each.spring?.forceAtWorst ?? 0), 0);
    expect(mostForce?.force).toBeLessThan(most);
    expect(mostForce?.force).toBeGreaterThan(resting);
    expect(springs.at(-1)?.travel).toBe(0);
  });

  test('are left out while one of them is not known', () => {
    expect(way(cylinderH()).springs).toEqual([]);
  });
});

describe('putting it together', () => {
  test('loading angle of cylinder H and of a small plug', () => {
    const { assembly } = lookAt(cylinderH());
    expect(toDegrees(loading(assembly)[0]!.angle)).toBeCloseTo(24.39, 2);
    expect(toDegrees(loadingAngle(0.25, 0.059, 0.0575))).toBeCloseTo(26.95, 2);
  });

  test('follower from plug less broken edge to bore; shim up to the play', () => {
    const [line] = loading(lookAt(cylinderH()).assembly);
    expect(toInches(line?.follower.smallest)).toBeCloseTo(0.743, 5);
    expect(toInches(line?.follower.largest)).toBeCloseTo(0.752, 5);
    expect(toInches(line?.thickestShim)).toBeCloseTo(0.004, 5);
  });

  test('end play: .004 passes, .006 catches', () => {
    const played = (size: number) => {
      const { bench, assembly } = lookAt(
        cylinderH((job) => (job.cylinders[0]!.endPlay = statedInches(size))),
      );
      return endPlay(bench, assembly);
    };
    expect(toInches(played(0.002).room)).toBeCloseTo(0.004, 5);
    expect(played(0.0039).catches).toBe(false);
    expect(played(0.006).catches).toBe(true);
    const { bench, assembly } = lookAt(cylinderH());
    expect(endPlay(bench, assembly)).toMatchObject({ play: null, catches: null });
  });
});
