/** The choice of parts on small drawn questions, one test each, against all choices there are; and what orders options. */
import { describe, expect, test } from 'vitest';
import { assign } from '../../../src/model/matching/assign.ts';
import { compareScores, type Score, scoreOf } from '../../../src/model/matching/levels.ts';
import {
  Best,
  byDeviation,
  bySpare,
  kindOf,
  listRow,
  type Option,
} from '../../../src/model/matching/option.ts';
import { bestByTryingAll } from '../../support/brute-assignment.ts';
import { seededRandom } from '../../support/random-job.ts';

const option = (part: number, more: Partial<Option> = {}): Option => ({
  part,
  also: [],
  filed: 0,
  spare: 0,
  squares: 0,
  ties: [],
  ...more,
});

/** Pins from 0 on, then balls, which two places may share; a long list now and then. */
function drawnRows(seed: number): { rows: Option[][]; copies: number[] } {
  const random = seededRandom(seed);
  const upTo = (most: number) => Math.floor(random() * (most + 1));
  const isLong = random() < 0.3;
  const [rowCount, pins, balls] = [1 + upTo(isLong ? 1 : 3), 2 + upTo(isLong ? 14 : 4), upTo(2)];
  const copies = Array.from({ length: pins + balls }, (_, part) => (part < pins ? upTo(2) : upTo(3)));
  const rows = Array.from({ length: rowCount }, () =>
    Array.from({ length: upTo(isLong ? 30 : 5) }, (): Option => {
      const filed = random() < 0.25 ? 1 + upTo(3) : 0;
      const also = balls > 0 && random() < 0.8 ? [pins + upTo(balls - 1)] : [];
      const ties = [upTo(1), upTo(2)];
      return option(upTo(pins - 1), { also, filed, spare: upTo(4), squares: upTo(4) ** 2, ties });
    }),
  );
  return { rows, copies };
}

describe('a drawn question', () => {
  test.each(Array.from({ length: 120 }, (_, i) => i + 1))('is answered best, %i', (seed) => {
    const { rows, copies } = drawnRows(seed);
    const copiesOf = (part: number) => copies[part] ?? 0;
    const found = assign(rows.map(listRow), copiesOf);
    const best = bestByTryingAll(rows, copiesOf);
    expect(found.score).toEqual(best);
    expect(found).toMatchObject({ isProved: true, bound: best });
    expect(scoreOf(found.chosen)).toEqual(best);
    for (const [part, most] of copies.entries()) {
      const taken = found.chosen.filter((each) => each?.part === part || each?.also.includes(part));
      expect(taken.length).toBeLessThanOrEqual(most);
    }
    found.chosen.forEach((each, row) => expect(each === null || rows[row]!.includes(each)).toBe(true));
  });

  test.each(Array.from({ length: 60 }, (_, i) => i + 1))(
    'with large numbers is answered best, %i',
    (seed) => {
      const random = seededRandom(seed + 5000);
      const upTo = (most: number) => Math.floor(random() * (most + 1));
      const most = [1, 9, 40, 900][upTo(3)]!;
      const rows = Array.from({ length: 1 + upTo(2) }, () =>
        Array.from({ length: 1 + upTo(5) }, () =>
          option(upTo(5), {
            filed: random() < 0.5 ? 1 + upTo(most) : 0,
            spare: upTo(2),
            squares: upTo(most) ** 2,
            ties: [upTo(1), upTo(2), upTo(1)],
          }),
        ),
      );
      expect(assign(rows.map(listRow), () => 1).score).toEqual(bestByTryingAll(rows, () => 1));
    },
  );

  test('numbers too large to be added exactly leave the ties out, and nothing before them', () => {
    const huge = (part: number, more: Partial<Option>) =>
      option(part, { squares: 9e6, filed: 9000, ties: [900, 900, 900], ...more });
    const rows = [
      [huge(0, {}), huge(1, { squares: 9e6 - 1, ties: [901, 900, 900] }), huge(2, { filed: 8999 })],
      [huge(3, {}), huge(4, { filed: 8999, ties: [950, 0, 0] })],
      [huge(5, {}), huge(6, { ties: [899, 950, 950] })],
    ];
    const { chosen } = assign(rows.map(listRow), () => 1);
    expect(chosen.map((each) => each?.part)).toEqual([1, 4, 5]);
  });

  test.each(Array.from({ length: 60 }, (_, i) => i + 1))('cut short, says what nothing beats, %i', (seed) => {
    const { rows, copies } = drawnRows(seed);
    const copiesOf = (part: number) => copies[part] ?? 0;
    const best = bestByTryingAll(rows, copiesOf);
    for (const mostCases of [0, 1, 3]) {
      const found = assign(rows.map(listRow), copiesOf, { mostCases });
      expect(compareScores(found.bound, best)).toBeLessThanOrEqual(0);
      expect(compareScores(best, found.score)).toBeLessThanOrEqual(0);
      expect(scoreOf(found.chosen)).toEqual(found.score);
      if (found.isProved) expect(found.score).toEqual(best);
      if (found.isProved) expect(found.bound).toEqual(best);
    }
  });
});

