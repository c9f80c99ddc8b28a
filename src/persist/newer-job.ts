/**
 * A file that a newer Shearsight saved: what this one knows of it, to be looked at, with the text as it came, to be handed back
 * unchanged. Nothing of it is ever written by this version.
 */
import type { Job } from '../model/schema/job-schema.ts';
import { knownPart } from '../model/schema/known-part.ts';
import { inertCopy } from './inert-copy.ts';

export type NewerJob = { readonly job: Job; readonly raw: string };

/** Reads what is known; null when too much is new. Expects text that was refused as newer, so within all limits. */
export function readNewerJob(raw: string): NewerJob | null {
  const copied = inertCopy(JSON.parse(raw));
  if (copied.type === 'error' || typeof copied.value !== 'object' || copied.value === null) return null;
  const job = knownPart(copied.value as Record<string, unknown>);
  return job === null ? null : { job, raw };
}
