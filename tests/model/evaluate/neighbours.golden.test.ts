/**
 * What each field does: of a small job in which everything is filled in, what is answered otherwise when one place is changed. Long lists
 * of differences are kept by their beginning and a sum of the rest; `EVERY_DIFFERENCE=1` writes them whole where a test fails.
 */
import { createHash } from 'node:crypto';
import { describe, test } from 'vitest';
import { assemble } from '../../../src/model/assembly/build-assembly.ts';
import { layOut } from '../../../src/model/measured/selection.ts';
import type { Job } from '../../../src/model/schema/job-schema.ts';
import { sureness } from '../../../src/model/sureness/sureness.ts';
import { quickAnswers } from '../../support/answer-text.ts';
import { differences } from '../../support/as-text.ts';
import { fullJob } from '../../support/full-job.ts';
import { expectGoldenPart } from '../../support/golden.ts';
import { neighbours } from '../../support/neighbour-jobs.ts';

const SELECTION = { cylinder: 'cylinder', key: 'key', plan: 'plan' } as const;
const MOST_LINES = 6;

const howSure = (job: Job) => {
  const bench = layOut(job, SELECTION);
  return sureness(bench, assemble(bench));
};

/** Of the changes that are alike, so many are tried: those of the first chamber's parts are those of the second's too. */
const CASES = [
  { name: 'one line', hasSleeve: false, every: 2, at: 0, ask: (job: Job) => quickAnswers(job, SELECTION) },
  {
    name: 'with a sleeve',
    hasSleeve: true,
    every: 4,
    at: 1,
    ask: (job: Job) => quickAnswers(job, SELECTION),
  },
  { name: 'how sure', hasSleeve: false, every: 20, at: 3, ask: howSure },
] as const;

describe.each(CASES)('what a field changes, $name', ({ name, hasSleeve, every, at, ask }) => {
  const job = fullJob(hasSleeve);
  const tried = neighbours(job, every, at);
  const before = ask(job);

  test.each(tried)('$name', ({ name: place, job: neighbour }) => {
    const found = differences(before, ask(neighbour));
    expectGoldenPart(
      `neighbours/${name.replaceAll(' ', '-')}.txt`,
      place,
      `${shortened(found).join('\n')}\n`,
    );
  });
});

function shortened(lines: readonly string[]): readonly string[] {
  if (lines.length === 0) return ['nothing'];
  if (lines.length <= MOST_LINES || process.env['EVERY_DIFFERENCE'] === '1') return lines;
  const rest = lines.slice(MOST_LINES);
  const sum = createHash('sha256').update(rest.join('\n')).digest('hex').slice(0, 8);
  return [...lines.slice(0, MOST_LINES), `and ${rest.length} more (${sum})`];
}
