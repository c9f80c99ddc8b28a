/** Cylinder H: an invented cylinder whose every figure was worked by hand. All figures in inches. */
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { buildAssembly } from '../../../src/model/assembly/build-assembly.ts';
import { poseAt } from '../../../src/model/assembly/pose-at.ts';
import { evaluate } from '../../../src/model/evaluate/evaluate.ts';
import type { Evaluation } from '../../../src/model/evaluate/evaluation.ts';
import { firstSelection, type Selection } from '../../../src/model/measured/selection.ts';
import type { Job } from '../../../src/model/schema/job-schema.ts';
import { parseJob } from '../../../src/model/schema/parse-job.ts';
import { toDegrees, asRadians } from '../../../src/model/radians.ts';

const INCH = 25.4;
const file = new URL('../../fixtures/jobs/cylinder-h.json', import.meta.url);

function load(): { job: Job; selection: Selection } {
  const parsed = parseJob(JSON.parse(readFileSync(file, 'utf8')));
  if (parsed.type === 'error') throw new Error(JSON.stringify(parsed.problems));
  const selection = firstSelection(parsed.job);
  if (selection === null) throw new Error('no selection');
  return { job: parsed.job, selection };
}

function evaluated(change: (job: Job) => Job = (job) => job): Evaluation {
  const { job, selection } = load();
  return evaluate(change(job), selection);
}

const inches = (mm: number | null | undefined) => (mm ?? Number.NaN) / INCH;
const caliper = (job: Job): Job => ({
  ...job,
  instruments: job.instruments.map((each) => ({
    ...each,
    resolutionMm: 0.0005 * INCH,
    repeatabilityMm: 0.0005 * INCH,
    maxPermissibleErrorMm: 0.001 * INCH,
  })),
});

describe('cylinder H without instrument error', () => {
  const { chambers, lines } = evaluated();

  test('has its contact heights', () => {
    const expected = [0.37136, 0.42336, 0.33536, 0.39536, 0.45536, 0.30536];
    chambers.forEach((chamber, i) => expect(inches(chamber.contactHeight)).toBeCloseTo(expected[i] ?? 0, 5));
  });

  test('has its offsets', () => {
    const expected = [-0.00014, -0.00364, -0.00264, -0.00064, 0.00136, 0.00286];
    chambers.forEach((chamber, i) =>
      expect(inches(chamber.splits[0]?.offset)).toBeCloseTo(expected[i] ?? 0, 5),
    );
  });

  test('has one window for all', () => {
    for (const { splits } of chambers) {
      expect(inches(splits[0]?.window.lowest)).toBeCloseTo(-0.0077, 5);
      expect(inches(splits[0]?.window.noTouch)).toBeCloseTo(0, 5);
      expect(inches(splits[0]?.window.highest)).toBeCloseTo(0.004, 5);
    }
  });

  test('has its verdicts, and turns', () => {
    expect(chambers.map((chamber) => chamber.verdicts[0]?.verdict)).toEqual([
      'level',
      'low, turns',
      'low, turns',
      'level',
      'high, rubs',
      'high, rubs',
    ]);
    expect(lines[0]).toMatchObject({ verdict: 'turns', blockedBy: [] });
  });

  test('a pin .0024 high rubs from 68 degrees', () => {
    const { chambers: shifted } = evaluated((job) => ({
      ...job,
      groups: job.groups.map((group, i) =>
        i === 0
          ? {
              ...group,
              height: {
                ...group.height,
                readings: group.height.readings.map((r) => ({ ...r, value: 0.33704 * INCH })),
              },
            }
          : group,
      ),
    }));
    expect(inches(shifted[0]?.splits[0]?.offset)).toBeCloseTo(0.0024, 5);
    expect(toDegrees(asRadians(shifted[0]?.splits[0]?.rubsFrom ?? Number.NaN))).toBeCloseTo(68, 0);
  });

  test('lifts the stack of chamber 1 as the key goes in', () => {
    const { job, selection } = load();
    const assembly = buildAssembly(job, selection);
    const heights: [number, number][] = [
      [1.7, 0.2],
      [1.25, 0.30536],
      [1, 0.45536],
      [0.75, 0.39536],
      [0.5, 0.33536],
      [0.25, 0.42336],
      [0.15, 0.48999],
      [0.05, 0.42136],
      [0, 0.37136],
    ];
    for (const [travel, height] of heights) {
      const foot = poseAt(assembly, { travel: travel * INCH }).stacks[0]?.footY ?? Number.NaN;
      expect(inches(foot - (assembly.key?.bottomY ?? 0))).toBeCloseTo(height, 5);
    }
  });

  test('tells what plain subtraction leaves out', () => {
    expect(inches(chambers[0]?.simpleLowerStack)).toBeCloseTo(0.337, 6);
    expect(inches(chambers[0]?.neededLowerStack)).toBeCloseTo(0.33464, 5);
    expect(chambers[0]?.simpleDiffers).toBe(
      'The ball rides on the sides of the cut, .0025 in above its root.',
    );
  });
});

test('with a default caliper chambers 5 and 6 cannot be told, leaning to turn, and no other', () => {
  const { chambers, lines } = evaluated(caliper);
  const open = chambers.filter((chamber) => chamber.verdicts[0]?.verdict === "can't say yet");
  expect(open.map((chamber) => chamber.number)).toEqual([5, 6]);
  expect(open.map((chamber) => chamber.splits[0]?.lean)).toEqual(['probably turns', 'probably turns']);
  expect(lines[0]).toMatchObject({ verdict: "can't say yet", lean: 'probably turns' });
});
