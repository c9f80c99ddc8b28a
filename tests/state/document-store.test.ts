import { describe, expect, it } from 'vitest';
import { startHistory } from '../../src/model/history/history.ts';
import { createDocumentStore } from '../../src/state/document-store.ts';
import { buildJob } from '../support/job-builder.ts';

const CLOCK = () => '2031-02-03T04:05:06.000Z';
const open = () => createDocumentStore(buildJob(), CLOCK);

describe('the document store', () => {
  it('starts with a job that nothing was done to and nobody asked to keep', () => {
    const { job, history, saved } = open().getState();
    expect([history.entries.length, history.entries[0]?.job, saved.kind]).toEqual([1, job, 'not kept']);
  });

  it('edits in named steps that can be undone and done again', () => {
    const store = open();
    const { edit, undo, redo } = store.getState();
    edit('Title', (job) => ({ ...job, title: 'Boathouse' }));
    expect(store.getState().job.title).toBe('Boathouse');
    expect(store.getState().history.entries[1]).toMatchObject({ name: 'Title', at: CLOCK() });
    undo();
    expect(store.getState().job.title).toBe('Test job');
    redo();
    expect(store.getState().job.title).toBe('Boathouse');
  });

  it('previews from the committed job each time, and commits or cancels the gesture', () => {
    const store = open();
    const { preview, commitPreview, cancelPreview } = store.getState();
    const longer = () => preview((job) => ({ ...job, title: `${job.title}!` }));
    longer();
    longer();
    expect(store.getState().job.title).toBe('Test job!');
    cancelPreview();
    expect(store.getState().job.title).toBe('Test job');
    longer();
    commitPreview('Title');
    expect(store.getState().history.entries.map(({ name }) => name)).toEqual(['Opened', 'Title']);
    expect(store.getState().history.preview).toBeNull();
  });

  it('tells nobody when nothing changed', () => {
    const store = open();
    let told = 0;
    store.subscribe(() => (told += 1));
    const { edit, undo, redo, cancelPreview, commitPreview } = store.getState();
    edit('Nothing', (job) => structuredClone(job));
    undo();
    redo();
    cancelPreview();
    commitPreview('Nothing');
    expect(told).toBe(0);
  });

  it('leaves everything as it was when an edit fails', () => {
    const store = open();
    const before = store.getState();
    const fail = () => {
      throw new Error('no such chamber');
    };
    expect(() => before.edit('Broken', fail)).toThrow('no such chamber');
    expect(() => before.preview(fail)).toThrow('no such chamber');
    expect(store.getState()).toBe(before);
  });

  it('loads another job, with its history when there is one, and forgets where the last one was saved', () => {
    const store = open();
    store.getState().setSaved({ kind: 'saved', revision: 3, at: CLOCK() });
    const other = buildJob({ title: 'Other', prefix: 'b-' });
    const history = startHistory(other, 'Opened', CLOCK());
    store.getState().load(other, history);
    expect(store.getState()).toMatchObject({ job: other, history, saved: { kind: 'not kept' } });
    store.getState().load(buildJob());
    expect(store.getState().history.entries).toHaveLength(1);
  });
});
