import { describe, expect, test } from 'vitest';
import { buildTogether } from '../../../src/model/matching/build-together.ts';
import { chooseKeys, type KeyChoice, type KeyChoiceAsk } from '../../../src/model/matching/choose-keys.ts';
import { compareScores, type Score } from '../../../src/model/matching/levels.ts';
import { type ManyAsk, type PairCell, pairTable, runToEnd } from '../../../src/model/matching/match-many.ts';
import { matchParts } from '../../../src/model/matching/match.ts';
import type { Job } from '../../../src/model/schema/job-schema.ts';
import { loose } from '../../support/bag-job.ts';
import { changed } from '../../support/job-builder.ts';
import { manyJob } from '../../support/many-job.ts';

const INCH = 25.4;

/** Cylinders whose own lower stacks are gone, so that there is only the bag. */
function bagJob(
  seed: number,
  size: { keys: number; cylinders: number; chambers: number; parts: number },
): Job {
  return changed(manyJob({ ...size, seed }), (copy) => {
    for (const part of copy.parts) if (part.id.includes('bottom-pin')) part.quantity = 0;
  });
}

const askOf = (job: Job): ManyAsk => ({
  cylinders: job.plans.map(({ id, cylinder }) => ({ cylinder, plan: id })),
  keys: job.keys.map((key) => key.id),
});
const table = (job: Job): PairCell[] => runToEnd(pairTable(job, askOf(job)));

describe('keys against cylinders', () => {
  const job = bagJob(3, { keys: 3, cylinders: 4, chambers: 4, parts: 25 });
  const cells = table(job);

  test('every pair says what a match of that pair alone says', () => {
    expect(cells).toHaveLength(12);
    for (const cell of cells) {
      const match = matchParts(job, cell);
      expect([cell.filled, cell.of, cell.squares]).toEqual([match.filled, match.of, match.score.squares]);
      expect(cell.smallestToSpare).toBe(match.smallestToSpare);
      expect(cell.smallestSteps ?? Infinity).toBe(match.score.smallestToSpare);
    }
  });

  test('some are full, some are not: the example tells them apart', () => {
    expect(new Set(cells.map(({ filled }) => filled)).size).toBeGreaterThan(1);
  });

  test('progress is told after every pair, up to the end', () => {
    const steps = [...pairTable(job, askOf(job))];
    expect(steps.at(-1)).toEqual({ done: 16, of: 16 });
    expect(steps.map(({ done }) => done)).toEqual(Array.from({ length: 16 }, (_, i) => i + 1));
  });

  test('it can be stopped after any step', () => {
    const steps = pairTable(job, askOf(job));
    for (let i = 0; i < 6; i++) steps.next();
    expect(steps.return([]).done).toBe(true);
    expect(steps.next().done).toBe(true);
  });

  test('no keys, no cylinders, an empty bag', () => {
    expect(runToEnd(pairTable(job, { cylinders: [], keys: [] }))).toEqual([]);
    expect(runToEnd(pairTable(job, { ...askOf(job), keys: [] }))).toEqual([]);
    const bare = changed(job, (copy) => (copy.parts = []));
    for (const cell of table(bare))
      expect(cell).toMatchObject({ filled: 0, smallestToSpare: null, missing: [] });
  });
});

describe('the single part that would complete a pair', () => {
  const jobs = [1, 2, 3, 4, 5].map((seed) => bagJob(seed, { keys: 3, cylinders: 4, chambers: 4, parts: 30 }));
  const lacking = jobs.flatMap((job) => table(job).map((cell) => ({ job, cell })));

  test('is told where exactly one chamber stays open, and only there', () => {
    const one = lacking.filter(({ cell }) => cell.filled === cell.of - 1);
    expect(one.length).toBeGreaterThan(5);
    for (const { cell } of lacking) expect(cell.missing.length > 0).toBe(cell.filled === cell.of - 1);
  });

  test('any one of them completes it, at any length within its range', () => {
    let tried = 0;
    for (const { job, cell } of lacking) {
      for (const { from, to, best, hasBall } of cell.missing) {
        expect(hasBall).toBe(false);
        for (const length of [from + 0.002, best, to - 0.002]) {
          const made = { ...job, parts: [...job.parts, loose('made', { length: length / INCH })] };
          expect(matchParts(made, cell).filled).toBe(cell.of);
          tried += 1;
        }
      }
    }
    expect(tried).toBeGreaterThan(15);
  });

  test('a part just outside the range does not', () => {
    for (const { job, cell } of lacking) {
      if (cell.missing.length !== 1) continue;
      for (const { to } of cell.missing) {
        const made = { ...job, parts: [...job.parts, loose('made', { length: (to + 0.01) / INCH })] };
        expect(matchParts(made, cell).filled).toBe(cell.of - 1);
      }
    }
  });
});

