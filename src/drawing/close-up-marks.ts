/**
 * Marks in and beside a close-up's window: the ladder to read heights from, the bar of the +-, the arrow to an edge that
 * lies outside. CSS pixels.
 *
 *      -|          ladder: one rung each .001 in (or 0.01 mm), longer every fifth; the rung of the line is longest and
 *      -|-         the first ones above it are a scale bar with their length
 *      -|
 */
import type { JobUnit } from '../model/units/length-unit.ts';
import { MM_PER_INCH } from '../model/units/length-unit.ts';
import type { Box } from './close-up-frame.ts';
import { label } from './label.ts';
import { type DrawingNode, group, node } from './node.ts';
import { roundLengthText } from './scale-bar.ts';
import { amountText, symbolOf } from './split-words.ts';
import type { StackSplit } from './stack-split.ts';
import { arrowHead, verdictSymbol } from './symbols.ts';
import { pointsData, type View, yPx } from './view.ts';

/** mm of one rung. */
const RUNG: Readonly<Record<JobUnit, number>> = { in: 0.001 * MM_PER_INCH, mm: 0.01 };
const RUNGS_PER_LONG = 5;
/** How many rungs the bar may span: the fewest that leave room for its text. */
const RUNGS_IN_BAR = [5, 10, 25, 50, 100] as const;
/** px. Rungs closer than this are drawn only every fifth. */
const LEAST_RUNG_PX = 1.9;

/** Draws the ladder along the left side of a window, outside it. */
export function ladder(
  split: StackSplit,
  view: View,
  box: Box,
  unit: JobUnit,
  textSize: number,
): DrawingNode {
  const crest = split.line.innerAxisY + split.line.radius;
  const zero = yPx(view, crest);
  const rung = RUNG[unit] * view.scaleY;
  const every = rung >= LEAST_RUNG_PX ? 1 : RUNGS_PER_LONG;
  const inBar = RUNGS_IN_BAR.find((count) => count * rung >= textSize * 1.5) ?? 100;
  const lowest = Math.ceil((zero - box.bottom) / rung);
  const highest = Math.floor((zero - box.top) / rung);
  const rungs: string[] = [];
  for (let i = lowest; i <= highest; i++) {
    if (i % every !== 0) continue;
    const long = i === 0 ? 9 : i % RUNGS_PER_LONG === 0 ? 6 : 3;
    const y = zero - i * rung;
    rungs.push(
      pointsData(
        [
          { x: box.left - 1 - long, y },
          { x: box.left - 1, y },
        ],
        false,
      ),
    );
  }
  const top = zero - inBar * rung;
  const barFits = top > box.top + textSize * 0.4;
  const text = roundLengthText(RUNG[unit] * inBar, unit).replace(/ .*/, '');
  return group('ladder', [
    node('path', { class: 'thin', d: rungs.join('') }),
    ...(barFits
      ? [
          node('rect', { class: 'bar bar-full', x: box.left - 3.5, y: top, width: 2.5, height: zero - top }),
          label(text, box.left - 12, top + textSize * 0.35, {
            size: textSize,
            anchor: 'end',
            className: 'text-soft',
          }),
        ]
      : []),
    label('0', box.left - 12, zero + textSize * 0.35, {
      size: textSize,
      anchor: 'end',
      className: 'text-soft',
    }),
  ]);
}

/** Draws the +- at the split as an upright bar with feet; nothing while it is not known. */
export function uncertaintyBar(split: StackSplit, view: View, box: Box): DrawingNode[] {
  const { result } = split;
  if (result === null || result.expandedUncertainty <= 0 || isOutside(split, view, box) !== null) return [];
  const x = (box.left + box.right) / 2;
  const [top, bottom] = [1, -1].map((side) => yPx(view, split.height + side * result.expandedUncertainty));
  const [high, low] = [Math.max(box.top, top ?? 0), Math.min(box.bottom, bottom ?? 0)];
  const foot = (y: number): string =>
    pointsData(
      [
        { x: x - 5, y },
        { x: x + 5, y },
      ],
      false,
    );
  const d = [
    pointsData(
      [
        { x, y: high },
        { x, y: low },
      ],
      false,
    ),
    high === top ? foot(high) : '',
    low === bottom ? foot(low) : '',
  ];
  return [
    node('path', { class: 'uncertainty-ground', d: d.join('') }),
    node('path', { class: 'uncertainty', d: d.join(''), 'data-chamber': split.chamber.id }),
  ];
}

