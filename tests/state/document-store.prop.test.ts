import { fc, test } from '@fast-check/vitest';
import { describe, expect } from 'vitest';
import { shownJob } from '../../src/model/history/history.ts';
import type { Job } from '../../src/model/schema/job-schema.ts';
import { parseJob } from '../../src/model/schema/parse-job.ts';
import { jobToText, readJobText } from '../../src/persist/job-text.ts';
import { createDocumentStore, type DocumentState } from '../../src/state/document-store.ts';
import { anyEdit, anyJob } from '../support/random-jobs.ts';

type Act = (state: DocumentState) => void;

/** Anything a person can do to the document, saving to a file and opening it again among it. */
const act: fc.Arbitrary<Act> = fc.oneof(
  {
    weight: 4,
    arbitrary: anyEdit.map(
      ({ name, change }): Act =>
        (state) =>
          state.edit(name, change),
    ),
  },
  {
    weight: 2,
    arbitrary: anyEdit.map(
      ({ change }): Act =>
        (state) =>
          state.preview(change),
    ),
  },
  fc.constantFrom<Act>(
    (state) => state.undo(),
    (state) => state.redo(),
    (state) => state.cancelPreview(),
    (state) => state.commitPreview('Gesture'),
    (state) => {
      const read = readJobText(jobToText(state.job));
      if (read.type === 'success') state.load(read.job);
    },
  ),
);

function deepFreeze<T>(data: T): T {
  if (typeof data === 'object' && data !== null && !Object.isFrozen(data)) {
    Object.freeze(data);
    Object.values(data).forEach(deepFreeze);
  }
  return data;
}

describe('whatever is done to a document', () => {
  test.prop([anyJob, fc.array(act, { minLength: 1, maxLength: 30 })], { numRuns: 60 })(
    'it shows a valid job that is its history, and never writes into a job it has shown',
    (first, acts) => {
      const store = createDocumentStore(deepFreeze(first), () => '2031-02-03T04:05:06.000Z');
      for (const todo of acts) {
        todo(store.getState());
        const { job, history } = store.getState();
        expect(job).toBe(shownJob(history));
        expect(parseJob(job).type).toBe('success');
        deepFreeze(history);
      }
    },
  );

  test.prop([anyJob, fc.array(anyEdit, { maxLength: 12 })], { numRuns: 40 })(
    'as many undos as steps lead back to the start, as many redos to the end',
    (first, edits) => {
      const store = createDocumentStore(first, () => '2031-02-03T04:05:06.000Z');
      const jobs: Job[] = [first];
      for (const { name, change } of edits) {
        store.getState().edit(name, change);
        const { job } = store.getState();
        if (job !== jobs.at(-1)) jobs.push(job);
      }
      for (const job of jobs.toReversed().slice(1)) {
        store.getState().undo();
        expect(store.getState().job).toBe(job);
      }
      for (const job of jobs.slice(1)) {
        store.getState().redo();
        expect(store.getState().job).toBe(job);
      }
    },
  );
});
