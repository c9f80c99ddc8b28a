/**
 * Jobs for several keys made in tests: cylinders with master pins said by cut numbers, keys with their cuts, depth tables.
 * A larger number is a deeper cut. Lengths in inches, unless a name says mm.
 */
import { assemble } from '../../src/model/assembly/build-assembly.ts';
import { evaluateBench } from '../../src/model/evaluate/evaluate.ts';
import type { DepthTable, Evaluated, KeysByTable } from '../../src/model/keying/operating-keys.ts';
import { operatingKeys } from '../../src/model/keying/operating-keys.ts';
import { layOut } from '../../src/model/measured/selection.ts';
import type { Job } from '../../src/model/schema/job-schema.ts';
import { buildJob, changed, type JobOptions } from './job-builder.ts';
import { endForm, inches, statedInches } from './values.ts';

/** Invented: not any maker's table. */
export const SHALLOWEST = 0.31;
export const INCREMENT = 0.015;

export const rootDepthOf = (cut: number) => SHALLOWEST - INCREMENT * cut;

/** Root depths of cuts `first`, `first` + 1 and so on. */
export function tableOf(count: number, first = 1, largestStep: number | null = null): DepthTable {
  const rootDepths = Array.from({ length: count }, (_, i) => rootDepthOf(first + i) * 25.4);
  return { rootDepths, largestStep };
}

/** A cylinder whose chambers clear their line for these cut numbers; its key "key" has the first of each. */
export function keyedJob(cuts: readonly (readonly number[])[], options: JobOptions = {}): Job {
  const chambers = cuts.map((numbers) => {
    const sorted = [...numbers].sort((one, other) => one - other);
    const masterPins = sorted.slice(1).map((cut, i) => INCREMENT * (cut - sorted[i]!));
    return { rootDepth: rootDepthOf(sorted[0]!), masterPins };
  });
  // the tip lies well behind the last cut
  const tip = { position: 0.6 + 0.16 * cuts.length, noseHeight: 0.06, rampDeg: 45 };
  const job = buildJob({ bladeHeight: 0.34, capDepth: 0.6, tip, ...options, chambers });
  return changed(job, (copy) => {
    for (const part of copy.parts) {
      if (part.id.includes('master-pin')) part.ends = DISC;
    }
    copy.keys[0]!.cuts.forEach((cut, i) => (cut.rootDepth = inches(rootDepthOf(cuts[i]![0]!))));
  });
}

const DISC: Job['parts'][number]['ends'] = [
  endForm({ kind: 'bevel', width: 0.005, angleDeg: 45 }),
  endForm({ kind: 'dome' }),
];

/** The same job with one more key of the same blank, seated alike. */
export function withKey(job: Job, id: string, rootDepths: readonly number[]): Job {
  return changed(job, (copy) => {
    const key = structuredClone(copy.keys[0]!);
    key.id = id;
    key.label = id;
    key.cuts.forEach((cut, i) => {
      cut.id = `${id}-cut-${i + 1}`;
      cut.rootDepth = statedInches(rootDepths[i]!);
    });
    copy.keys.push(key);
    copy.seatings.push({ ...structuredClone(copy.seatings[0]!), key: id });
  });
}

export function evaluatedJob(job: Job, key = 'key'): Evaluated {
  const bench = layOut(job, { cylinder: 'cylinder', key, plan: 'plan' });
  const assembly = assemble(bench);
  return { bench, assembly, evaluation: evaluateBench(bench, assembly) };
}

export function keysOf(job: Job, table: DepthTable): KeysByTable {
  const result = operatingKeys(evaluatedJob(job), table);
  if (result.type === 'missing' || result.keys.byTable === null) throw new Error('the keys are not known');
  return result.keys.byTable;
}
