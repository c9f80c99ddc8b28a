import type { LessonWords } from './lesson-words.ts';

export const CUT_NUMBER_WORDS: LessonWords = {
  title: 'A cut number is not a length',
  idea: 'A 4 is four of something on every key.',
  steps: {
    'what-is-left': {
      ask: 'An invented table: number 0 leaves {shallowest}, and each number after it leaves {step} less. What does number {number} leave?',
      why: 'A number is a place in one table. In another the same number leaves something else, and may even count the other way. Measure, or have the table.',
    },
  },
  bench:
    'Measure the cuts of one key and look for the step they share. Then you know the table, or that there is none.',
};
