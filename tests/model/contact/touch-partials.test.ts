import { test as propertyTest } from '@fast-check/vitest';
import { describe, expect, test } from 'vitest';
import { contactAt, contactHeightAt, type Touch } from '../../../src/model/contact/contact-at.ts';
import { buildBallFoot, buildFoot } from '../../../src/model/contact/foot.ts';
import { buildKeyProfile, type KeyShape } from '../../../src/model/contact/key-profile.ts';
import { ballRadiusPartial, touchPartials } from '../../../src/model/contact/touch-partials.ts';
import { asRadians } from '../../../src/model/radians.ts';
import { anyBall, anyFoot, anyKey, anyShare, axisAt } from './random-keys.ts';
import { BALL_IN, INCH, oneCut } from './six-chamber-key.ts';

const SEED = 20_705;
const RUNS = { seed: SEED, numRuns: 600, endOnFailure: true };
/** mm and rad, for difference quotients. */
const STEP = 1e-6;

type Nudge = (shape: KeyShape, by: number) => { shape: KeyShape; axis: number };

function nudgeCut(
  id: string,
  change: (cut: KeyShape['cuts'][number], by: number) => Partial<KeyShape['cuts'][number]>,
): Nudge {
  return (shape, by) => ({
    shape: {
      ...shape,
      cuts: shape.cuts.map((cut) => (cut.id === id ? { ...cut, ...change(cut, by) } : cut)),
    },
    axis: 0,
  });
}

function placesOf(touches: readonly Touch[]): string {
  return JSON.stringify(touches.map(({ sides }) => sides.map(({ from }) => from)));
}

/** Every partial with the change it speaks of. */
function partialsToCheck(touch: Touch, shape: KeyShape): [name: string, partial: number, nudge: Nudge][] {
  const partials = touchPartials(touch, shape);
  const whole: [string, number, Nudge][] = [
    ['chamber', partials.chamber, (same, by) => ({ shape: same, axis: by })],
    [
      'bladeHeight',
      partials.bladeHeight,
      (same, by) => ({ shape: { ...same, bladeHeight: same.bladeHeight + by }, axis: 0 }),
    ],
    ['tipAt', partials.tipAt, (same, by) => ({ shape: { ...same, tipAt: same.tipAt + by }, axis: 0 })],
    [
      'tipHeight',
      partials.tipHeight,
      (same, by) => ({ shape: { ...same, tipHeight: same.tipHeight + by }, axis: 0 }),
    ],
    [
      'tipRamp',
      partials.tipRamp,
      (same, by) => ({ shape: { ...same, tipRamp: asRadians(same.tipRamp + by) }, axis: 0 }),
    ],
  ];
  return [
    ...whole.filter(([name]) => name !== 'tipRamp' || shape.tipRamp < 1.5),
    ...partials.cuts.flatMap((of): [string, number, Nudge][] => [
      ['rootDepth', of.rootDepth, nudgeCut(of.cut, (cut, by) => ({ rootDepth: cut.rootDepth + by }))],
      ['rootFlat', of.rootFlat, nudgeCut(of.cut, (cut, by) => ({ rootFlat: cut.rootFlat + by }))],
      [
        'includedAngle',
        of.includedAngle,
        nudgeCut(of.cut, (cut, by) => ({ includedAngle: asRadians(cut.includedAngle + by) })),
      ],
      ['at', of.at, nudgeCut(of.cut, (cut, by) => ({ at: cut.at + by }))],
    ]),
  ];
}

