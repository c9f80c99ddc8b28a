/** What a learner predicted: the first prediction stands, damage costs no more than what it hit. */
import { fc, test as property } from '@fast-check/vitest';
import { describe, expect, test } from 'vitest';
import { MOST_SEED } from '../../../src/model/learning/draw.ts';
import {
  MOST_ROUNDS,
  readRounds,
  recordAnswer,
  type RoundRecord,
} from '../../../src/model/learning/learner-record.ts';

const ROUND = { lesson: 'deep-cut', seed: 3, unit: 'in', toleranceMm: null } as const;

test('predictions of a round are kept together, the first of a question stands', () => {
  let rounds: readonly RoundRecord[] = [];
  rounds = recordAnswer(rounds, ROUND, { step: 'which-longer', prediction: 'cut-1' });
  rounds = recordAnswer(rounds, ROUND, { step: 'how-long', prediction: 8.5 });
  rounds = recordAnswer(rounds, ROUND, { step: 'how-long', prediction: 9.5 });
  rounds = recordAnswer(rounds, { ...ROUND, toleranceMm: 0.02 }, { step: 'how-long', prediction: null });
  expect(rounds.map(({ answers }) => answers.map(({ prediction }) => prediction))).toEqual([
    ['cut-1', 8.5],
    [null],
  ]);
  expect(readRounds(JSON.parse(JSON.stringify(rounds)))).toEqual(rounds);
});

test('there is an end to what is kept: the oldest goes', () => {
  let rounds: readonly RoundRecord[] = [];
  for (let seed = 0; seed <= MOST_ROUNDS; seed++)
    rounds = recordAnswer(rounds, { ...ROUND, seed }, { step: 'which-longer', prediction: null });
  expect(rounds.length).toBe(MOST_ROUNDS);
  expect(rounds[0]?.seed).toBe(1);
});

test('a damaged round costs itself, a damaged answer only itself', () => {
  const good = { ...ROUND, answers: [{ step: 'how-long', prediction: 8.5 }] };
  const kept = [
    good,
    { ...good, lesson: 'no-such' },
    { ...good, seed: -1 },
    { ...good, unit: 'ft' },
    { ...good, toleranceMm: 'close' },
    { ...good, answers: null },
    null,
    { ...good, seed: 4, answers: [{ step: 'how-long', prediction: Infinity }, ...good.answers, { step: 7 }] },
  ];
  expect(readRounds(kept)).toEqual([good, { ...good, seed: 4 }]);
});

property.prop([fc.anything()])('whatever was kept is read', (data) => {
  expect(Array.isArray(readRounds(data))).toBe(true);
});

test('an answer goes into its own round only', () => {
  const other = { ...ROUND, seed: 9 };
  let rounds = recordAnswer([], ROUND, { step: 'a', prediction: 1 });
  rounds = recordAnswer(rounds, other, { step: 'a', prediction: 2 });
  rounds = recordAnswer(rounds, other, { step: 'b', prediction: 3 });
  expect(rounds.map(({ answers }) => answers.length)).toEqual([1, 2]);
});

describe('the limits of what is read back', () => {
  const answer = (step: unknown, prediction: unknown) => ({ step, prediction });
  const round = (more: object) => ({ ...ROUND, answers: [answer('how-long', 8.5)], ...more });
  const isRead = (more: object) => readRounds([round(more)]).length === 1;

  test.each([
    ['both units', { unit: 'mm' }, true],
    ['the first seed', { seed: 0 }, true],
    ['the last seed', { seed: MOST_SEED }, true],
    ['a seed behind the last', { seed: MOST_SEED + 1 }, false],
    ['half a seed', { seed: 1.5 }, false],
    ['a seed as text', { seed: '3' }, false],
    ['a tolerance that a set can have', { toleranceMm: 0.0127 }, true],
    ['a tolerance finer than a set can have', { toleranceMm: 0.01271 }, false],
    ['a tolerance in a list', { toleranceMm: [] }, false],
  ])('%s', (_, more, taken) => expect(isRead(more)).toBe(taken));

  const long = 'x'.repeat(40);
  test.each([
    ['a step of forty letters', answer(long, 1), true],
    ['a longer one', answer(`${long}x`, 1), false],
    ['a step that is a number', answer(7, 1), false],
    ['a step with a length but no text', answer([], 1), false],
    ['a prediction of forty letters', answer('a', long), true],
    ['a longer one', answer('a', `${long}x`), false],
    ['a prediction with a length but no text', answer('a', []), false],
    ['five inches', answer('a', -127), true],
    ['more than five inches', answer('a', 127.1), false],
  ])('%s', (_, one, taken) => {
    expect(readRounds([round({ answers: [one] })])[0]?.answers).toEqual(taken ? [one] : []);
  });

  test('of too many rounds the last are read, of too many answers the first', () => {
    const rounds = Array.from({ length: MOST_ROUNDS + 3 }, (_, seed) => round({ seed }));
    expect(readRounds(rounds).map(({ seed }) => seed)).toEqual(rounds.slice(3).map(({ seed }) => seed));
    const answers = Array.from({ length: 14 }, (_, i) => answer(`step-${i}`, i));
    expect(readRounds([round({ answers })])[0]?.answers).toEqual(answers.slice(0, 12));
  });

  test('a list in place of a round, or the other way round, is none', () => {
    expect(readRounds({ 0: round({}) })).toEqual([]);
    expect(readRounds([[round({})]])).toEqual([]);
  });
});
