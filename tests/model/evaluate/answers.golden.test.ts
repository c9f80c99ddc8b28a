/**
 * Everything that is answered, kept as text: a change of any figure, sentence or order shows up here, where a person reads what
 * changed and decides whether it should. That the figures are right is held elsewhere, against what lies outside.
 */
import { readFileSync } from 'node:fs';
import { describe, test } from 'vitest';
import { allSelections } from '../../../src/model/measured/selection.ts';
import type { Job } from '../../../src/model/schema/job-schema.ts';
import { everyAnswer, quickAnswers } from '../../support/answer-text.ts';
import { asText, differences } from '../../support/as-text.ts';
import { FINDING_CASES } from '../../support/finding-cases.ts';
import { expectGolden } from '../../support/golden.ts';
import { smallJob } from '../../support/small-job.ts';

const read = (path: string) => JSON.parse(readFileSync(path, 'utf8')) as Job;

describe('what is answered', () => {
  test.each([
    ['lighthouse', 'public/examples/lighthouse.json'],
    ['harbour-store', 'public/examples/harbour-store.json'],
    ['cylinder-h', 'tests/fixtures/jobs/cylinder-h.json'],
  ])('about every pair of %s', (name, path) => {
    const job = read(path);
    allSelections(job).forEach((selection, i) => {
      expectGolden(`answers/${name}-${i + 1}.txt`, asText(everyAnswer(job, selection)));
    });
  });

  test.each(Object.entries(FINDING_CASES))('where one field tells %s', (code, pair) => {
    const [fires, doesNot] = pair();
    const [before, after] = [doesNot, fires].map((job) => everyAnswer(job, allSelections(job)[0]!));
    expectGolden(`what-one-field-changes/${code}.txt`, `${differences(before, after).join('\n')}\n`);
  });

  // Mostly one chamber, so that each takes a moment only; tamer ones first.
  test.each(Array.from({ length: 60 }, (_, i) => i + 1))('about job %s drawn at random', (seed) => {
    const job = smallJob(seed, Math.floor(seed / 15) / 4);
    expectGolden(`drawn-jobs/${seed}.txt`, asText(quickAnswers(job, allSelections(job)[0]!)));
  });
});
