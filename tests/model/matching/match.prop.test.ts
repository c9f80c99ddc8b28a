/** What must hold for any bag; seeds are in the messages. */
import { describe, expect, test } from 'vitest';
import { assign } from '../../../src/model/matching/assign.ts';
import { compareScores } from '../../../src/model/matching/levels.ts';
import { type Match, matchParts, prepareMatch } from '../../../src/model/matching/match.ts';
import { listRow } from '../../../src/model/matching/option.ts';
import { rowsOf } from '../../../src/model/matching/pair-to-fill.ts';
import type { Job } from '../../../src/model/schema/job-schema.ts';
import type { Part } from '../../../src/model/schema/parts-schema.ts';
import { loose, withBag } from '../../support/bag-job.ts';
import { buildJob, changed } from '../../support/job-builder.ts';
import { seededRandom } from '../../support/random-job.ts';
import { type EndOptions, inches } from '../../support/values.ts';

const SELECTION = { cylinder: 'cylinder', key: 'key', plan: 'plan' };
const SEEDS = Array.from({ length: 60 }, (_, i) => i + 1);
const TOPS: readonly EndOptions[] = [{ kind: 'dome' }, { kind: 'bevel', width: 0.012, angleDeg: 45 }];
const CONDITIONS = ['good', 'fair', 'poor'] as const;

/** Scarce and plentiful bags, with and without balls, some of them short, some pins to be filed, some locked. */
function randomBagJob(seed: number): { job: Job; mostFiled: number | null } {
  const random = seededRandom(seed);
  const upTo = (most: number) => Math.floor(random() * (most + 1));
  const drawn = <T>(list: readonly T[]): T => list[upTo(list.length - 1)]!;
  const hasBalls = random() < 0.4;
  const chambers = Array.from({ length: 1 + upTo(5) }, () => ({
    rootDepth: 0.22 + 0.0005 * upTo(160),
    ...(hasBalls ? { ball: 0.115 } : {}),
  }));
  const around = hasBalls ? 0.05 : 0.13;
  const pins = Array.from({ length: upTo(drawn([6, 20, 80])) }, (_, i) =>
    loose(`pin-${i}`, {
      length: Math.round((around + 0.09 * random()) * 4000) / 4000,
      diameter: drawn([0.115, 0.116]),
      foot: hasBalls ? { kind: 'flat' } : { kind: 'cone', tipFlatDiameter: 0.03, includedAngleDeg: 90 },
      top: drawn(TOPS),
      quantity: drawn([0, 1, 1, 1, 2]),
      original: random() < 0.3,
      condition: drawn(CONDITIONS),
      from: drawn(['', 'Cylinder', 'elsewhere']),
    }),
  );
  const balls = hasBalls
    ? [0.112, 0.115].map((diameter) =>
        loose(`loose-ball-${diameter}`.replace('.', ''), { kind: 'ball', diameter, quantity: upTo(4) }),
      )
    : [];
  const job = changed(withBag(buildJob({ chambers }), [...pins, ...balls]), (copy) => {
    if (random() < 0.2) copy.plans[0]!.stacks[0]!.locked = true;
    const pair = pins[0];
    if (hasBalls && pair !== undefined) {
      copy.groups.push({ id: 'together', parts: ['loose-ball-0115', pair.id], height: inches(0.17) });
    }
  });
  return { job, mostFiled: random() < 0.4 ? 0.25 : null };
}

const chosenIn = (match: Match) => match.chambers.map(({ standing }) => standing?.items ?? null);

