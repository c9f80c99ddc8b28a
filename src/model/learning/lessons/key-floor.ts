/** The key's bottom edge is not level with the plug's: the metal under the key counts. */
import { inchesToMm } from '../../units/length-unit.ts';
import { known } from '../../assert.ts';
import type { Lesson } from '../lesson.ts';
import { levelPin } from '../practice-job.ts';
import { chamberOf, sceneOf } from '../scene.ts';
import { SUM_TOLERANCE_MM } from '../tolerance.ts';

export const KEY_FLOOR: Lesson = {
  id: 'key-floor',
  steps: (draw) => {
    const plug = draw.length(0.735, 0.76);
    const floor = draw.length(0.02, 0.06);
    const rootDepth = draw.length(0.32, 0.44);
    const around = { unit: draw.unit, plug, floor };
    const scene = (pin: number) => sceneOf({ ...around, chambers: [{ rootDepth, pin }] });
    return [
      {
        id: 'how-long',
        kind: 'length',
        given: { plug, floor, root: rootDepth },
        truth: scene(levelPin(around, rootDepth)),
        build: (mm) => scene(mm),
        reads: (reading) => known(chamberOf(reading).neededLowerStack, 'height called for'),
        tolerance: SUM_TOLERANCE_MM,
        range: { from: inchesToMm(0.03), to: plug },
      },
    ];
  },
};
