import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { bagHeights, inRange } from '../../../src/model/matching/bag-heights.ts';
import { measuringOf } from '../../../src/model/matching/match.ts';
import { takeStock } from '../../../src/model/matching/stock.ts';
import { lowerStackEnd, measureStack } from '../../../src/model/measured/measured-stack.ts';
import type { Job } from '../../../src/model/schema/job-schema.ts';
import type { Part } from '../../../src/model/schema/parts-schema.ts';
import { loose, withBag } from '../../support/bag-job.ts';
import { buildJob, changed } from '../../support/job-builder.ts';
import { inches } from '../../support/values.ts';

const bagOf = (job: Job, takesBall: boolean) => bagHeights(job, takeStock(job, measuringOf(job)), takesBall);

/** The same by measuring every pin, alone or on every ball, as a stack of its own; each height of a pin once. */
function oneByOne(job: Job, bag: readonly Part[], takesBall: boolean): number[] {
  const balls = job.parts.filter(({ kind, quantity }) => kind === 'ball' && quantity > 0);
  const parts = new Map(job.parts.map((part) => [part.id, part]));
  const under = takesBall ? balls.map(({ id }) => [id]) : [[]];
  return bag
    .filter(({ kind, quantity }) => kind === 'pin' && quantity > 0)
    .flatMap((pin) => {
      const heights = under.flatMap((below) => {
        const items = [...below, pin.id].map((part) => ({ part }));
        const stack = measureStack(items, parts, job.groups, 6, 1.5, measuringOf(job));
        return stack.tops[lowerStackEnd(stack)]?.value ?? [];
      });
      return heights.filter(
        (height, i) => heights.findIndex((each) => Math.abs(each - height) < 0.0005) === i,
      );
    })
    .sort((one, other) => one - other);
}

const pin = fc.record({
  length: fc.integer({ min: 100, max: 320 }),
  quantity: fc.integer({ min: 0, max: 2 }),
  isDimpled: fc.boolean(),
  together: fc.option(fc.integer({ min: 200, max: 420 }), { nil: null }),
});

describe('heights of the loose pins', () => {
  test('are those of every pin measured one by one, alone and on every ball', () => {
    fc.assert(
      fc.property(
        fc.array(pin, { maxLength: 8 }),
        fc.boolean(),
        fc.boolean(),
        (pins, takesBall, isSecondBall) => {
          const bag = pins.map(({ length, quantity, isDimpled }, i) =>
            loose(`p${i}`, {
              length: length / 1000,
              quantity,
              foot: isDimpled
                ? { kind: 'cup', mouthDiameter: 0.06, includedAngleDeg: 118 }
                : { kind: 'flat' },
            }),
          );
          const balls = [
            loose('ball-a', { kind: 'ball', diameter: 0.115, quantity: 9 }),
            ...(isSecondBall ? [loose('ball-b', { kind: 'ball', diameter: 0.125, quantity: 9 })] : []),
          ];
          const job = changed(withBag(buildJob({ chambers: 2 }), [...balls, ...bag]), (copy) => {
            pins.forEach(({ together }, i) => {
              if (together !== null)
                copy.groups.push({
                  id: `g${i}`,
                  parts: ['ball-a', `p${i}`],
                  height: inches(together / 1000),
                });
            });
          });
          const found = bagOf(job, takesBall);
          const expected = oneByOne(job, bag, takesBall);
          expect(found.heights).toHaveLength(expected.length);
          expected.forEach((height, i) => expect(found.heights[i]).toBeCloseTo(height, 6));
        },
      ),
      { numRuns: 60 },
    );
  });

  test('leave out what is in a chamber, and keep the copies that are left', () => {
    const job = changed(
      withBag(buildJob({ chambers: 2 }), [loose('a', { length: 0.2, quantity: 3 })]),
      (copy) => {
        copy.plans[0]!.stacks[0]!.items[0] = { part: 'a' };
      },
    );
    expect([...bagOf(job, false).copies]).toEqual([2]);
    const last = changed(job, (copy) => (copy.parts.at(-1)!.quantity = 1));
    expect(bagOf(last, false).heights).toHaveLength(0);
  });
});

describe('a range', () => {
  const job = withBag(buildJob(), [
    loose('short', { length: 0.2 }),
    loose('in', { length: 0.21, quantity: 2 }),
    loose('long', { length: 0.23 }),
  ]);
  const bag = bagOf(job, false);
  const at = (from: number, to: number) => inRange(bag, from * 25.4, to * 25.4);

  test('counts what lies in it, both ends and copies counted', () => {
    expect(at(0.2, 0.21)).toEqual({ count: 3, nearest: null });
    expect(at(0.205, 0.215).count).toBe(2);
  });

  test('with nothing in it says which pin misses it by least, and which way', () => {
    expect(at(0.212, 0.22).nearest).toMatchObject({ pin: { label: 'in' } });
    expect(at(0.212, 0.22).nearest?.by).toBeCloseTo(-0.002 * 25.4, 6);
    expect(at(0.22, 0.229).nearest).toMatchObject({ pin: { label: 'long' } });
    expect(at(0.22, 0.229).nearest?.by).toBeCloseTo(0.001 * 25.4, 6);
    expect(inRange(bagOf(buildJob(), false), 5, 6)).toEqual({ count: 0, nearest: null });
  });
});
