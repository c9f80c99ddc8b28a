import { fc, test } from '@fast-check/vitest';
import { describe, expect, it } from 'vitest';
import { findJsonDamage } from '../../src/persist/find-json-damage.ts';
import { jobToText } from '../../src/persist/job-text.ts';
import { buildJob } from '../support/job-builder.ts';
import { mutateText, seeded } from '../support/mutate-text.ts';

function isJson(text: string): boolean {
  try {
    JSON.parse(text);
    return true;
  } catch {
    return false;
  }
}

const pieces = [
  '{',
  '}',
  '[',
  ']',
  ',',
  ':',
  '"a"',
  '"\\u00e9"',
  '"\\x"',
  '"',
  '1',
  '-',
  '0',
  '01',
  '1.5e-3',
  '.5',
  'true',
  'nul',
  ' ',
  '\n',
  '\u00a0',
  '\t"',
];

describe('findJsonDamage', () => {
  test.prop([fc.array(fc.constantFrom(...pieces), { maxLength: 12 }).map((list) => list.join(''))], {
    numRuns: 20_000,
  })('finds damage in exactly those texts that JSON.parse refuses', (text) => {
    expect(findJsonDamage(text) === null).toBe(isJson(text));
  });

  it('does so for damaged job files too', () => {
    const whole = jobToText(buildJob({ chambers: 1 }));
    const counts = { sound: 0, damaged: 0 };
    for (let seed = 0; seed < 2000; seed++) {
      const text = mutateText(whole, seeded(seed));
      const place = findJsonDamage(text);
      counts[place === null ? 'sound' : 'damaged'] += 1;
      expect(place === null, `seed ${seed}`).toBe(isJson(text));
    }
    expect(Math.min(counts.sound, counts.damaged)).toBeGreaterThan(200);
  });

  it.each([
    ['a missing comma', '{"a": 1 "b": 2}', 8],
    ['an end too early', '[1, 2', 5],
    ['something behind the end', '{} x', 3],
    ['a trailing comma', '[1, ]', 4],
    ['the wrong bracket', '[1}', 2],
    ['a name that is no text', '{a: 1}', 1],
    ['a string that never ends', '["abc', 1],
    ['nothing', '', 0],
  ])('points at %s', (_, text, place) => {
    expect(findJsonDamage(text)).toBe(place);
  });

  test.prop([fc.json()])('finds none in sound text', (text) => {
    expect(findJsonDamage(text)).toBeNull();
  });
});
