/** One pin measured ten times. */
export const TEN_WORDS = {
  idea: 'The display says .3345, so it is .3345.',
  lead: 'Take one pin and your caliper. Measure its length, take it out, close the jaws, measure again: ten times, with care.',
  predict: 'First: how far apart will the largest and the smallest be?',
  predictNote: 'Lock it in, then measure.',
  lock: 'Lock it in and measure',
  locked: 'You expected {by} between the largest and the smallest.',
  caliper: 'What you measure with',
  calipers: {
    'digital caliper': 'Digital caliper',
    'dial caliper': 'Dial caliper',
    micrometer: 'Micrometer',
  },
  careful: 'With care',
  hurried: 'In a hurry',
  hurriedLead:
    'Now the same pin ten times as fast as you can: do not wipe the jaws, do not square the pin. Not obliged, but telling.',
  reading: 'Reading {number}',
  more: { one: '{count} reading to go.', other: '{count} readings to go.' },
  result: 'What they tell',
  mean: 'Middle of all (mean)',
  apart: 'Largest less smallest',
  deviation: 'Spread of one reading (standard deviation)',
  meanDoubt: 'The mean of ten is good to about ±',
  oneDoubt: 'Any one of them is good to about ±',
  splitDoubt: 'A split from four lengths, each read once like this: ±',
  doubtNote:
    'Nineteen times in twenty. The caliper’s own error ({own}) is in it, and does not shrink with readings.',
  expected: 'You expected {expected}; it was {apart}.',
  compare:
    'In a hurry one reading is good to ±{hurried}, with care to ±{careful}. A split read in a hurry: ±{split}.',
  picture: 'Readings with care{hurried}, from {from} to {to}; the mean is {mean}.',
  pictureHurried: ' and in a hurry',
  startOver: 'Start over',
  bench: 'Do it again tomorrow with the same pin. If the middle moved, look at the zero of your caliper.',
} as const;
