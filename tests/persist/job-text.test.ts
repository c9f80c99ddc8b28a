import { fc, test } from '@fast-check/vitest';
import { describe, expect, it } from 'vitest';
import type { Job } from '../../src/model/schema/job-schema.ts';
import {
  jobToText,
  MOST_BYTES,
  MOST_DEPTH,
  readJobBytes,
  readJobData,
  readJobText,
} from '../../src/persist/job-text.ts';
import { buildJob, changed } from '../support/job-builder.ts';
import { anyJob } from '../support/random-jobs.ts';

const job = buildJob();
const text = jobToText(job);

/** The sentences a text is refused with. */
function refusal(of: string): { reason: string; sentences: string[]; raw: string } {
  const read = readJobText(of);
  if (read.type === 'success') throw new Error('was not refused');
  const sentences = read.problems.map(({ field, message }) => `${field}: ${message}`);
  return { reason: read.reason, sentences, raw: read.raw };
}

/** The same data with its members in another order. */
function shuffled(data: unknown): unknown {
  if (Array.isArray(data)) return data.map(shuffled);
  if (typeof data !== 'object' || data === null) return data;
  const members = Object.entries(data).map(([name, member]): [string, unknown] => [name, shuffled(member)]);
  return Object.fromEntries(members.reverse());
}

describe('a job as text', () => {
  test.prop([anyJob], { numRuns: 100 })('comes back as it was', (any) => {
    expect(readJobText(jobToText(any))).toEqual({ type: 'success', job: any, migratedFrom: null });
  });

  test.prop([anyJob], { numRuns: 50 })(
    'is the same text for the same job, whatever the order of its members',
    (any) => {
      const other = shuffled(any) as Job;
      expect(Object.keys(other)).not.toEqual(Object.keys(any));
      expect(jobToText(other)).toBe(jobToText(any));
    },
  );

  it('begins with what it is, ends with a line feed, and has lines a person can read', () => {
    const lines = text.split('\n');
    expect(lines.slice(0, 4)).toEqual([
      '{',
      '  "format": "shearsight-job",',
      '  "schemaVersion": 1,',
      '  "id": "job",',
    ]);
    expect(lines.at(-1)).toBe('');
    expect(Math.max(...lines.map((line) => line.length))).toBeLessThanOrEqual(110);
    expect(text).toContain(
      '{ "typed": "0.512", "unit": "in", "value": 13.0048, "instrument": "caliper", "session": null }',
    );
  });

  it('is plain JSON for everybody else', () => {
    expect(JSON.parse(text)).toEqual(JSON.parse(JSON.stringify(job)));
  });
});

describe('a text that is no job', () => {
  it.each([
    ['empty', ' \n', 'file: This file is empty.'],
    [
      'cut off',
      text.slice(0, 2000),
      /^file: This file is not readable from line \d+ on: it is cut off or damaged there\.$/,
    ],
    ['not JSON at all', '<html>', /^file: This file is not readable/],
  ])('because it is %s is unreadable', (_, of, sentence) => {
    const { reason, sentences, raw } = refusal(of);
    expect([reason, sentences, raw]).toEqual(['unreadable', [expect.stringMatching(sentence)], of]);
  });

  it('says the line at which a person should look', () => {
    const lines = text.split('\n');
    lines[30] = '  "broken": ,';
    expect(refusal(lines.join('\n')).sentences[0]).toContain('from line 31 on');
  });

  it.each([
    ['text', '"hello"', 'file: This is not a Shearsight job: a job file holds one JSON object.'],
    ['a list', '[1, 2]', 'file: This is not a Shearsight job: a job file holds one JSON object.'],
    [
      'other data',
      '{"format": "recipe"}',
      'format: This is not a Shearsight job: its format is not "shearsight-job".',
    ],
  ])('but %s is told apart from damage', (_, of, sentence) => {
    expect(refusal(of)).toEqual({ reason: 'not a job', sentences: [sentence], raw: of });
  });

  it('because it nests too deep is refused before it is read', () => {
    const deep = `{"format":"shearsight-job","x":${'['.repeat(200_000)}`;
    expect(refusal(deep).reason).toBe('too deep');
    expect(refusal('['.repeat(MOST_DEPTH) + ']'.repeat(MOST_DEPTH)).reason).toBe('not a job');
    expect(refusal(`"${'['.repeat(MOST_DEPTH + 1)}"`).reason).toBe('not a job');
    expect(refusal(`["\\"${'['.repeat(MOST_DEPTH + 1)}"]`).reason).toBe('not a job');
  });

  it('because it is too large is refused, and says how large', () => {
    const { reason, sentences } = refusal(' '.repeat(MOST_BYTES + 1));
    expect([reason, sentences]).toEqual([
      'too large',
      ['file: This file is too large for a job: 20.0 MB, at most 20 MB.'],
    ]);
  });

  it.each([
    [
      'a list longer than any in a job',
      { parts: Array(20_001).fill(0) },
      'parts: has more than 20000 members.',
    ],
    [
      'more fields than anything has',
      { note: Object.fromEntries(Array.from({ length: 20_001 }, (_, i) => [`f${i}`, ''])) },
      'note: has more than 20000 fields.',
    ],
  ])('because of %s is refused before its members are looked at', (_, extra, sentence) => {
    expect(refusal(JSON.stringify({ ...job, ...extra })).sentences).toEqual([sentence]);
  });
});

