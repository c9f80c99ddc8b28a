/** The desk of the learner, for everything on the station. */
import { createContext, use } from 'react';
import { useStore } from 'zustand';
import { known } from '../../model/assert.ts';
import type { LearningState } from '../../state/learning-store.ts';
import type { Services } from '../shared/services.tsx';
import type { LearningDesk } from './learning-desk.ts';

const DeskContext = createContext<LearningDesk<Services> | null>(null);

export const DeskProvider = DeskContext.Provider;

export function useDesk(): LearningDesk<Services> {
  return known(use(DeskContext), 'the desk of the learner');
}

export function useLearning<T>(select: (state: LearningState) => T): T {
  return useStore(useDesk().store, select);
}
