import type { LessonWords } from './lesson-words.ts';

export const TURNS_WHEN_LIFTED_WORDS: LessonWords = {
  title: 'It turns only while the key is lifted',
  idea: 'If lifting helps, the pin must be too long.',
  steps: {
    'which-way': {
      ask: 'The key is in and the plug does not turn. Lift the key by {by}, and it turns. Was the split high or low?',
      options: { low: 'Low', high: 'High' },
      why: 'Lifting the key lifts everything that stands on it. If that helps, the split was low. You see both here with the key lifted.',
    },
  },
  bench:
    'On a cylinder that sticks, try the key pressed up, then down, then drawn back a hair. Each tells something else.',
};
