/**
 * Everything that follows from a job and what is looked at, worked out once for all panels: what is laid out, the
 * assembly, the evaluation, the rows. Never stored: the same job gives the same look.
 */
import type { Assembly } from '../../model/assembly/assembly.ts';
import { assemble } from '../../model/assembly/build-assembly.ts';
import { type ChamberRows, chamberRows } from '../../model/edit/chamber-rows.ts';
import type { ChamberResult, Evaluation } from '../../model/evaluate/evaluation.ts';
import { evaluateBench } from '../../model/evaluate/evaluate.ts';
import { meantLine, whatTurns } from '../../model/evaluate/what-turns.ts';
import { type Bench, layOut, type Selection } from '../../model/measured/selection.ts';
import type { Job } from '../../model/schema/job-schema.ts';
import type { Id } from '../../model/schema/leaf.ts';
import { useJob, useView } from './services.tsx';

export type Look = {
  readonly job: Job;
  readonly selection: Selection;
  readonly bench: Bench;
  readonly assembly: Assembly;
  readonly evaluation: Evaluation;
  readonly rows: ChamberRows;
  readonly chamberResults: ReadonlyMap<Id, ChamberResult>;
};

const looks = new WeakMap<Job, Map<string, Look>>();

/** Looks at a job. */
export function lookAt(job: Job, selection: Selection): Look {
  const ofJob = looks.get(job) ?? new Map<string, Look>();
  looks.set(job, ofJob);
  const name = `${selection.cylinder} ${selection.key ?? ''} ${selection.plan}`;
  const before = ofJob.get(name);
  if (before !== undefined) return before;
  const bench = layOut(job, selection);
  const assembly = assemble(bench);
  const evaluation = evaluateBench(bench, assembly);
  const look: Look = {
    job,
    selection,
    bench,
    assembly,
    evaluation,
    rows: chamberRows(job, selection),
    chamberResults: new Map(evaluation.chambers.map((each) => [each.chamber, each])),
  };
  ofJob.set(name, look);
  return look;
}

/** The shear line that matters first: one that turns, or may, or that this key is meant to turn. */
export function focusOf({ job, selection, evaluation }: Look): Id | null {
  return whatTurns(evaluation, meantLine(job, selection.cylinder, selection.key)).focus;
}

/** The line that is looked at: the one the person picked, else the one that matters. */
export function useLine(look: Look): Id | null {
  const picked = useView((view) => view.pickedLine);
  return picked ?? focusOf(look);
}

/** What the picks of the view select in a job; null while there is nothing to look at. */
export function selectionIn(
  job: Job,
  picks: { readonly cylinder: Id | null; readonly key: Id | null; readonly plan: Id | null },
): Selection | null {
  const { cylinder, key, plan } = picks;
  if (cylinder === null || plan === null) return null;
  const isThere = job.cylinders.some(({ id }) => id === cylinder) && job.plans.some(({ id }) => id === plan);
  return isThere ? { cylinder, key, plan } : null;
}

/** The look at the job on screen; null for a job without a cylinder. */
export function useLook(): Look | null {
  const job = useJob();
  const cylinder = useView((view) => view.cylinder);
  const key = useView((view) => view.key);
  const plan = useView((view) => view.plan);
  const selection = selectionIn(job, { cylinder, key, plan });
  return selection === null ? null : lookAt(job, selection);
}
