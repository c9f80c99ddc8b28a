import { fc, test } from '@fast-check/vitest';
import { describe, expect } from 'vitest';
import {
  commitStep,
  committedJob,
  type History,
  startHistory,
  undo,
} from '../../src/model/history/history.ts';
import type { SaveState } from '../../src/model/history/save-state.ts';
import { openJob } from '../../src/persist/open-job.ts';
import { plainCodec } from '../../src/persist/row-codec.ts';
import { createSaveQueue, type SaveQueue } from '../../src/persist/save-queue.ts';
import type { JobStorage } from '../../src/persist/stored-row.ts';
import { FailingStorage } from '../support/failing-storage.ts';
import { buildJob } from '../support/job-builder.ts';

const CLOCK = () => '2031-02-03T04:05:06.000Z';
const job = buildJob({ chambers: 1 });

type Act = { readonly tab: 0 | 1; readonly kind: 'edit' | 'undo' | 'settle' | 'reload' };
const act: fc.Arbitrary<Act> = fc.record({
  tab: fc.constantFrom(0, 1),
  kind: fc.constantFrom('edit', 'edit', 'undo', 'settle', 'reload'),
});

/** One tab, and everything it has seen of the job: what it opened and what it wrote. */
class Tab {
  history: History = startHistory(job);
  queue: SaveQueue | null = null;
  state: SaveState = { kind: 'not kept' };
  readonly seen = new Set<string>();
  private readonly disk: FailingStorage;
  private readonly unseen: string[];
  private readonly storage: JobStorage;

  constructor(disk: FailingStorage, unseen: string[]) {
    this.disk = disk;
    this.unseen = unseen;
    this.storage = {
      readHead: disk.readHead,
      readRevisions: disk.readRevisions,
      listRevisions: disk.listRevisions,
      quarantine: disk.quarantine,
      write: async (change) => {
        for (const row of change.rows) this.seen.add(String(row.bytes));
        return disk.write(change);
      },
    };
  }

  /** Told by the disk just before it takes a row in place of another. */
  replaces(before: string | null): void {
    if (before !== null && !this.seen.has(before)) this.unseen.push(before);
  }

  async open(): Promise<void> {
    const opened = await openJob(job.id, { storage: this.disk, codec: plainCodec, clock: CLOCK });
    if (opened.type === 'error') throw new Error(opened.message);
    this.seen.add(String(this.disk.heads.get(job.id)?.bytes));
    this.history = opened.history;
    this.queue = createSaveQueue({
      id: job.id,
      storage: this.storage,
      codec: plainCodec,
      base: opened.base,
      clock: CLOCK,
      onState: (state) => {
        this.state = state;
      },
    });
  }
}

/** A disk that breaks at every eleventh chance and whose steps come in any order; it names the tab that writes. */
class SharedDisk extends FailingStorage {
  points = 0;
  isQuiet = true;
  onReplace: (before: string | null, after: string) => void = () => undefined;

  constructor(scheduler: fc.Scheduler) {
    super();
    this.atPoint = async (point) => {
      if (this.isQuiet) return;
      await scheduler.schedule(Promise.resolve(), point);
      this.points += 1;
      if (this.points % 11 === 0) throw new Error('power');
    };
    const set = this.heads.set.bind(this.heads);
    this.heads.set = (id, row) => {
      const before = this.heads.get(id);
      this.onReplace(before === undefined ? null : String(before.bytes), String(row.bytes));
      return set(id, row);
    };
  }
}

describe('two tabs on one job', () => {
  test.prop([fc.array(act, { minLength: 1, maxLength: 25 }), fc.scheduler()], { numRuns: 500 })(
    'never overwrite a revision they have not seen, however their writes interleave and break',
    async (acts, scheduler) => {
      const disk = new SharedDisk(scheduler);
      const unseen: string[] = [];
      const tabs = [new Tab(disk, unseen), new Tab(disk, unseen)] as const;
      const first = createSaveQueue({
        id: job.id,
        storage: disk,
        codec: plainCodec,
        onState: () => undefined,
      });
      first.offer(startHistory(job));
      await first.flush();
      for (const tab of tabs) await tab.open();
      disk.isQuiet = false;
      disk.onReplace = (before, after) => {
        // Undone to the same start, both tabs may write the very same bytes: then either may have been the writer.
        const writers = tabs.filter((tab) => tab.seen.has(after));
        const writer = writers.find((tab) => before !== null && tab.seen.has(before)) ?? writers[0];
        writer?.replaces(before);
      };

      let made = 0;
      for (const { tab: number, kind } of acts) {
        const tab = tabs[number];
        if (kind === 'edit') {
          made += 1;
          const next = { ...committedJob(tab.history), title: `step ${made} of tab ${number}` };
          tab.history = commitStep(tab.history, { name: 'Title', job: next, at: null });
        }
        if (kind === 'undo') tab.history = undo(tab.history);
        if (kind === 'edit' || kind === 'undo') tab.queue?.offer(tab.history);
        if (kind === 'settle' && tab.queue !== null) await scheduler.waitFor(tab.queue.retry());
        if (kind === 'reload' && tab.queue !== null) {
          await scheduler.waitFor(tab.queue.flush());
          disk.isQuiet = true;
          await tab.open();
          disk.isQuiet = false;
        }
      }
      for (const tab of tabs) if (tab.queue !== null) await scheduler.waitFor(tab.queue.flush());

      expect(unseen).toEqual([]);
      // Whoever was told last that everything is saved finds exactly that.
      const newest = disk.heads.get(job.id)?.revision;
      disk.isQuiet = true;
      for (const tab of tabs) {
        if (tab.state.kind !== 'saved' || tab.state.revision !== newest) continue;
        const opened = await openJob(job.id, { storage: disk, codec: plainCodec });
        const found = opened.type === 'success' ? committedJob(opened.history).title : opened.message;
        expect(found).toBe(committedJob(tab.history).title);
      }
    },
  );

  test('would be caught by this test if they did', () => {
    const unseen: string[] = [];
    const tab = new Tab(new FailingStorage(), unseen);
    tab.seen.add('mine');
    tab.replaces('mine');
    tab.replaces('theirs');
    expect(unseen).toEqual(['theirs']);
  });
});
