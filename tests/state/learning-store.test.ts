/** What belongs to a learner: comes back as it was kept, damage costs no more than what it hit, and none of it is a job's. */
import { fc, test as property } from '@fast-check/vitest';
import { expect, test } from 'vitest';
import { keepLearning, loadLearning } from '../../src/persist/learning-storage.ts';
import {
  createLearningStore,
  EMPTY_LEARNING,
  keptForm,
  readLearning,
} from '../../src/state/learning-store.ts';

function memory(): Pick<Storage, 'getItem' | 'setItem'> {
  const kept = new Map<string, string>();
  return { getItem: (key) => kept.get(key) ?? null, setItem: (key, text) => void kept.set(key, text) };
}

const SEALED = `-----BEGIN AGE ENCRYPTED FILE-----\nYWdl\n-----END AGE ENCRYPTED FILE-----\n`;
const FULL = {
  language: 'de',
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
  careful: ['.3345', '8,49 mm'],
  hurried: [''],
  practice: {
    file: { card: { label: 'P 7', unit: 'mm', chambers: 2 }, sealed: SEALED },
    typed: { plug: '19,0' },
  },
} as const;

test('everything comes back from storage, language and half-typed readings too', () => {
  const storage = memory();
  const store = createLearningStore();
  store.getState().set(FULL);
  expect(keepLearning(keptForm(store.getState()), storage)).toBe(true);
  expect(readLearning(loadLearning(storage))).toEqual(FULL);
});

test('forgetting leaves nothing', () => {
  const storage = memory();
  keepLearning(keptForm(FULL), storage);
  keepLearning(keptForm(EMPTY_LEARNING), storage);
  expect(readLearning(loadLearning(storage))).toEqual(EMPTY_LEARNING);
  expect(JSON.stringify(loadLearning(storage))).not.toContain('J. Example');
});

test('a field that is damaged is as if it was never set; the others count', () => {
  const kept = { ...keptForm(FULL), language: 'xx', practice: '{"format":', name: 7 };
  expect(readLearning(kept)).toEqual({
    ...EMPTY_LEARNING,
    rounds: FULL.rounds,
    careful: FULL.careful,
    hurried: FULL.hurried,
  });
});

property.prop([fc.anything()])('whatever was kept is read', (data) => {
  expect(readLearning(data).language).toMatch(/^(?:en|de)$/u);
});

test('a browser that keeps nothing, or throws, leaves everybody with the defaults', () => {
  const broken = {
    getItem: () => {
      throw new Error('refused');
    },
    setItem: () => {
      throw new Error('full');
    },
  };
  expect(loadLearning(broken)).toBeNull();
  expect(keepLearning({}, broken)).toBe(false);
  expect(loadLearning({ getItem: () => '{"cut', setItem: () => undefined })).toBeNull();
  expect(loadLearning(null)).toBeNull();
  expect(keepLearning({}, null)).toBe(false);
});
