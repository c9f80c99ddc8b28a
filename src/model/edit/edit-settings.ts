/** Edits of a job's title and settings. */
import type { Job } from '../schema/job-schema.ts';
import type { LengthValue } from '../schema/leaf.ts';

/** Sets the title. */
export function setTitle(job: Job, title: string): Job {
  return { ...job, title };
}

/** Sets the unit lengths are shown and typed in; what was typed stays as it was typed. */
export function setUnit(job: Job, unit: Job['settings']['unit']): Job {
  return { ...job, settings: { ...job.settings, unit } };
}

/** Sets from which end cuts and chambers are counted. */
export function setNumbering(job: Job, numbering: Job['settings']['numbering']): Job {
  return { ...job, settings: { ...job.settings, numbering } };
}

/** Sets within what distance of its line a split counts as level. */
export function setShopRule(job: Job, shopRule: LengthValue): Job {
  return { ...job, settings: { ...job.settings, shopRule } };
}
