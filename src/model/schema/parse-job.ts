/** Reads a job from unknown data: the whole job, or a sentence for each thing that is wrong. Nothing is repaired. */
import type * as z from 'zod/mini';
import { checkReferences } from './check-references.ts';
import { type Job, jobSchema, SCHEMA_VERSION } from './job-schema.ts';
import { printable } from './printable.ts';
import type { Problem } from './problem.ts';

export type ParsedJob =
  | { readonly type: 'success'; readonly job: Job }
  | { readonly type: 'error'; readonly problems: readonly Problem[] };

/** At most this many problems are told at once; the rest is counted. */
const MOST_PROBLEMS = 40;

/** Reads a job of the present version from data (already parsed from JSON, already migrated). */
export function parseJob(data: unknown): ParsedJob {
  const wrongKind = notAJob(data);
  if (wrongKind !== null) return { type: 'error', problems: [wrongKind] };
  const parsed = jobSchema.safeParse(data, { reportInput: true });
  if (!parsed.success) return { type: 'error', problems: tell(parsed.error.issues) };
  const problems = checkReferences(parsed.data);
  return problems.length > 0 ? { type: 'error', problems } : { type: 'success', job: parsed.data };
}

function notAJob(data: unknown): Problem | null {
  if (typeof data !== 'object' || data === null || Array.isArray(data)) {
    return { field: 'file', message: 'This is not a Shearsight job: a job file holds one JSON object.' };
  }
  const { format, schemaVersion } = data as { format?: unknown; schemaVersion?: unknown };
  if (format !== 'shearsight-job') {
    return { field: 'format', message: 'This is not a Shearsight job: its format is not "shearsight-job".' };
  }
  if (typeof schemaVersion === 'number' && schemaVersion > SCHEMA_VERSION) {
    return {
      field: 'schemaVersion',
      message: `This job was saved by a newer Shearsight (file version ${schemaVersion}; this one reads up to ${SCHEMA_VERSION}).`,
    };
  }
  return null;
}

function tell(issues: readonly z.core.$ZodIssue[]): Problem[] {
  const told = issues.slice(0, MOST_PROBLEMS).map((issue) => ({
    field: pathText(issue.path),
    message: sentence(issue),
  }));
  const rest = issues.length - told.length;
  if (rest === 0) return told;
  const more = rest === 1 ? 'one more problem' : `${rest} more problems`;
  return [...told, { field: 'file', message: `And ${more} of this kind.` }];
}

/** `cylinders 1 › chambers 3 › position`: lists are counted from 1, as a person would. */
function pathText(path: readonly PropertyKey[]): string {
  const words: string[] = [];
  for (const step of path) {
    const last = words.length - 1;
    if (typeof step === 'number' && last >= 0) words[last] = `${words[last] ?? ''} ${step + 1}`;
    else words.push(printable(String(step)));
  }
  return words.length === 0 ? 'file' : words.join(' › ');
}

function sentence(issue: z.core.$ZodIssue): string {
  switch (issue.code) {
    case 'invalid_type':
      return issue.input === undefined
        ? `is missing (expected ${issue.expected}).`
        : `should be ${article(issue.expected)}.`;
    case 'unrecognized_keys':
      return `has a field that does not belong here: ${issue.keys.slice(0, 5).map(printable).join(', ')}.`;
    case 'too_small':
      return `is too small or too short (at least ${String(issue.minimum)}).`;
    case 'too_big':
      return `is too large or too long (at most ${String(issue.maximum)}).`;
    case 'invalid_value':
      return `should be one of: ${issue.values.map(String).join(', ')}.`;
    case 'invalid_format':
      return 'has characters that do not belong there.';
    case 'invalid_union':
      return 'is none of the allowed forms.';
    case 'custom':
    case 'invalid_element':
    case 'invalid_key':
    case 'not_multiple_of':
      return 'is not as the job format wants it.';
  }
}

function article(expected: string): string {
  if (expected === 'int') return 'a whole number';
  return /^[aeiou]/.test(expected) ? `an ${expected}` : `a ${expected}`;
}
