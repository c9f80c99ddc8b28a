import type { LessonWords } from './lesson-words.ts';

const ASK_TAIL =
  'With the key home the split is at the line. Now the key stops {short} short. What happens to the split?';
const OPTIONS = { higher: 'It stands higher', same: 'It stays where it is' };
const WHY =
  'What rides on a side of the cut climbs when the key is not home. What stands on the flat does not notice, as long as the flat reaches that far.';

export const NOT_HOME_WORDS: LessonWords = {
  title: 'A key that is not quite home',
  idea: 'Nearly home is home.',
  steps: {
    'what-happens-ball': {
      ask: `A ball rides on both sides of its cut. ${ASK_TAIL}`,
      options: OPTIONS,
      why: WHY,
    },
    'what-happens-point': {
      ask: `A pointed pin stands in the middle of the flat of its cut. ${ASK_TAIL}`,
      options: OPTIONS,
      why: WHY,
    },
    'how-much': {
      ask: 'The ball rides on sides at 45°, and the key stops {short} short. How far does the split move?',
      why: 'On a side at 45° the ball climbs as far as the key is out: one for one.',
    },
  },
  bench: 'Put a strip of feeler gauge between the shoulder and the plug, and try the turn.',
};
