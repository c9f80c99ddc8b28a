/** Seeded random splits at a line, wide but possible, for the tests of the window. Lengths mm, angles radians. */
import type { EndShape } from '../../src/model/end-shape.ts';
import { asRadians, fromDegrees } from '../../src/model/radians.ts';
import type { MouthShape, WindowInput } from '../../src/model/window/window-input.ts';

export type Random = () => number;

/** Mulberry32: the same numbers for the same seed, everywhere. */
export function seededRandom(seed: number): Random {
  let state = seed | 0;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
}

export const between = (random: Random, low: number, high: number): number => low + (high - low) * random();

const pick = <T>(random: Random, list: readonly T[]): T => list[Math.floor(random() * list.length)]!;

const MM_PER_INCH = 25.4;

export type EndKind = EndShape['kind'];

function randomEnd(random: Random, kind: EndKind, radius: number, lineRadius: number): EndShape {
  const edge = Math.min(between(random, 0.002, 0.02) * MM_PER_INCH, radius * 0.8);
  switch (kind) {
    case 'flat':
    case 'sphere':
      return { kind };
    case 'bevel':
      return { kind, width: edge, angle: fromDegrees(between(random, 20, 55)) };
    case 'radius':
      return { kind, radius: edge };
    case 'dome':
      return { kind, radius: Math.max(radius * 1.05, lineRadius * between(random, 0.5, 2)) };
    case 'cone':
      return {
        kind,
        tipFlatDiameter: radius * between(random, 0, 1.8),
        includedAngle: fromDegrees(between(random, 50, 150)),
      };
    case 'cup':
      return {
        kind,
        mouthDiameter: radius * between(random, 0.3, 1.8),
        includedAngle: fromDegrees(between(random, 60, 130)),
      };
  }
}

/** Draws a split with these kinds of ends: line radius .2 to .5 in, everything else in proportion to real cylinders. */
export function randomWindow(
  random: Random,
  lowerEnds: readonly EndKind[],
  upperEnds: readonly EndKind[],
): WindowInput {
  const lineRadius = between(random, 0.2, 0.5) * MM_PER_INCH;
  const hole = lineRadius * between(random, 0.12, 0.35);
  const upperRadius = hole - between(random, 0.0005, 0.005) * MM_PER_INCH;
  const lowerRadius = hole - between(random, 0.0005, 0.005) * MM_PER_INCH;
  const size = between(random, 0.001, 0.012) * MM_PER_INCH;
  const mouth: MouthShape = pick(random, [
    { kind: 'sharp' },
    { kind: 'sharp' },
    { kind: 'deburred along', size },
    { kind: 'countersunk', size },
  ]);
  const play = (): number => (random() < 0.5 ? 0 : between(random, 0, 0.004) * MM_PER_INCH);
  return {
    lineRadius,
    crestDrop: random() < 0.8 ? 0 : between(random, 0, 0.01) * MM_PER_INCH,
    clearance: between(random, 0.001, 0.008) * MM_PER_INCH,
    innerLies: random() < 0.7 ? 'away from drivers' : 'centred',
    turn: { angle: asRadians(random() < 0.5 ? Math.PI : between(random, 0.5, 3)) },
    lower: {
      top: randomEnd(random, pick(random, lowerEnds), lowerRadius, lineRadius),
      radius: lowerRadius,
      sideways: play(),
    },
    upper: {
      bottom: randomEnd(random, pick(random, upperEnds), upperRadius, lineRadius),
      radius: upperRadius,
      sideways: play(),
    },
    innerHole: { radius: hole, mouth },
    steepestRamp: random() < 0.5 ? fromDegrees(60) : fromDegrees(between(random, 55, 72)),
  };
}
