import type { LessonWords } from './lesson-words.ts';

export const WHICH_END_WORDS: LessonWords = {
  title: 'Which end is cut 1?',
  idea: 'A list of cuts is a list of chambers.',
  steps: {
    'longest-pin': {
      ask: 'A list, counted from the tip of the key: cut 1 leaves {one}, cut 2 {two}, cut 3 {three}. The shoulder stops the key. Counted from the front, which chamber takes the longest pin?',
      options: { '1': 'Chamber 1', '2': 'Chamber 2', '3': 'Chamber 3' },
      why: 'The tip goes in first and ends at the back. Counted from the tip, cut 1 lies under the last chamber. Ask which end before you read a list.',
    },
  },
  bench: 'Write on the card, beside the depths, where the count begins: "from the bow" or "from the tip".',
};
