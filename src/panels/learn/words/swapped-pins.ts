import type { LessonWords } from './lesson-words.ts';

export const SWAPPED_PINS_WORDS: LessonWords = {
  title: 'Two pins in the wrong chambers',
  idea: 'It does not matter where the pins go, as long as they are all in.',
  steps: {
    'stands-in-shell': {
      ask: 'Cut 1 leaves {one}, cut 2 leaves {two}. Their two pins were put into each other’s chambers. In which chamber does the bottom pin stand in the shell?',
      options: { 'chamber-1': 'Chamber 1', 'chamber-2': 'Chamber 2' },
      why: 'The long pin belongs to the deep cut. Over the shallow cut it is too long and stands in the shell; over the deep cut the short one lets the driver hang in the plug. One high and one low by the same amount: think of two pins changed over.',
    },
  },
  bench: 'Lay pins out in a tray in the order of their chambers, from the first one you take out.',
};
