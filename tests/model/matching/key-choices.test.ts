/** Which key for which cylinder, on small drawn questions, one test each, against every way to give the keys out. */
import { describe, expect, test } from 'vitest';
import { buildTogether } from '../../../src/model/matching/build-together.ts';
import { chooseKeys, EXACT_UP_TO } from '../../../src/model/matching/choose-keys.ts';
import { compareScores, type Score } from '../../../src/model/matching/levels.ts';
import { runToEnd } from '../../../src/model/matching/match-many.ts';
import { smallManyJob } from '../../support/drawn-many.ts';
import { changed } from '../../support/job-builder.ts';
import { manyJob } from '../../support/many-job.ts';

/** Keys are chosen by the levels up to squares. */
const levels = (score: Score): Score => ({ ...score, filedOff: 0, ties: [] });

function scoreWith(seed: number, chosen: readonly (string | null)[]): Score {
  const { job, ask } = smallManyJob(seed);
  const pairs = ask.cylinders.flatMap((each, i) => {
    const key = chosen[i];
    return key == null ? [] : [{ ...each, key }];
  });
  return levels(buildTogether(job, pairs, ask.mostFiled ?? null).score);
}

function allWays(seed: number): (string | null)[][] {
  const { ask, eachKeyOnce } = smallManyJob(seed);
  let ways: (string | null)[][] = [[]];
  for (let i = 0; i < ask.cylinders.length; i++)
    ways = ways.flatMap((way) => [
      ...ask.keys.filter((key) => !eachKeyOnce || !way.includes(key)).map((key) => [...way, key]),
      ...(eachKeyOnce ? [[...way, null]] : []),
    ]);
  return ways;
}

describe('a drawn question', () => {
  test.each(Array.from({ length: 14 }, (_, i) => i + 1))('is answered best, %i', (seed) => {
    const { job, ask, eachKeyOnce } = smallManyJob(seed);
    const found = runToEnd(chooseKeys(job, { ...ask, eachKeyOnce }));
    const scores = allWays(seed).map((way) => scoreWith(seed, way));
    const [best] = scores.sort(compareScores);
    expect(ask.cylinders.length).toBeLessThanOrEqual(EXACT_UP_TO);
    expect(found.score).toEqual(best);
    expect(found).toMatchObject({ isProved: true, bound: best });
    expect(found.keys.map(({ cylinder, plan }) => ({ cylinder, plan }))).toEqual(ask.cylinders);
    const keys = found.keys.map(({ key }) => key);
    expect(scoreWith(seed, keys)).toEqual(best);
    if (eachKeyOnce) {
      const given = keys.filter((key) => key !== null);
      expect(new Set(given).size).toBe(given.length);
    } else expect(keys).not.toContain(null);
  });
});

describe('many cylinders', () => {
  const job = changed(manyJob({ keys: 2, cylinders: 7, chambers: 2, parts: 16, seed: 4 }), (copy) => {
    for (const part of copy.parts) if (part.id.includes('bottom-pin')) part.quantity = 0;
  });
  const ask = (cylinders: number, mostCases: number) => ({
    cylinders: job.plans.slice(0, cylinders).map(({ id, cylinder }) => ({ cylinder, plan: id })),
    keys: job.keys.map(({ id }) => id),
    mostCases,
  });

  test('up to six are left to run, however few cases are allowed', () => {
    const found = runToEnd(chooseKeys(job, ask(6, 0)));
    expect(found).toEqual(runToEnd(chooseKeys(job, ask(6, 100000))));
    expect(found.isProved).toBe(true);
    expect([...chooseKeys(job, ask(6, 0))].length).toBeGreaterThan(3);
  });

  test('with seven it stops once so many cases were looked at', () => {
    const [none, few, all] = [0, 2, 100000].map((most) =>
      [...chooseKeys(job, ask(7, most))].map(({ cases }) => cases),
    );
    expect(none).toEqual([]);
    expect(few!.length).toBeGreaterThanOrEqual(2);
    expect(few!.length).toBeLessThan(all!.length);
    expect(all).toEqual(all!.map((_, i) => i + 1));
    const stopped = runToEnd(chooseKeys(job, ask(7, 0)));
    const best = runToEnd(chooseKeys(job, ask(7, 100000)));
    expect(best.isProved).toBe(true);
    expect(compareScores(stopped.bound, best.score)).toBeLessThanOrEqual(0);
    expect(compareScores(best.score, stopped.score)).toBeLessThanOrEqual(0);
  });
});
