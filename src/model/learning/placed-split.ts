/** Where a split can stand, drawn well inside a verdict: never near an end of the window. Offsets mm, + high, - low. */
import { inchesToMm, toStoredMm } from '../units/length-unit.ts';
import type { Draw } from './draw.ts';
import { type PracticeChamber, type PracticeCylinder, levelPin } from './practice-job.ts';
import { readScene, sceneOf, splitOf } from './scene.ts';

export type PlacedVerdict = 'too low' | 'low, turns' | 'level' | 'high, rubs' | 'too high';

/** mm. What is asked lies at least so far from any limit. */
export const CLEAR_OF_LIMITS_MM = inchesToMm(0.001);

type Surroundings = Omit<PracticeCylinder, 'chambers'>;

/** The cylinder of one chamber with its split at an offset. */
export function withSplit(around: Surroundings, chamber: PracticeChamber, offset: number): PracticeCylinder {
  const pin = toStoredMm(levelPin(around, chamber.rootDepth, chamber.ball) + offset);
  return { ...around, chambers: [{ ...chamber, pin }] };
}

/** Draws an offset with a verdict, from the window that the engine gives for these parts. */
export function drawSplit(
  draw: Draw,
  around: Surroundings,
  chamber: PracticeChamber,
  place: PlacedVerdict,
): number {
  const { window } = splitOf(readScene(sceneOf(withSplit(around, chamber, 0))));
  const inch = (mm: number) => mm / 25.4;
  const lowest = inch(window.lowest);
  const highest = inch(window.highest);
  switch (place) {
    case 'too low':
      return draw.length(lowest - 0.012, lowest - 0.0025);
    case 'low, turns':
      return draw.length(lowest + 0.0015, -0.002);
    case 'level':
      return 0;
    case 'high, rubs':
      return draw.length(0.0019, highest - 0.0011);
    case 'too high':
      return draw.length(highest + 0.0025, highest + 0.012);
  }
}
