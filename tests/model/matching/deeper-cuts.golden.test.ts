/**
 * What a deeper cut would do, kept as text: three cuts close together, so that neighbours come down and flats are eaten. That the
 * deepened key stands the stack right is held in deeper-cut.test.ts, by evaluating it.
 */
import { describe, test } from 'vitest';
import { deeperCut } from '../../../src/model/matching/deeper-cut.ts';
import { asText } from '../../support/as-text.ts';
import { expectGolden } from '../../support/golden.ts';
import { buildJob, changed } from '../../support/job-builder.ts';
import { seededRandom } from '../../support/random-job.ts';
import { SELECTION } from '../../support/small-job.ts';
import { inches } from '../../support/values.ts';

/** How much too long the pins are. Inches. */
const OFF = [0, 0.0002, 0.003, 0.006, 0.012, 0.03, 0.06, -0.001, -0.02, 0.3] as const;

function drawnJob(seed: number) {
  const random = seededRandom(seed);
  const pick = <const T>(list: readonly T[]): T => list[Math.floor(random() * list.length)]!;
  const ball = pick([null, null, 0.115]);
  const roots = Array.from({ length: 3 }, () => Math.round(200 + random() * 110) / 1000);
  const job = buildJob({
    unit: pick(['in', 'in', 'mm']),
    numbering: pick(['bow', 'tip']),
    chamberSpacing: pick([0.13, 0.14, 0.15, 0.2]),
    rootFlat: pick([0.01, 0.03, 0.05]),
    cutAngleDeg: pick([90, 100]),
    clearance: pick([0.002, 0.005]),
    chambers: roots.map((rootDepth, i) => ({
      rootDepth,
      ball,
      bottomPin:
        Math.round(
          (0.432 - rootDepth - (ball ?? 0) + (i === 1 ? pick(OFF) : pick([0, 0, 0.002, -0.003]))) * 1e5,
        ) / 1e5,
      ...(random() < 0.15 && { cutPosition: 0.22 + i * 0.14 + 0.008 }),
    })),
  });
  return changed(job, (copy) => {
    if (random() < 0.12) delete copy.keys[0]!.cuts[1]!.rootDepth;
    if (random() < 0.12) delete copy.keys[0]!.cuts[2]!.rootDepth;
    if (random() < 0.12) copy.plans[0]!.stacks[0]!.items = [];
    if (random() < 0.1) copy.plans[0]!.stacks[1]!.items = [];
    if (random() < 0.1) copy.cylinders[0]!.chambers[2]!.closed = true;
    if (random() < 0.2) copy.seatings[0]!.stopShort = inches(0.01);
    if (random() < 0.2) copy.keys[0]!.cuts.reverse();
    if (random() < 0.15)
      for (const cut of copy.keys[0]!.cuts) {
        const root = cut.rootDepth?.readings[0]?.value ?? 6;
        cut.overBall = {
          reading: inches(Math.round((root / 25.4 + 0.109) * 1e4) / 1e4),
          ball: inches(0.109),
        };
        if (random() < 0.5) delete cut.rootDepth;
      }
  });
}

describe('a deeper cut', () => {
  test.each(Array.from({ length: 80 }, (_, i) => i + 1))('in a drawn key, %i', (seed) => {
    const job = drawnJob(seed);
    const cuts = job.keys[0]!.cuts.map(
      ({ id, position, rootDepth }) =>
        `${id} at ${position.readings[0]!.value.toFixed(2)}, root ${rootDepth?.readings[0]?.value.toFixed(4) ?? 'not measured'}`,
    );
    const found = job.cylinders[0]!.chambers.map(({ id }) => deeperCut(job, SELECTION, id));
    expectGolden(`deeper-cuts/${seed}.txt`, asText({ cuts: cuts.join('; '), found }));
  });

  test('nothing is told of a chamber that is not there', () => {
    expectGolden('deeper-cuts/none.txt', asText(deeperCut(drawnJob(1), SELECTION, 'gone')));
  });
});
