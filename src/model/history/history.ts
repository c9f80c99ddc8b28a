/**
 * Undo as a list of whole jobs, oldest first, that share what did not change. One entry is one committed step; while a
 * gesture runs (a drag, typing) the job on screen is a preview outside the list, which is then committed under a name or
 * cancelled. Bounded by count and by size as stored; the oldest steps go first, and how many went is told. No lengths here.
 *
 *    entries   [ Opened ][ Plug diameter ][ Cut 3 ][ Cut 4 ]
 *                                             ^ present        preview: the job of a running gesture, or null
 *                         undo <-                  -> redo
 */
import { assert, known } from '../assert.ts';
import type { Job } from '../schema/job-schema.ts';
import type { HistoryEntry } from './history-entry.ts';
import { measureText } from './measure-text.ts';
import { shareStructure } from './share-structure.ts';

export type History = {
  /** Oldest first, never empty. The first is where undo ends. */
  readonly entries: readonly HistoryEntry[];
  /** Which entry is the job now. */
  readonly present: number;
  /** The job of a gesture that is still running. */
  readonly preview: Job | null;
  /** How many of the oldest steps were let go for room: to be told, as undo ends earlier than the work began. */
  readonly dropped: number;
};

export type HistoryLimits = { readonly mostEntries: number; readonly mostCharacters: number };

/** 200 steps are an evening's work; 64 million characters keep even a job with ten thousand parts a few steps. */
export const HISTORY_LIMITS: HistoryLimits = Object.freeze({ mostEntries: 200, mostCharacters: 64_000_000 });

/** A committed step, before it has a place in the list. */
export type Step = { readonly name: string; readonly job: Job; readonly at: string | null };

/** Starts a history with one job. */
export function startHistory(job: Job, name = 'Opened', at: string | null = null): History {
  return { entries: [{ name, job, at }], present: 0, preview: null, dropped: 0 };
}

/**
 * Rebuilds a history from entries that were kept, oldest first, sharing again what they have in common.
 *
 * @param present which entry is the job now
 * @param dropped steps let go earlier
 */
export function restoreHistory(entries: readonly HistoryEntry[], present: number, dropped: number): History {
  assert(entries.length > 0, 'a history without entries');
  assert(present >= 0 && present < entries.length, `present entry ${present} of ${entries.length}`);
  const shared: HistoryEntry[] = [];
  for (const entry of entries) {
    const before = shared.at(-1);
    shared.push(before === undefined ? entry : { ...entry, job: shareStructure(before.job, entry.job) });
  }
  return { entries: shared, present, preview: null, dropped };
}

/** The entry that is the job now, without a running gesture. */
export function presentEntry(history: History): HistoryEntry {
  return known(history.entries[history.present], `history entry ${history.present}`);
}

/** The job as committed. */
export function committedJob(history: History): Job {
  return presentEntry(history).job;
}

/** The job on screen: of the running gesture if there is one. */
export function shownJob(history: History): Job {
  return history.preview ?? committedJob(history);
}

/**
 * Commits a step. A running gesture ends; steps that were undone are gone. A step that changes nothing leaves the list as
 * it is.
 */
export function commitStep(history: History, step: Step, limits: HistoryLimits = HISTORY_LIMITS): History {
  const before = committedJob(history);
  const job = shareStructure(before, step.job);
  if (job === before) return cancelPreview(history);
  const entries = [...history.entries.slice(0, history.present + 1), { ...step, job }];
  return bounded({ entries, present: entries.length - 1, preview: null, dropped: history.dropped }, limits);
}

/** Shows a job while a gesture runs, without a step. A preview equal to the committed job is none. */
export function previewJob(history: History, preview: Job): History {
  const before = committedJob(history);
  const shared = shareStructure(before, shareStructure(history.preview, preview));
  return { ...history, preview: shared === before ? null : shared };
}

/** Ends a running gesture as one step. Without a gesture nothing happens. */
export function commitPreview(
  history: History,
  name: string,
  at: string | null,
  limits: HistoryLimits = HISTORY_LIMITS,
): History {
  return history.preview === null ? history : commitStep(history, { name, job: history.preview, at }, limits);
}

/** Ends a running gesture as if it had never been. */
export function cancelPreview(history: History): History {
  return history.preview === null ? history : { ...history, preview: null };
}

/** Takes one step back. A running gesture is what is taken back first. At the oldest entry nothing happens. */
export function undo(history: History): History {
  if (history.preview !== null) return cancelPreview(history);
  return history.present === 0 ? history : { ...history, present: history.present - 1 };
}

/** Goes one undone step forward again. While a gesture runs, or with nothing undone, nothing happens. */
export function redo(history: History): History {
  const isLast = history.present === history.entries.length - 1;
  return history.preview !== null || isLast ? history : { ...history, present: history.present + 1 };
}

/** The name of what `undo` would take back; null when there is nothing. A running gesture has no name yet. */
export function undoName(history: History): string | null {
  return history.present === 0 ? null : presentEntry(history).name;
}

/** The name of what `redo` would do again; null when there is nothing. */
export function redoName(history: History): string | null {
  return history.entries[history.present + 1]?.name ?? null;
}

/** Lets the oldest entries go until the list fits; the newest always stays. */
function bounded(history: History, limits: HistoryLimits): History {
  let characters = 0;
  let kept = 0;
  for (const entry of history.entries.toReversed()) {
    characters += measureText(entry.job);
    if (kept > 0 && (kept >= limits.mostEntries || characters > limits.mostCharacters)) break;
    kept += 1;
  }
  const gone = history.entries.length - kept;
  if (gone === 0) return history;
  return {
    ...history,
    entries: history.entries.slice(gone),
    present: history.present - gone,
    dropped: history.dropped + gone,
  };
}
