/**
 * What lies in the browser's storage, and what can be done with it. The rules of saving (save-queue.ts, open-job.ts) know
 * only these types, so that they can be tried against a storage that fails on purpose.
 */

/** One saved state of one job. Nothing but these five is ever in clear: title, names and lengths are inside the bytes. */
export type StoredRow = {
  readonly id: string;
  /** Grows by at least one with every write of the job. */
  readonly revision: number;
  /** ISO 8601. */
  readonly savedAt: string;
  /** True when the bytes can only be read with a passphrase. */
  readonly sealed: boolean;
  readonly bytes: Uint8Array;
};

/** A damaged row, kept byte for byte. Why it was set aside is a word that tells nothing about its contents. */
export type QuarantinedRow = {
  readonly id: string;
  readonly revision: number;
  readonly place: 'jobs' | 'revisions';
  readonly reason: 'damaged' | 'invalid';
  readonly foundAt: string;
  readonly row: unknown;
};

/** A write of some new revisions of one job; the last row is the job from then on. */
export type RowWrite = {
  readonly id: string;
  /** The newest revision seen here; 0 for a job never seen in storage. Any other in storage is a conflict. */
  readonly expected: number;
  readonly rows: readonly StoredRow[];
  /** Older revisions that must stay: the steps that undo needs. */
  readonly keep: ReadonlySet<number>;
  /** This many of the newest revisions stay in any case, whatever undo needs. */
  readonly keepNewest: number;
};

export type RowWritten = { readonly type: 'written' } | { readonly type: 'conflict'; readonly found: number };

export type JobStorage = {
  /** All or nothing, durable when it resolves. Writes nothing when another revision than the expected one is newest. */
  readonly write: (change: RowWrite) => Promise<RowWritten>;
  readonly readHead: (id: string) => Promise<StoredRow | undefined>;
  /** The rows of these revisions, in the same order; undefined where there is none. */
  readonly readRevisions: (
    id: string,
    revisions: readonly number[],
  ) => Promise<readonly (StoredRow | undefined)[]>;
  /** Numbers of the revisions there are, oldest first. */
  readonly listRevisions: (id: string) => Promise<readonly number[]>;
  /** Keeps copies of damaged rows. The rows stay where they are until newer ones replace them. */
  readonly quarantine: (rows: readonly QuarantinedRow[]) => Promise<void>;
};

/** The newest revision of a job: its head's, or a later one whose head was lost. 0 when there is none. */
export function newestRevision(head: StoredRow | undefined, revisions: readonly number[]): number {
  return Math.max(0, ...[head?.revision ?? 0, revisions.at(-1) ?? 0].filter(Number.isSafeInteger));
}

/** Whether two runs of bytes are the same. */
export function sameBytes(some: Uint8Array, others: Uint8Array): boolean {
  return some.length === others.length && some.every((byte, i) => byte === others[i]);
}
