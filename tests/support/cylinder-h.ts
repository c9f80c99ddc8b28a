/** Cylinder H, the invented cylinder whose every figure was worked by hand (tests/fixtures/jobs/cylinder-h.json). */
import { readFileSync } from 'node:fs';
import { buildAssembly } from '../../src/model/assembly/build-assembly.ts';
import { evaluateBench } from '../../src/model/evaluate/evaluate.ts';
import { firstSelection, layOut } from '../../src/model/measured/selection.ts';
import type { Job } from '../../src/model/schema/job-schema.ts';
import { parseJob } from '../../src/model/schema/parse-job.ts';
import { changed } from './job-builder.ts';

const file = new URL('../fixtures/jobs/cylinder-h.json', import.meta.url);

/** The job, changed by writing into it. */
export function cylinderH(change: (job: Job) => void = () => undefined): Job {
  const parsed = parseJob(JSON.parse(readFileSync(file, 'utf8')));
  if (parsed.type === 'error') throw new Error(JSON.stringify(parsed.problems));
  return changed(parsed.job, change);
}

/** Lays a job out, assembles and evaluates it. */
export function lookAt(job: Job) {
  const selection = firstSelection(job);
  if (selection === null) throw new Error('no selection');
  const bench = layOut(job, selection);
  const assembly = buildAssembly(job, selection);
  return { job, selection, bench, assembly, evaluation: evaluateBench(bench, assembly) };
}