describe('for any bag', () => {
  test('looking at the few around each height finds what looking at all finds', () => {
    for (const seed of SEEDS) {
      const { job, mostFiled } = randomBagJob(seed);
      const { pair, filling } = prepareMatch(job, SELECTION, { mostFiled });
      const rows = rowsOf(pair, filling);
      const copiesOf = (part: number) => filling.copies[part] ?? 0;
      const isLeft = (part: number) => copiesOf(part) > 0;
      const few = assign(rows, copiesOf);
      // a pin on two kinds of ball is listed as it is roomiest, and as it is closest with enough to spare
      const least = Math.min(few.score.smallestToSpare, 1000);
      const all = rows.map((row) =>
        listRow([...row.roomiest(100000, isLeft), ...row.closest(100000, isLeft, least)]),
      );
      expect(few.score, `seed ${seed}`).toEqual(assign(all, copiesOf).score);
      expect(few.isProved).toBe(true);
    }
  });

  test('no part is used more often than there are of it', () => {
    for (const seed of SEEDS) {
      const { job, mostFiled } = randomBagJob(seed);
      const used = new Map<string, number>();
      for (const { isLocked, standing } of matchParts(job, SELECTION, { mostFiled }).chambers) {
        for (const { part } of isLocked ? [] : (standing?.items ?? []))
          used.set(part, (used.get(part) ?? 0) + 1);
      }
      for (const [id, count] of used) {
        const quantity = job.parts.find((part) => part.id === id)?.quantity ?? 0;
        expect(count, `seed ${seed}: ${id}`).toBeLessThanOrEqual(quantity);
      }
    }
  });

  test('an original is never filed, nothing more than was said, and only what does not fit as it is', () => {
    let filed = 0;
    for (const seed of SEEDS) {
      const { job } = randomBagJob(seed);
      for (const { standing } of matchParts(job, SELECTION, { mostFiled: 0.3 }).chambers) {
        if (standing === null || standing.filedOff === 0) continue;
        filed += 1;
        expect(job.parts.find((part) => part.id === standing.items.at(-1)?.part)?.original).toBe(false);
        expect(standing.filedOff).toBeLessThanOrEqual(0.3);
        expect(standing.offset + standing.filedOff).toBeGreaterThan(standing.highest);
      }
    }
    expect(filed).toBeGreaterThan(5);
  });

  test('the order of parts in the file changes nothing', () => {
    for (const seed of SEEDS) {
      const { job, mostFiled } = randomBagJob(seed);
      const shuffled = { ...job, parts: shuffle(job.parts, seed) };
      const [one, other] = [job, shuffled].map((each) => matchParts(each, SELECTION, { mostFiled }));
      expect(chosenIn(other!), `seed ${seed}`).toEqual(chosenIn(one!));
    }
  });

  test('one more part in the bag never makes it worse', () => {
    for (const seed of SEEDS) {
      const { job, mostFiled } = randomBagJob(seed);
      const random = seededRandom(seed + 1000);
      const before = matchParts(job, SELECTION, { mostFiled });
      const another = loose('another', { length: 0.13 + 0.09 * random() });
      const more = {
        ...job,
        parts: [...job.parts, another, loose('ball', { kind: 'ball', diameter: 0.115 })],
      };
      const after = matchParts(more, SELECTION, { mostFiled });
      expect(compareScores(after.score, before.score), `seed ${seed}`).toBeLessThanOrEqual(0);
    }
  });

  test('every empty chamber says why, and every sentence is one', () => {
    let empty = 0;
    for (const seed of SEEDS) {
      const { job } = randomBagJob(seed);
      const { chambers, answer } = matchParts(job, SELECTION);
      for (const { standing, why } of chambers) {
        if (standing !== null) continue;
        empty += 1;
        expect(why, `seed ${seed}`).toMatch(/^[A-Z].*\.$/);
        expect(why, `seed ${seed}`).not.toMatch(/NaN|undefined|null|Infinity/);
      }
      expect(answer).toMatch(/^[A-Z0-9].*\.$/);
    }
    expect(empty).toBeGreaterThan(20);
  });
});

function shuffle(list: readonly Part[], seed: number): Part[] {
  const random = seededRandom(seed);
  return list
    .map((part) => ({ part, at: random() }))
    .sort((one, other) => one.at - other.at)
    .map(({ part }) => part);
}
