/** A cylinder of a lesson with what the engine reads in it. Offsets mm, + high, - low. */
import type { Assembly } from '../assembly/assembly.ts';
import { assemble } from '../assembly/build-assembly.ts';
import { evaluateBench } from '../evaluate/evaluate.ts';
import type { ChamberResult, Evaluation, SplitResult, Verdict } from '../evaluate/evaluation.ts';
import { known } from '../assert.ts';
import { type Bench, layOut } from '../measured/selection.ts';
import type { Job } from '../schema/job-schema.ts';
import type { Id } from '../schema/leaf.ts';
import { tryTurn, type TurnAttempt } from '../turning/turn-attempt.ts';
import { chamberId, PRACTICE, type PracticeCylinder, practiceJob } from './practice-job.ts';

export type Scene = {
  readonly job: Job;
  /** The chamber that is looked at closely. */
  readonly chamber: Id;
  /** What is tried: the key goes in and is turned, or it stays out. */
  readonly tries: 'key and turn' | 'key out';
};

export type Reading = {
  readonly scene: Scene;
  readonly bench: Bench;
  readonly assembly: Assembly;
  readonly evaluation: Evaluation;
};

const readings = new WeakMap<Job, Reading>();

/** Makes a scene of a practice cylinder. */
export function sceneOf(
  cylinder: PracticeCylinder,
  chamber = 0,
  tries: Scene['tries'] = 'key and turn',
): Scene {
  return { job: practiceJob(cylinder), chamber: chamberId(chamber), tries };
}

/** Evaluates a scene, once for each job. */
export function readScene(scene: Scene): Reading {
  const before = readings.get(scene.job);
  if (before !== undefined) return before;
  const bench = layOut(scene.job, PRACTICE);
  const assembly = assemble(bench);
  const reading: Reading = { scene, bench, assembly, evaluation: evaluateBench(bench, assembly) };
  readings.set(scene.job, reading);
  return reading;
}

const turnsTried = new WeakMap<Reading, TurnAttempt>();

/** Tries the turn of a scene, once for each. */
export function turnOfScene(reading: Reading): TurnAttempt {
  const { bench, assembly, evaluation } = reading;
  const turn = turnsTried.get(reading) ?? known(tryTurn(bench, assembly, evaluation), 'a turn to try');
  turnsTried.set(reading, turn);
  return turn;
}

export function chamberOf({ evaluation }: Reading, index = 0): ChamberResult {
  return known(evaluation.chambers[index], `result of chamber ${index + 1}`);
}

/** The split that matters in a chamber at a line, the first one by default. */
export function splitOf(reading: Reading, index = 0, line = 0): SplitResult {
  const chamber = chamberOf(reading, index);
  const at = chamber.verdicts[line]?.split;
  return known(at == null ? null : chamber.splits[at], `split of chamber ${index + 1}`);
}

export function verdictOf(reading: Reading, index = 0, line = 0): Verdict {
  return chamberOf(reading, index).verdicts[line]?.verdict ?? 'unknown';
}

export function offsetOf(reading: Reading, index = 0): number {
  return splitOf(reading, index).offset;
}

/** Whether the plug turns, by the line's verdict. */
export function turns({ evaluation }: Reading): boolean {
  return evaluation.lines[0]?.verdict === 'turns';
}

export type Crossing = 'bottom pin' | 'driver' | 'none';

/** Which part stands across the line in a chamber: the one under a split that is high, the one over a split that is low. */
export function crossingOf(reading: Reading, index = 0): Crossing {
  const offset = offsetOf(reading, index);
  if (Math.abs(offset) < 1e-6) return 'none';
  return offset > 0 ? 'bottom pin' : 'driver';
}
