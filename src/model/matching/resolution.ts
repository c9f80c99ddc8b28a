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

/** Whole steps that are surely there: a margin of 1.9 steps is 1 step to spare. Negative outside the window. */
export function stepsToSpare(mm: number, step: number): number {
  return Math.floor((mm + WINDOW_MM) / step);
}

/** Nearest whole steps between two heights. */
export function stepsApart(mm: number, step: number): number {
  return Math.round(Math.abs(mm) / step);
}

/** Whole steps to take off so that at least this much is gone. */
export function stepsToTakeOff(mm: number, step: number): number {
  return Math.ceil((mm - WINDOW_MM) / step);
}
