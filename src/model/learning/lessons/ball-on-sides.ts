/** A ball too large for the flat of its cut rides on the sides: the split stands higher than the sum says. */
import { inchesToMm, toStoredMm } from '../../units/length-unit.ts';
import type { Lesson } from '../lesson.ts';
import { levelPin } from '../practice-job.ts';
import { offsetOf, sceneOf } from '../scene.ts';
import { PLACE_REACH_MM, PLACE_TOLERANCE_MM } from '../tolerance.ts';

export const BALL_ON_SIDES: Lesson = {
  id: 'ball-on-sides',
  steps: (draw) => {
    // Lifts well past the play, or well within it.
    const rootFlat = draw.pick([draw.length(0.04, 0.0545), draw.length(0.0585, 0.072)]);
    const around = { unit: draw.unit, rootFlat };
    const rootDepth = draw.length(0.3, 0.42);
    const ball = toStoredMm(inchesToMm(5 / 32));
    const pin = levelPin(around, rootDepth, ball);
    const scene = (length: number) => sceneOf({ ...around, chambers: [{ rootDepth, ball, pin: length }] });
    return [
      {
        id: 'where',
        kind: 'place',
        given: { flat: rootFlat, ball },
        truth: scene(pin),
        build: (mm) => scene(pin - mm),
        reads: (reading) => offsetOf(reading),
        tolerance: PLACE_TOLERANCE_MM,
        range: { from: -PLACE_REACH_MM, to: PLACE_REACH_MM },
      },
    ];
  },
};
