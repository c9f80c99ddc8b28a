/** A cut's number is a place in somebody's table, not a length: this table is invented. */
import { inchesToMm, toStoredMm } from '../../units/length-unit.ts';
import { known } from '../../assert.ts';
import { sizeOf } from '../draw.ts';
import type { Lesson } from '../lesson.ts';
import { levelPin } from '../practice-job.ts';
import { chamberOf, sceneOf } from '../scene.ts';
import { SUM_TOLERANCE_MM } from '../tolerance.ts';

export const CUT_NUMBER: Lesson = {
  id: 'cut-number',
  steps: (draw) => {
    const around = { unit: draw.unit };
    const shallowest = draw.length(0.43, 0.46);
    const step = draw.pick([sizeOf(0.014, draw.unit), sizeOf(0.018, draw.unit), sizeOf(0.021, draw.unit)]);
    const number = draw.pick([2, 3, 4, 5, 6]);
    const rootDepth = toStoredMm(shallowest - number * step);
    const scene = (pin: number) => sceneOf({ ...around, chambers: [{ rootDepth, pin }] });
    return [
      {
        id: 'what-is-left',
        kind: 'length',
        given: { shallowest, step, number: String(number) },
        truth: scene(levelPin(around, rootDepth)),
        build: (mm) => scene(levelPin(around, mm)),
        reads: (reading) => known(chamberOf(reading).contactHeight, 'contact height'),
        tolerance: SUM_TOLERANCE_MM,
        range: { from: inchesToMm(0.02), to: inchesToMm(0.5) },
      },
    ];
  },
};
