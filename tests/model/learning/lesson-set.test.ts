/** Sets of lessons: link and file bring the same set back, and whatever is wrong with one is told. */
import { fc, test as property } from '@fast-check/vitest';
import { describe, expect, test } from 'vitest';
import { answerOf, comesTrue, roundOf } from '../../../src/model/learning/ask.ts';
import { LESSON_IDS } from '../../../src/model/learning/lesson.ts';
import {
  type LessonSet,
  readSetFile,
  readSetLink,
  setFileText,
  setLink,
  USUAL_TOLERANCE_MM,
} from '../../../src/model/learning/lesson-set.ts';

const SET: LessonSet = {
  lessons: ['deep-cut', 'key-floor', 'which-part'],
  seed: 4711,
  unit: 'in',
  toleranceMm: USUAL_TOLERANCE_MM,
};

const anySet: fc.Arbitrary<LessonSet> = fc.record({
  lessons: fc.shuffledSubarray([...LESSON_IDS], { minLength: 1 }),
  seed: fc.integer({ min: 0, max: 999_999 }),
  unit: fc.constantFrom('in', 'mm'),
  toleranceMm: fc.integer({ min: 51, max: 1270 }).map((steps) => steps / 10_000),
});

property.prop([anySet])('any set is brought back by its link and by its file, order and all', (set) => {
  expect(readSetLink(setLink(set))).toEqual({ type: 'set', set });
  expect(readSetFile(setFileText(set))).toEqual({ type: 'set', set });
});

property.prop([anySet, fc.nat(), fc.constantFrom('0', '1', '9', 'a', 'k', 'z', '.', '/', '-', '%')])(
  'a link with one character changed or its end lost is never taken for another set',
  (set, at, letter) => {
    const link = setLink(set);
    const start = '#learn/set/'.length;
    const place = start + (at % (link.length - start));
    const changed = link.slice(0, place) + letter + link.slice(place + 1);
    if (changed !== link) expect(readSetLink(changed)?.type).toBe('error');
    expect(readSetLink(link.slice(0, place))?.type).toBe('error');
  },
);

property.prop([fc.string({ maxLength: 300 })])('whatever stands in a link or a file is answered', (text) => {
  expect(readSetLink(`#learn/set/${text}`)?.type).toBe('error');
  expect(readSetFile(text).type).toBe('error');
});

test('half a thousandth of an inch is held exactly', () => {
  expect(USUAL_TOLERANCE_MM).toBe(0.0127);
  expect(setLink(SET)).toMatch(/^#learn\/set\/4711\/in\/127\/deep-cut\.key-floor\.which-part\/[0-9a-z]{7}$/u);
});

describe('a link that is not as it was sent', () => {
  const link = setLink(SET);
  test.each([
    ['cut in its list', link.slice(0, -20), 'cut off'],
    ['cut in its check', link.slice(0, -3), 'cut off'],
    ['with another seed', link.replace('4711', '4712'), 'changed'],
    ['with more behind it', `${link}/more`, 'changed'],
    ['without end', `#learn/set/${'9'.repeat(5000)}`, 'changed'],
    ['of nothing', '#learn/set/', 'cut off'],
  ])('%s', (_, garbled, fault) => {
    expect(readSetLink(garbled)).toMatchObject({ type: 'error', fault: { fault } });
  });

  test('is no set at all when it is the address of something else', () => {
    for (const other of ['', '#learn', '#learn/deep-cut/1/in', '#measure'])
      expect(readSetLink(other)).toBeNull();
  });
});

describe('a file that is not as it was written', () => {
  const text = setFileText(SET);
  test.each([
    ['cut', text.slice(0, 60), 'cut off'],
    ['of another kind', '{"format":"shearsight-job"}', 'not a set'],
    ['no file of ours', 'lessons: all', 'not a set'],
    ['of nothing', 'null', 'not a set'],
    ['of a number', '5', 'not a set'],
    ['of a list', '[]', 'not a set'],
    ['of a text', '"shearsight"', 'not a set'],
    ['of an older version', text.replace('"version": 1', '"version": 0'), 'changed'],
    ['of a version in words', text.replace('"version": 1', '"version": "two"'), 'changed'],
    ['of a newer version', text.replace('"version": 1', '"version": 2'), 'newer'],
    ['without a version', text.replace('"version": 1', '"version": null'), 'changed'],
    ['with an unknown lesson', text.replace('key-floor', 'key-roof'), 'no such lesson'],
    ['with a name that objects have', text.replace('key-floor', '__proto__'), 'no such lesson'],
    ['with a lesson twice', text.replace('key-floor', 'deep-cut'), 'twice'],
    ['with no lessons', text.replace(/\[[^\]]*\]/u, '[]'), 'no lessons'],
    ['with lessons that are no list', text.replace(/\[[^\]]*\]/u, '"all"'), 'no lessons'],
    ['with half a seed', text.replace('4711', '4711.5'), 'seed'],
    ['with a seed below zero', text.replace('4711', '-1'), 'seed'],
    ['in feet', text.replace('"in"', '"ft"'), 'unit'],
    ['with a tolerance of an inch', text.replace('0.0127', '25.4'), 'tolerance'],
    ['with a tolerance in words', text.replace('0.0127', '"close"'), 'tolerance'],
  ])('%s', (_, garbled, fault) => {
    expect(garbled).not.toBe(text);
    expect(readSetFile(garbled)).toMatchObject({ type: 'error', fault: { fault } });
  });
});

