/** What the edit tests share: ids that count, a job to edit, readings as typed. */
import { newJob } from '../../../src/model/edit/new-job.ts';
import { measuredValue } from '../../../src/model/edit/values.ts';
import type { Selection } from '../../../src/model/measured/selection.ts';
import type { Job } from '../../../src/model/schema/job-schema.ts';
import type { Id, LengthValue } from '../../../src/model/schema/leaf.ts';
import { inchesToMm } from '../../../src/model/units/length-unit.ts';

export function countingIds(): () => Id {
  let count = 0;
  return () => `id${++count}`;
}

export type Bench = {
  readonly job: Job;
  readonly where: Selection & { readonly key: Id };
  readonly newId: () => Id;
};

export function emptyBench(chambers = 6, unit: 'in' | 'mm' = 'in'): Bench {
  const newId = countingIds();
  const job = newJob({ newId, unit, chambers });
  const [cylinder, key, plan] = [job.cylinders[0], job.keys[0], job.plans[0]];
  if (cylinder === undefined || key === undefined || plan === undefined) throw new Error('empty job');
  return { job, where: { cylinder: cylinder.id, key: key.id, plan: plan.id }, newId };
}

export function inches(value: number): LengthValue {
  const reading = { mm: inchesToMm(value), unit: 'in', typed: String(value) } as const;
  return measuredValue(reading, { instrument: null, session: null });
}