describe(`partials of random keys and feet, seed ${SEED}`, () => {
  const checked = new Map<string, number>();

  propertyTest.prop([anyKey, anyFoot, anyShare], RUNS)(
    'are what small changes do',
    (shape, { foot }, share) => {
      const axis = axisAt(shape, foot, share);
      const at = (nudged: { shape: KeyShape; axis: number }): ReturnType<typeof contactAt> =>
        contactAt(buildKeyProfile(nudged.shape), foot, axis + nudged.axis, 0);
      const { touches } = at({ shape, axis: 0 });
      const [touch] = touches;
      // Near a change of touch, and where a ball is met at its widest, a difference quotient says nothing.
      if (touches.length !== 1 || !touch || Math.abs(touch.slope) > 20) return;
      for (const [name, partial, nudge] of partialsToCheck(touch, shape)) {
        if (shape.cuts.some(({ rootFlat }) => rootFlat < STEP) && name === 'rootFlat') continue;
        const [up, down] = [at(nudge(shape, STEP)), at(nudge(shape, -STEP))];
        if (placesOf(up.touches) !== placesOf(touches) || placesOf(down.touches) !== placesOf(touches))
          continue;
        const quotient = (up.height - down.height) / (2 * STEP);
        expect(Math.abs(quotient - partial), `${name} on ${placesOf(touches)}`).toBeLessThan(
          1e-4 * (1 + partial ** 2),
        );
        if (partial !== 0) checked.set(name, (checked.get(name) ?? 0) + 1);
      }
    },
  );

  test('were tried on every kind of change', () => {
    const names = [
      'chamber',
      'bladeHeight',
      'tipAt',
      'tipHeight',
      'tipRamp',
      'rootDepth',
      'rootFlat',
      'includedAngle',
      'at',
    ];
    for (const name of names) expect(checked.get(name) ?? 0, name).toBeGreaterThan(10);
  });

  propertyTest.prop([anyKey, anyFoot, anyShare], RUNS)(
    'cancel when key and chamber move together, and add up to 1 when the key grows taller',
    (shape, { foot }, share) => {
      const { touches } = contactAt(buildKeyProfile(shape), foot, axisAt(shape, foot, share), 0);
      for (const touch of touches.filter(({ slope }) => Math.abs(slope) < 1e6)) {
        const { chamber, tipAt, bladeHeight, tipHeight, cuts } = touchPartials(touch, shape);
        const along = cuts.reduce((sum, { at }) => sum + at, chamber + tipAt);
        const up = cuts.reduce((sum, { rootDepth }) => sum + rootDepth, bladeHeight + tipHeight);
        expect(along).toBeCloseTo(0, 6);
        expect(up).toBeCloseTo(1, 9);
      }
    },
  );

  propertyTest.prop([anyKey, anyBall, anyShare], RUNS)(
    'say what a bigger ball does',
    (shape, ball, share) => {
      const profile = buildKeyProfile(shape);
      const axis = axisAt(shape, ball, share);
      const at = (by: number): ReturnType<typeof contactAt> =>
        contactAt(profile, buildFoot({ kind: 'sphere' }, ball.radius + by), axis, 0);
      const { touches } = at(0);
      const [touch] = touches;
      if (touches.length !== 1 || !touch || Math.abs(touch.slope) > 20) return;
      if (placesOf(at(STEP).touches) !== placesOf(at(-STEP).touches)) return;
      const quotient = (at(STEP).height - at(-STEP).height) / (2 * STEP);
      expect(Math.abs(quotient - ballRadiusPartial(touch))).toBeLessThan(1e-4 * (1 + touch.slope ** 2));
    },
  );
});

test('a bridging ball on a 90 degree cut gains .0005 from .001 less flat, and .001 from .001 out of line', () => {
  // Worked by hand.
  const shape = oneCut({ flatIn: 0.06, degrees: 90 });
  const ball = buildBallFoot(BALL_IN * INCH);
  const { touches } = contactAt(buildKeyProfile(shape), ball, INCH, 0);
  expect(touches).toHaveLength(2);
  for (const touch of touches) {
    const [partials] = touchPartials(touch, shape).cuts;
    expect(partials?.rootDepth).toBe(1);
    expect(partials?.rootFlat).toBeCloseTo(-0.5, 12);
    expect(Math.abs(partials?.at ?? 0)).toBeCloseTo(1, 12);
  }
  const narrower = oneCut({ flatIn: 0.059, degrees: 90 });
  const gain =
    contactHeightAt(buildKeyProfile(narrower), ball, INCH, 0) -
    contactHeightAt(buildKeyProfile(shape), ball, INCH, 0);
  expect(gain / INCH).toBeCloseTo(0.0005, 12);
});
