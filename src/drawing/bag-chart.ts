/**
 * The bag against the ranges wanted: a lane for each chamber with its range as a band, the parts that lie in it as ticks, and
 * in words how many or what comes nearest; under them the whole bag as columns over the same lengths. Lengths run to the
 * right. Parts far from every range are counted at the ends, so that the ranges keep their room. CSS pixels.
 *
 *     1            |==|=!=|=|  4 in the bag
 *     2    |===!===|  none; P07 is .0020 too long
 *        ______._____|_.__||_.________.____
 *        .240       .260       .280       .300 in
 */
import { formatLength } from '../model/units/format-length.ts';
import { type JobUnit, MM_PER_INCH } from '../model/units/length-unit.ts';
import { label, textWidth } from './label.ts';
import { type DrawingNode, drawingRoot, group, node } from './node.ts';
import { numberText } from './number-text.ts';

export type ChartRange = {
  /** As counted on screen. */
  readonly number: number;
  readonly from: number;
  readonly to: number;
  readonly best: number | null;
  /** How many of the bag lie in it, or what comes nearest. */
  readonly words: string;
  readonly isEmpty: boolean;
  readonly isPicked: boolean;
};

export type BagChartOptions = {
  readonly width: number;
  readonly unit: JobUnit;
  /** What the lengths are of: "ball + bottom pin". */
  readonly what: string;
  readonly textScale?: number;
};

type Axis = {
  readonly left: number;
  readonly right: number;
  readonly from: number;
  readonly to: number;
  readonly x: (length: number) => number;
};

/** Room beyond the ranges, as a share of what they take, and at least so much. */
const PAD_SHARE = 0.12;
const LEAST_PAD_MM = 0.4;
/** px. */
const TOP = 4;
const LANE = 26;
const BAND = 14;
const COLUMNS = 40;
const COLUMN_WIDTH = 3;
/** Between a band and its words. */
const WORDS_GAP = 10;

const TICKS: Readonly<Record<JobUnit, readonly number[]>> = {
  in: [0.005, 0.01, 0.02, 0.05, 0.1, 0.2, 0.5].map((inches) => inches * MM_PER_INCH),
  mm: [0.1, 0.2, 0.5, 1, 2, 5, 10],
};

/** Draws the chart. `heights` are those of the bag, ascending, mm; there must be a range or a height. */
export function bagChart(
  heights: ArrayLike<number>,
  ranges: readonly ChartRange[],
  options: BagChartOptions,
): DrawingNode {
  const size = 12 * (options.textScale ?? 1);
  const axis = axisFor(heights, ranges, size * 1.6, options.width - 4);
  const lane = LANE * (options.textScale ?? 1);
  const foot = TOP + ranges.length * lane + (ranges.length > 0 ? 8 : 0);
  const base = foot + size * 1.2 + COLUMNS;
  const height = base + size * 2.9;
  const outside = outsideOf(heights, axis);
  return drawingRoot({ width: options.width, height }, chartWords(heights.length, ranges, options), [
    grid(axis, options.unit, base, size),
    ...ranges.map((range, i) => rangeLane(range, TOP + i * lane, { heights, axis, size })),
    columns(heights, axis, base),
    label(`The bag, ${options.what}`, axis.left, foot + size, { size, className: 'text-soft' }),
    ...outsideLabels(outside, axis, base, size),
  ]);
}

function axisFor(
  heights: ArrayLike<number>,
  ranges: readonly ChartRange[],
  left: number,
  right: number,
): Axis {
  const ends = ranges.flatMap(({ from, to }) => [from, to]);
  const all = ends.length > 0 ? ends : [heights[0] ?? 0, heights[heights.length - 1] ?? 1];
  const [least, most] = [Math.min(...all), Math.max(...all)];
  const pad = Math.max(LEAST_PAD_MM, (most - least) * PAD_SHARE);
  const [from, to] = [least - pad, most + pad];
  const scale = (right - left) / (to - from);
  return { left, right, from, to, x: (length) => left + (length - from) * scale };
}

function grid(axis: Axis, unit: JobUnit, base: number, size: number): DrawingNode {
  const widest = textWidth('0.0000', size) + 10;
  const perMm = (axis.right - axis.left) / (axis.to - axis.from);
  const step = TICKS[unit].find((each) => each * perMm >= widest) ?? 20;
  const places: number[] = [];
  for (let i = Math.ceil(axis.from / step); i * step <= axis.to; i++) places.push(i * step);
  const rules = places.map((length) => line(axis.x(length), 0, axis.x(length), base)).join('');
  const unitWidth = textWidth(` ${unit}`, size);
  return group('axes', [
    node('path', { class: 'faint', d: rules }),
    node('path', { class: 'thin', d: line(axis.left, base, axis.right, base) }),
    ...places
      .filter((length) => axis.x(length) + widest / 2 < axis.right - unitWidth)
      .map((length) =>
        label(tickText(length, unit), axis.x(length), base + size * 1.3, {
          size,
          anchor: 'middle',
          className: 'text-soft',
        }),
      ),
    label(unit, axis.right, base + size * 1.3, { size, anchor: 'end', className: 'text-soft' }),
  ]);
}

