/**
 * Sizes drawn from a seed: the same seed always draws the same ones. Lengths are asked for in inches, as the trade thinks
 * of them, and come as mm on the step that a caliper shows in the lesson's unit, so that sums done on paper come out even.
 */
import { inchesToMm, type JobUnit, toStoredMm } from '../units/length-unit.ts';

export type Draw = {
  readonly unit: JobUnit;
  /** A length between two, on the caliper's step. Inches in, mm out. */
  readonly length: (fromIn: number, toIn: number) => number;
  readonly pick: <T>(list: readonly [T, ...T[]]) => T;
  /** From 0 up to, not including, 1. */
  readonly share: () => number;
};

/** mm. A thousandth of an inch, or what a metric caliper shows: what sizes are given to. */
const STEP_MM: Readonly<Record<JobUnit, number>> = { in: 0.0254, mm: 0.01 };

/** The largest seed: six figures are still read aloud without a slip. */
export const MOST_SEED = 999_999;

/** Starts drawing. */
export function startDraw(seed: number, unit: JobUnit): Draw {
  const share = generator(seed);
  return {
    unit,
    share,
    length: (fromIn, toIn) => onStep(inchesToMm(fromIn + share() * (toIn - fromIn)), unit),
    pick: <T>(list: readonly [T, ...T[]]): T => list[Math.floor(share() * list.length)] ?? list[0],
  };
}

/** The nearest length on the step of the unit. mm. */
export function onStep(mm: number, unit: JobUnit): number {
  const step = STEP_MM[unit];
  return toStoredMm(Math.round(mm / step) * step);
}

/** Inches as mm on the step of the unit. */
export function sizeOf(inches: number, unit: JobUnit): number {
  return onStep(inchesToMm(inches), unit);
}

/** mulberry32: small, and the same everywhere. */
function generator(seed: number): () => number {
  let state = (seed * 2_654_435_761) >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296;
  };
}
