import { fc, test } from '@fast-check/vitest';
import { describe, expect } from 'vitest';
import { measureText } from '../../../src/model/history/measure-text.ts';
import { shareStructure } from '../../../src/model/history/share-structure.ts';
import { changed } from '../../support/job-builder.ts';
import { anyEdit, anyJob } from '../../support/random-jobs.ts';

const plain = fc.jsonValue({ maxDepth: 4 });

describe('shareStructure', () => {
  test.prop([plain, plain])('gives data equal to what it was given', (before, after) => {
    expect(shareStructure(before, after)).toEqual(after);
  });

  test.prop([plain])('gives the very same data back when nothing differs', (before) => {
    expect(shareStructure(before, structuredClone(before))).toBe(before);
  });

  test.prop([anyJob, anyEdit])('leaves both jobs as they were', (job, { change }) => {
    const after = structuredClone(change(job));
    const [oldText, newText] = [JSON.stringify(job), JSON.stringify(after)];
    shareStructure(job, after);
    expect([JSON.stringify(job), JSON.stringify(after)]).toEqual([oldText, newText]);
  });

  test.prop([anyJob])('keeps every member of a list that is only moved', (job) => {
    const after = changed(job, (copy) => void copy.parts.reverse());
    const shared = shareStructure(job, after);
    expect(shared.parts.every((part) => job.parts.includes(part))).toBe(true);
    expect(shared.cylinders).toBe(job.cylinders);
  });

  test('takes a member that is undefined for one that is absent', () => {
    const before = { kept: 1 };
    expect(shareStructure(before, { kept: 1, gone: undefined })).toBe(before);
    expect(Object.keys(shareStructure({ kept: 2 }, { kept: 1, gone: undefined }))).toEqual(['kept']);
  });

  test('keeps a member named __proto__ a member', () => {
    const hostile = JSON.parse('{"__proto__": {"polluted": true}, "x": 1}') as object;
    const shared = shareStructure({ x: 1 }, hostile);
    expect(Object.keys(shared)).toEqual(['__proto__', 'x']);
    expect(Object.getPrototypeOf(shared)).toBe(Object.prototype);
  });
});

describe('measureText', () => {
  test.prop([plain])('is the length of the JSON text', (data) => {
    expect(measureText(data)).toBe(JSON.stringify(data).length);
  });

  test('counts members that are undefined as absent', () => {
    expect(measureText({ kept: 1, gone: undefined })).toBe('{"kept":1}'.length);
  });
});
