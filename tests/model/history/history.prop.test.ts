import { fc, test } from '@fast-check/vitest';
import { describe, expect } from 'vitest';
import {
  cancelPreview,
  commitPreview,
  commitStep,
  committedJob,
  type History,
  presentEntry,
  previewJob,
  redo,
  shownJob,
  startHistory,
  undo,
} from '../../../src/model/history/history.ts';
import type { Job } from '../../../src/model/schema/job-schema.ts';
import { anyEdit, anyJob, type RandomEdit } from '../../support/random-jobs.ts';

type Operation =
  | { readonly kind: 'commit' | 'preview'; readonly edit: RandomEdit }
  | { readonly kind: 'undo' | 'redo' | 'cancel' | 'commit preview' };

const operation: fc.Arbitrary<Operation> = fc.oneof(
  { weight: 3, arbitrary: anyEdit.map((edit): Operation => ({ kind: 'commit', edit })) },
  { weight: 2, arbitrary: anyEdit.map((edit): Operation => ({ kind: 'preview', edit })) },
  fc
    .constantFrom('undo' as const, 'redo' as const, 'cancel' as const, 'commit preview' as const)
    .map((kind): Operation => ({ kind })),
);

const LIMITS = { mostEntries: 6, mostCharacters: Infinity };

function apply(history: History, todo: Operation): History {
  switch (todo.kind) {
    case 'commit':
      return commitStep(
        history,
        { name: 'Step', job: todo.edit.change(committedJob(history)), at: null },
        LIMITS,
      );
    case 'preview':
      return previewJob(history, todo.edit.change(committedJob(history)));
    case 'undo':
      return undo(history);
    case 'redo':
      return redo(history);
    case 'cancel':
      return cancelPreview(history);
    case 'commit preview':
      return commitPreview(history, 'Gesture', null, LIMITS);
  }
}

/** The plainest history there could be: whole copies, nothing shared. */
class PlainHistory {
  past: string[] = [];
  future: string[] = [];
  preview: string | null = null;
  now: string;
  constructor(job: Job) {
    this.now = JSON.stringify(job);
  }

  apply(todo: Operation): void {
    const made = 'edit' in todo ? JSON.stringify(todo.edit.change(JSON.parse(this.now) as Job)) : null;
    // A preview equal to the job is no gesture, so it does not hold an undo up.
    if (todo.kind === 'preview') this.preview = made === this.now ? null : made;
    if (todo.kind === 'commit') this.commit(made);
    if (todo.kind === 'commit preview') this.commit(this.preview);
    if (todo.kind === 'cancel') this.preview = null;
    if (todo.kind === 'undo') this.step(this.past, this.future);
    if (todo.kind === 'redo' && this.preview === null) this.step(this.future, this.past);
  }

  commit(next: string | null): void {
    this.preview = null;
    if (next === null || next === this.now) return;
    this.past = [...this.past, this.now].slice(1 - LIMITS.mostEntries);
    this.future = [];
    this.now = next;
  }

  step(from: string[], to: string[]): void {
    const isGesture = this.preview !== null;
    this.preview = null;
    const next = isGesture ? undefined : from.pop();
    if (next === undefined) return;
    to.push(this.now);
    this.now = next;
  }
}

describe('random sequences of steps', () => {
  test.prop([anyJob, fc.array(operation, { maxLength: 40 })], { numRuns: 60 })(
    'give what whole copies would give',
    (job, operations) => {
      let history = startHistory(job);
      const plain = new PlainHistory(job);
      for (const todo of operations) {
        history = apply(history, todo);
        plain.apply(todo);
        expect(JSON.parse(JSON.stringify(committedJob(history)))).toEqual(JSON.parse(plain.now));
        expect(shownJob(history)).toEqual(JSON.parse(plain.preview ?? plain.now));
        expect(history.present).toBe(plain.past.length);
        expect(history.entries.length).toBe(plain.past.length + 1 + plain.future.length);
      }
    },
  );

  test.prop([anyJob, fc.array(operation, { maxLength: 20 }), anyEdit], { numRuns: 60 })(
    'end where they were when one more is done and undone',
    (job, operations, { change }) => {
      const before = cancelPreview(operations.reduce(apply, startHistory(job)));
      const after = commitStep(before, { name: 'Step', job: change(committedJob(before)), at: null });
      if (after === before) return;
      expect(presentEntry(undo(after))).toBe(presentEntry(before));
      expect(redo(undo(after))).toEqual(after);
    },
  );

  test.prop([anyJob, fc.array(operation, { minLength: 1, maxLength: 30 })], { numRuns: 60 })(
    'never change a job that was committed',
    (job, operations) => {
      const texts = new Map<Job, string>();
      let history = startHistory(job);
      for (const todo of operations) {
        history = apply(history, todo);
        for (const entry of history.entries)
          if (!texts.has(entry.job)) texts.set(entry.job, JSON.stringify(entry.job));
      }
      expect(texts.size).toBeGreaterThan(0);
      for (const [kept, text] of texts) expect(JSON.stringify(kept)).toBe(text);
    },
  );
});
