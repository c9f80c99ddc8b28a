/**
 * The few candidates that a chamber looks at, against all of them, worked out one by one from their lengths: the best by what they have
 * to spare, and the nearest to the best height that have enough to spare, of each kind.
 */
import { describe, expect, test } from 'vitest';
import type { Candidate } from '../../../src/model/matching/candidate-heights.ts';
import { prepareMatch } from '../../../src/model/matching/match.ts';
import { byDeviation, bySpare, kindOf, type Option } from '../../../src/model/matching/option.ts';
import { rowsOf } from '../../../src/model/matching/pair-to-fill.ts';
import { loose, withBag } from '../../support/bag-job.ts';
import { buildJob } from '../../support/job-builder.ts';
import { seededRandom } from '../../support/random-job.ts';
import { SELECTION } from '../../support/small-job.ts';

const STEP = 0.0127;

function drawnRow(seed: number) {
  const random = seededRandom(seed);
  const upTo = (most: number) => Math.floor(random() * (most + 1));
  const ball = upTo(1) === 0 ? null : 0.115;
  const reaching = 0.172 - (ball ?? 0);
  const pins = Array.from({ length: 30 }, (_, i) =>
    loose(`p${i}`, {
      length: Math.round((reaching + 0.014 * (random() - 0.6)) * 1e4) / 1e4,
      top: upTo(2) === 0 ? { kind: 'radius', radius: 0.01 } : { kind: 'dome' },
      ...(ball !== null && { foot: { kind: 'flat' } }),
      condition: (['good', 'fair', 'poor'] as const)[upTo(2)]!,
      quantity: upTo(6) === 0 ? 0 : 1,
      original: upTo(3) === 0,
    }),
  );
  const balls =
    ball === null
      ? []
      : [
          loose('b1', { kind: 'ball', diameter: 0.115, quantity: upTo(3) }),
          loose('b2', { kind: 'ball', diameter: 0.1145, quantity: 1 + upTo(3) }),
        ];
  const job = withBag(
    buildJob({
      chambers: [
        { rootDepth: 0.26, ball },
        { rootDepth: 0.26, ball },
      ],
    }),
    [...pins, ...balls],
  );
  const mostFiled = upTo(2) === 0 ? 0.1 : null;
  const { pair, filling } = prepareMatch(job, SELECTION, { mostFiled });
  return { pair, filling, row: rowsOf(pair, filling)[0]!, spans: pair.toFill[0]!.spans, mostFiled };
}

/** Every pin as it is, and shortened to the best height where it is loose and too long. */
function allOf({ pair, filling, spans, mostFiled }: ReturnType<typeof drawnRow>): Option[] {
  const { parts } = pair.keyIn.site.stock;
  const steps = (mm: number) => Math.round(Math.max(0, mm) / STEP);
  return spans.flatMap(({ batch, fit, level }) =>
    [...batch.lengths].flatMap((length, i): Option[] => {
      const [pin, ball] = [batch.pins[i]!, batch.balls[i]!];
      if (filling.copies[pin]! < 1 || (ball >= 0 && filling.copies[ball]! < 1)) return [];
      const offset = length + batch.added - level;
      const best = Math.min(0, fit.highest);
      const also = ball >= 0 && filling.copies[ball]! < 2 ? [ball] : [];
      const at = (filed: number): Option[] => {
        const height = offset - filed * STEP;
        const margin = Math.min(height - fit.lowest, fit.highest - height);
        if (margin < -2.5e-7) return [];
        const squares = Math.round(Math.abs(height - best) / STEP) ** 2;
        return [{ part: pin, also, filed, spare: steps(margin), squares, ties: [] }];
      };
      const own = at(0);
      if (own.length > 0 || mostFiled === null || parts[pin]!.original || offset < fit.highest) return own;
      return at(Math.min(Math.floor(mostFiled / STEP), Math.ceil((offset - best - 2.5e-7) / STEP)));
    }),
  );
}

/** What counts of each, without what settles ties, kind by kind; of a part that stands there twice the better one. */
function bestOf(
  options: readonly Option[],
  count: number,
  order: (one: Option, other: Option) => number,
): Record<string, string[]> {
  const kinds: Record<string, string[]> = {};
  for (const kind of new Set(options.map(kindOf))) {
    const taken = new Set<number>();
    const sorted = options.filter((each) => kindOf(each) === kind).sort(order);
    const alone = sorted.filter(({ part }) => !taken.has(part) && taken.add(part));
    kinds[kind] = alone.slice(0, count).map(sayOption(order));
  }
  return kinds;
}

const sayOption =
  (order: unknown) =>
  ({ spare, squares, filed }: Option): string =>
    order === bySpare ? `${spare} to spare` : `${squares} off, ${filed} filed`;

const plain = ({ part, also, filed, spare, squares }: Candidate): Option => ({
  part,
  also,
  filed,
  spare,
  squares,
  ties: [],
});

describe('one row', () => {
  test.each(Array.from({ length: 40 }, (_, i) => i + 1))('of a bag drawn at random, %i', (seed) => {
    const drawn = drawnRow(seed);
    const { row, filling } = drawn;
    const isLeft = (part: number) => filling.copies[part]! > 0;
    const all = allOf(drawn);
    for (const count of [1, 2, 5, 40]) {
      expect(bestOf(row.roomiest(count, isLeft).map(plain), count, bySpare)).toEqual(
        bestOf(all, count, bySpare),
      );
      for (const least of [0, 2, 4, 6]) {
        const enough = all.filter(({ spare }) => spare >= least);
        const found = row.closest(count, isLeft, least);
        expect(found.every(({ spare }) => spare >= least)).toBe(true);
        expect(bestOf(found.map(plain), count, byDeviation)).toEqual(bestOf(enough, count, byDeviation));
      }
    }
    const only = (part: number) => part % 2 === 0;
    const even = all.filter(({ part, also }) => only(part) && also.every(only));
    const onEven = row.roomiest(2, (part) => isLeft(part) && only(part));
    expect(onEven.every(({ part, also }) => only(part) && also.every(only))).toBe(true);
    const withBall = drawn.spans.some(({ batch }) => batch.hasBall);
    if (!withBall) expect(bestOf(onEven.map(plain), 2, bySpare)).toEqual(bestOf(even, 2, bySpare));
  });

  test('a pin may be the main part, a ball never; nor what is not there', () => {
    const { row, pair } = drawnRow(4);
    const { parts } = pair.keyIn.site.stock;
    parts.forEach(({ kind }, i) => expect(row.mayBeMain(i)).toBe(kind === 'pin'));
    expect(row.mayBeMain(parts.length)).toBe(false);
  });

  test('other parts are taken where balls run short', () => {
    for (let seed = 1; seed <= 12; seed++) {
      const { row, spans, filling } = drawnRow(seed);
      const isShort = spans.some(({ batch }) => batch.ballKinds.some((ball) => filling.copies[ball]! < 2));
      expect(row.others).toBe(isShort ? 1 : 0);
    }
  });
});
