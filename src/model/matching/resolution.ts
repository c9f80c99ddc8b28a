/**
 * The step that parts on hand are compared by: what a shop's caliper can tell apart. Parts closer than a step are one and
 * the same length, so that noise never decides between them. mm.
 */
import { WINDOW_MM } from '../tolerances.ts';
import type { JobUnit } from '../units/length-unit.ts';

/** The shop's resolution: half a thousandth of an inch, or a hundredth of a millimetre. mm. */
export function resolutionOf(unit: JobUnit): number {
  return unit === 'in' ? 0.0127 : 0.01;
}

/**
 * Nearest whole steps to spare; -1 for anything outside the window. Nearest and not whole ones only: the best height often
 * lies a whole number of steps inside (level, under a play of .003 in), and a hair must not count as a step there.
 */
export function stepsToSpare(mm: number, step: number): number {
  return mm < -WINDOW_MM ? -1 : Math.round(Math.max(0, mm) / step);
}

/** The least that counts as so many steps to spare. mm. */
export function leastMargin(steps: number, step: number): number {
  return Math.max(0, steps - 0.5) * step;
}

/** Nearest whole steps between two heights. */
export function stepsApart(mm: number, step: number): number {
  return Math.round(Math.abs(mm) / step);
}

/** Whole steps to take off so that at least this much is gone. */
export function stepsToTakeOff(mm: number, step: number): number {
  return Math.ceil((mm - WINDOW_MM) / step);
}
