/** The job that a practice cylinder is made into, kept as text: with everything a lesson can ask for, and with nothing. */
import { test } from 'vitest';
import { ENDS, practiceJob } from '../../../src/model/learning/practice-job.ts';
import { asText } from '../../support/as-text.ts';
import { expectGolden } from '../../support/golden.ts';

test('as plain as it gets', () => {
  const job = practiceJob({ unit: 'in', chambers: [{ rootDepth: 8, pin: 3 }] });
  expectGolden('lessons/practice-job-plain.txt', asText(job));
});

test('with a sleeve, a ball in a dimple, a master pin and a short stop', () => {
  const job = practiceJob({
    unit: 'mm',
    plug: 13,
    floor: 2,
    sleeveDiameter: 16,
    springSolid: 4,
    rootFlat: 1.1,
    play: 0.08,
    bladeHeight: 9,
    stopShort: 0.3,
    chambers: [
      {
        rootDepth: 6,
        ball: 2.7,
        pin: 3,
        foot: { kind: 'cup', mouth: 2 },
        driver: 5,
        driverEnd: ENDS.flat,
        rest: 1.5,
      },
      { rootDepth: 5, pin: 4, masterPin: 1, top: ENDS.wideBroken },
    ],
  });
  expectGolden('lessons/practice-job-full.txt', asText(job));
});
