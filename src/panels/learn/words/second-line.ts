import type { LessonWords } from './lesson-words.ts';

const OPTIONS = {
  plug: 'The plug alone',
  together: 'Plug and sleeve together',
  nothing: 'Nothing',
};
const WHY =
  'A line turns when every chamber has a split at it. Chambers that have theirs at different lines hold each other: each is right, and nothing moves.';

export const SECOND_LINE_WORDS: LessonWords = {
  title: 'A second line',
  idea: 'Every chamber has a split at a line, so it turns.',
  steps: {
    'all-inner': {
      ask: 'A sleeve lies around the plug: the inner line runs between plug and sleeve, the outer line between sleeve and shell. All three chambers have a split at the inner line. What turns?',
      options: OPTIONS,
      why: WHY,
    },
    'all-outer': {
      ask: 'A sleeve lies around the plug: the inner line runs between plug and sleeve, the outer line between sleeve and shell. All three chambers have a split at the outer line. What turns?',
      options: OPTIONS,
      why: WHY,
    },
    mixed: {
      ask: 'A sleeve lies around the plug: the inner line runs between plug and sleeve, the outer line between sleeve and shell. Split at the inner line: chamber {inner}. Split at the outer line: chamber {outer}. What turns?',
      options: OPTIONS,
      why: WHY,
    },
  },
  bench: 'With two keys for one cylinder, work out line by line what each stack does, before you load.',
};
