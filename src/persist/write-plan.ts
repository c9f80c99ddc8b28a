/**
 * Which rows a history still needs in storage. Each step is written once, as a revision of its own; the newest revision is
 * always the job as it is now, so moving through the history (undo, redo) writes one more.
 */
import { type History, presentEntry } from '../model/history/history.ts';
import type { HistoryEntry } from '../model/history/history-entry.ts';
import type { Snapshot } from './snapshot.ts';

/** What storage is known to hold. */
export type SavedBase = {
  /** The newest revision seen; 0 when the job was never stored. */
  readonly revision: number;
  /** Which revision holds which step. */
  readonly numbers: ReadonlyMap<HistoryEntry, number>;
  /** The step that the newest revision holds as the job; null when unknown or damaged. */
  readonly present: HistoryEntry | null;
  /** When the newest revision was saved, ISO 8601; null when unknown. */
  readonly savedAt: string | null;
};

export const NOTHING_SAVED: SavedBase = { revision: 0, numbers: new Map(), present: null, savedAt: null };

/** A base of which only the newest revision is known: every step will be written anew, under new numbers. */
export function baseFrom(revision: number): SavedBase {
  return { ...NOTHING_SAVED, revision };
}

export type WritePlan = {
  /** In order; the last one is the job as it is now. */
  readonly snapshots: readonly { readonly revision: number; readonly snapshot: Snapshot }[];
  /** What storage holds once it is written. */
  readonly base: SavedBase;
};

/** Plans the rows to write; null when storage already holds all of it. */
export function planWrite(history: History, base: SavedBase, savedAt: string): WritePlan | null {
  const now = presentEntry(history);
  const missing = history.entries.filter((entry) => !base.numbers.has(entry));
  const isGone = base.numbers.size + missing.length !== history.entries.length;
  if (missing.length === 0 && !isGone && base.present === now) return null;

  const written = missing.at(-1) === now ? missing : [...missing, now];
  const numbers = new Map<HistoryEntry, number>();
  for (const entry of history.entries) {
    numbers.set(entry, base.numbers.get(entry) ?? base.revision + 1 + missing.indexOf(entry));
  }
  const steps = [...numbers.values()];
  const snapshots = written.map((entry, i) => {
    const present = history.entries.indexOf(entry);
    // A row on the way to the newest one ends where it was made: what came after is not written yet when it is.
    const isNewest = i === written.length - 1;
    const { name, at, job } = entry;
    const snapshot = { name, at, job, steps: isNewest ? steps : steps.slice(0, present + 1), present };
    return { revision: base.revision + 1 + i, snapshot: { ...snapshot, dropped: history.dropped } };
  });
  const revision = base.revision + written.length;
  return { snapshots, base: { revision, numbers, present: now, savedAt } };
}
