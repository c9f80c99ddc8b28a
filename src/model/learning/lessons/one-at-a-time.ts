/** One chamber at a time in the shell, first the lower stack alone, then with its driver: go or no go tells high or low. */
import { drawSplit, type PlacedVerdict, withSplit } from '../placed-split.ts';
import type { Lesson } from '../lesson.ts';
import { chamberOf, type Reading, sceneOf } from '../scene.ts';

export const ONE_AT_A_TIME: Lesson = {
  id: 'one-at-a-time',
  steps: (draw) => {
    const around = { unit: draw.unit };
    const chamber = { rootDepth: draw.length(0.3, 0.46) };
    const scene = (place: PlacedVerdict) =>
      sceneOf(withSplit(around, chamber, drawSplit(draw, around, chamber, place)));
    const scenes = { high: scene('too high'), right: scene('level'), low: scene('too low') };
    const hidden = draw.pick(['high', 'right', 'low'] as const);
    return [
      {
        id: { high: 'not-even-alone', right: 'both-turn', low: 'only-alone' }[hidden],
        kind: 'choose',
        given: {},
        truth: scenes[hidden],
        options: ['high', 'right', 'low'],
        build: (option) => scenes[option as keyof typeof scenes],
        reads: goOrNoGo,
      },
    ];
  },
};

/** What the two tests at the bench would show. */
export function goOrNoGo(reading: Reading): string {
  const { alone } = chamberOf(reading);
  return `${alone?.lowerStackOnly ?? 'unknown'} / ${alone?.withDriver ?? 'unknown'}`;
}
