import type { LessonWords } from './lesson-words.ts';

export const DEEP_CUT_WORDS: LessonWords = {
  title: 'Deep cut, long pin',
  idea: 'A deep cut takes a short pin.',
  steps: {
    'which-longer': {
      ask: 'Two cuts. Cut 1 leaves {one} of metal, cut 2 leaves {two}. Which needs the longer pin?',
      options: { 'cut-1': 'Cut 1', 'cut-2': 'Cut 2' },
      why: 'Where more was cut away the pin starts lower, and must still reach the same line: it has to be longer.',
    },
    'how-long': {
      ask: 'Plug less the metal under the key is {across}. Cut {number} leaves {root}. How long must its pin be to reach the line?',
      why: 'Plug, less the metal under the key, less what is left under the cut. Shops call the first difference the effective diameter.',
    },
  },
  bench: 'Sort the pins of a cylinder by length beside their key: the longest belongs to the deepest cut.',
};
