import type { LessonWords } from './lesson-words.ts';

export const ROOT_DEPTH_WORDS: LessonWords = {
  title: 'Root depth is what is left',
  idea: 'Root depth is how much was cut away.',
  steps: {
    'what-is-left': {
      ask: 'The blade is {blade} high. The cutter went {down} down. What is the root depth?',
      why: 'Root depth is the metal left, from the bottom of the cut to the bottom edge of the key. That is what carries the pin.',
    },
  },
  bench:
    'Close the caliper on the key: one jaw in the cut, one on the bottom edge. That reading is the root depth.',
};
