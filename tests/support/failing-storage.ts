/** A storage of jobs in memory that fails where a test wants it to, and can be looked into. */
import {
  type JobStorage,
  newestRevision,
  type QuarantinedRow,
  type RowWrite,
  type RowWritten,
  type StoredRow,
} from '../../src/persist/stored-row.ts';

/** Where a write can break: nothing written yet; written, but nobody was told; while it is read back. */
export type BreakingPoint = 'before the write' | 'after the write' | 'at the reading back';

export class FailingStorage implements JobStorage {
  readonly heads = new Map<string, StoredRow>();
  readonly rows = new Map<string, StoredRow>();
  readonly quarantined: QuarantinedRow[] = [];
  /** What happened, in order. */
  readonly log: string[] = [];
  /** Throws or waits; called at every breaking point. */
  atPoint: (point: BreakingPoint) => Promise<void> = () => Promise.resolve();
  /** Changes bytes on their way to the disk. */
  onDisk: (bytes: Uint8Array) => Uint8Array = (bytes) => bytes;

  write = async (change: RowWrite): Promise<RowWritten> => {
    await this.atPoint('before the write');
    const found = newestRevision(this.heads.get(change.id), this.revisionsOf(change.id));
    if (found !== change.expected) return { type: 'conflict', found };
    for (const row of change.rows) {
      const stored = { ...row, bytes: this.onDisk(row.bytes) };
      this.rows.set(`${row.id} ${row.revision}`, stored);
      this.heads.set(row.id, stored);
    }
    this.log.push(change.rows.map(({ revision }) => revision).join(' '));
    const all = this.revisionsOf(change.id);
    for (const revision of all.slice(0, Math.max(0, all.length - change.keepNewest)))
      if (!change.keep.has(revision)) this.rows.delete(`${change.id} ${revision}`);
    await this.atPoint('after the write');
    return { type: 'written' };
  };

  readHead = async (id: string): Promise<StoredRow | undefined> => {
    await this.atPoint('at the reading back');
    return this.heads.get(id);
  };

  readRevisions = (id: string, revisions: readonly number[]): Promise<(StoredRow | undefined)[]> =>
    Promise.resolve(revisions.map((revision) => this.rows.get(`${id} ${revision}`)));

  listRevisions = (id: string): Promise<number[]> => Promise.resolve(this.revisionsOf(id));

  quarantine = (rows: readonly QuarantinedRow[]): Promise<void> => {
    this.quarantined.push(...rows);
    return Promise.resolve();
  };

  private revisionsOf(id: string): number[] {
    return [...this.rows.values()]
      .filter((row) => row.id === id)
      .map(({ revision }) => revision)
      .sort((a, b) => a - b);
  }
}
