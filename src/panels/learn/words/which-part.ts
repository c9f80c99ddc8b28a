import type { LessonWords } from './lesson-words.ts';

const PARTS = { 'bottom-pin': 'The bottom pin', driver: 'The driver' };

export const WHICH_PART_WORDS: LessonWords = {
  title: 'Which part stops the plug?',
  idea: 'As long as the pin is not too long, the plug turns.',
  steps: {
    'which-turn': {
      ask: 'Three bottom pins for this one chamber. One just reaches the shear line with the key in, one is longer, one shorter. Which of them let the plug turn?',
      options: {
        right: 'Only the one that reaches the line',
        shorter: 'That one, and the shorter one too',
        longer: 'That one, and the longer one too',
      },
      why: 'The plug turns when the split, the place where bottom pin and driver meet, lies at the line. Then each part stays on its own side.',
    },
    'stops-longer': {
      ask: 'The longer pin is in. Which part stops the plug?',
      options: PARTS,
      why: 'The split is high. The bottom pin belongs to the plug but stands in the shell: it holds the two together.',
    },
    'stops-shorter': {
      ask: 'Now the shorter pin is in. Which part stops the plug?',
      options: PARTS,
      why: 'The split is low. The spring pushes the driver down after the pin: it hangs in the plug, while its upper part stays in the shell.',
    },
    'broken-edge': {
      ask: 'The same shorter pin. The driver had a sharp edge; this one has a broken edge, a bevel all round. Does the plug turn?',
      options: { turns: 'It turns', 'does-not': 'It does not turn' },
      why: "The plug's edge comes under the bevel and lifts the driver out. A low split may still turn; it depends on the driver's end. A high one gets no such help.",
    },
  },
  bench:
    'Take one chamber, a key, a driver and three pins of different length. Slide the key in and try the plug with each. Look which part is caught.',
};
