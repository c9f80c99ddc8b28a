/** Driver and spring with the key out: too short and it falls in, too long and the key cannot lift it. */
import { inchesToMm } from '../../units/length-unit.ts';
import { known } from '../../assert.ts';
import { onStep } from '../draw.ts';
import type { Lesson } from '../lesson.ts';
import { readScene, sceneOf } from '../scene.ts';
import { restOfScene } from '../rest.ts';

/** mm. How far beyond what fits the two wrong drivers are. */
const BEYOND_MM = inchesToMm(0.04);

const OPTIONS = ['one', 'two', 'three'];

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
    const [tooShort, fits, tooLong] = [least - BEYOND_MM, (least + most) / 2, most + BEYOND_MM];
    const lengths = draw
      .pick([
        [tooShort, fits, tooLong],
        [tooShort - BEYOND_MM, tooShort, fits],
        [fits, tooLong, tooLong + BEYOND_MM],
      ])
      .map((mm) => onStep(mm, unit));
    const lengthOf = (option: string) => known(lengths[OPTIONS.indexOf(option)], option);
    return [
      {
        id: 'which-driver',
        kind: 'choose',
        given: { rest, one: lengthOf('one'), two: lengthOf('two'), three: lengthOf('three') },
        truth: scene(onStep(fits, unit)),
        options: OPTIONS,
        build: (option) => scene(lengthOf(option)),
        reads: (reading) => restOfScene(reading).driver.verdict,
      },
    ];
  },
};
