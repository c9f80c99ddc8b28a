import type { LessonWords } from './lesson-words.ts';

const PARTS = { 'bottom-pin': 'The bottom pin', driver: 'The driver' };
const TURNS = { turns: 'It turns', rubs: 'It turns, but rubs', stops: 'It does not turn' };
const WHY_CROSSES =
  'High: the part under the split, the bottom pin, reaches up into the shell. Low: the part over it, the driver, hangs down into the plug.';
const WHY_TURNS =
  "Low, the plug's edge can lift a driver whose edge is broken, down to a point. High, there is only the play between plug and shell: the pin uses it up and rubs, and past it nothing turns.";

export const HIGH_OR_LOW_WORDS: LessonWords = {
  title: 'High or low: which part crosses?',
  idea: 'A gap and an overlap are the same thing, a few thousandths either way.',
  steps: {
    'crosses-high': {
      ask: 'Key in, the split stands {by} above the line. Which part stands across the line?',
      options: PARTS,
      why: WHY_CROSSES,
    },
    'crosses-low': {
      ask: 'Key in, the split lies {by} below the line. Which part stands across the line?',
      options: PARTS,
      why: WHY_CROSSES,
    },
    'turns-high': {
      ask: 'The split is {by} high. The pin is domed, the driver has a broken edge, the play is usual. Does the plug turn?',
      options: TURNS,
      why: WHY_TURNS,
    },
    'turns-low': {
      ask: 'The split is {by} low. The pin is domed, the driver has a broken edge, the play is usual. Does the plug turn?',
      options: TURNS,
      why: WHY_TURNS,
    },
  },
  bench:
    'Lay a feeler strip under the key to lift a stack a little, and feel the plug go from free to rubbing to held.',
};
