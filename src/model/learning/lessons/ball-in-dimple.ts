/** A ball in the pin's dimple: neither the pin alone nor ball and pin added up. */
import { inchesToMm, toStoredMm } from '../../units/length-unit.ts';
import { known } from '../../assert.ts';
import type { Lesson } from '../lesson.ts';
import { floorOf, plugOf } from '../practice-job.ts';
import { chamberOf, readScene, sceneOf, turns } from '../scene.ts';

export const BALL_IN_DIMPLE: Lesson = {
  id: 'ball-in-dimple',
  steps: (draw) => {
    const around = { unit: draw.unit, rootFlat: inchesToMm(0.075) };
    const pin = draw.length(0.17, 0.23);
    const ball = toStoredMm(inchesToMm(5 / 32));
    const mouth = draw.length(0.07, 0.11);
    const foot = { kind: 'cup', mouth } as const;
    const scene = (length: number, rootDepth: number) =>
      sceneOf({ ...around, chambers: [{ rootDepth, ball, foot, pin: length }] });
    // The cut is as deep as these parts want: they reach the line.
    const seated = known(
      chamberOf(readScene(scene(pin, inchesToMm(0.4)))).lowerStack,
      'height of ball and pin',
    );
    const rootDepth = plugOf(around) - floorOf(around) - seated;
    const heights = { added: pin + ball, seated, 'pin-alone': pin };
    return [
      {
        id: 'how-high',
        kind: 'choose',
        given: { pin, ball, mouth, added: pin + ball, seated },
        truth: scene(pin, rootDepth),
        options: ['added', 'seated', 'pin-alone'],
        // Whoever reckons with another height picks another pin for this cut.
        build: (option) => scene(pin + seated - heights[option as keyof typeof heights], rootDepth),
        reads: (reading) => (turns(reading) ? 'turns' : 'held'),
      },
    ];
  },
};
