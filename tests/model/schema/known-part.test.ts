/** What is left of a job that a newer version saved, and when nothing is. */
import { describe, expect, test } from 'vitest';
import type { Job } from '../../../src/model/schema/job-schema.ts';
import { knownPart } from '../../../src/model/schema/known-part.ts';
import { printable } from '../../../src/model/schema/printable.ts';
import { buildJob } from '../../support/job-builder.ts';

/** As a newer version would have saved it. */
function newer(
  change: (job: Job & Record<string, unknown>) => void = () => undefined,
): Record<string, unknown> {
  const data = { ...structuredClone(buildJob({ chambers: 2 })), schemaVersion: 7 };
  change(data as never);
  return data;
}

const known = buildJob({ chambers: 2 });

/** A member within a member within a member, so many deep, in place of a label's text. */
const nest = (depth: number): unknown => (depth === 0 ? 1 : { deeper: nest(depth - 1) });

describe('what this version knows of a newer job', () => {
  test('is all of it, where it has no new members', () => {
    expect(knownPart(newer())).toEqual(known);
  });

  test('is what is left without the new members, wherever they are', () => {
    const read = knownPart(
      newer((job) => {
        Object.assign(job, { colour: 'red', weights: [1, 2] });
        Object.assign(job.settings, { language: 'en' });
        Object.assign(job.cylinders[0]!.chambers[1]!, { finish: { kind: 'reamed' } });
        Object.assign(job.keys[0]!.rootFlat!.readings[0]!, { by: 'hand', at: 'noon' });
      }),
    );
    expect(read).toEqual(known);
  });

  test('is nothing, where a known member has another form', () => {
    expect(knownPart(newer((job) => Object.assign(job, { title: { text: 'Test job' } })))).toBeNull();
    expect(knownPart(newer((job) => Object.assign(job, { title: 7, colour: 'red' })))).toBeNull();
    expect(knownPart(newer((job) => Object.assign(job.settings, { unit: 'cubits' })))).toBeNull();
    expect(knownPart({ format: 'shearsight-job', schemaVersion: 7 })).toBeNull();
  });

  test('is nothing, where what is left refers to what is not there', () => {
    expect(knownPart(newer((job) => (job.plans[0]!.cylinder = 'lost')))).toBeNull();
  });

  test('is told apart however deep the new members lie', () => {
    const read = knownPart(newer((job) => Object.assign(job.note, { more: nest(30) })));
    expect(read?.note).toEqual({ shared: {}, restricted: {} });
  });

  test('keeps a member whose name a newer version and the language share out of the way', () => {
    const data = newer();
    Object.defineProperty(data, 'constructor', {
      value: { odd: true },
      enumerable: true,
      configurable: true,
    });
    expect(knownPart(data)).toEqual(known);
  });
});

describe('a name in a sentence', () => {
  test.each([
    ['as it is', 'Back door', 'Back door'],
    ['without its line break', 'Back\ndoor', 'Back\uFFFDdoor'],
    ['without what turns the reading direction', 'a\u202Eb', 'a\uFFFDb'],
    ['without half a character', 'a\uD800b', 'a\uFFFDb'],
    ['of sixty characters whole', 'x'.repeat(60), 'x'.repeat(60)],
    ['cut after sixty', 'x'.repeat(61), `${'x'.repeat(60)}…`],
    ['cut between characters, not within one', '🔑'.repeat(61), `${'🔑'.repeat(60)}…`],
    ['whole with characters of two halves', '🔑'.repeat(60), '🔑'.repeat(60)],
    ['cut when it is very long', 'x'.repeat(1000), `${'x'.repeat(60)}…`],
  ])('stands %s', (_, name, shown) => {
    expect(printable(name)).toBe(shown);
  });
});
