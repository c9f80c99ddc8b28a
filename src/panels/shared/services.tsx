/** What the panels are given by the app: the stores, ids and time, and what only the app can do. */
import { type ComponentType, createContext, use } from 'react';
import { useStore } from 'zustand';
import { known } from '../../model/assert.ts';
import type { Job } from '../../model/schema/job-schema.ts';
import type { Id } from '../../model/schema/leaf.ts';
import type { DocumentState, DocumentStore } from '../../state/document-store.ts';
import type { PreferencesState, PreferencesStore } from '../../state/preferences-store.ts';
import type { ViewActions, ViewState, ViewStore } from '../../state/view-store.ts';
import type { LearningDesk } from '../learn/learning-desk.ts';
import type { MatchingService } from '../match/matching-service.ts';
import type { NoteFiles } from '../note/note-files.ts';

export type MakePracticeBench = LearningDesk<Services>['makeBench'];

export type Services = {
  readonly document: DocumentStore;
  readonly view: ViewStore;
  readonly preferences: PreferencesStore;
  readonly newId: () => Id;
  /** ISO 8601. */
  readonly now: () => string;
  readonly startMyCylinder: () => void;
  /** Whether the job on screen is the example that came with the page. */
  readonly isExample: (job: Job) => boolean;
  /** Texts that are not read yet, by job and field: kept for as long as the page is open. */
  readonly drafts: Map<string, string>;
  /** What chooses parts, loaded when it is asked for. */
  readonly matching: () => Promise<MatchingService>;
  /** Saves and copies pictures and tables, loaded when it is asked for. */
  readonly noteFiles: () => Promise<NoteFiles>;
  /** What Learn needs, loaded when it is asked for. */
  readonly learning: () => Promise<LearningDesk<Services>>;
  /** The solid view, loaded when it is asked for; null where there is none. */
  readonly SolidView: ComponentType | null;
};

const ServicesContext = createContext<Services | null>(null);

export const ServicesProvider = ServicesContext.Provider;

export function useServices(): Services {
  return known(use(ServicesContext), 'services');
}

export function useJob(): Job {
  return useStore(useServices().document, (state) => state.job);
}

export function useDocument<T>(select: (state: DocumentState) => T): T {
  return useStore(useServices().document, select);
}

export function useView<T>(select: (state: ViewState & ViewActions) => T): T {
  return useStore(useServices().view, select);
}

export function usePreference<T>(select: (state: PreferencesState) => T): T {
  return useStore(useServices().preferences, select);
}

/** Commits one step under a name a person would say. */
export function useEdit(): (name: string, change: (job: Job) => Job) => void {
  const { document } = useServices();
  return (name, change) => document.getState().edit(name, change);
}
