import type { LessonWords } from './lesson-words.ts';

const OPTIONS = { domed: 'Only the domed one', both: 'Both', neither: 'Neither' };
const WHY =
  "A domed top follows the plug's round. A flat top of the same length stands out of the round at its corners and meets the shell first: it has to sit lower.";

export const END_SHAPES_WORDS: LessonWords = {
  title: 'Same length, another top',
  idea: 'Same length, same pin.',
  steps: {
    'which-turn-level': {
      ask: 'Two pins of the same length, both level with the line. The one in chamber 1 is domed, the one in chamber 2 flat. Which of them let the plug turn?',
      options: OPTIONS,
      why: WHY,
    },
    'which-turn-below': {
      ask: 'Two pins of the same length, both {by} below the line. The one in chamber 1 is domed, the one in chamber 2 flat; the drivers have a wide broken edge. Which of them let the plug turn?',
      options: OPTIONS,
      why: WHY,
    },
    'which-turn-above': {
      ask: 'Two pins of the same length, both {by} above the line. The one in chamber 1 is domed, the one in chamber 2 flat. Which of them let the plug turn?',
      options: OPTIONS,
      why: WHY,
    },
  },
  bench:
    'Look at the top of a pin against the light, then along the plug with the pin in place: does it follow the round?',
};
