/**
 * Seeded jobs whose stacks stand near their shear line, where pictures and words about it are read: an example with every size
 * drawn anew, then each ball + pin made longer or shorter until its split stands where the seed says. mm.
 */
import { readFileSync } from 'node:fs';
import { setLowerStack } from '../../src/model/edit/edit-stack.ts';
import { evaluateBench } from '../../src/model/evaluate/evaluate.ts';
import type { Evaluation } from '../../src/model/evaluate/evaluation.ts';
import type { Assembly } from '../../src/model/assembly/assembly.ts';
import { assemble } from '../../src/model/assembly/build-assembly.ts';
import { firstSelection, layOut, type Selection } from '../../src/model/measured/selection.ts';
import type { Job } from '../../src/model/schema/job-schema.ts';
import { randomJob, seededRandom } from './random-job.ts';

export type NearLineJob = {
  readonly job: Job;
  readonly selection: Selection;
  readonly assembly: Assembly;
  readonly evaluation: Evaluation;
};

const EXAMPLES = ['lighthouse', 'harbour-store'].map(
  (name) => JSON.parse(readFileSync(`public/examples/${name}.json`, 'utf8')) as Job,
);

/** Offsets asked for again and again: none, half a thou, a thou. mm */
const ROUND_OFFSETS = [0, 0.0127, -0.0127, 0.0254, -0.0254];
/** mm. Most offsets lie within this, some far beyond. */
const NEAR = 0.2;
const FAR = 1.5;

/** Makes the job of a seed; odd ones are in millimetres, every fourth has a sleeve and two lines. */
export function nearLineJob(seed: number): NearLineJob {
  const random = seededRandom(seed + 40_000);
  const drawn = randomJob(EXAMPLES[seed % 4 === 3 ? 1 : 0]!, seed, 0);
  const unit = seed % 2 === 0 ? ('in' as const) : ('mm' as const);
  const job = { ...drawn, settings: { ...drawn.settings, unit } };
  const selection = firstSelection(job)!;
  const { evaluation } = looked(job, selection);
  const moved = evaluation.chambers.reduce((before, { chamber, lowerStack, splits }) => {
    const offset = splits[0]?.offset;
    if (lowerStack === null || offset === undefined) return before;
    return setLowerStack(
      before,
      selection.plan,
      chamber,
      measured(lowerStack + wantedOffset(random) - offset),
      () => `group-${chamber}`,
    );
  }, job);
  return { job: moved, selection, ...looked(moved, selection) };
}

function looked(
  job: Job,
  selection: Selection,
): { readonly assembly: Assembly; readonly evaluation: Evaluation } {
  const bench = layOut(job, selection);
  const assembly = assemble(bench);
  return { assembly, evaluation: evaluateBench(bench, assembly) };
}

function wantedOffset(random: () => number): number {
  const kind = random();
  if (kind < 0.3) return ROUND_OFFSETS[Math.floor(random() * ROUND_OFFSETS.length)]!;
  return (2 * random() - 1) * (kind < 0.9 ? NEAR : FAR);
}

function measured(value: number) {
  const readings = [
    {
      typed: value.toFixed(7),
      unit: 'mm' as const,
      value: Number(value.toFixed(7)),
      instrument: null,
      session: null,
    },
  ];
  return { readings, basis: 'measured' as const, estimator: 'mean' as const };
}

/** How many seeded jobs a test goes through: a few in every run, as many as the variable says when somebody asks for more. */
export function jobCount(few: number): number {
  return Number(process.env['SEEDED_JOBS'] ?? few);
}
