/** What says the captions of the drawings under it; null leaves them English. */
import { createContext, use } from 'react';
import type { Captions } from '../../drawing/captions.ts';

const CaptionsContext = createContext<Captions | null>(null);

export const CaptionsProvider = CaptionsContext.Provider;

export function useCaptions(): Captions | null {
  return use(CaptionsContext);
}
