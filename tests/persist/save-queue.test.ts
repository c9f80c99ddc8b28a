import { beforeEach, describe, expect, it } from 'vitest';
import {
  commitStep,
  committedJob,
  type History,
  previewJob,
  redo,
  startHistory,
  undo,
} from '../../src/model/history/history.ts';
import type { SaveState } from '../../src/model/history/save-state.ts';
import type { Job } from '../../src/model/schema/job-schema.ts';
import { openJob } from '../../src/persist/open-job.ts';
import { plainCodec } from '../../src/persist/row-codec.ts';
import { createSaveQueue, KEEP_NEWEST, type SaveQueue } from '../../src/persist/save-queue.ts';
import type { JobStorage } from '../../src/persist/stored-row.ts';
import { type BreakingPoint, FailingStorage } from '../support/failing-storage.ts';
import { buildJob } from '../support/job-builder.ts';

const CLOCK = () => '2031-02-03T04:05:06.000Z';
const job = buildJob();
const step = (history: History, title: string): History =>
  commitStep(history, { name: `Title ${title}`, job: { ...committedJob(history), title }, at: CLOCK() });

let storage: FailingStorage;
let states: SaveState[];
beforeEach(() => {
  storage = new FailingStorage();
  states = [];
});

function queueOn(where: JobStorage, base?: Parameters<typeof createSaveQueue>[0]['base']): SaveQueue {
  const onState = (state: SaveState) => void states.push(state);
  return createSaveQueue({
    id: job.id,
    storage: where,
    codec: plainCodec,
    clock: CLOCK,
    onState,
    ...(base === undefined ? {} : { base }),
  });
}

async function opened(): Promise<Extract<Awaited<ReturnType<typeof openJob>>, { type: 'success' }>> {
  const result = await openJob(job.id, { storage, codec: plainCodec, clock: CLOCK });
  if (result.type === 'error') throw new Error(result.message);
  return result;
}

const withoutStamp = (kept: Job): Job => ({ ...kept, revision: 0 });

describe('the save queue', () => {
  it('calls a step saved when it is written, read back and found the same', async () => {
    const queue = queueOn(storage);
    const history = step(startHistory(job), 'one');
    queue.offer(history);
    expect(states).toEqual([{ kind: 'saving' }]);
    expect(await queue.flush()).toEqual({ kind: 'saved', revision: 2, at: CLOCK() });
    const again = await opened();
    expect(again.history.entries.map(({ name }) => name)).toEqual(['Opened', 'Title one']);
    expect(withoutStamp(committedJob(again.history))).toEqual(committedJob(history));
  });

  it('stamps each job with the revision it is saved as', async () => {
    const queue = queueOn(storage);
    queue.offer(step(startHistory(job), 'one'));
    await queue.flush();
    expect((await opened()).history.entries.map((entry) => entry.job.revision)).toEqual([1, 2]);
  });

  it('writes what comes during a write together after it', async () => {
    let letGo: () => void = () => undefined;
    const held = new Promise<void>((resolve) => {
      letGo = resolve;
    });
    storage.atPoint = (point) => (point === 'before the write' ? held : Promise.resolve());
    const queue = queueOn(storage);
    let history = startHistory(job);
    queue.offer(history);
    for (const title of ['one', 'two', 'three']) {
      history = step(history, title);
      queue.offer(history);
    }
    letGo();
    expect(await queue.flush()).toMatchObject({ kind: 'saved', revision: 4 });
    expect(storage.log).toEqual(['1', '2 3 4']);
    expect(states.filter(({ kind }) => kind === 'saved')).toHaveLength(1);
  });

  it('writes nothing for a gesture that still runs, nor for what is stored already', async () => {
    const queue = queueOn(storage);
    const history = startHistory(job);
    queue.offer(history);
    await queue.flush();
    queue.offer(previewJob(history, { ...job, title: 'moving' }));
    queue.offer({ ...history });
    expect(await queue.flush()).toMatchObject({ kind: 'saved', revision: 1 });
    expect(storage.log).toEqual(['1']);
  });

  it('does not lose a step that comes just when there was nothing to write', async () => {
    const queue = queueOn(storage);
    const history = startHistory(job);
    queue.offer(history);
    await queue.flush();
    queue.offer({ ...history });
    queue.offer(step(history, 'one'));
    expect(await queue.flush()).toMatchObject({ kind: 'saved', revision: 2 });
  });

  it('tries a step that came while another one failed', async () => {
    let fails = 1;
    storage.atPoint = () => (fails-- > 0 ? Promise.reject(new Error('power')) : Promise.resolve());
    const queue = queueOn(storage);
    queue.offer(startHistory(job));
    queue.offer(step(startHistory(job), 'one'));
    expect(await queue.flush()).toMatchObject({ kind: 'saved', revision: 2 });
  });

  it('makes undo and redo durable as revisions of their own', async () => {
    const queue = queueOn(storage);
    const history = step(step(startHistory(job), 'one'), 'two');
    for (const next of [history, undo(history), undo(undo(history)), redo(undo(undo(history)))]) {
      queue.offer(next);
      await queue.flush();
    }
    expect(storage.log).toEqual(['1 2 3', '4', '5', '6']);
    const again = await opened();
    expect([again.history.present, committedJob(again.history).title]).toEqual([1, 'one']);
    expect(again.history.entries.map(({ name }) => name)).toEqual(['Opened', 'Title one', 'Title two']);
  });

  it('goes on from an opened job without writing its steps again', async () => {
    const first = queueOn(storage);
    first.offer(step(startHistory(job), 'one'));
    await first.flush();
    const again = await opened();
    const second = queueOn(storage, again.base);
    second.offer(again.history);
    expect(await second.flush()).toEqual({ kind: 'saved', revision: 2, at: CLOCK() });
    second.offer(step(again.history, 'two'));
    await second.flush();
    expect(storage.log).toEqual(['1 2', '3']);
    expect((await opened()).history.entries).toHaveLength(3);
  });

  it('keeps the rows undo needs and the newest few, and no others', async () => {
    const queue = queueOn(storage);
    const history = step(startHistory(job), 'one');
    queue.offer(history);
    await queue.flush();
    for (let i = 0; i < 40; i++) {
      queue.offer(i % 2 === 0 ? undo(history) : history);
      await queue.flush();
    }
    const revisions = await storage.listRevisions(job.id);
    expect(revisions).toEqual([
      1,
      2,
      ...Array.from({ length: KEEP_NEWEST }, (_, i) => 42 - KEEP_NEWEST + 1 + i),
    ]);
    expect((await opened()).history.entries).toHaveLength(2);
  });

  it('leaves the histories of other jobs alone', async () => {
    const queue = queueOn(storage);
    queue.offer(startHistory(buildJob({ prefix: 'other-' })));
    await queue.flush();
    expect([storage.log, states]).toEqual([[], []]);
  });
});

