/** High or low: which part crosses the line, and does it turn. Domed pins, a driver with a broken edge. */
import { drawSplit, withSplit, type PlacedVerdict } from '../placed-split.ts';
import type { Lesson } from '../lesson.ts';
import { crossingOf, type Reading, sceneOf, verdictOf } from '../scene.ts';

export const HIGH_OR_LOW: Lesson = {
  id: 'high-or-low',
  steps: (draw) => {
    const around = { unit: draw.unit };
    const chamber = { rootDepth: draw.length(0.3, 0.46) };
    const split = (place: PlacedVerdict) => drawSplit(draw, around, chamber, place);
    const at = {
      'too low': split('too low'),
      'low, turns': split('low, turns'),
      'high, rubs': split('high, rubs'),
      'too high': split('too high'),
    };
    const place = draw.pick(['too low', 'low, turns', 'high, rubs', 'too high'] as const);
    const offset = at[place];
    const isHigh = offset > 0;
    const scene = (mm: number) => sceneOf(withSplit(around, chamber, mm));
    const way = isHigh ? 'high' : 'low';
    const given = { by: Math.abs(offset) };
    const truth = scene(offset);
    return [
      {
        id: `crosses-${way}`,
        kind: 'choose',
        given,
        truth,
        options: ['bottom-pin', 'driver'],
        build: (option) => {
          if ((option === 'bottom-pin') === isHigh) return truth;
          return scene(isHigh ? at['too low'] : at['too high']);
        },
        reads: (reading) => crossingOf(reading),
      },
      {
        id: `turns-${way}`,
        kind: 'choose',
        given,
        truth,
        options: ['turns', 'rubs', 'stops'],
        build: (option) => {
          if (option === TURNS_AS[place]) return truth;
          if (option === 'turns') return scene(isHigh ? 0 : at['low, turns']);
          if (option === 'rubs') return scene(at['high, rubs']);
          return scene(isHigh ? at['too high'] : at['too low']);
        },
        reads: howItTurns,
      },
    ];
  },
};

const TURNS_AS = {
  'too low': 'stops',
  'low, turns': 'turns',
  level: 'turns',
  'high, rubs': 'rubs',
  'too high': 'stops',
} as const;

function howItTurns(reading: Reading): string {
  const verdict = verdictOf(reading);
  return verdict in TURNS_AS ? TURNS_AS[verdict as PlacedVerdict] : verdict;
}
