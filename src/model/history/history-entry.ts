/** One step of a job's history: the whole job after the step, and the step's name as a person would say it. No lengths here. */
import type { Job } from '../schema/job-schema.ts';

export type HistoryEntry = {
  /** What was done: "Root depth of cut 3", "Opened". */
  readonly name: string;
  readonly job: Job;
  /** When, as an ISO 8601 text; null where no clock was at hand. */
  readonly at: string | null;
};
