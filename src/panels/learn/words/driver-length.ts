import type { LessonWords } from './lesson-words.ts';

export const DRIVER_LENGTH_WORDS: LessonWords = {
  title: 'The driver and its spring',
  idea: 'Any driver will do, it only fills the hole.',
  steps: {
    'which-driver': {
      ask: 'With the key out, the top of the bottom pin sinks {rest} below the line. Which driver keeps the plug locked, and still lets the key in?',
      options: {
        one: 'One of {one}',
        two: 'One of {two}',
        three: 'One of {three}',
      },
      why: 'Key out, the driver has to stand across the line. Key going in, driver and squeezed spring have to fit under the top of the chamber. Between the two lies what fits.',
    },
  },
  bench:
    'Squeeze a spring solid in the caliper and write its length down. It is the number that is missing most often.',
};
