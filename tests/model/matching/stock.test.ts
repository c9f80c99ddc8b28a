import { describe, expect, test } from 'vitest';
import { measuringOf } from '../../../src/model/matching/match.ts';
import { takeStock } from '../../../src/model/matching/stock.ts';
import type { Group, Part } from '../../../src/model/schema/parts-schema.ts';
import { loose } from '../../support/bag-job.ts';
import { buildJob } from '../../support/job-builder.ts';
import { inches } from '../../support/values.ts';

const INCH = 25.4;
const stockOf = (parts: Part[], groups: Group[] = []) => {
  const job = { ...buildJob({ chambers: 1 }), parts, groups };
  return takeStock(job, measuringOf(job));
};
const heights = (parts: Part[], groups: Group[] = []) =>
  stockOf(parts, groups).batches.map(({ hasBall, lengths, added }) => ({
    hasBall,
    heights: [...lengths].map((length) => Number(((length + added) / INCH).toFixed(5))),
  }));

describe('batches', () => {
  test('pins of one shape and diameter make one, shortest first; other shapes and diameters others', () => {
    const bag = [
      loose('c', { length: 0.3 }),
      loose('a', { length: 0.1 }),
      loose('b', { length: 0.2 }),
      loose('flat', { length: 0.15, top: { kind: 'flat' } }),
      loose('wide', { length: 0.15, diameter: 0.118 }),
    ];
    expect(heights(bag)).toEqual([
      { hasBall: false, heights: [0.1, 0.2, 0.3] },
      { hasBall: false, heights: [0.15] },
      { hasBall: false, heights: [0.15] },
    ]);
  });

  test('a flat pin adds its length to a loose ball, one with a dimple sinks onto it', () => {
    const ball = loose('ball', { kind: 'ball', diameter: 0.115 });
    const flat = loose('flat', { length: 0.1, foot: { kind: 'flat' } });
    // worked by hand: a ball of radius .0575 in a mouth .06 across rides its rim (cone of 118 degrees, .0575 cos 59 < .03 is
    // true, so it touches the cone): stands out r + r/sin 59 - .03/tan 59
    const half = (59 * Math.PI) / 180;
    const out = 0.0575 + 0.0575 / Math.sin(half) - 0.03 / Math.tan(half);
    const dimpled = loose('dimpled', {
      length: 0.1,
      foot: { kind: 'cup', mouthDiameter: 0.06, includedAngleDeg: 118 },
    });
    const found = heights([ball, flat, dimpled]).filter(({ hasBall }) => hasBall);
    expect(found.map((each) => each.heights[0])).toEqual([Number((0.1 + out).toFixed(5)), 0.215]);
  });

  test('a pair measured together counts with its height, and its pin is not put on that ball otherwise', () => {
    const ball = loose('ball', { kind: 'ball', diameter: 0.115 });
    const pin = loose('pin', { length: 0.1, foot: { kind: 'flat' } });
    const group: Group = { id: 'pair', parts: ['ball', 'pin'], height: inches(0.213) };
    expect(heights([ball, pin], [group])).toEqual([
      { hasBall: false, heights: [0.1] },
      { hasBall: true, heights: [0.213] },
    ]);
  });

  test('a zero check of the caliper counts', () => {
    const job = buildJob({ chambers: 1 });
    const pin = loose('pin', { length: 0.1 });
    for (const reading of pin.length!.readings) reading.session = 'monday';
    const session = { id: 'monday', instrument: 'caliper', closedReading: inches(0.001), at: '' };
    const stock = takeStock(
      { ...job, parts: [pin], sessions: [session] },
      measuringOf({ ...job, sessions: [session] }),
    );
    expect(stock.batches[0]?.lengths[0]).toBeCloseTo(0.099 * INCH, 9);
  });
});

test('what cannot be chosen is set aside, with why', () => {
  const spool = { kind: 'spool' as const, from: inches(0.05), length: inches(0.05), diameter: inches(0.08) };
  const bag = [
    loose('none', { length: 0.1, quantity: 0 }),
    loose('open', { length: null }),
    loose('minus', { length: -0.1 }),
    { ...loose('spool', { length: 0.2 }), waist: spool },
    loose('ball', { kind: 'ball', diameter: null }),
    loose('hanging', {
      length: 0.1,
      diameter: null,
      foot: { kind: 'cup', mouthDiameter: 0.06, includedAngleDeg: 118 },
    }),
    loose('sound', { kind: 'ball', diameter: 0.115 }),
  ];
  const { setAside } = stockOf(bag);
  expect(setAside.map(({ part, why }) => `${part.id}: ${why}`)).toEqual([
    'ball: not measured',
    'minus: no length',
    'none: none left',
    'open: not measured',
    'spool: a driver',
    'hanging: dimple not measured',
  ]);
});

test('a pin known only together with its ball is not missing a length', () => {
  const bag = [loose('ball', { kind: 'ball', diameter: 0.115 }), loose('pin', { length: null })];
  const group: Group = { id: 'pair', parts: ['ball', 'pin'], height: inches(0.2) };
  expect(stockOf(bag, [group]).setAside).toEqual([]);
});
