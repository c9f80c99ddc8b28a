/** Which part stops the plug: one chamber, no ball, no numbers. A pin that reaches the line, a longer and a shorter one. */
import { toStoredMm } from '../../units/length-unit.ts';
import type { ChooseStep, Lesson } from '../lesson.ts';
import { ENDS, levelPin, type PinEnd } from '../practice-job.ts';
import { type Reading, sceneOf, turnOfScene, turns } from '../scene.ts';

export const WHICH_PART: Lesson = {
  id: 'which-part',
  steps: (draw) => {
    const { unit } = draw;
    const rootDepth = draw.length(0.3, 0.46);
    const longer = draw.length(0.014, 0.03);
    // Too short for a driver with a sharp edge, not for one whose edge is broken wide.
    const shorter = draw.length(-0.0095, -0.0055);
    const scene = (by: number, driverEnd: PinEnd = ENDS.flat) =>
      sceneOf({
        unit,
        chambers: [{ rootDepth, pin: toStoredMm(levelPin({ unit }, rootDepth) + by), driverEnd }],
      });
    const by = { right: 0, longer, shorter };
    const stops = (id: string, truth: number): ChooseStep => ({
      id,
      kind: 'choose',
      given: {},
      truth: scene(truth),
      options: ['bottom-pin', 'driver'],
      build: (option) => scene(option === 'driver' ? shorter : longer),
      reads: whatStops,
    });
    return [
      {
        id: 'which-turn',
        kind: 'choose',
        given: {},
        truth: scene(0),
        options: ['right', 'shorter', 'longer'],
        build: (option) => scene(by[option as keyof typeof by]),
        reads: turnsWord,
      },
      stops('stops-longer', longer),
      stops('stops-shorter', shorter),
      {
        id: 'broken-edge',
        kind: 'choose',
        given: {},
        truth: scene(shorter, ENDS.wideBroken),
        options: ['turns', 'does-not'],
        build: (option) => scene(shorter, option === 'turns' ? ENDS.wideBroken : ENDS.flat),
        reads: turnsWord,
      },
    ];
  },
};

function turnsWord(reading: Reading): string {
  return turns(reading) ? 'turns' : 'held';
}

function whatStops(reading: Reading): string {
  return turnOfScene(reading).stoppedBy[0]?.binding.side ?? 'nothing';
}
