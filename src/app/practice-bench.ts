/**
 * A bench of its own for a cylinder that is only looked at: its own stores and its own clock, so that keys slide and plugs
 * turn in it while the person's job stays as it is. Nothing of it is saved.
 */
import type { MakePracticeBench } from '../panels/shared/services.tsx';
import { createDocumentStore } from '../state/document-store.ts';
import { createViewStore } from '../state/view-store.ts';
import { startMotion } from './motion.ts';

export const practiceBench: MakePracticeBench = (job, services) => {
  const document = createDocumentStore(job);
  const view = createViewStore(job);
  startMotion({ document, view, preferences: services.preferences });
  return { ...services, document, view, SolidView: null, isExample: () => false, drafts: new Map() };
};