describe('trouble', () => {
  const quota = Object.assign(new Error('wrapped'), {
    name: 'AbortError',
    inner: Object.assign(new Error('full'), { name: 'QuotaExceededError' }),
  });

  it.each<[string, Error, string, RegExp]>([
    ['a full disk, however it is wrapped', quota, 'full', /no room/],
    [
      'storage that is denied',
      Object.assign(new Error(), { name: 'SecurityError' }),
      'denied',
      /private window/,
    ],
    [
      'storage taken by a newer tab',
      Object.assign(new Error(), { name: 'DatabaseClosedError' }),
      'closed',
      /newer/,
    ],
    ['anything else', new Error('boom'), 'other', /could not write/],
  ])('is told in a sentence that says what next: %s', async (_, error, trouble, sentence) => {
    storage.atPoint = () => Promise.reject(error);
    const queue = queueOn(storage);
    queue.offer(startHistory(job));
    const state = await queue.flush();
    expect(state).toMatchObject({ kind: 'failed', trouble });
    expect(state).toHaveProperty('message', expect.stringMatching(sentence));
    expect(state).toHaveProperty('message', expect.stringMatching(/Save the job to a file/));
  });

  it.each<BreakingPoint>(['before the write', 'after the write', 'at the reading back'])(
    'that breaks a write %s loses nothing and writes nothing twice',
    async (where) => {
      const queue = queueOn(storage);
      const history = step(startHistory(job), 'one');
      storage.atPoint = (point) => (point === where ? Promise.reject(new Error('power')) : Promise.resolve());
      queue.offer(history);
      expect(await queue.flush()).toMatchObject({ kind: 'failed' });
      storage.atPoint = () => Promise.resolve();
      queue.offer(step(history, 'two'));
      expect(await queue.flush()).toMatchObject({ kind: 'saved', revision: 3 });
      expect(
        storage.log
          .join(' ')
          .split(' ')
          .filter((number) => number === '1'),
      ).toEqual(['1']);
      const again = await opened();
      expect(again.history.entries.map(({ name }) => name)).toEqual(['Opened', 'Title one', 'Title two']);
    },
  );

  it('is over when a retry succeeds, without another step', async () => {
    storage.atPoint = () => Promise.reject(new Error('power'));
    const queue = queueOn(storage);
    queue.offer(startHistory(job));
    await queue.flush();
    storage.atPoint = () => Promise.resolve();
    expect(await queue.retry()).toMatchObject({ kind: 'saved', revision: 1 });
  });

  it('of a disk that writes something else is noticed by reading back, and mended by a later save', async () => {
    storage.onDisk = (bytes) => bytes.map((byte, i) => (i === 40 ? byte ^ 1 : byte));
    const queue = queueOn(storage);
    const history = startHistory(job);
    queue.offer(history);
    expect(await queue.flush()).toMatchObject({ kind: 'failed', trouble: 'not verified' });
    storage.onDisk = (bytes) => bytes;
    queue.offer(step(history, 'one'));
    expect(await queue.flush()).toMatchObject({ kind: 'saved', revision: 3 });
    const again = await opened();
    expect(again.history.entries.map(({ name }) => name)).toEqual(['Opened', 'Title one']);
    expect(again.notices).toEqual([]);
  });

  it('of our own making, a job that could not be opened again, is refused before it is written', async () => {
    const queue = queueOn(storage);
    const history = startHistory(job);
    queue.offer(history);
    await queue.flush();
    const broken = commitStep(history, { name: 'Broken', job: { ...job, keys: [] }, at: null });
    queue.offer(broken);
    const state = await queue.flush();
    expect(state).toMatchObject({
      kind: 'failed',
      message: expect.stringMatching(/Undo the step/) as string,
    });
    expect(storage.log).toEqual(['1']);
    queue.offer(undo(broken));
    expect(await queue.flush()).toMatchObject({ kind: 'saved' });
    expect(committedJob((await opened()).history).keys).toHaveLength(1);
  });
});

