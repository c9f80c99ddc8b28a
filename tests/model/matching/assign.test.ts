import { describe, expect, test } from 'vitest';
import { assign } from '../../../src/model/matching/assign.ts';
import { compareScores, scoreOf } from '../../../src/model/matching/levels.ts';
import { listRow, type Option } from '../../../src/model/matching/option.ts';
import { bestByTryingAll } from '../../support/brute-assignment.ts';
import { seededRandom } from '../../support/random-job.ts';

const once = () => 1;
const option = (part: number, more: Partial<Option> = {}): Option => ({
  part,
  also: [],
  filed: 0,
  spare: 0,
  squares: 0,
  ties: [],
  ...more,
});
const solve = (rows: readonly (readonly Option[])[], copiesOf: (part: number) => number = once) =>
  assign(rows.map(listRow), copiesOf);

describe('levels, one after the other', () => {
  test('filling one more place goes before everything else', () => {
    const { chosen } = solve([
      [option(0, { spare: 9 }), option(1, { spare: 0, squares: 1600, filed: 3 })],
      [option(0, { spare: 9 })],
    ]);
    expect(chosen.map((each) => each?.part)).toEqual([1, 0]);
  });

  test('a part is filed only where nothing else fits', () => {
    const { chosen, score } = solve([
      [option(0, { filed: 2, spare: 9 }), option(1, { spare: 1, squares: 25 })],
    ]);
    expect(chosen[0]?.part).toBe(1);
    expect(score.filed).toBe(0);
  });

  test('the tightest place counts more than the sum of squares', () => {
    const { score } = solve([
      [option(0, { spare: 1, squares: 0 }), option(1, { spare: 2, squares: 81 })],
      [option(2, { spare: 5, squares: 0 })],
    ]);
    expect(score).toMatchObject({ smallestToSpare: 2, squares: 81 });
  });

  test('above the tightest place, squares decide and not how much is spare', () => {
    const { chosen } = solve([
      [option(0, { spare: 2 })],
      [option(1, { spare: 9, squares: 9 }), option(2, { spare: 2, squares: 4 })],
    ]);
    expect(chosen[1]?.part).toBe(2);
  });

  test('ties are settled in the order given, only among equals', () => {
    const rows = [
      [option(0, { ties: [1, 0] }), option(1, { ties: [0, 9] }), option(2, { squares: 1, ties: [0, 0] })],
    ];
    expect(solve(rows).chosen[0]?.part).toBe(1);
  });

  test('among complete equals the one listed first is taken', () => {
    expect(solve([[option(4), option(3), option(5)]]).chosen[0]?.part).toBe(4);
  });
});

describe('degenerate questions', () => {
  test('no rows, no options, no copies', () => {
    expect(solve([]).chosen).toEqual([]);
    expect(solve([[], []])).toMatchObject({ chosen: [null, null], score: { filled: 0 }, isProved: true });
    expect(solve([[option(0)]], () => 0).chosen).toEqual([null]);
  });

  test('a part with copies fills as many places as it has copies', () => {
    const rows = Array.from({ length: 5 }, () => [option(7)]);
    expect(solve(rows, () => 3).score.filled).toBe(3);
  });

  test('parts that are used up do not crowd out the others', () => {
    const many = Array.from({ length: 60 }, (_, part) =>
      option(part, { spare: 60 - part, squares: part ** 2 }),
    );
    const { chosen } = solve([many], (part) => (part < 55 ? 0 : 1));
    expect(chosen[0]?.part).toBe(55);
  });

  test('hundreds of rows with large deviations and ties keep filling first', () => {
    const rows = Array.from({ length: 240 }, (_, row) =>
      Array.from({ length: 6 }, (_, i) =>
        option((row + i) % 250, { squares: (900 + i) ** 2, filed: i % 2 ? 50 : 0, ties: [1, 2, 1] }),
      ),
    );
    expect(solve(rows).score.filled).toBe(240);
  });
});

