/** From whatever storage threw to one of a few kinds of trouble, each with a sentence that says what next. */
import type { SaveTrouble } from '../model/history/save-state.ts';

export type Trouble = { readonly trouble: SaveTrouble; readonly message: string };

const KINDS: Readonly<Record<string, SaveTrouble>> = {
  QuotaExceededError: 'full',
  SecurityError: 'denied',
  NotAllowedError: 'denied',
  InvalidAccessError: 'denied',
  MissingAPIError: 'denied',
  OpenFailedError: 'denied',
  DatabaseClosedError: 'closed',
  VersionError: 'closed',
  VersionChangeError: 'closed',
};

const SENTENCES: Readonly<Record<SaveTrouble, string>> = {
  full: 'Not saved: the browser has no room left for this page. Save the job to a file now, then free some space.',
  denied:
    'Not saved: the browser lets this page keep nothing (a private window or a setting). Save the job to a file.',
  'not verified':
    'Not saved: what was read back is not what was written. Save the job to a file now; this device may be failing.',
  closed:
    'Not saved: another tab runs a newer Shearsight and holds the storage. Save the job to a file, then reload this tab.',
  other: 'Not saved: the browser could not write. Save the job to a file, then try again.',
};

/** Gives a kind of trouble with its sentence. */
export function troubleOf(trouble: SaveTrouble): Trouble {
  return { trouble, message: SENTENCES[trouble] };
}

/** Finds what is behind an error, which storage may wrap several times over. */
export function readTrouble(error: unknown): Trouble {
  let wrapped = error;
  let trouble: SaveTrouble = 'other';
  for (let i = 0; i < 8 && typeof wrapped === 'object' && wrapped !== null; i++) {
    const { name, inner } = wrapped as { name?: unknown; inner?: unknown };
    const kind = typeof name === 'string' && Object.hasOwn(KINDS, name) ? KINDS[name] : undefined;
    // The innermost known name is the cause: "closed" often hides "full" or "denied".
    if (kind !== undefined) trouble = kind;
    wrapped = inner;
  }
  return troubleOf(trouble);
}
