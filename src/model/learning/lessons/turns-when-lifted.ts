/** It turns only while the key is lifted: the stacks want to be higher, so the split is low. */
import { toStoredMm } from '../../units/length-unit.ts';
import { drawSplit } from '../placed-split.ts';
import type { Lesson } from '../lesson.ts';
import { floorOf, levelPin } from '../practice-job.ts';
import { sceneOf, turns } from '../scene.ts';

export const TURNS_WHEN_LIFTED: Lesson = {
  id: 'turns-when-lifted',
  steps: (draw) => {
    const around = { unit: draw.unit };
    const chamber = { rootDepth: draw.length(0.3, 0.46) };
    const low = drawSplit(draw, around, chamber, 'too low');
    const lift = Math.abs(low);
    /** Pins stay as they are; the key, and all that stands on it, comes up. */
    const lifted = (offset: number) => {
      const pin = toStoredMm(levelPin(around, chamber.rootDepth) + offset);
      const floor = toStoredMm(floorOf(around) + lift);
      return sceneOf({ ...around, floor, chambers: [{ ...chamber, pin }] });
    };
    return [
      {
        id: 'which-way',
        kind: 'choose',
        given: { by: lift },
        truth: lifted(low),
        options: ['low', 'high'],
        build: (option) => lifted(option === 'low' ? low : lift),
        reads: (reading) => (turns(reading) ? 'turns' : 'held'),
      },
    ];
  },
};
