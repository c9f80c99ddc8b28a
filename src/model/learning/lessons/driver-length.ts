/** Driver and spring with the key out: too short and it falls in, too long and the key cannot lift it. */
import { inchesToMm } from '../../units/length-unit.ts';
import { known } from '../../assert.ts';
import { onStep } from '../draw.ts';
import type { Lesson } from '../lesson.ts';
import { readScene, sceneOf } from '../scene.ts';
import { restOfScene } from '../rest.ts';

/** mm. How far beyond what fits the two wrong drivers are. */
const BEYOND_MM = inchesToMm(0.04);

export const DRIVER_LENGTH: Lesson = {
  id: 'driver-length',
  steps: (draw) => {
    const { unit } = draw;
    const rootDepth = draw.length(0.3, 0.42);
    const rest = draw.length(0.12, 0.2);
    const scene = (driver: number) =>
      sceneOf({ unit, chambers: [{ rootDepth, rest, driver }] }, 0, 'key out');
    const { shortest, longest } = restOfScene(readScene(scene(inchesToMm(0.275)))).driver;
    const least = known(shortest, 'shortest driver');
    const most = known(longest, 'longest driver');
    const at = {
      short: onStep(least - BEYOND_MM, unit),
      middle: onStep((least + most) / 2, unit),
      long: onStep(most + BEYOND_MM, unit),
    };
    return [
      {
        id: 'which-driver',
        kind: 'choose',
        given: { rest, ...at },
        truth: scene(at.middle),
        options: ['short', 'middle', 'long'],
        build: (option) => scene(at[option as keyof typeof at]),
        reads: (reading) => restOfScene(reading).driver.verdict,
      },
    ];
  },
};