/** Rows of options that may share parts besides their main one. */
function randomRows(seed: number): { rows: Option[][]; copies: number[] } {
  const random = seededRandom(seed);
  const upTo = (most: number) => Math.floor(random() * (most + 1));
  // few rows with long lists: more options than are ever looked at for one of them
  const isLong = random() < 0.3;
  const [rowCount, pins, balls] = [1 + upTo(isLong ? 1 : 4), 1 + upTo(isLong ? 14 : 5), upTo(2)];
  const copies = Array.from({ length: pins + balls }, (_, part) => (part < pins ? upTo(2) : upTo(3)));
  const rows = Array.from({ length: rowCount }, () =>
    Array.from({ length: upTo(isLong ? 30 : 6) }, (): Option => {
      // now and then a part is the main one here and the other one there, as a master pin could be
      const others =
        random() < 0.1 ? [upTo(pins - 1)] : balls > 0 && random() < 0.8 ? [pins + upTo(balls - 1)] : [];
      const part = upTo(pins - 1);
      return {
        part,
        also: others.filter((other) => other !== part),
        filed: random() < 0.2 ? 1 + upTo(3) : 0,
        spare: upTo(4),
        squares: upTo(4) ** 2,
        ties: [upTo(1), upTo(2)],
      };
    }),
  );
  return { rows, copies };
}

describe('2,000 seeded cases with shared parts and filing', () => {
  const SEEDS = Array.from({ length: 2000 }, (_, i) => i + 1);

  test('as good as the best of all choices, by every level', () => {
    for (const seed of SEEDS) {
      const { rows, copies } = randomRows(seed);
      const found = solve(rows, (part) => copies[part] ?? 0);
      expect(found.isProved, `seed ${seed}`).toBe(true);
      expect(found.score, `seed ${seed}`).toEqual(bestByTryingAll(rows, (part) => copies[part] ?? 0));
    }
  });

  test('no part is used too often, and the score is that of the choice', () => {
    for (const seed of SEEDS) {
      const { rows, copies } = randomRows(seed);
      const { chosen, score } = solve(rows, (part) => copies[part] ?? 0);
      const used = new Map<number, number>();
      for (const each of chosen) {
        for (const part of each === null ? [] : [each.part, ...each.also]) {
          used.set(part, (used.get(part) ?? 0) + 1);
        }
      }
      for (const [part, count] of used) expect(count, `seed ${seed}`).toBeLessThanOrEqual(copies[part] ?? 0);
      expect(score).toEqual(scoreOf(chosen));
    }
  });

  test('the cases do make shared parts run short', () => {
    let short = 0;
    for (const seed of SEEDS) {
      const { rows, copies } = randomRows(seed);
      const plenty = solve(rows, (part) => (part < copies.length - 2 ? (copies[part] ?? 0) : 99)).score;
      if (compareScores(plenty, solve(rows, (part) => copies[part] ?? 0).score) < 0) short += 1;
    }
    expect(short).toBeGreaterThan(200);
  });

  test('one more part never makes the choice worse', () => {
    for (const seed of SEEDS) {
      const { rows, copies } = randomRows(seed);
      const before = solve(rows, (part) => copies[part] ?? 0).score;
      const more = rows.map((row, i) =>
        i === 0 ? [...row, option(99, { spare: 2, squares: 1, ties: [0, 0] })] : row,
      );
      const after = solve(more, (part) => (part === 99 ? 1 : (copies[part] ?? 0))).score;
      expect(compareScores(after, before), `seed ${seed}`).toBeLessThanOrEqual(0);
    }
  });

  test('cut short, it gives a choice that can be made and a bound that nothing beats', () => {
    let unproved = 0;
    for (const seed of SEEDS) {
      const { rows, copies } = randomRows(seed);
      const copiesOf = (part: number) => copies[part] ?? 0;
      const found = assign(rows.map(listRow), copiesOf, { mostCases: 0 });
      const best = bestByTryingAll(rows, copiesOf);
      if (!found.isProved) unproved += 1;
      expect(compareScores(found.bound, best), `seed ${seed}`).toBeLessThanOrEqual(0);
      expect(compareScores(best, found.score), `seed ${seed}`).toBeLessThanOrEqual(0);
      if (found.isProved) expect(found.score, `seed ${seed}`).toEqual(best);
    }
    expect(unproved).toBeGreaterThan(20);
  });
});
