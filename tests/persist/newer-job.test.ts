/** A file of a newer version: what is known of it is read, what is new left out, and too much that is new is refused. */
import { describe, expect, test } from 'vitest';
import { jobToText, readJobText } from '../../src/persist/job-text.ts';
import { readNewerJob } from '../../src/persist/newer-job.ts';
import { createDocumentStore } from '../../src/state/document-store.ts';
import { buildJob } from '../support/job-builder.ts';

const job = buildJob({ title: 'Next year' });

/** The job as a newer version would save it, with something new in several places. */
function newer(change: (data: Record<string, unknown>) => void): string {
  const data = JSON.parse(jobToText(job)) as Record<string, unknown>;
  data['schemaVersion'] = 99;
  change(data);
  return JSON.stringify(data);
}

describe('a job of a newer version', () => {
  test('is read as far as it is known', () => {
    const raw = newer((data) => {
      data['weather'] = { wind: [1, 2] };
      for (const cylinder of data['cylinders'] as Record<string, unknown>[]) cylinder['patina'] = 'green';
    });
    expect(readJobText(raw)).toMatchObject({ type: 'error', reason: 'newer' });
    expect(readNewerJob(raw)).toEqual({ job, raw });
  });

  test('is refused when something known has changed its meaning', () => {
    expect(readNewerJob(newer((data) => (data['keys'] = 'one of brass')))).toBeNull();
    expect(readNewerJob(newer((data) => delete data['cylinders']))).toBeNull();
  });

  test('cannot be changed once it is shown, until another job is', () => {
    const store = createDocumentStore(buildJob());
    store.getState().lookAt(job, 'raw');
    store.getState().edit('Title', (before) => ({ ...before, title: 'Other' }));
    store.getState().preview((before) => ({ ...before, title: 'Other' }));
    store.getState().undo();
    expect(store.getState().job).toBe(job);
    expect(store.getState().newer).toBe('raw');
    store.getState().load(buildJob());
    store.getState().edit('Title', (before) => ({ ...before, title: 'Other' }));
    expect(store.getState().job.title).toBe('Other');
    expect(store.getState().newer).toBeNull();
  });
});
