/** A deep cut leaves little metal and takes a long pin: plug less metal under the key less what is left under the cut. */
import { inchesToMm } from '../../units/length-unit.ts';
import type { Lesson } from '../lesson.ts';
import { floorOf, levelPin, plugOf } from '../practice-job.ts';
import { chamberOf, sceneOf, turns } from '../scene.ts';
import { SUM_TOLERANCE_MM } from '../tolerance.ts';
import { known } from '../../assert.ts';

export const DEEP_CUT: Lesson = {
  id: 'deep-cut',
  steps: (draw) => {
    const around = { unit: draw.unit };
    const shallow = draw.length(0.39, 0.46);
    const deep = draw.length(0.3, 0.36);
    const roots = draw.pick([
      [deep, shallow],
      [shallow, deep],
    ]);
    const at = roots.indexOf(deep);
    const pins = roots.map((root) => levelPin(around, root));
    const scene = (lengths: readonly number[]) =>
      sceneOf(
        {
          ...around,
          chambers: roots.map((rootDepth, i) => ({ rootDepth, pin: known(lengths[i], 'pin') })),
        },
        at,
      );
    const truth = scene(pins);
    const across = plugOf(around) - floorOf(around);
    return [
      {
        id: 'which-longer',
        kind: 'choose',
        given: { one: roots[0] ?? 0, two: roots[1] ?? 0 },
        truth,
        options: ['cut-1', 'cut-2'],
        build: (option) => (option === `cut-${at + 1}` ? truth : scene([...pins].reverse())),
        reads: (reading) => (turns(reading) ? 'turns' : 'held'),
      },
      {
        id: 'how-long',
        kind: 'length',
        given: { across, root: deep, number: String(at + 1) },
        truth,
        build: (mm) => scene(pins.map((pin, i) => (i === at ? mm : pin))),
        reads: (reading) => known(chamberOf(reading, at).neededLowerStack, 'height called for'),
        tolerance: SUM_TOLERANCE_MM,
        range: { from: inchesToMm(0.03), to: plugOf(around) },
      },
    ];
  },
};
