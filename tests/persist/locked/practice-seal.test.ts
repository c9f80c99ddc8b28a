/** A sealed practice cylinder: opens with its passphrase only, shows nothing of its figures, and cannot pass for another. */
import { describe, expect, test } from 'vitest';
import {
  practiceFileText,
  readPracticeFile,
  type PracticeFile,
} from '../../../src/model/learning/practice-file.ts';
import type { Figures, PracticeCard } from '../../../src/model/learning/practice-figures.ts';
import { passphraseLock } from '../../../src/persist/locked/passphrase-lock.ts';
import { openPractice, sealPractice } from '../../../src/persist/locked/practice-seal.ts';

const CARD: PracticeCard = { label: 'P 7', unit: 'in', chambers: 1 };
const FIGURES: Figures = { plug: 18.9992, floor: 1.0668, 'root-1': 9.3726, 'pin-1': 8.5598 };
// A low work factor: the tests are about what is in the file, not about how slow it is.
const lock = passphraseLock(4);
const PASSPHRASE = 'four plain words here';
const text = await sealPractice(CARD, FIGURES, PASSPHRASE, lock);

function fileOf(written: string): PracticeFile {
  const read = readPracticeFile(written);
  if (read.type === 'error') throw new Error(read.fault);
  return read.file;
}

test('the passphrase gives the figures back, exactly', async () => {
  expect(await openPractice(fileOf(text), PASSPHRASE, lock)).toEqual({ type: 'figures', figures: FIGURES });
  expect(fileOf(text).card).toEqual(CARD);
  expect(practiceFileText(fileOf(text))).toBe(text);
});

test('no figure, in mm or inches, and no word for one stands in the file', () => {
  for (const told of [
    '18.99',
    '.748',
    '0.748',
    '1.066',
    '9.37',
    '.369',
    '8.55',
    '.337',
    'plug',
    'root',
    'pin',
    'floor',
  ])
    expect(text, told).not.toContain(told);
  // Not merely written in another alphabet either.
  const sealed = fileOf(text).sealed.split('\n').slice(1, -2).join('');
  expect(atob(sealed)).not.toContain('plug');
});

test('two seals of the same figures differ', async () => {
  expect(await sealPractice(CARD, FIGURES, PASSPHRASE, lock)).not.toBe(text);
});

describe('what does not open', () => {
  test('another passphrase', async () => {
    expect(await openPractice(fileOf(text), 'Four plain words here', lock)).toEqual({
      type: 'error',
      reason: 'wrong passphrase',
    });
  });

  test('a seal under another card', async () => {
    const other = { ...fileOf(text), card: { ...CARD, label: 'P 8' } };
    expect(await openPractice(other, PASSPHRASE, lock)).toEqual({ type: 'error', reason: 'damaged' });
  });

  test('a seal with one letter changed', async () => {
    const { sealed, card } = fileOf(text);
    const lines = sealed.split('\n');
    const at = lines.length - 4;
    lines[at] = (lines[at] ?? '').replace(/[A-Za-z]/u, (letter) => (letter === 'A' ? 'B' : 'A'));
    const opened = await openPractice({ card, sealed: lines.join('\n') }, PASSPHRASE, lock);
    expect(opened).toEqual({ type: 'error', reason: 'damaged' });
  });
});

test.each([
  ['', 'not one'],
  ['{}', 'not one'],
  ['null', 'not one'],
  ['{"format":"shearsight-job"}', 'not one'],
  [text.slice(0, -40), 'damaged'],
  [text.replace('"version": 1', '"version": 2'), 'newer'],
  [text.replace('"chambers": 1', '"chambers": 0'), 'damaged'],
  [text.replace('BEGIN AGE', 'BEGIN PAGE'), 'damaged'],
  [text.replace('"sealed"', '"open"'), 'damaged'],
  [text + ' '.repeat(50_000), 'not one'],
])('file %#: %s', (written, fault) => {
  expect(readPracticeFile(written)).toEqual({ type: 'error', fault });
});
