/**
 * A sleeve around the plug: two lines. A chamber frees a line that one of its splits reaches; a line turns when every
 * chamber frees it. Outer line: sleeve radius + half the plug's play above the plug's axis.
 */
import { inchesToMm, toStoredMm } from '../../units/length-unit.ts';
import { whatTurns } from '../../evaluate/what-turns.ts';
import { sizeOf } from '../draw.ts';
import type { Lesson } from '../lesson.ts';
import { levelPin, plugOf, type PracticeChamber, USUAL_IN } from '../practice-job.ts';
import { type Reading, sceneOf } from '../scene.ts';

/** mm. How far the split that is not at its line stands from it. */
const APART_MM = inchesToMm(0.05);

export const SECOND_LINE: Lesson = {
  id: 'second-line',
  steps: (draw) => {
    const { unit } = draw;
    const around = { unit, sleeveDiameter: sizeOf(USUAL_IN.sleeve, unit) };
    const play = sizeOf(USUAL_IN.play, unit);
    const between = toStoredMm((around.sleeveDiameter + play - plugOf(around)) / 2);
    const roots = [draw.length(0.3, 0.45), draw.length(0.3, 0.45), draw.length(0.3, 0.45)];
    const chamber = (rootDepth: number, line: 'inner' | 'outer'): PracticeChamber => {
      const level = levelPin(around, rootDepth);
      return line === 'inner'
        ? { rootDepth, pin: level, masterPin: between + APART_MM }
        : { rootDepth, pin: level - APART_MM, masterPin: between + APART_MM };
    };
    const mixed = draw.pick(['ioo', 'oio', 'ooi', 'oii', 'ioi', 'iio']);
    const patterns = { plug: 'iii', together: 'ooo', nothing: mixed };
    const scene = (pattern: string) =>
      sceneOf({
        ...around,
        chambers: roots.map((root, i) => chamber(root, pattern[i] === 'i' ? 'inner' : 'outer')),
      });
    const which = draw.pick(['plug', 'together', 'nothing'] as const);
    const pattern = patterns[which];
    const numbers = (line: string) => [1, 2, 3].filter((number) => pattern[number - 1] === line).join(', ');
    return [
      {
        id: { plug: 'all-inner', together: 'all-outer', nothing: 'mixed' }[which],
        kind: 'choose',
        given: { inner: numbers('i'), outer: numbers('o') },
        truth: scene(pattern),
        options: ['plug', 'together', 'nothing'],
        build: (option) => scene(patterns[option as keyof typeof patterns]),
        reads: whatIsFree,
      },
    ];
  },
};

function whatIsFree({ evaluation }: Reading): string {
  return whatTurns(evaluation).turning.join(' ');
}
