/** A key that stops short of home: what stands on a side of its cut is lifted, what stands on the flat is not. */
import { inchesToMm, toStoredMm } from '../../units/length-unit.ts';
import type { Lesson, Step } from '../lesson.ts';
import { levelPin } from '../practice-job.ts';
import { offsetOf, readScene, type Reading, type Scene, sceneOf } from '../scene.ts';
import { PLACE_REACH_MM, PLACE_TOLERANCE_MM } from '../tolerance.ts';

export const NOT_HOME: Lesson = {
  id: 'not-home',
  steps: (draw) => {
    // More than the play: it shows in the turn.
    const stopShort = draw.length(0.0055, 0.012);
    const around = { unit: draw.unit, rootFlat: inchesToMm(0.06) };
    const rootDepth = draw.length(0.3, 0.42);
    const ball = toStoredMm(inchesToMm(5 / 32));
    const foot = draw.pick(['ball', 'point'] as const);
    const level = {
      point: levelPin(around, rootDepth),
      ball: toStoredMm(levelPin(around, rootDepth, ball) - liftAtHome()),
    };
    const scene = (kind: 'ball' | 'point', correction = 0): Scene =>
      sceneOf({
        ...around,
        stopShort,
        chambers: [
          { rootDepth, pin: toStoredMm(level[kind] + correction), ...(kind === 'ball' && { ball }) },
        ],
      });
    const given = { short: stopShort };
    const which: Step = {
      id: `what-happens-${foot}`,
      kind: 'choose',
      given,
      truth: scene(foot),
      options: ['higher', 'same'],
      build: (option) => scene(option === 'higher' ? 'ball' : 'point'),
      reads: highOrSame,
    };
    if (foot === 'point') return [which];
    return [
      which,
      {
        id: 'how-much',
        kind: 'place',
        given,
        truth: scene('ball'),
        build: (mm) => scene('ball', -mm),
        reads: (reading) => offsetOf(reading),
        tolerance: PLACE_TOLERANCE_MM,
        range: { from: -PLACE_REACH_MM, to: PLACE_REACH_MM },
      },
    ];

    /** With the key home the ball already rides on both sides, and its pin was chosen for that. */
    function liftAtHome(): number {
      const pin = levelPin(around, rootDepth, ball);
      return offsetOf(readScene(sceneOf({ ...around, chambers: [{ rootDepth, ball, pin }] })));
    }
  },
};

/** A tenth of a thousandth is nothing that anybody sees. */
function highOrSame(reading: Reading): string {
  return offsetOf(reading) > inchesToMm(0.0001) ? 'higher' : 'same';
}