describe('a job of another version', () => {
  it('that is newer is told apart, its text kept', () => {
    const newer = text
      .replace('"schemaVersion": 1', '"schemaVersion": 7')
      .replace('"title"', '"unheardOf": 1, "title"');
    const { reason, sentences, raw } = refusal(newer);
    expect([reason, raw]).toEqual(['newer', newer]);
    expect(sentences).toEqual([
      'schemaVersion: This job was saved by a newer Shearsight (file version 7; this one reads up to 1). Nothing was changed.',
    ]);
  });

  it.each(['"one"', '0', '1.5', 'null', '-3', '1e300'])('cannot have the version %s', (version) => {
    const odd = text.replace('"schemaVersion": 1', `"schemaVersion": ${version}`);
    expect(refusal(odd)).toMatchObject({
      reason: 'invalid',
      sentences: ['schemaVersion: should be the version of the file, a whole number from 1 on.'],
    });
  });
});

describe('names that mean something to every object', () => {
  const withMember = (at: string, member: string) => text.replace(at, `${member}, ${at}`);

  it.each(['__proto__', 'constructor', 'toString', 'hasOwnProperty', '__defineGetter__'])(
    'are refused: %s',
    (name) => {
      const hostile = withMember('"title"', `${JSON.stringify(name)}: { "polluted": true }`);
      expect(refusal(hostile).sentences).toEqual([`file: has a field that no job may have: ${name}.`]);
      expect(({} as { polluted?: boolean }).polluted).toBeUndefined();
    },
  );

  it('are refused where any name is allowed', () => {
    const hostile = text.replace('"shared": {}', '"shared": { "__proto__": "x" }');
    expect(hostile).not.toBe(text);
    expect(refusal(hostile).sentences).toEqual([
      'note › shared: has a field that no job may have: __proto__.',
    ]);
  });

  it('are refused as ids, which become names', () => {
    const hostile = text.replaceAll('"chamber-2"', '"constructor"');
    expect(refusal(hostile).sentences).toEqual([
      'cylinders 1 › chambers 2: has an id that no job may have: constructor.',
    ]);
  });

  it('are allowed as text', () => {
    const titled = changed(job, (copy) => {
      copy.title = '__proto__';
    });
    expect(readJobText(jobToText(titled))).toMatchObject({ type: 'success', job: { title: '__proto__' } });
  });
});

describe('the bytes of a file', () => {
  it('are read as UTF-8, with or without a mark in front', () => {
    const titled = changed(job, (copy) => {
      copy.title = 'Öl-Türe № 3';
    });
    const bytes = new TextEncoder().encode(jobToText(titled));
    const marked = Uint8Array.from([0xef, 0xbb, 0xbf, ...bytes]);
    for (const given of [bytes, marked])
      expect(readJobBytes(given)).toMatchObject({ type: 'success', job: titled });
  });

  it('that are no text are refused, not replaced by something readable', () => {
    const bytes = new TextEncoder().encode(text);
    bytes[text.indexOf('Test job')] = 0xff;
    const read = readJobBytes(bytes);
    expect(read).toMatchObject({ type: 'error', reason: 'unreadable' });
    expect(read.type === 'error' && read.raw.includes('\ufffdest job')).toBe(true);
  });

  it('that are too many are not even decoded', () => {
    expect(readJobBytes(new Uint8Array(MOST_BYTES + 1))).toMatchObject({ reason: 'too large', raw: '' });
  });
});

describe('readJobData', () => {
  it('takes nothing that is inherited', () => {
    const heir = Object.create(job) as object;
    expect(readJobData(heir)).toMatchObject({ type: 'error', reason: 'not a job' });
  });

  test.prop([fc.jsonValue({ maxDepth: 6 })], { numRuns: 500 })('answers any data with sentences', (data) => {
    const read = readJobData(data);
    expect(read).toMatchObject({ type: 'error' });
    if (read.type === 'error') expect(read.problems.every(({ message }) => /\.$/.test(message))).toBe(true);
  });
});