/** Shades the heights the split may have, as wide as the part under it. */
export function uncertaintyBand(split: StackSplit, view: View, box: Box): DrawingNode[] {
  const { result, below } = split;
  if (result === null || below === null || isOutside(split, view, box) !== null) return [];
  const half = below.part.radius * Math.abs(view.scaleX);
  const middle = (box.left + box.right) / 2;
  const top = Math.max(box.top, yPx(view, split.height + result.expandedUncertainty));
  const bottom = Math.min(box.bottom, yPx(view, split.height - result.expandedUncertainty));
  const left = Math.max(box.left, middle - half);
  const width = Math.min(box.right, middle + half) - left;
  return [node('rect', { class: 'uncertainty-band', x: left, y: top, width, height: bottom - top })];
}

/** The verdict's symbol in what crosses the line, where that is high enough to hold it. */
export function crossingSymbol(split: StackSplit, view: View, box: Box, textSize: number): DrawingNode[] {
  const { result, verdict, offset } = split;
  const symbol = symbolOf(verdict);
  const height = Math.abs(offset) * view.scaleY;
  const size = textSize * 0.85;
  if (result === null || symbol === 'turns' || height < size * 2.4 || isOutside(split, view, box) !== null)
    return [];
  const x = (box.left + box.right) / 2;
  const y = yPx(view, split.height - offset * 0.62);
  return [
    group('crossing-symbol', [
      node('circle', { class: 'symbol-ground', cx: x, cy: y, r: size * 0.85 }),
      ...verdictSymbol(symbol, x, y, size * 0.9),
    ]),
  ];
}

/** Says on which side of the window the split lies; null when it is shown. */
export function isOutside(split: StackSplit, view: View, box: Box): 'up' | 'down' | null {
  const y = yPx(view, split.height);
  if (y < box.top + 1) return 'up';
  return y > box.bottom - 1 ? 'down' : null;
}

/** Where the split lies outside the window: its edge is broken, an arrow says which way and how far from the line. */
export function outsideMark(
  split: StackSplit,
  view: View,
  box: Box,
  unit: JobUnit,
  textSize: number,
): DrawingNode[] {
  const way = isOutside(split, view, box);
  if (way === null) return [];
  const x = (box.left + box.right) / 2;
  const edge = way === 'up' ? box.top : box.bottom;
  const inward = way === 'up' ? 1 : -1;
  const zigzag = [-14, -5, 5, 14].map((dx, i) => ({ x: x + dx, y: edge + (i === 1 ? -4 : i === 2 ? 4 : 0) }));
  const start = [{ x: box.left, y: edge }, ...zigzag, { x: box.right, y: edge }];
  const tip = edge + inward * 8;
  const stem = [
    { x, y: tip + inward * 8 },
    { x, y: tip + inward * 20 },
  ];
  const text = amountText(split.offset, unit);
  const y = tip + inward * 22 + (way === 'up' ? textSize * 0.9 : -textSize * 0.2);
  return [
    group('outside', [
      node('path', { class: 'break-ground', d: pointsData(start, false) }),
      node('path', { class: 'thin', d: pointsData(start, false) }),
      arrowHead(x, tip, way, 9),
      node('path', { class: 'thin', d: pointsData(stem, false) }),
      label(text, x, y, { size: textSize, isStrong: true, anchor: 'middle', className: 'text-on-metal' }),
    ]),
  ];
}
