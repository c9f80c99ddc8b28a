import type { LessonWords } from './lesson-words.ts';

export const BALL_IN_DIMPLE_WORDS: LessonWords = {
  title: 'A ball in the dimple of its pin',
  idea: 'Add the ball to the pin; or leave it out, it is so small.',
  steps: {
    'how-high': {
      ask: 'The pin is {pin} long, end to end. The ball measures {ball} and sits in a dimple with a mouth of {mouth}. How high do the two stand together?',
      options: {
        added: 'Pin and ball added up, {added}',
        seated: 'A little less than both added up',
        'pin-alone': 'As high as the pin alone, {pin}',
      },
      why: 'The ball sinks into the dimple until it meets the rim. Here the two stand {seated} high: measure them together, whenever you can.',
    },
  },
  bench:
    'Measure a pin, its ball, then both together in the jaws. The sum of the first two is more than the third.',
};
