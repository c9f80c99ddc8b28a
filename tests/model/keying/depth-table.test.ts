import { describe, expect, test } from 'vitest';
import { depthTableOf, evenSteps, setDepthTable } from '../../../src/model/keying/depth-table.ts';
import { parseJob } from '../../../src/model/schema/parse-job.ts';
import { buildJob } from '../../support/job-builder.ts';

const asked = { first: 8, step: 0.5, count: 10, largestStep: 7 };

describe('a depth table', () => {
  test('of even steps is kept in the job as it was made, and taken out again', () => {
    const result = evenSteps(asked);
    if (result.type === 'error') throw new Error(result.message);
    const job = buildJob({ unit: 'mm' });
    const kept = setDepthTable(job, result.table);
    expect(parseJob(JSON.parse(JSON.stringify(kept)))).toMatchObject({ type: 'success' });
    const back = depthTableOf(kept);
    expect(back?.largestStep).toBe(7);
    expect(back?.rootDepths).toEqual([8, 7.5, 7, 6.5, 6, 5.5, 5, 4.5, 4, 3.5]);
    expect(setDepthTable(kept, null)).toEqual(job);
    expect(depthTableOf(job)).toBeNull();
  });

  test.each([
    [{ count: 0 }, /whole number from 1 to 24/],
    [{ count: 2.5 }, /whole number from 1 to 24/],
    [{ step: 0 }, /how much deeper the next cut is/],
    [{ step: Number.NaN }, /how much deeper the next cut is/],
    [{ count: 20 }, /would cut through/],
    [{ largestStep: 1.5 }, /Largest step between neighbours/],
  ])('%j gives a sentence', (change, sentence) => {
    const result = evenSteps({ ...asked, ...change });
    expect(result.type === 'error' && result.message).toMatch(sentence);
  });
});
