import type { LessonWords } from './lesson-words.ts';

const OPTIONS = { high: 'The split is high', right: 'The split is right', low: 'The split is low' };
const WHY =
  'Alone, without a driver, a pin can only be too high: it does not turn. With its driver, what is low shows as well. Two tests tell the three cases apart, without a caliper.';

export const ONE_AT_A_TIME_WORDS: LessonWords = {
  title: 'One chamber at a time',
  idea: 'If it does not turn, you cannot tell which way it is off.',
  steps: {
    'not-even-alone': {
      ask: 'Key in, one chamber filled. With the bottom pin alone, no driver, the plug does not turn. With its driver it does not turn either. What is it?',
      options: OPTIONS,
      why: WHY,
    },
    'only-alone': {
      ask: 'Key in, one chamber filled. With the bottom pin alone, no driver, the plug turns. With its driver it does not turn. What is it?',
      options: OPTIONS,
      why: WHY,
    },
    'both-turn': {
      ask: 'Key in, one chamber filled. With the bottom pin alone, no driver, the plug turns. With its driver it turns too. What is it?',
      options: OPTIONS,
      why: WHY,
    },
  },
  bench:
    'Empty a cylinder and fill one chamber: pin alone first, then pin and driver. Write down both results before you fill the next.',
};