describe('scores', () => {
  const score: Score = { filled: 3, filed: 1, smallestToSpare: 2, squares: 9, filedOff: 4, ties: [1, 1] };

  test.each([
    ['more filled', { filled: 4 }],
    ['fewer filed', { filed: 0 }],
    ['more to spare', { smallestToSpare: 3 }],
    ['less deviation', { squares: 8 }],
    ['less filed off', { filedOff: 3 }],
    ['the first tie', { ties: [0, 1] }],
    ['the second tie', { ties: [1, 0] }],
    ['a tie that is not there counts as nothing', { ties: [1] }],
  ])('%s is better', (_, better) => {
    expect(compareScores({ ...score, ...better }, score)).toBeLessThan(0);
    expect(compareScores(score, { ...score, ...better })).toBeGreaterThan(0);
  });

  test('each counts more than all that follow', () => {
    const worse = { filed: 9, smallestToSpare: 0, squares: 99, filedOff: 99, ties: [9, 9] };
    const names = ['filed', 'smallestToSpare', 'squares', 'filedOff', 'ties'] as const;
    const better = { filed: 0, smallestToSpare: 3, squares: 8, filedOff: 3 };
    expect(compareScores({ ...score, ...worse, filled: 4 }, score)).toBeLessThan(0);
    for (const [i, name] of names.slice(0, 4).entries()) {
      const rest = Object.fromEntries(names.slice(i + 1).map((each) => [each, worse[each]]));
      const one = { ...score, ...rest, [name]: better[name as keyof typeof better] };
      expect(compareScores(one, score)).toBeLessThan(0);
      expect(compareScores(score, one)).toBeGreaterThan(0);
    }
  });

  test('nothing filled on either side is a draw', () => {
    expect(compareScores(scoreOf([]), scoreOf([null]))).toBe(0);
    expect(scoreOf([null])).toEqual({
      filled: 0,
      filed: 0,
      smallestToSpare: Infinity,
      squares: 0,
      filedOff: 0,
      ties: [],
    });
  });

  test('of a choice: sums, and the least to spare', () => {
    const chosen = [
      option(0, { spare: 5, squares: 4, filed: 2, ties: [1] }),
      null,
      option(1, { spare: 3, squares: 9, ties: [1, 2] }),
    ];
    expect(scoreOf(chosen)).toEqual({
      filled: 2,
      filed: 1,
      smallestToSpare: 3,
      squares: 13,
      filedOff: 2,
      ties: [2, 2],
    });
  });
});

