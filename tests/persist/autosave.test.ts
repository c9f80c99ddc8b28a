import { beforeEach, describe, expect, it } from 'vitest';
import { committedJob } from '../../src/model/history/history.ts';
import type { SaveState } from '../../src/model/history/save-state.ts';
import { type HidingPage, startAutosave } from '../../src/persist/autosave.ts';
import { openJob } from '../../src/persist/open-job.ts';
import { plainCodec } from '../../src/persist/row-codec.ts';
import { createSaveQueue, type SaveQueue } from '../../src/persist/save-queue.ts';
import { createDocumentStore, type DocumentStore } from '../../src/state/document-store.ts';
import { FailingStorage } from '../support/failing-storage.ts';
import { buildJob } from '../support/job-builder.ts';

const CLOCK = () => '2031-02-03T04:05:06.000Z';

let storage: FailingStorage;
let document: DocumentStore;
let queue: SaveQueue;
let page: HidingPage & { hide: () => void; listeners: Set<() => void> };
beforeEach(() => {
  storage = new FailingStorage();
  document = createDocumentStore(buildJob(), CLOCK);
  queue = queueFor();
  const listeners = new Set<() => void>();
  page = {
    listeners,
    visibilityState: 'hidden',
    addEventListener: (_, listener) => void listeners.add(listener),
    removeEventListener: (_, listener) => void listeners.delete(listener),
    hide: () => listeners.forEach((listener) => listener()),
  };
});

function queueFor(base?: Parameters<typeof createSaveQueue>[0]['base']): SaveQueue {
  const onState = (saved: SaveState) => document.getState().setSaved(saved);
  const rest = base === undefined ? {} : { base };
  return createSaveQueue({ id: 'job', storage, codec: plainCodec, clock: CLOCK, onState, ...rest });
}

const edit = (title: string) => document.getState().edit('Title', (job) => ({ ...job, title }));
const stored = async (): Promise<string> => {
  const opened = await openJob('job', { storage, codec: plainCodec });
  return opened.type === 'success' ? committedJob(opened.history).title : opened.reason;
};

describe('autosave', () => {
  it('saves every committed step at once, and tells the document', async () => {
    startAutosave({ source: document, queue, page });
    edit('one');
    expect(document.getState().saved).toEqual({ kind: 'saving' });
    await queue.flush();
    expect([await stored(), document.getState().saved.kind]).toEqual(['one', 'saved']);
    document.getState().undo();
    await queue.flush();
    expect(await stored()).toBe('Test job');
  });

  it('leaves a job alone that nobody has touched, unless it is asked to save it', async () => {
    const end = startAutosave({ source: document, queue, page });
    page.hide();
    await queue.flush();
    expect(await stored()).toBe('missing');
    end();
    startAutosave({ source: document, queue, page, fromNow: true });
    await queue.flush();
    expect(await stored()).toBe('Test job');
  });

  it('does not save a gesture before it is committed, even when the page hides', async () => {
    startAutosave({ source: document, queue, page });
    document.getState().preview((job) => ({ ...job, title: 'moving' }));
    page.hide();
    await queue.flush();
    expect(storage.log).toEqual([]);
    document.getState().commitPreview('Title');
    await queue.flush();
    expect(await stored()).toBe('moving');
  });

  it('saves a step that was made while the stored job was being opened', async () => {
    startAutosave({ source: document, queue, fromNow: true });
    await queue.flush();
    const opened = await openJob('job', { storage, codec: plainCodec });
    if (opened.type === 'error') throw new Error(opened.message);
    document = createDocumentStore(buildJob(), CLOCK);
    document.getState().load(committedJob(opened.history), opened.history);
    edit('early');
    queue = queueFor(opened.base);
    startAutosave({ source: document, queue });
    await queue.flush();
    expect(await stored()).toBe('early');
  });

  it('tries again what failed when the page hides or shows', async () => {
    storage.atPoint = () => Promise.reject(new Error('power'));
    startAutosave({ source: document, queue, page });
    edit('one');
    await queue.flush();
    expect(document.getState().saved.kind).toBe('failed');
    storage.atPoint = () => Promise.resolve();
    page.hide();
    await queue.flush();
    expect([await stored(), document.getState().saved.kind]).toEqual(['one', 'saved']);
  });

  it('does not write another job over this one when it is loaded into the same document', async () => {
    startAutosave({ source: document, queue, page });
    document.getState().load(buildJob({ prefix: 'other-' }));
    edit('elsewhere');
    await queue.flush();
    expect(storage.log).toEqual([]);
  });

  it('ends', async () => {
    const end = startAutosave({ source: document, queue, page });
    end();
    edit('one');
    await queue.flush();
    expect([storage.log, page.listeners.size]).toEqual([[], 0]);
  });
});
