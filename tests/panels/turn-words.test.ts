import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { firstSelection } from '../../src/model/measured/selection.ts';
import { asRadians } from '../../src/model/radians.ts';
import type { Job } from '../../src/model/schema/job-schema.ts';
import { turnAttempt, turnWords } from '../../src/panels/section/turn-words.ts';
import { lookAt } from '../../src/panels/shared/look.ts';

const example = JSON.parse(readFileSync('public/examples/lighthouse.json', 'utf8')) as Job;

test('a turn that will stop never says that it turned by nothing, and says why where it stops', () => {
  const look = lookAt(example, firstSelection(example)!);
  const { reach } = turnAttempt(look, null)!;
  expect(reach).toBeGreaterThan(0);
  for (let i = 0; i <= 40; i++) {
    const words = turnWords(look, asRadians((reach * i) / 40), null);
    expect(words).not.toMatch(/Turned 0°|turns: 0°/u);
    if (i < 40) expect(words).toMatch(/^(?:Starting to turn|Turned \d+(?:\.\d)?° so far)$/u);
    else
      expect(words).toMatch(/^Stops at about \d+(?:\.\d)?°: chamber 5, its bottom pin stands in the shell$/u);
  }
});