describe('options in order', () => {
  test('by what they have to spare, most first', () => {
    expect(bySpare(option(0, { spare: 5 }), option(1, { spare: 3 }))).toBeLessThan(0);
    expect(bySpare(option(0, { spare: 3 }), option(1, { spare: 3 }))).toBe(0);
  });

  test('by deviation, then what is filed off, then ties', () => {
    const base = { squares: 4, filed: 2, ties: [1, 1] };
    for (const better of [
      { squares: 1, filed: 9, ties: [9, 9] },
      { filed: 1, ties: [9, 9] },
      { ties: [0, 9] },
      { ties: [1, 0] },
    ]) {
      expect(byDeviation(option(0, { ...base, ...better }), option(1, base))).toBeLessThan(0);
      expect(byDeviation(option(0, base), option(1, { ...base, ...better }))).toBeGreaterThan(0);
    }
    expect(byDeviation(option(0, base), option(1, base))).toBe(0);
  });

  test('of one kind are those that take the same other parts, filed or not', () => {
    expect(kindOf(option(3))).toBe('');
    expect(kindOf(option(3, { also: [7, 8] }))).toBe('7 8');
    expect(kindOf(option(3, { also: [7], filed: 1 }))).toBe('filed 7');
  });

  test('the best are kept, one of each part; what came first wins a tie', () => {
    const best = new Best<Option>(2, bySpare);
    const [a, b, a2, c, d] = [
      option(0, { spare: 3 }),
      option(1, { spare: 5 }),
      option(0, { spare: 4 }),
      option(2, { spare: 4 }),
      option(3, { spare: 9 }),
    ];
    best.offer(a);
    expect(best.last()).toBeNull();
    best.offer(b);
    expect(best.list).toEqual([b, a]);
    expect(best.last()).toBe(a);
    best.offer(a2);
    expect(best.list).toEqual([b, a2]);
    best.offer(a);
    best.offer(c);
    expect(best.list).toEqual([b, a2]);
    best.offer(d);
    expect(best.list).toEqual([d, b]);
  });

  test('a better one of a part already there takes its place and moves up', () => {
    const best = new Best<Option>(3, bySpare);
    for (const [part, spare] of [
      [0, 5],
      [1, 4],
      [2, 3],
    ] as const)
      best.offer(option(part, { spare }));
    best.offer(option(1, { spare: 9 }));
    expect(best.list.map(({ part, spare }) => [part, spare])).toEqual([
      [1, 9],
      [0, 5],
      [2, 3],
    ]);
    best.offer(option(1, { spare: 1 }));
    expect(best.list).toHaveLength(3);
    // as good as its own before: the one that came first stays
    const twin = option(0, { spare: 5 });
    best.offer(twin);
    expect(best.list.includes(twin)).toBe(false);
  });
});

describe('a row whose options are all listed', () => {
  const all = () => true;

  test('is given as it is up to four times what is asked for', () => {
    const four = [option(0), option(1), option(2), option(3)];
    expect(listRow(four).roomiest(1, all)).toBe(four);
    expect(listRow(four).closest(1, all, 9)).toBe(four);
    expect(listRow([...four, option(4)]).roomiest(1, all)).toHaveLength(1);
  });

  test('knows its parts, and how many others an option takes at most', () => {
    const row = listRow([option(3), option(4, { also: [9] }), option(5, { also: [8, 9] }), option(6)]);
    expect(row.others).toBe(2);
    expect([3, 6, 9].map(row.mayBeMain)).toEqual([true, true, false]);
    expect(listRow([]).others).toBe(0);
  });

  const long = [
    option(0, { spare: 1, squares: 1 }),
    option(1, { spare: 5, squares: 25 }),
    option(2, { spare: 4, squares: 0 }),
    option(3, { spare: 3, squares: 4, also: [8] }),
    option(4, { spare: 2, squares: 0, also: [8] }),
    option(5, { spare: 6, squares: 0, filed: 2 }),
    option(6, { spare: 7, squares: 9, also: [9] }),
  ];
  const parts = (list: readonly Option[]) => list.map(({ part }) => part);

  test('gives the best of each kind: alone, on each ball, filed', () => {
    expect(parts(listRow(long).roomiest(1, all))).toEqual([1, 3, 5, 6]);
    expect(parts(listRow(long).closest(1, all, 0))).toEqual([2, 4, 5, 6]);
    expect(parts(listRow(long).closest(1, all, 3))).toEqual([2, 3, 5, 6]);
    expect(parts(listRow(long).closest(1, all, 5))).toEqual([1, 5, 6]);
    expect(parts(listRow(long).closest(1, all, 8))).toEqual([]);
  });

  test('leaves out what is used up, the other parts too', () => {
    expect(parts(listRow(long).roomiest(1, (part) => part !== 1 && part !== 8))).toEqual([2, 5, 6]);
    expect(parts(listRow(long).roomiest(1, (part) => part > 2 && part !== 9))).toEqual([3, 5]);
  });
});