describe('a conflict', () => {
  /** Two tabs that opened the same stored job. */
  async function twoTabs(): Promise<{ mine: SaveQueue; theirs: SaveQueue; history: History }> {
    const first = queueOn(storage);
    first.offer(startHistory(job));
    await first.flush();
    const [here, there] = [await opened(), await opened()];
    const theirs = queueOn(storage, there.base);
    theirs.offer(step(there.history, 'theirs'));
    await theirs.flush();
    states.length = 0;
    return { mine: queueOn(storage, here.base), theirs, history: here.history };
  }

  it('is told, overwrites nothing, and holds later steps back', async () => {
    const { mine, history } = await twoTabs();
    mine.offer(step(history, 'mine'));
    expect(await mine.flush()).toMatchObject({ kind: 'conflict', found: 2 });
    mine.offer(step(step(history, 'mine'), 'more'));
    expect(await mine.retry()).toMatchObject({ kind: 'conflict' });
    expect(storage.log).toEqual(['1', '2']);
    expect(committedJob((await opened()).history).title).toBe('theirs');
  });

  it('ends when the person has seen the other revision and wants this one on top', async () => {
    const { mine, history } = await twoTabs();
    mine.offer(step(step(history, 'mine'), 'more'));
    await mine.flush();
    expect(await mine.writeOver(2)).toMatchObject({ kind: 'saved', revision: 5 });
    const again = await opened();
    expect(again.history.entries.map(({ name }) => name)).toEqual(['Opened', 'Title mine', 'Title more']);
    expect(await storage.listRevisions(job.id)).toEqual([1, 2, 3, 4, 5]);
  });

  it('comes back when the other tab wrote once more in the meantime', async () => {
    const { mine, theirs, history } = await twoTabs();
    mine.offer(step(history, 'mine'));
    await mine.flush();
    theirs.offer(step(step(history, 'theirs'), 'again'));
    await theirs.flush();
    const found = await mine.writeOver(2);
    expect(found).toMatchObject({ kind: 'conflict' });
    expect(committedJob((await opened()).history).title).toBe('again');
  });

  it('with a job that was removed elsewhere says so', async () => {
    const { mine, history } = await twoTabs();
    storage.heads.clear();
    storage.rows.clear();
    mine.offer(step(history, 'mine'));
    expect(await mine.flush()).toMatchObject({
      kind: 'conflict',
      found: 0,
      message: expect.stringMatching(/removed/) as string,
    });
    expect(await mine.writeOver(0)).toMatchObject({ kind: 'saved' });
  });

  it('cannot happen any more once the queue was stopped', async () => {
    const { mine, history } = await twoTabs();
    mine.stop('Another tab took this job over.');
    mine.offer(step(history, 'mine'));
    expect(await mine.flush()).toEqual({
      kind: 'failed',
      trouble: 'closed',
      message: 'Another tab took this job over.',
    });
    expect(storage.log).toEqual(['1', '2']);
  });
});
