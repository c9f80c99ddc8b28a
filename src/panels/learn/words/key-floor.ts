import type { LessonWords } from './lesson-words.ts';

export const KEY_FLOOR_WORDS: LessonWords = {
  title: 'What lies under the key',
  idea: 'The bottom of the key is level with the bottom of the plug.',
  steps: {
    'how-long': {
      ask: 'The plug measures {plug} across. Under the key there is {floor} of plug metal. The cut leaves {root}. How long must the pin be?',
      why: 'The key stands on the floor of its slot, not on the underside of the plug. Forget that metal and every pin is too long by just as much.',
    },
  },
  bench: "Slide the key into the bare plug and measure from the plug's underside to the key's bottom edge.",
};
