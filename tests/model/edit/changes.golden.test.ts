/** What every edit changes in a job that has two of everything, and in one that was just begun, kept as text. */
import { describe, test } from 'vitest';
import { type Edits, editText } from '../../support/edit-text.ts';
import { pairedJob } from '../../support/paired-job.ts';
import { expectGolden } from '../../support/golden.ts';
import { begunEdits, valuesIn } from './begun-edits.ts';
import { CYLINDER_EDITS, SETTING_EDITS } from './cylinder-edits.ts';
import { KEY_EDITS, SEATING_EDITS, SET_EDITS } from './key-edits.ts';
import { BAG_EDITS, LABEL_ANSWERS, PLAN_EDITS, REMOVALS } from './part-edits.ts';
import { PICTURE_EDITS, STACK_EDITS } from './stack-edits.ts';
import { CHAMBER_EDITS, ROW_ANSWERS, SLEEVE_EDITS, WHOLE_EDITS } from './whole-edits.ts';
import { emptyBench } from './edit-support.ts';

const TOPICS = {
  cylinder: CYLINDER_EDITS,
  settings: SETTING_EDITS,
  key: KEY_EDITS,
  seating: SEATING_EDITS,
  'known-set': SET_EDITS,
  stack: STACK_EDITS,
  pictures: PICTURE_EDITS,
  chambers: CHAMBER_EDITS,
  rows: ROW_ANSWERS,
  sleeve: SLEEVE_EDITS,
  whole: WHOLE_EDITS,
  bag: BAG_EDITS,
  removals: REMOVALS,
  plans: PLAN_EDITS,
  labels: LABEL_ANSWERS,
};

describe('what edits change', () => {
  test.each(Object.entries(TOPICS))('%s', (topic, edits) => {
    expectGolden(`edits/${topic}.txt`, editText(pairedJob(), edits));
  });

  test.each(['in', 'mm'] as const)('in a job just begun in %s', (unit) => {
    const { job, where } = emptyBench(2, unit);
    expectGolden(`edits/begun-${unit}.txt`, editText(job, begunEdits(where)));
  });

  test.each(['in', 'mm'] as const)('a job just begun in %s, and values made in it', (unit) => {
    const whole: Edits = {
      'as it is': (begun) => ({ ...begun, format: undefined }),
      values: () => valuesIn(unit),
    };
    expectGolden(`edits/just-begun-${unit}.txt`, editText(emptyBench(2, unit).job, whole));
  });
});
