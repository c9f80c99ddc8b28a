/**
 * The split that the tests of the window are worked out for, in inches: line radius .374, play .004, hole .160 across,
 * parts .156, lower part domed to the line, upper part with a .005 bevel at 45 deg, sharp mouth, everything centred.
 */
import type { EndShape } from '../../src/model/end-shape.ts';
import { asRadians, fromDegrees } from '../../src/model/radians.ts';
import type { WindowInput } from '../../src/model/window/window-input.ts';

export const inch = (inches: number): number => inches * 25.4;

export const bevelOf = (inches: number): EndShape => ({
  kind: 'bevel',
  width: inch(inches),
  angle: fromDegrees(45),
});
export const domeOf = (inches: number): EndShape => ({ kind: 'dome', radius: inch(inches) });

export const REFERENCE: WindowInput = {
  lineRadius: inch(0.374),
  crestDrop: 0,
  clearance: inch(0.004),
  innerLies: 'away from drivers',
  turn: { angle: asRadians(Math.PI) },
  lower: { top: domeOf(0.374), radius: inch(0.078), sideways: 0 },
  upper: { bottom: bevelOf(0.005), radius: inch(0.078), sideways: 0 },
  innerHole: { radius: inch(0.08), mouth: { kind: 'sharp' } },
  steepestRamp: fromDegrees(60),
};

export const withTop = (top: EndShape, sideways = 0): WindowInput => ({
  ...REFERENCE,
  lower: { ...REFERENCE.lower, top, sideways },
});

export const withBottom = (bottom: EndShape, sideways = 0): WindowInput => ({
  ...REFERENCE,
  upper: { ...REFERENCE.upper, bottom, sideways },
});
