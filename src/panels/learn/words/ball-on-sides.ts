import type { LessonWords } from './lesson-words.ts';

export const BALL_ON_SIDES_WORDS: LessonWords = {
  title: 'A ball that rides on the sides',
  idea: 'The ball sits on the bottom of the cut.',
  steps: {
    where: {
      ask: 'The cut has a flat of {flat} between sides at 90°. The ball measures {ball}. The pin was chosen as if the ball lay on the bottom of the cut. Where will the split stand?',
      why: 'A ball that is large for its flat touches the two sides before it reaches the bottom. It stands higher, and so does everything on it.',
    },
  },
  bench:
    'Lay a ball in a cut and measure over it. Then measure the root depth: ball and root depth added up may be less.',
};
