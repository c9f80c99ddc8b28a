/**
 * Document: undoable, saved. The job, its history, and where its saving stands. What follows from the job (assembly,
 * evaluation, drawing) is computed from it and never kept here.
 */
import { createStore, type StoreApi } from 'zustand/vanilla';
import {
  cancelPreview,
  commitPreview,
  commitStep,
  committedJob,
  type History,
  previewJob,
  redo,
  shownJob,
  startHistory,
  undo,
} from '../model/history/history.ts';
import { NOT_KEPT, type SaveState } from '../model/history/save-state.ts';
import type { Job } from '../model/schema/job-schema.ts';

/** Makes a changed job out of a job, which it leaves as it is. */
export type JobChange = (job: Job) => Job;

export type DocumentState = {
  readonly history: History;
  /** What is on screen: the job of a running gesture, or else the committed one. */
  readonly job: Job;
  readonly saved: SaveState;
  /** Looked at only: the text of the file as a newer version saved it. Null for every other job. */
  readonly newer: string | null;
  /** Commits one step under a name a person would say. A running gesture gives way to it. */
  readonly edit: (name: string, change: JobChange) => void;
  /** Shows a change while a gesture runs. Each one starts from the committed job, so that a drag cannot drift. */
  readonly preview: (change: JobChange) => void;
  /** Commits what the gesture shows. */
  readonly commitPreview: (name: string) => void;
  readonly cancelPreview: () => void;
  readonly undo: () => void;
  readonly redo: () => void;
  /** Opens another job, with the history that was kept for it if there is one. */
  readonly load: (job: Job, history?: History) => void;
  /** Shows what is known of a job that a newer version saved; it cannot be changed. */
  readonly lookAt: (job: Job, raw: string) => void;
  readonly setSaved: (saved: SaveState) => void;
};

export type DocumentStore = StoreApi<DocumentState>;

/**
 * Makes the store around a first job.
 *
 * @param clock gives the time of a step as ISO 8601 text
 */
export function createDocumentStore(first: Job, clock: () => string = isoNow): DocumentStore {
  return createStore<DocumentState>()((set, get) => {
    const become = (history: History) => {
      if (history !== get().history && get().newer === null) set({ history, job: shownJob(history) });
    };
    return {
      history: startHistory(first),
      job: first,
      saved: NOT_KEPT,
      newer: null,
      edit: (name, change) => {
        const { history } = get();
        become(commitStep(history, { name, job: change(committedJob(history)), at: clock() }));
      },
      preview: (change) => {
        const { history } = get();
        become(previewJob(history, change(committedJob(history))));
      },
      commitPreview: (name) => become(commitPreview(get().history, name, clock())),
      cancelPreview: () => become(cancelPreview(get().history)),
      undo: () => become(undo(get().history)),
      redo: () => become(redo(get().history)),
      load: (job, history = startHistory(job)) =>
        set({ history, job: shownJob(history), saved: NOT_KEPT, newer: null }),
      lookAt: (job, raw) => set({ history: startHistory(job), job, saved: NOT_KEPT, newer: raw }),
      setSaved: (saved) => set({ saved }),
    };
  });
}

function isoNow(): string {
  return new Date().toISOString();
}
