/** Every finding in a job where it is so, and not in a neighbour of that job. The sizes are worked out by hand in the cases. */
import { describe, expect, test } from 'vitest';
import { allFindings } from '../../../src/model/findings/all-findings.ts';
import { gatherFacts } from '../../../src/model/findings/facts.ts';
import { FINDING_CODES } from '../../../src/model/findings/finding-codes.ts';
import type { Job } from '../../../src/model/schema/job-schema.ts';
import { lookAt } from '../../support/cylinder-h.ts';
import { FINDING_CASES, soundJob } from '../../support/finding-cases.ts';

function findingsOf(job: Job) {
  const { bench, assembly, evaluation } = lookAt(job);
  return allFindings(gatherFacts(bench, assembly, evaluation));
}

test('nothing at all is told of a sound job', () => {
  expect(findingsOf(soundJob())).toEqual([]);
});

test('the cases cover every code there is', () => {
  expect(Object.keys(FINDING_CASES).sort()).toEqual([...FINDING_CODES].sort());
  expect(FINDING_CODES.length).toBeGreaterThan(40);
});

describe.each(FINDING_CODES)('%s', (code) => {
  const [fires, doesNot] = FINDING_CASES[code]();

  test('is told where it is so, in a sentence, with where to look', () => {
    const told = findingsOf(fires).find((each) => each.code === code);
    expect(told?.message).toMatch(/^[A-Z].*[.]$/u);
    expect(told?.message).not.toMatch(/NaN|undefined|null|Infinity/u);
    expect(Number.isFinite(told?.show?.travel)).toBe(true);
    const { assembly } = lookAt(fires);
    for (const chamber of told?.chambers ?? [])
      expect(assembly.chambers.map(({ id }) => id)).toContain(chamber);
  });

  test('is not told of its neighbour', () => {
    expect(findingsOf(doesNot).map((each) => each.code)).not.toContain(code);
  });
});
