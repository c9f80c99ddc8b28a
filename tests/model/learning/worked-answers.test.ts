/**
 * Answers worked out by hand in the notes of the trade that the lessons follow, on cylinder H (plug .748, play .004,
 * chambers .160, pins .156): sums, a ball in its dimple and a ball between sides at 90 degrees, which are school geometry.
 * Their limits of the window were superseded and are not held here; offsets far from them are. Inches.
 */
import { describe, expect, test } from 'vitest';
import { withSplit } from '../../../src/model/learning/placed-split.ts';
import {
  ENDS,
  type PracticeChamber,
  type PracticeCylinder,
  levelPin,
} from '../../../src/model/learning/practice-job.ts';
import {
  chamberOf,
  offsetOf,
  readScene,
  sceneOf,
  turns,
  verdictOf,
} from '../../../src/model/learning/scene.ts';
import { inchesToMm } from '../../../src/model/units/length-unit.ts';

const unit = 'in';
const BALL = inchesToMm(5 / 32);
const read = (chamber: PracticeChamber, more: Omit<PracticeCylinder, 'chambers' | 'unit'> = {}) =>
  readScene(sceneOf({ unit, ...more, chambers: [chamber] }));
const inch = (mm: number | null | undefined) => (mm ?? NaN) / 25.4;

test('a deep cut takes a long pin: .706 less .369 and less .421', () => {
  expect(inch(chamberOf(read({ rootDepth: inchesToMm(0.369) })).neededLowerStack)).toBeCloseTo(0.337, 6);
  expect(inch(chamberOf(read({ rootDepth: inchesToMm(0.421) })).neededLowerStack)).toBeCloseTo(0.285, 6);
});

test('a blade of .500 cut down .151 leaves .349', () => {
  const reading = read({ rootDepth: inchesToMm(0.5 - 0.151) }, { bladeHeight: inchesToMm(0.5) });
  expect(inch(chamberOf(reading).contactHeight)).toBeCloseTo(0.349, 6);
});

test('metal of .042 under the key counts: .337, not .379', () => {
  const reading = read(
    { rootDepth: inchesToMm(0.369) },
    { plug: inchesToMm(0.748), floor: inchesToMm(0.042) },
  );
  expect(inch(chamberOf(reading).neededLowerStack)).toBeCloseTo(0.337, 6);
});

test('pin .192 and ball .15625 in a dimple of .090 stand .33399 high: .00301 low where the sum says .01125 high', () => {
  const pin = inchesToMm(0.192);
  const foot = { kind: 'cup', mouth: inchesToMm(0.09) } as const;
  const reading = read(
    { rootDepth: inchesToMm(0.369), ball: BALL, pin, foot },
    { rootFlat: inchesToMm(0.075) },
  );
  expect(inch(chamberOf(reading).lowerStack)).toBeCloseTo(0.33399, 5);
  expect(inch(offsetOf(reading))).toBeCloseTo(-0.00301, 5);
  expect(0.192 + 0.15625 - 0.337).toBeCloseTo(0.01125, 5);
});

test.each([
  [0.006, 'too high', false],
  [0.003, 'high, rubs', true],
  [-0.001, 'level', true],
  [-0.006, 'low, turns', true],
  [-0.011, 'too low', false],
] as const)('a split at %f: %s', (offset, verdict, doesTurn) => {
  const chamber = { rootDepth: inchesToMm(0.369) };
  const reading = readScene(sceneOf(withSplit({ unit }, chamber, inchesToMm(offset))));
  expect(verdictOf(reading)).toBe(verdict);
  expect(turns(reading)).toBe(doesTurn);
});

test('a flat top level with the line is stopped at its corners; .00414 lower it is not', () => {
  const rootDepth = inchesToMm(0.369);
  const flat = (by: number) =>
    read({
      rootDepth,
      top: ENDS.flat,
      driverEnd: ENDS.wideBroken,
      pin: levelPin({ unit }, rootDepth) - inchesToMm(by),
    });
  expect(turns(flat(0))).toBe(false);
  expect(turns(flat(0.0045))).toBe(true);
});

describe('a 5/32 ball between sides at 90 degrees', () => {
  test.each([
    [0.07, 0],
    [0.06, 0.00236],
    [0.045, 0.00986],
  ])('a flat of %f lifts it %f', (flat, lift) => {
    const reading = read({ rootDepth: inchesToMm(0.369), ball: BALL }, { rootFlat: inchesToMm(flat) });
    expect(inch(chamberOf(reading).flankLift)).toBeCloseTo(lift, 5);
  });

  test('a key .005 short of home lifts it .005 more, .00736 in all', () => {
    const sizes = { rootFlat: inchesToMm(0.06), stopShort: inchesToMm(0.005) };
    const reading = read({ rootDepth: inchesToMm(0.369), ball: BALL }, sizes);
    expect(inch(chamberOf(reading).flankLift)).toBeCloseTo(0.00736, 5);
  });
});

test('a pointed foot within the flat does not notice a key that is .005 short', () => {
  const reading = read({ rootDepth: inchesToMm(0.369) }, { stopShort: inchesToMm(0.005) });
  expect(inch(chamberOf(reading).flankLift)).toBeCloseTo(0, 6);
});
