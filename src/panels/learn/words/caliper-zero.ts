import type { LessonWords } from './lesson-words.ts';

const OPTIONS = { low: 'Low', level: 'At the line', high: 'High' };
const TAIL =
  'The plug, the metal under the key, the root depth and then the pin were all measured with it. The sum comes out even. Where does the split really lie?';
const WHY =
  'The sum takes two lengths away from one, so that the pin called for comes out wrong once. Then the pin itself is read wrong by the same again. Two errors, one way.';

export const CALIPER_ZERO_WORDS: LessonWords = {
  title: 'A caliper that is not at zero',
  idea: 'The same error in every reading cancels out.',
  steps: {
    'which-way-over': {
      ask: `Closed, the caliper reads {by} instead of zero: every length reads too large by that. ${TAIL}`,
      options: OPTIONS,
      why: WHY,
    },
    'which-way-under': {
      ask: `Closed, the caliper reads {by} below zero: every length reads too small by that. ${TAIL}`,
      options: OPTIONS,
      why: WHY,
    },
    'how-far-over': {
      ask: 'Every length read {by} too large. How far from the line does the split lie?',
      why: WHY,
    },
    'how-far-under': {
      ask: 'Every length read {by} too small. How far from the line does the split lie?',
      why: WHY,
    },
  },
  bench:
    'Close the jaws, wipe them, set zero. Then measure one pin ten times, taking it out each time: the spread is your own.',
};
