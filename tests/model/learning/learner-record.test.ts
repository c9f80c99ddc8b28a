/** What a learner predicted: the first prediction stands, damage costs no more than what it hit. */
import { fc, test as property } from '@fast-check/vitest';
import { expect, test } from 'vitest';
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
