/** What panels are given, for a job that is only looked at: stores of its own, and nothing that needs a browser. */
import type { Job } from '../../src/model/schema/job-schema.ts';
import type { Services } from '../../src/panels/shared/services.tsx';
import { createDocumentStore } from '../../src/state/document-store.ts';
import { createPreferencesStore } from '../../src/state/preferences-store.ts';
import { createViewStore } from '../../src/state/view-store.ts';

const notAsked = () => Promise.reject(new Error('not asked for'));

export function testServices(job: Job): Services {
  return {
    document: createDocumentStore(job),
    view: createViewStore(job),
    preferences: createPreferencesStore(),
    newId: () => 'id-1',
    now: () => '2026-01-01T00:00:00Z',
    startMyCylinder: () => undefined,
    isExample: () => false,
    drafts: new Map(),
    matching: notAsked,
    noteFiles: notAsked,
    learning: notAsked,
    SolidView: null,
  };
}
