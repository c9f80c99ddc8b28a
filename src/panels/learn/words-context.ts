import { createContext, use } from 'react';
import { ENGLISH, type Words } from './words/words.ts';

const WordsContext = createContext<Words>(ENGLISH);

export const WordsProvider = WordsContext.Provider;

export function useWords(): Words {
  return use(WordsContext);
}
