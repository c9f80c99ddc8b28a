/** One memory for many windows never gives one for another: each is what it would be reckoned alone. */
import { expect, test } from 'vitest';
import { windowMemo } from '../../../src/model/evaluate/window-memo.ts';
import { asRadians, fromDegrees } from '../../../src/model/radians.ts';
import { shearWindow } from '../../../src/model/window/shear-window.ts';
import type { WindowInput } from '../../../src/model/window/window-input.ts';
import { inch, REFERENCE } from '../../support/reference-split.ts';

const tops = (more: number): WindowInput['lower']['top'][] => [
  { kind: 'flat' },
  { kind: 'sphere' },
  { kind: 'bevel', width: inch(0.01 + more), angle: fromDegrees(45) },
  { kind: 'bevel', width: inch(0.01), angle: fromDegrees(45 - 1000 * more) },
  { kind: 'radius', radius: inch(0.012 + more) },
  { kind: 'dome', radius: inch(0.3 + 10 * more) },
  { kind: 'cone', tipFlatDiameter: inch(0.05 + more), includedAngle: fromDegrees(120) },
  { kind: 'cone', tipFlatDiameter: inch(0.05), includedAngle: fromDegrees(120 - 1000 * more) },
  { kind: 'cup', mouthDiameter: inch(0.05 + more), includedAngle: fromDegrees(118) },
  { kind: 'cup', mouthDiameter: inch(0.05), includedAngle: fromDegrees(118 - 1000 * more) },
];

/** The reference split with one thing changed by a little, each in turn. */
function near(more: number): WindowInput[] {
  const { lower, upper, innerHole } = REFERENCE;
  return [
    { ...REFERENCE, lineRadius: REFERENCE.lineRadius + more },
    { ...REFERENCE, crestDrop: REFERENCE.crestDrop + more },
    { ...REFERENCE, clearance: REFERENCE.clearance + more },
    { ...REFERENCE, innerLies: more === 0 ? 'away from drivers' : 'centred' },
    { ...REFERENCE, turn: { angle: asRadians(more === 0 ? 3 : 0.3) } },
    { ...REFERENCE, steepestRamp: asRadians(REFERENCE.steepestRamp - 10 * more) },
    { ...REFERENCE, lower: { ...lower, radius: lower.radius - more } },
    { ...REFERENCE, lower: { ...lower, sideways: more } },
    { ...REFERENCE, upper: { ...upper, radius: upper.radius - more } },
    { ...REFERENCE, upper: { ...upper, sideways: more } },
    { ...REFERENCE, innerHole: { ...innerHole, radius: innerHole.radius + more } },
    { ...REFERENCE, innerHole: { ...innerHole, mouth: { kind: 'countersunk', size: inch(0.004) + more } } },
    {
      ...REFERENCE,
      innerHole: { ...innerHole, mouth: { kind: 'deburred along', size: inch(0.004) + more } },
    },
    ...tops(more / 25.4).map((top) => ({ ...REFERENCE, lower: { ...lower, top } })),
    ...tops(more / 25.4).map((bottom) => ({ ...REFERENCE, upper: { ...upper, bottom } })),
  ];
}

test('a window that differs in one size is another one, and the same one again is not reckoned anew', () => {
  const windowOf = windowMemo();
  const all = [REFERENCE, ...near(0), ...near(0.05), ...near(0.08)];
  for (const input of all) expect(windowOf(input), JSON.stringify(input)).toEqual(shearWindow(input));
  for (const input of all) expect(windowOf(structuredClone(input))).toBe(windowOf(input));
  expect(windowMemo()(REFERENCE)).not.toBe(windowOf(REFERENCE));
});
