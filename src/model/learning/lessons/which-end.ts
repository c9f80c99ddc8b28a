/** Which end is cut 1: a list counted from the tip puts every pin into the wrong chamber but the middle one. */
import { known } from '../../assert.ts';
import type { Lesson } from '../lesson.ts';
import { levelPin } from '../practice-job.ts';
import { sceneOf, turns } from '../scene.ts';

export const WHICH_END: Lesson = {
  id: 'which-end',
  steps: (draw) => {
    const around = { unit: draw.unit };
    const deep = draw.length(0.3, 0.34);
    const others = [draw.length(0.36, 0.39), draw.length(0.41, 0.44)] as const;
    const [near, far] = draw.pick([others, [others[1], others[0]] as const]);
    // The deepest cut lies at one end of the key, so that counting from the wrong one misplaces it.
    const roots = draw.pick([
      [deep, near, far],
      [far, near, deep],
    ]);
    const at = roots.indexOf(deep);
    const pins = roots.map((root) => levelPin(around, root));
    const scene = (order: readonly number[]) =>
      sceneOf(
        {
          ...around,
          chambers: roots.map((rootDepth, i) => ({ rootDepth, pin: known(pins[order[i] ?? i], 'pin') })),
        },
        at,
      );
    const straight = [0, 1, 2];
    const fromTip = [...roots].reverse();
    return [
      {
        id: 'longest-pin',
        kind: 'choose',
        given: { one: fromTip[0] ?? 0, two: fromTip[1] ?? 0, three: fromTip[2] ?? 0 },
        truth: scene(straight),
        options: ['1', '2', '3'],
        build: (option) => scene(exchanged(straight, at, Number(option) - 1)),
        reads: (reading) => (turns(reading) ? 'turns' : 'held'),
      },
    ];
  },
};

function exchanged(order: readonly number[], one: number, other: number): number[] {
  return order.map((pin, i) => (i === one ? (order[other] ?? pin) : i === other ? (order[one] ?? pin) : pin));
}
