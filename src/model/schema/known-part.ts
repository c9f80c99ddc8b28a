/**
 * What this version knows of a job that a newer one saved: members it has no name for are left out, nothing else is changed. For
 * looking at only; the file itself stays as it came.
 */
import { checkReferences } from './check-references.ts';
import { type Job, jobSchema, SCHEMA_VERSION } from './job-schema.ts';

/** New members can hold new members: each round takes out one layer. */
const MOST_ROUNDS = 12;

/**
 * Reads the part of a job that this version knows; null when what is left is no job.
 *
 * @param data its own to change: already copied, of a version above SCHEMA_VERSION
 */
export function knownPart(data: Record<string, unknown>): Job | null {
  data['schemaVersion'] = SCHEMA_VERSION;
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const parsed = jobSchema.safeParse(data);
    if (parsed.success) return checkReferences(parsed.data).length === 0 ? parsed.data : null;
    let removed = 0;
    for (const issue of parsed.error.issues) {
      if (issue.code !== 'unrecognized_keys') return null;
      const holder = memberAt(data, issue.path);
      for (const name of issue.keys) {
        if (holder === null) return null;
        Reflect.deleteProperty(holder, name);
        removed += 1;
      }
    }
    if (removed === 0) return null;
  }
  return null;
}

function memberAt(data: unknown, path: readonly PropertyKey[]): Record<PropertyKey, unknown> | null {
  let at: unknown = data;
  for (const step of path) {
    if (typeof at !== 'object' || at === null || !Object.hasOwn(at, step)) return null;
    at = (at as Record<PropertyKey, unknown>)[step];
  }
  return typeof at === 'object' && at !== null ? (at as Record<PropertyKey, unknown>) : null;
}
