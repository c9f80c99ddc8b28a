/** One range is told with one pair of figures: in the answer, in the table, in the bag; and with which ball the bag counts. */
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { firstSelection } from '../../src/model/measured/selection.ts';
import type { Job } from '../../src/model/schema/job-schema.ts';
import { setUnit } from '../../src/model/edit/edit-settings.ts';
import { formatRange } from '../../src/model/units/format-range.ts';
import { answerOf } from '../../src/panels/answer/answer-of.ts';
import { sayRange } from '../../src/panels/check/driver-words.ts';
import { bagOf, wantedRanges } from '../../src/panels/parts/bag.ts';
import { lookAt } from '../../src/panels/shared/look.ts';

const example = JSON.parse(readFileSync('public/examples/lighthouse.json', 'utf8')) as Job;

test.each(['in', 'mm'] as const)('the answer, the table and the bag say the same, in %s', (unit) => {
  const job = setUnit(example, unit);
  const look = lookAt(job, firstSelection(job)!);
  const said = answerOf(look).points[0]!.text;
  const range = wantedRanges(look, bagOf(look), null).find(({ number }) => number === 5)!;
  const [from, to] = formatRange(range.from, range.to, unit);
  expect(said).toContain(`Use a ball + bottom pin of ${from} ${unit} to ${to} ${unit}.`);
  // What is best is never outside what is wanted.
  for (const { best, from: least, to: most } of wantedRanges(look, bagOf(look), null)) {
    expect(best).toBeGreaterThanOrEqual(least);
    expect(best).toBeLessThanOrEqual(most);
  }
});

test('the ball that is counted in is said beside the ranges', () => {
  const look = lookAt(example, firstSelection(example)!);
  // 5/32 in is .15625, told to the ten-thousandth.
  expect(bagOf(look).ballWords).toMatch(
    /^A pin measured alone is counted with a ball of \.1563 in \(ball 1\) under it\.$/u,
  );
});

test('drivers that do are told inwards to half thousandths', () => {
  // .2312 to .2891 in; one that holds no half thousandth as it is; none that does as both its limits.
  const range = (from: number, to: number) => sayRange({ shortest: from * 25.4, longest: to * 25.4 }, 'in');
  expect(range(0.2312, 0.2891)).toBe('.2315 to .2890');
  expect(range(0.3, 0.29)).toBe('.3000 to .2900');
  expect(sayRange({ shortest: null, longest: 7 }, 'mm')).toBe('? to 7.00');
});
