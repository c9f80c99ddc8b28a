/**
 * What keys drawn at random do to feet of every kind, kept as text: contact and what is touched, the way in, the steepest climbs, the
 * share of the sides. That it is right is held by the property tests beside this and by tests/outside.
 */
import { describe, test } from 'vitest';
import { bridgingLift, freeFloat, heightOfSides } from '../../../src/model/contact/bridging.ts';
import { contactAt } from '../../../src/model/contact/contact-at.ts';
import { buildContactCurve, curveEnd, settledHeight } from '../../../src/model/contact/contact-curve.ts';
import { eatenFlats } from '../../../src/model/contact/eaten-flats.ts';
import { flankLift } from '../../../src/model/contact/flank-lift.ts';
import { buildBallFoot, buildFoot, type Foot } from '../../../src/model/contact/foot.ts';
import { jawFalseHeight } from '../../../src/model/contact/jaw-false-height.ts';
import { buildKeyProfile, type KeyShape } from '../../../src/model/contact/key-profile.ts';
import { highestOn, liftCurve, liftLine, steepestOn } from '../../../src/model/contact/lift-curve.ts';
import { rootDepthFromOverBall, withRootsFromBalls } from '../../../src/model/contact/over-ball.ts';
import { ballRadiusPartial, touchPartials } from '../../../src/model/contact/touch-partials.ts';
import { fromDegrees } from '../../../src/model/radians.ts';
import { asText } from '../../support/as-text.ts';
import { expectGoldenPart } from '../../support/golden.ts';
import { between, seededRandom } from '../../support/window-cases.ts';

const FEET: Readonly<Record<string, (radius: number) => Foot>> = {
  ball: (radius) => buildBallFoot(2 * radius),
  flat: (radius) => buildFoot({ kind: 'flat' }, radius),
  bevel: (radius) => buildFoot({ kind: 'bevel', width: radius / 4, angle: fromDegrees(40) }, radius),
  radius: (radius) => buildFoot({ kind: 'radius', radius: radius / 3 }, radius),
  dome: (radius) => buildFoot({ kind: 'dome', radius: 2 * radius }, radius),
  cone: (radius) =>
    buildFoot({ kind: 'cone', tipFlatDiameter: radius / 2, includedAngle: fromDegrees(100) }, radius),
  cup: (radius) => buildFoot({ kind: 'cup', mouthDiameter: radius, includedAngle: fromDegrees(110) }, radius),
};

/** Cuts apart, cuts that eat each other, V cuts, cuts beyond the blade, ramps and square tips. */
function drawnKey(seed: number): KeyShape {
  const random = seededRandom(seed);
  const count = 1 + (seed % 4);
  const spacing = between(random, 2, 6);
  return {
    bladeHeight: between(random, 8, 10),
    stop: seed % 2 === 0 ? 'shoulder' : 'tip',
    tipAt: 4 + spacing * count,
    tipHeight: between(random, 0.5, 3),
    tipRamp: fromDegrees(seed % 5 === 0 ? 90 : between(random, 30, 60)),
    cuts: Array.from({ length: count }, (_, i) => ({
      id: `cut-${i + 1}`,
      at: 4 + spacing * i,
      rootDepth: between(random, 4, 8),
      rootFlat: seed % 3 === 0 ? 0 : between(random, 0.3, 2),
      includedAngle: fromDegrees(between(random, 70, 120)),
    })),
  };
}

const CASES = Object.keys(FEET).flatMap((foot, i) =>
  Array.from({ length: 4 }, (_, j) => ({
    name: `${foot} on key ${4 * i + j + 1}`,
    foot,
    seed: 4 * i + j + 1,
  })),
);

describe('contacts', () => {
  test.each(CASES)('$name', ({ name, foot: kind, seed }) => {
    const key = drawnKey(seed);
    const radius = between(seededRandom(seed + 500), 1, 2);
    const foot = FEET[kind]!(radius);
    expectGoldenPart('contacts/contacts.txt', name, asText(contactText(key, foot, radius)));
  });

  test.each([0.3, 1.2, 2.5])('balls and jaws in a cut with a flat of %s', (rootFlat) => {
    const rows = [70, 90, 110].flatMap((degrees) =>
      [0.8, 1.4, 2].map((radius) => {
        const cut = { rootFlat, includedAngle: fromDegrees(degrees) };
        const [bridging, sides, float] = [bridgingLift, heightOfSides, freeFloat].map((ask) =>
          ask(radius, cut),
        );
        const over = [5.2, 8.2, 9.4].map((reading) =>
          rootDepthFromOverBall({
            reading: reading + 2 * radius,
            ballDiameter: 2 * radius,
            cut,
            bladeHeight: 9,
          }),
        );
        return { degrees, radius, bridging, sides, float, over, jaw: jawFalseHeight(radius, cut, 0.2) };
      }),
    );
    expectGoldenPart('contacts/in-a-cut.txt', `flat ${rootFlat}`, asText(rows));
  });

  test.each([1, 2, 3, 5, 6, 7])('roots from balls in the cuts of key %s', (seed) => {
    const key = drawnKey(seed);
    const read = key.cuts.map(({ id, rootDepth }, i) => ({
      cut: id,
      reading: rootDepth + 2.6 + i / 5,
      ballDiameter: 2.4,
    }));
    const cuts = withRootsFromBalls(key, read).cuts.map(({ id, rootDepth }) => ({ id, rootDepth }));
    expectGoldenPart('contacts/roots-from-balls.txt', `key ${seed}`, asText(cuts));
  });
});

function contactText(key: KeyShape, foot: Foot, radius: number): unknown {
  const profile = buildKeyProfile(key);
  const curve = buildContactCurve(profile, foot);
  const lift = liftCurve(curve, 5, { rest: 2, fromTravel: key.tipAt - 5 + radius + 1, toTravel: 0 });
  return {
    profile: profile.points.map(({ s, height, slope }) => ({ s, height, slope })),
    eaten: eatenFlats(key),
    end: curveEnd(curve),
    at: [0, 0.7, 3, 7].map((travel) => {
      const { height, touches } = contactAt(profile, foot, 4, travel);
      return {
        travel,
        height,
        settled: settledHeight(curve, 4 + travel),
        touches: touches.map((touch) => ({
          ...touch,
          partials: touchPartials(touch, key),
          ballRadius: ballRadiusPartial(touch),
        })),
        sides: flankLift(key, profile, foot, 4, travel),
      };
    }),
    highest: highestOn(lift),
    steepest: steepestOn(lift),
    line: liftLine(lift, 0.05),
  };
}
