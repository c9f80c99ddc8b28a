/** Root depth is what is left under a cut, not what was cut away. */
import { inchesToMm, toStoredMm } from '../../units/length-unit.ts';
import { known } from '../../assert.ts';
import type { Lesson } from '../lesson.ts';
import { levelPin } from '../practice-job.ts';
import { chamberOf, sceneOf } from '../scene.ts';
import { SUM_TOLERANCE_MM } from '../tolerance.ts';

export const ROOT_DEPTH: Lesson = {
  id: 'root-depth',
  steps: (draw) => {
    const bladeHeight = draw.length(0.45, 0.55);
    const down = draw.length(0.06, 0.2);
    const around = { unit: draw.unit, bladeHeight };
    const rootDepth = toStoredMm(bladeHeight - down);
    const scene = (pin: number) => sceneOf({ ...around, chambers: [{ rootDepth, pin }] });
    return [
      {
        id: 'what-is-left',
        kind: 'length',
        given: { blade: bladeHeight, down },
        truth: scene(levelPin(around, rootDepth)),
        build: (mm) => scene(levelPin(around, mm)),
        reads: (reading) => known(chamberOf(reading).contactHeight, 'contact height'),
        tolerance: SUM_TOLERANCE_MM,
        range: { from: inchesToMm(0.02), to: bladeHeight },
      },
    ];
  },
};
