/** The depth table of a job: read as plain numbers, entered as text, made from a first root depth and a step. mm. */
import { withOptional } from '../edit/change.ts';
import { statedValue } from '../edit/values.ts';
import { lengthOf } from '../measured/part-ends.ts';
import type { Job } from '../schema/job-schema.ts';
import { formatLength } from '../units/format-length.ts';
import type { DepthTable } from './operating-keys.ts';

export const MOST_STEPS = 24;

/** The table of a job; null when it has none. */
export function depthTableOf({ depths }: Job): DepthTable | null {
  if (depths === undefined || depths.rootDepths.length === 0) return null;
  return {
    rootDepths: depths.rootDepths.map((value) => lengthOf(value, 0)),
    largestStep: depths.largestStep ?? null,
  };
}

export type StepsAsked = {
  /** Root depth of the first step, mm. */
  readonly first: number;
  /** How much deeper the next one is cut, mm. */
  readonly step: number;
  readonly count: number;
  readonly largestStep: number | null;
};

export type DepthsResult =
  | { readonly type: 'table'; readonly table: DepthTable }
  | { readonly type: 'error'; readonly message: string };

/** Makes a table of even steps, the shallowest cut first. */
export function evenSteps({ first, step, count, largestStep }: StepsAsked): DepthsResult {
  if (!Number.isInteger(count) || count < 1 || count > MOST_STEPS)
    return wrong(`Steps: say how many there are, a whole number from 1 to ${MOST_STEPS}, for example 10.`);
  if (!(step > 0)) return wrong('Step: say how much deeper the next cut is, for example .015 in.');
  if (!(first - (count - 1) * step > 0))
    return wrong(
      `Steps: ${count} of them would cut through the key's bottom edge. Say fewer, or a smaller step, for example 6.`,
    );
  if (largestStep !== null && (!Number.isInteger(largestStep) || largestStep < 0))
    return wrong('Largest step between neighbours: a whole number, for example 7, or nothing.');
  const rootDepths = Array.from({ length: count }, (_, i) => first - i * step);
  return { type: 'table', table: { rootDepths, largestStep } };
}

function wrong(message: string): DepthsResult {
  return { type: 'error', message };
}

/** Keeps a table in the job; null takes it out. */
export function setDepthTable(job: Job, table: DepthTable | null): Job {
  if (table === null) return withOptional(job, 'depths', undefined);
  const { unit } = job.settings;
  const rootDepths = table.rootDepths.map((mm) =>
    statedValue(formatLength(mm, { unit, form: 'export' }), unit),
  );
  const { largestStep } = table;
  return withOptional(job, 'depths', { rootDepths, ...(largestStep !== null && { largestStep }) });
}