describe('several cylinders from one bag', () => {
  const job = bagJob(5, { keys: 3, cylinders: 3, chambers: 4, parts: 40 });
  const pairs = job.plans.map((plan, i) => ({
    cylinder: plan.cylinder,
    plan: plan.id,
    key: job.keys[i]!.id,
  }));

  test('no part is used twice, over all of them', () => {
    const { matches, complete, score } = buildTogether(job, pairs);
    const used = matches.flatMap(({ chambers }) => chambers.flatMap(({ standing }) => standing?.items ?? []));
    expect(new Set(used.map((item) => item.part)).size).toBe(used.length);
    expect(score.filled).toBe(matches.reduce((sum, match) => sum + match.filled, 0));
    expect(complete).toBe(matches.filter((match) => match.filled === match.of).length);
  });

  test('one alone is the match of that pair', () => {
    const [first] = pairs;
    const { matches } = buildTogether(job, [first!]);
    expect(matches).toEqual([matchParts(job, first!)]);
  });

  test('together they do no better than each with the whole bag', () => {
    const { matches } = buildTogether(job, pairs);
    for (const [i, match] of matches.entries()) {
      expect(match.filled).toBeLessThanOrEqual(matchParts(job, pairs[i]!).filled);
    }
  });

  test('a single pin that two need goes to one of them', () => {
    const one = changed(job, (copy) => {
      copy.parts = copy.parts.filter((part) => !part.id.startsWith('loose'));
      copy.cylinders[1]!.bodies = structuredClone(copy.cylinders[0]!.bodies).map((body, i) => ({
        ...body,
        id: copy.cylinders[1]!.bodies[i]!.id,
      }));
      const level = matchParts(job, pairs[0]!).chambers[0]!.standing!;
      copy.parts.push(loose('only', { length: (level.height - level.offset) / INCH }));
    });
    const same = [pairs[0]!, { ...pairs[1]!, key: pairs[0]!.key }];
    expect(same.map((pair) => matchParts(one, pair).filled)).toEqual([1, 1]);
    expect(buildTogether(one, same).score.filled).toBe(1);
  });
});

/** The levels that keys are chosen by. */
const levels = ({ filled, filed, smallestToSpare, squares }: Score): Score => ({
  filled,
  filed,
  smallestToSpare,
  squares,
  filedOff: 0,
  ties: [],
});

/** Every way to give every cylinder a key. */
function bestByTryingAll(job: Job, { cylinders, keys }: ManyAsk, eachKeyOnce: boolean): Score {
  let best: Score | null = null;
  const goOn = (chosen: readonly (string | null)[]): void => {
    const next = cylinders[chosen.length];
    if (next === undefined) {
      const pairs = cylinders.flatMap((each, i) => {
        const key = chosen[i];
        return key == null ? [] : [{ ...each, key }];
      });
      const score = levels(buildTogether(job, pairs).score);
      if (best === null || compareScores(score, best) < 0) best = score;
      return;
    }
    for (const key of keys) if (!eachKeyOnce || !chosen.includes(key)) goOn([...chosen, key]);
    if (eachKeyOnce) goOn([...chosen, null]);
  };
  goOn([]);
  return best!;
}

describe('which key for which cylinder', () => {
  const choose = (job: Job, ask: Partial<KeyChoiceAsk> = {}): KeyChoice =>
    runToEnd(chooseKeys(job, { ...askOf(job), ...ask }));
  const size = { keys: 3, cylinders: 3, chambers: 3 };

  test.each([8, 14, 20, 40])('as good as the best of all ways, with %i parts', (parts) => {
    for (let seed = 1; seed <= 4; seed++) {
      const job = bagJob(seed, { ...size, parts });
      const found = choose(job);
      expect(found.isProved, `seed ${seed}`).toBe(true);
      expect(found.score, `seed ${seed}`).toEqual(bestByTryingAll(job, askOf(job), false));
      const pairs = found.keys.map((each) => ({ ...each, key: each.key! }));
      expect(levels(buildTogether(job, pairs).score), `seed ${seed}`).toEqual(found.score);
    }
  });

  test('each key for one cylinder only, when that is asked for', () => {
    for (let seed = 1; seed <= 4; seed++) {
      const job = bagJob(seed, { ...size, parts: 16 });
      const found = choose(job, { eachKeyOnce: true });
      const keys = found.keys.flatMap(({ key }) => (key === null ? [] : [key]));
      expect(new Set(keys).size).toBe(keys.length);
      expect(found.score, `seed ${seed}`).toEqual(bestByTryingAll(job, askOf(job), true));
    }
  });

  test('above six cylinders it stops when told, and nothing beats the bound it prints', () => {
    const job = bagJob(2, { keys: 2, cylinders: 7, chambers: 2, parts: 14 });
    const found = choose(job, { mostCases: 2 });
    const best = choose(job, { mostCases: 100000 });
    expect(best.isProved).toBe(true);
    expect(compareScores(found.bound, best.score)).toBeLessThanOrEqual(0);
    expect(compareScores(best.score, found.score)).toBeLessThanOrEqual(0);
  });

  test('tells the best so far after every case, and it only gets better', () => {
    const job = bagJob(4, { ...size, parts: 12 });
    let before: Score | null = null;
    for (const { best } of chooseKeys(job, askOf(job))) {
      if (before !== null) expect(compareScores(best.score, before)).toBeLessThanOrEqual(0);
      before = best.score;
      expect(compareScores(best.bound, best.score)).toBeLessThanOrEqual(0);
    }
  });

  test('no keys at all', () => {
    const job = bagJob(1, { ...size, parts: 5 });
    const found = choose(job, { keys: [] });
    expect(found.keys.map(({ key }) => key)).toEqual([null, null, null]);
    expect(found.score.filled).toBe(0);
  });
});
