/** The bag against the ranges wanted: how it looks, and that it tells the truth about what lies in a range. */
import { describe, expect, test } from 'vitest';
import { bagChart, type ChartRange } from '../../src/drawing/bag-chart.ts';
import { type DrawingNode, toSvgText } from '../../src/drawing/node.ts';
import { expectGolden } from '../support/golden.ts';
import { everyNode } from '../support/svg-boxes.ts';

const range = (number: number, from: number, to: number, changes: Partial<ChartRange> = {}): ChartRange => ({
  number,
  from,
  to,
  best: (from + to) / 2,
  words: 'one in the bag',
  isEmpty: false,
  isPicked: false,
  ...changes,
});

const HEIGHTS = [4, 6.31, 6.4, 6.4, 6.4, 6.46, 7.1, 8.3, 9.99];
const RANGES = [
  range(1, 6.3, 6.5, { words: '5 in the bag' }),
  range(2, 7.4, 7.6, { words: 'none; P07 is .0120 too short', isEmpty: true, isPicked: true }),
  range(3, 8.3, 8.3, { words: 'one in the bag', best: null }),
];
const LOOK = { width: 520, unit: 'in', what: 'ball + bottom pin' } as const;

const having = (drawing: DrawingNode, name: string) =>
  everyNode(drawing).filter(({ attributes }) =>
    String(attributes['class'] ?? '')
      .split(' ')
      .includes(name),
  );
const moves = (path: DrawingNode | undefined) =>
  String(path?.attributes['d'] ?? '').match(/M/gu)?.length ?? 0;

describe('the chart of the bag', () => {
  test('looks as it did', () => {
    expectGolden('bag/chart.svg', toSvgText(bagChart(HEIGHTS, RANGES, LOOK)));
  });

  test('has a tick in a range for every part that lies in it, and for no other', () => {
    const ticks = having(bagChart(HEIGHTS, RANGES, { ...LOOK, width: 4000 }), 'range-ticks').map(moves);
    // 6.31, 6.40 (three alike on one place), 6.46; nothing; 8.30
    expect(ticks).toEqual([3, 0, 1]);
  });

  test('draws an empty range otherwise than a filled one, and says so in words', () => {
    const drawing = bagChart(HEIGHTS, RANGES, LOOK);
    expect(having(drawing, 'is-empty')).toHaveLength(1);
    expect(String(drawing.attributes['aria-label'])).toBe(
      'The ranges wanted and the bag, ball + bottom pin: 9 loose parts; chamber 1: 5 in the bag; chamber 2: none; P07 is .0120 too short; chamber 3: one in the bag',
    );
  });

  test('counts what lies far from every range at its ends', () => {
    const text = toSvgText(bagChart(HEIGHTS, RANGES, LOOK));
    expect(text).toContain('>1 shorter<');
    expect(text).toContain('>1 longer<');
  });

  test('is drawn without ranges, and without parts', () => {
    expect(having(bagChart(HEIGHTS, [], LOOK), 'range-lane')).toHaveLength(0);
    expect(toSvgText(bagChart([], RANGES, { ...LOOK, unit: 'mm', width: 240 }))).not.toContain('NaN');
    expect(toSvgText(bagChart([5], [], LOOK))).not.toContain('NaN');
  });

  test('costs no more for ten thousand parts than its width', () => {
    const many = Float64Array.from({ length: 10_000 }, (_, i) => 6 + i / 5000);
    const wide = bagChart(many, [range(1, 6, 8)], LOOK);
    expect(moves(having(wide, 'range-ticks')[0])).toBeLessThanOrEqual(2 * LOOK.width);
    expect(moves(having(wide, 'bag-columns')[0])).toBeLessThanOrEqual(LOOK.width / 3);
  });

  test('keeps its words inside the picture', () => {
    for (const width of [300, 520, 900]) {
      for (const { attributes } of having(bagChart(HEIGHTS, RANGES, { ...LOOK, width }), 'text')) {
        expect(Number(attributes['x'])).toBeGreaterThanOrEqual(0);
        expect(Number(attributes['x'])).toBeLessThanOrEqual(width);
      }
    }
  });
});
