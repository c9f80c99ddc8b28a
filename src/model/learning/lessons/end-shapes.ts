/** The same length, another top: a domed pin follows the plug's round, a flat one stands out at its corners. */
import { toStoredMm } from '../../units/length-unit.ts';
import type { Lesson } from '../lesson.ts';
import { ENDS, levelPin } from '../practice-job.ts';
import { type Reading, sceneOf, verdictOf } from '../scene.ts';
import { letsTurn } from '../../evaluate/judge.ts';

export const END_SHAPES: Lesson = {
  id: 'end-shapes',
  steps: (draw) => {
    const around = { unit: draw.unit };
    const rootDepth = draw.length(0.3, 0.46);
    const at = {
      domed: draw.length(-0.001, 0.001),
      both: draw.length(-0.0095, -0.0065),
      neither: draw.length(0.008, 0.016),
    };
    const scene = (offset: number) => {
      const common = {
        rootDepth,
        pin: toStoredMm(levelPin(around, rootDepth) + offset),
        driverEnd: ENDS.wideBroken,
      };
      return sceneOf(
        {
          ...around,
          chambers: [
            { ...common, top: ENDS.dome },
            { ...common, top: ENDS.flat },
          ],
        },
        1,
      );
    };
    const which = draw.pick(['domed', 'both', 'neither'] as const);
    const offset = at[which];
    const way = Math.abs(offset) < 1e-6 ? 'level' : offset > 0 ? 'above' : 'below';
    return [
      {
        id: `which-turn-${way}`,
        kind: 'choose',
        given: { by: Math.abs(offset) },
        truth: scene(offset),
        options: ['domed', 'both', 'neither'],
        build: (option) => scene(at[option as keyof typeof at]),
        reads: whichTurn,
      },
    ];
  },
};

function whichTurn(reading: Reading): string {
  return [0, 1].map((i) => (letsTurn(verdictOf(reading, i)) ? 'turns' : 'held')).join(' / ');
}
