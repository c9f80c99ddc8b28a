import { describe, expect, it } from 'vitest';
import {
  cancelPreview,
  commitPreview,
  commitStep,
  committedJob,
  type History,
  presentEntry,
  previewJob,
  redo,
  redoName,
  restoreHistory,
  shownJob,
  startHistory,
  undo,
  undoName,
} from '../../../src/model/history/history.ts';
import { measureText } from '../../../src/model/history/measure-text.ts';
import type { Job } from '../../../src/model/schema/job-schema.ts';
import { buildJob, changed } from '../../support/job-builder.ts';

const job = buildJob();
const titled = (title: string): Job => ({ ...job, title });
const step = (history: History, title: string) =>
  commitStep(history, { name: `Title ${title}`, job: titled(title), at: null });

describe('a history', () => {
  it('commits steps under their names and walks back and forth over them', () => {
    const history = step(step(startHistory(job), 'one'), 'two');
    expect(undoName(history)).toBe('Title two');
    const back = undo(history);
    expect(committedJob(back).title).toBe('one');
    expect([undoName(back), redoName(back)]).toEqual(['Title one', 'Title two']);
    expect(committedJob(redo(back)).title).toBe('two');
  });

  it('stops at both ends', () => {
    const history = startHistory(job);
    expect(undo(history)).toBe(history);
    expect(redo(history)).toBe(history);
    expect([undoName(history), redoName(history)]).toEqual([null, null]);
  });

  it('forgets undone steps when another is committed', () => {
    const history = step(undo(step(step(startHistory(job), 'one'), 'two')), 'three');
    expect(history.entries.map(({ job: kept }) => kept.title)).toEqual([job.title, 'one', 'three']);
    expect(redo(history)).toBe(history);
  });

  it('makes no step of a change that changes nothing, even a copied one', () => {
    const history = undo(step(startHistory(job), 'one'));
    const same = commitStep(history, { name: 'Nothing', job: structuredClone(job), at: null });
    expect(same).toBe(history);
    expect(redoName(same)).toBe('Title one');
  });

  it('keeps what a careless step copied but did not change', () => {
    const careless = changed(job, (copy) => {
      copy.title = 'Other';
    });
    const history = commitStep(startHistory(job), { name: 'Title', job: careless, at: null });
    expect(committedJob(history).cylinders).toBe(job.cylinders);
    expect(committedJob(history).title).toBe('Other');
  });
});

describe('a gesture', () => {
  it('shows its job without a step, then commits it as one', () => {
    const start = step(startHistory(job), 'one');
    const running = previewJob(previewJob(start, titled('on')), titled('onwards'));
    expect(shownJob(running).title).toBe('onwards');
    expect(committedJob(running).title).toBe('one');
    expect(running.entries).toBe(start.entries);
    const done = commitPreview(running, 'Drag', '2031-02-03T04:05:06.000Z');
    expect(presentEntry(done)).toMatchObject({ name: 'Drag', at: '2031-02-03T04:05:06.000Z' });
    expect([done.entries.length, done.preview]).toEqual([3, null]);
  });

  it('leaves no trace when cancelled, undone steps included', () => {
    const start = undo(step(startHistory(job), 'one'));
    expect(cancelPreview(previewJob(start, titled('on')))).toEqual(start);
  });

  it('is what undo takes back first; redo waits for its end', () => {
    const running = previewJob(undo(step(startHistory(job), 'one')), titled('on'));
    expect(redo(running)).toBe(running);
    const back = undo(running);
    expect([back.present, back.preview]).toEqual([0, null]);
  });

  it('that comes back to where it started is none', () => {
    const running = previewJob(previewJob(startHistory(job), titled('on')), structuredClone(job));
    expect(running.preview).toBeNull();
    expect(commitPreview(running, 'Drag', null)).toBe(running);
  });

  it('gives way to a committed step', () => {
    const history = step(previewJob(startHistory(job), titled('on')), 'one');
    expect([history.preview, committedJob(history).title]).toEqual([null, 'one']);
  });
});

describe('the bounds of a history', () => {
  const size = measureText(job);

  it('let the oldest steps go by count, and say how many', () => {
    const limits = { mostEntries: 3, mostCharacters: Infinity };
    let history = startHistory(job);
    for (const title of ['1', '2', '3', '4'])
      history = commitStep(history, { name: title, job: titled(title), at: null }, limits);
    expect(history.entries.map(({ job: kept }) => kept.title)).toEqual(['2', '3', '4']);
    expect([history.present, history.dropped]).toEqual([2, 2]);
  });

  it('let the oldest steps go by size', () => {
    const limits = { mostEntries: 100, mostCharacters: size * 2.5 };
    let history = startHistory(job);
    for (const title of ['1', '2', '3'])
      history = commitStep(history, { name: title, job: titled(title), at: null }, limits);
    expect([history.entries.length, history.dropped]).toEqual([2, 2]);
  });

  it('never let the newest go, however large it is', () => {
    const limits = { mostEntries: 100, mostCharacters: 10 };
    const history = commitStep(startHistory(job), { name: 'Big', job: titled('big'), at: null }, limits);
    expect(history.entries.map(({ job: kept }) => kept.title)).toEqual(['big']);
    expect([history.present, history.dropped]).toEqual([0, 1]);
  });
});

describe('restoreHistory', () => {
  it('shares again what the entries have in common', () => {
    const history = undo(step(step(startHistory(job), 'one'), 'two'));
    const kept = structuredClone(history.entries);
    const restored = restoreHistory(kept, history.present, 5);
    expect(restored).toEqual({ ...history, dropped: 5 });
    expect(restored.entries[2]?.job.cylinders).toBe(restored.entries[0]?.job.cylinders);
  });

  it('stops on a place that is not in the list', () => {
    expect(() => restoreHistory([], 0, 0)).toThrow('without entries');
    expect(() => restoreHistory([{ name: 'Opened', job, at: null }], 1, 0)).toThrow('present entry 1 of 1');
  });
});
