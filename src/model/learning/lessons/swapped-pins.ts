/** Two pins in each other's chambers: one stands in the shell, over the other the driver hangs in the plug. */
import { known } from '../../assert.ts';
import type { Lesson } from '../lesson.ts';
import { levelPin } from '../practice-job.ts';
import { sceneOf, verdictOf } from '../scene.ts';

export const SWAPPED_PINS: Lesson = {
  id: 'swapped-pins',
  steps: (draw) => {
    const around = { unit: draw.unit };
    const shallow = draw.length(0.4, 0.45);
    const deep = draw.length(0.34, 0.38);
    const roots = draw.pick([
      [deep, shallow],
      [shallow, deep],
    ]);
    const scene = (cuts: readonly number[]) => {
      const pins = cuts.map((root) => levelPin(around, root)).reverse();
      return sceneOf(
        {
          ...around,
          chambers: cuts.map((rootDepth, i) => ({ rootDepth, pin: known(pins[i], 'pin') })),
        },
        cuts.indexOf(shallow),
      );
    };
    const truth = scene(roots);
    const mirrored = scene([...roots].reverse());
    const right = `chamber-${roots.indexOf(shallow) + 1}`;
    return [
      {
        id: 'stands-in-shell',
        kind: 'choose',
        given: { one: roots[0] ?? 0, two: roots[1] ?? 0 },
        truth,
        options: ['chamber-1', 'chamber-2'],
        build: (option) => (option === right ? truth : mirrored),
        reads: (reading) => [0, 1].map((i) => verdictOf(reading, i)).join(' / '),
      },
    ];
  },
};