type LaneSetting = {
  readonly heights: ArrayLike<number>;
  readonly axis: Axis;
  readonly size: number;
};

function rangeLane(range: ChartRange, top: number, { heights, axis, size }: LaneSetting): DrawingNode {
  const { number, from, to, best, words, isEmpty, isPicked } = range;
  const [left, right] = [axis.x(from), axis.x(to)];
  const [bandTop, bandEnd] = [top + 5, top + 5 + BAND];
  const middle = bandTop + BAND / 2 + size * 0.35;
  const isPoint = right - left < 1;
  // Behind the band, or before it where there is no room behind.
  const isRight = right + WORDS_GAP + textWidth(words, size, isPicked) <= axis.right;
  return group(
    'range-lane',
    [
      label(String(number), 0, middle, { size, isStrong: true }),
      isPoint
        ? node('path', { class: 'range-about', d: line(left, bandTop - 2, left, bandEnd + 2) })
        : node('path', {
            class: isEmpty ? 'range-band is-empty' : 'range-band',
            d: `M${numberText(left)} ${numberText(bandTop)}H${numberText(right)}V${numberText(bandEnd)}H${numberText(left)}Z`,
          }),
      node('path', { class: 'range-ticks', d: ticksIn(heights, axis, from, to, bandTop, bandEnd) }),
      ...(best === null || isPoint
        ? []
        : [node('path', { class: 'range-best', d: arrowDown(axis.x(best), bandTop - 1) })]),
      label(words, isRight ? right + WORDS_GAP : left - WORDS_GAP, middle, {
        size,
        isStrong: isPicked,
        anchor: isRight ? 'start' : 'end',
        className: isEmpty ? 'text-on-metal verdict-stops' : 'text-on-metal',
      }),
    ],
    { 'data-chamber-number': number },
  );
}

/** A tick for every pixel that a part lies on, so that thousands cost no more than the width. */
function ticksIn(
  heights: ArrayLike<number>,
  axis: Axis,
  from: number,
  to: number,
  top: number,
  end: number,
): string {
  const seen = new Set<number>();
  for (let i = 0; i < heights.length; i++) {
    const height = heights[i] ?? 0;
    if (height >= from && height <= to) seen.add(Math.round(axis.x(height) * 2) / 2);
  }
  return [...seen].map((x) => line(x, top, x, end)).join('');
}

/** How many parts each few pixels of the axis hold, as columns; one part is as high as can be seen. */
function columns(heights: ArrayLike<number>, axis: Axis, base: number): DrawingNode {
  const counts = new Map<number, number>();
  for (let i = 0; i < heights.length; i++) {
    const height = heights[i] ?? 0;
    if (height < axis.from || height > axis.to) continue;
    const place = Math.floor((axis.x(height) - axis.left) / COLUMN_WIDTH);
    counts.set(place, (counts.get(place) ?? 0) + 1);
  }
  const most = Math.max(5, ...counts.values());
  const d = [...counts]
    .sort(([one], [other]) => one - other)
    .map(([place, count]) => {
      const x = axis.left + place * COLUMN_WIDTH + 0.5;
      const top = base - (COLUMNS * count) / most;
      return `M${numberText(x)} ${numberText(base)}V${numberText(top)}H${numberText(x + COLUMN_WIDTH - 1)}V${numberText(base)}Z`;
    });
  return node('path', { class: 'bag-columns', d: d.join('') });
}

function outsideOf(heights: ArrayLike<number>, axis: Axis): { shorter: number; longer: number } {
  let [shorter, longer] = [0, 0];
  for (let i = 0; i < heights.length; i++) {
    if ((heights[i] ?? 0) < axis.from) shorter += 1;
    else if ((heights[i] ?? 0) > axis.to) longer += 1;
  }
  return { shorter, longer };
}

function outsideLabels(
  { shorter, longer }: { shorter: number; longer: number },
  axis: Axis,
  base: number,
  size: number,
): DrawingNode[] {
  const y = base + size * 2.6;
  return [
    ...(shorter === 0 ? [] : [label(`${shorter} shorter`, axis.left, y, { size, className: 'text-soft' })]),
    ...(longer === 0
      ? []
      : [label(`${longer} longer`, axis.right, y, { size, anchor: 'end', className: 'text-soft' })]),
  ];
}

function chartWords(count: number, ranges: readonly ChartRange[], { what }: BagChartOptions): string {
  const lanes = ranges.map(({ number, words }) => `chamber ${number}: ${words}`).join('; ');
  const bag = count === 1 ? 'one loose part' : `${count} loose parts`;
  return `The ranges wanted and the bag, ${what}: ${bag}${lanes === '' ? '' : `; ${lanes}`}`;
}

function tickText(length: number, unit: JobUnit): string {
  return formatLength(length, { unit, form: 'bench' });
}

function arrowDown(x: number, tip: number): string {
  return `M${numberText(x)} ${numberText(tip)}L${numberText(x - 3.5)} ${numberText(tip - 6)}H${numberText(x + 3.5)}Z`;
}

function line(x1: number, y1: number, x2: number, y2: number): string {
  return `M${numberText(x1)} ${numberText(y1)}L${numberText(x2)} ${numberText(y2)}`;
}
