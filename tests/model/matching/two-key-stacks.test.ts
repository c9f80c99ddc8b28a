/** Stacks for two keys in one chamber, one boundary at a time: how thin, how many copies, which end lies on what. Lengths in inches. */
import { describe, expect, test } from 'vitest';
import { matchTwoKeys } from '../../../src/model/matching/two-keys.ts';
import type { Job } from '../../../src/model/schema/job-schema.ts';
import type { Part } from '../../../src/model/schema/parts-schema.ts';
import { loose, type LooseOptions, withBag } from '../../support/bag-job.ts';
import { buildJob, changed } from '../../support/job-builder.ts';
import { withKey } from '../../support/keyed-job.ts';
import { inches } from '../../support/values.ts';

const found = (job: Job, line = 'line', otherLine = line) =>
  matchTwoKeys(job, {
    cylinder: 'cylinder',
    plan: 'plan',
    wants: [
      { key: 'key', line },
      { key: 'other', line: otherLine },
    ],
  });
const stands = (job: Job, ...lines: string[]) =>
  found(job, ...lines).chambers.map(({ items }) => items?.map(({ part }) => part).join(' + ') ?? null);

/** Calls for .172 and .202. */
const JOB = withKey(buildJob({ chambers: [{ rootDepth: 0.26 }] }), 'other', [0.23]);
const disc = (id: string, length: number, more: LooseOptions = {}) =>
  loose(id, { length, foot: { kind: 'flat' }, ...more });
const BOTTOM = loose('bottom', { length: 0.172 });
const with2 = (...bag: Part[]) => withBag(JOB, [BOTTOM, ...bag]);

describe('the master pin', () => {
  test.each([
    ['flat', { kind: 'flat' }, true],
    ['broken', { kind: 'bevel', width: 0.005, angleDeg: 45 }, true],
    ['domed', { kind: 'dome' }, true],
    ['pointed', { kind: 'cone', tipFlatDiameter: 0.03, includedAngleDeg: 90 }, false],
    ['round', { kind: 'sphere' }, false],
  ] as const)('with a %s lower end', (_, foot, lies) => {
    expect(stands(with2(disc('m', 0.03, { foot })))).toEqual([lies ? 'bottom + m' : null]);
  });

  test('of which nobody noted the ends lies flat', () => {
    const open = disc('m', 0.03);
    delete open.ends;
    expect(stands(with2(open))).toEqual(['bottom + m']);
  });

  test('as thin as the least that holds is taken, a thinner one is not', () => {
    const thinnest = (value: number) =>
      changed(
        with2(disc('m', 0.03)),
        (copy) => (copy.settings.thresholds = { thinnestMasterPin: inches(value) }),
      );
    expect(stands(thinnest(0.03))).toEqual(['bottom + m']);
    expect(stands(thinnest(0.0301))).toEqual([null]);
    expect(stands(thinnest(0.0299))).toEqual(['bottom + m']);
  });

  test('too wide for the chamber, or used up, is left', () => {
    expect(stands(with2(disc('m', 0.03, { diameter: 0.12 })))).toEqual([null]);
    expect(stands(with2(disc('m', 0.03, { diameter: 0.1 })))).toEqual([null]);
    expect(stands(with2(disc('m', 0.03, { quantity: 0 })))).toEqual([null]);
    expect(stands(withBag(JOB, [{ ...BOTTOM, quantity: 0 }, disc('m', 0.03)]))).toEqual([null]);
  });

  test('one part is bottom pin and master pin only if there are two of it', () => {
    // a flat foot .116 wide rides .033 above the root of a cut .05 wide, 90 degrees: .172 and .344 are called for
    const twice = withKey(buildJob({ chambers: [{ rootDepth: 0.227 }], capDepth: 0.6 }), 'other', [0.055]);
    const bag = (quantity: number) => withBag(twice, [disc('same', 0.172, { quantity })]);
    expect(stands(bag(1))).toEqual([null]);
    expect(stands(bag(2))).toEqual(['same + same']);
    expect(stands(bag(3))).toEqual(['same + same']);
  });

  test('whichever key calls for more, both are served in the order they were asked', () => {
    const { chambers } = found(with2(disc('m', 0.03)));
    expect(chambers[0]!.serves.map(({ key, line }) => [key, line])).toEqual([
      ['key', 'line'],
      ['other', 'line'],
    ]);
    const turned = withBag(withKey(buildJob({ chambers: [{ rootDepth: 0.23 }] }), 'other', [0.26]), [
      BOTTOM,
      disc('m', 0.03),
    ]);
    expect(stands(turned)).toEqual(['bottom + m']);
    expect(found(turned).chambers[0]!.serves.map(({ key }) => key)).toEqual(['key', 'other']);
    for (const { offset, margin, lowest, highest } of found(turned).chambers[0]!.serves) {
      expect(offset).toBeCloseTo(0, 6);
      expect(margin).toBeCloseTo(Math.min(-lowest, highest), 6);
    }
  });

  test('a key at both lines of a sleeve is served at each', () => {
    const sleeved = withBag(
      buildJob({
        chambers: [{ rootDepth: 0.26 }],
        sleeve: { outerDiameter: 0.64, clearance: 0.003 },
        capDepth: 0.6,
      }),
      [BOTTOM, disc('m', 0.0655)],
    );
    const { chambers } = matchTwoKeys(sleeved, {
      cylinder: 'cylinder',
      plan: 'plan',
      wants: [
        { key: 'key', line: 'outer-line' },
        { key: 'key', line: 'inner-line' },
      ],
    });
    expect(chambers[0]!.items?.map(({ part }) => part)).toEqual(['bottom', 'm']);
    expect(chambers[0]!.serves.map(({ line }) => line)).toEqual(['outer-line', 'inner-line']);
  });
});

describe('on balls', () => {
  const onBalls = (quantity: number) =>
    withBag(
      withKey(
        buildJob({
          chambers: [
            { rootDepth: 0.26, ball: 0.115 },
            { rootDepth: 0.26, ball: 0.115 },
          ],
        }),
        'other',
        [0.23, 0.23],
      ),
      [
        loose('ball', { kind: 'ball', diameter: 0.115, quantity }),
        disc('p', 0.057, { quantity: 2 }),
        disc('m', 0.03, { quantity: 2 }),
      ],
    );

  test('the ball goes first, and runs short when there is one for two chambers', () => {
    expect(stands(onBalls(2))).toEqual(['ball + p + m', 'ball + p + m']);
    expect(stands(onBalls(9))).toEqual(['ball + p + m', 'ball + p + m']);
    expect(stands(onBalls(1)).filter((each) => each !== null)).toEqual(['ball + p + m']);
    expect(stands(onBalls(0))).toEqual([null, null]);
  });
});

test('the nearer stack is taken, by the sum of both splits squared in steps', () => {
  const bag = [BOTTOM, disc('exact', 0.03), disc('long', 0.031), loose('low', { length: 0.171 })];
  expect(stands(withBag(JOB, bag))).toEqual(['bottom + exact']);
  const { score } = found(withBag(JOB, [loose('low', { length: 0.171 }), disc('long', 0.031)]));
  // low by two steps for one key, level for the other
  expect(score).toMatchObject({ filled: 1, squares: 4 });
  const both = found(withBag(JOB, [loose('low', { length: 0.171 }), disc('exact', 0.03)]));
  expect(both.score.squares).toBe(8);
});
