/** A learner's file: comes back as it was saved; what is no such file, cut off, newer or partly broken is told. */
import { fc, test as property } from '@fast-check/vitest';
import { expect, test } from 'vitest';
import { hasProgress, learningFileText, readLearningFile } from '../../src/state/learning-file.ts';
import { EMPTY_LEARNING, type Learning } from '../../src/state/learning-store.ts';

const LEARNING: Learning = {
  ...EMPTY_LEARNING,
  name: 'J. Example',
  rounds: [
    {
      lesson: 'deep-cut',
      seed: 3,
      unit: 'in',
      toleranceMm: 0.0127,
      answers: [{ step: 'how-long', prediction: 8.5 }],
    },
  ],
  careful: ['.3345'],
};
const TEXT = learningFileText(LEARNING, ['deep-cut', 'key-floor']);

test('what was saved is read back, a mark at its start does not matter', () => {
  const read = { type: 'learning', learning: LEARNING, seenLessons: ['deep-cut', 'key-floor'], lost: 0 };
  expect(readLearningFile(TEXT)).toEqual(read);
  expect(readLearningFile(`\ufeff${TEXT}`)).toEqual(read);
});

test('a file cut off is damaged, another file is not one, a later one is newer', () => {
  for (const at of [60, TEXT.length / 2, TEXT.length - 3])
    expect(readLearningFile(TEXT.slice(0, at))).toEqual({ type: 'error', fault: 'damaged' });
  for (const text of ['', 'abc', '{}', '[1]', 'null', '{"format":"shearsight-practice-cylinder"}'])
    expect(readLearningFile(text)).toEqual({ type: 'error', fault: 'not one' });
  const newer = TEXT.replace('"version": 1', '"version": 2');
  expect(readLearningFile(newer)).toEqual({ type: 'error', fault: 'newer' });
  const without = JSON.stringify({ ...(JSON.parse(TEXT) as object), rounds: 'many' });
  expect(readLearningFile(without)).toEqual({ type: 'error', fault: 'damaged' });
});

test('a round that cannot be read is counted; lessons that are not there are left out', () => {
  const data = JSON.parse(TEXT) as { rounds: unknown[]; seenLessons: unknown[] };
  data.rounds.push({ lesson: 'no such lesson' }, 7);
  data.seenLessons.push('no such lesson', 7);
  const read = readLearningFile(JSON.stringify(data));
  expect(read).toMatchObject({ type: 'learning', lost: 2, seenLessons: ['deep-cut', 'key-floor'] });
});

test('what would be lost is asked about; the language alone is nothing to lose', () => {
  expect(hasProgress({ ...EMPTY_LEARNING, language: 'de', careful: [''] })).toBe(false);
  expect(hasProgress(LEARNING)).toBe(true);
  expect(hasProgress({ ...EMPTY_LEARNING, hurried: ['.33'] })).toBe(true);
});

property.prop([fc.string()])('any text is answered', (text) => {
  expect(['learning', 'error']).toContain(readLearningFile(text).type);
});