test('the tolerance of a set is how close a sum has to come, twice that for a place', () => {
  const wide = 0.1;
  for (const [lesson, factor] of [
    ['key-floor', 1],
    ['ball-on-sides', 2],
  ] as const) {
    const [step] = roundOf(lesson, 4711, 'in', wide).steps;
    const [usual] = roundOf(lesson, 4711, 'in').steps;
    if (step === undefined || usual === undefined) throw new Error('no step');
    const answer = Number(answerOf(step));
    expect(answer).toBe(answerOf(usual));
    expect(comesTrue(step, answer + 0.99 * factor * wide)).toBe(true);
    expect(comesTrue(step, answer + 1.01 * factor * wide)).toBe(false);
    expect(comesTrue(usual, answer + 0.99 * factor * wide)).toBe(false);
  }
});

describe('the limits of a set', () => {
  const read = (more: object) =>
    readSetFile(JSON.stringify({ format: 'shearsight-lessons', version: 1, ...SET, ...more }));
  const faultOf = (more: object) => {
    const answer = read(more);
    return answer.type === 'error' ? answer.fault.fault : null;
  };

  test.each([
    ['the smallest tolerance', { toleranceMm: 0.0051 }, null],
    ['below it', { toleranceMm: 0.005 }, 'tolerance'],
    ['the largest tolerance', { toleranceMm: 0.127 }, null],
    ['above it', { toleranceMm: 0.1271 }, 'tolerance'],
    ['finer than the link can say', { toleranceMm: 0.01271 }, 'tolerance'],
    ['a tolerance as text', { toleranceMm: '0.0127' }, 'tolerance'],
    ['the first seed', { seed: 0 }, null],
    ['the last seed', { seed: 999_999 }, null],
    ['behind the last seed', { seed: 1_000_000 }, 'seed'],
    ['half a seed', { seed: 0.5 }, 'seed'],
    ['another unit', { unit: 'ft' }, 'unit'],
    ['the other unit', { unit: 'mm' }, null],
    ['an older version', { version: 0 }, 'changed'],
    ['a newer version', { version: 2 }, 'newer'],
    ['a lesson twice', { lessons: ['deep-cut', 'deep-cut'] }, 'twice'],
    ['no lessons', { lessons: [] }, 'no lessons'],
    ['lessons that are no list', { lessons: 'deep-cut' }, 'no lessons'],
  ])('%s', (_, more, fault) => expect(faultOf(more)).toBe(fault));

  test('a file may begin with a mark of its byte order, and only there', () => {
    expect(readSetFile(`\ufeff${setFileText(SET)}`)).toEqual({ type: 'set', set: SET });
    const within = setFileText(SET).replace('"deep-cut"', '"\ufeffdeep-cut"');
    expect(readSetFile(within)).toMatchObject({ fault: { fault: 'no such lesson' } });
  });

  test('no file of a set is as long as a book', () => {
    expect(readSetFile(`${setFileText(SET)}${' '.repeat(20_000)}`)).toMatchObject({
      fault: { fault: 'not a set' },
    });
  });

  test('what is quoted of a long text is its beginning', () => {
    const answer = readSetLink(`#learn/set/${'a'.repeat(5000)}`);
    expect(answer).toMatchObject({ type: 'error' });
    if (answer?.type !== 'error') return;
    expect(answer.fault.part.length).toBeLessThan(100);
    expect(answer.fault.part).toMatch(/^#learn\/set\/a+$/u);
  });

  test('a link with pieces left over was changed', () => {
    expect(readSetLink(`${setLink(SET)}/`)).toMatchObject({ fault: { fault: 'changed' } });
  });
});
