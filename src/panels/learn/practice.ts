/** What the lessons are given to move a cylinder that is not the person's. */
import type { Job } from '../../model/schema/job-schema.ts';
import type { Services } from '../shared/services.tsx';

export type MakePracticeBench = (job: Job, services: Services) => Services;
