/**
 * The window of a split beside its picture: a bracket from lowest to highest with its numbers, the height up to which
 * nothing touches, and the offset as a dimension from the line. Labels are spread so that none overlap, with leaders to
 * their heights. Offsets + high, - low; mm to CSS pixels.
 *
 *        ---.  highest +.0040
 *       |   |
 *       |  -+  no touch 0
 *    ===|   |  line
 *       |   |
 *        ---'  lowest -.0077
 */
import type { JobUnit } from '../model/units/length-unit.ts';
import type { Box } from './close-up-frame.ts';
import { label } from './label.ts';
import { type DrawingNode, group, node } from './node.ts';
import { spreadLabels } from './spread-labels.ts';
import type { StackSplit } from './stack-split.ts';
import { arrowHead } from './symbols.ts';
import { pointsData, type View, yPx } from './view.ts';
import { signedText, symbolOf } from './split-words.ts';

export type WindowMark = { readonly text: string; readonly offset: number; readonly className: string };

/** Draws the bracket to the right of the window; nothing while no window is known. Without labels: only its spine. */
export function windowBracket(
  split: StackSplit,
  view: View,
  box: Box,
  unit: JobUnit,
  textSize: number,
  hasLabels: boolean,
): DrawingNode[] {
  const { result, line } = split;
  if (result === null) return [];
  const { lowest, highest } = result.window;
  const crest = line.innerAxisY + line.radius;
  const shown = (offset: number): number => clamp(yPx(view, crest + offset), box.top, box.bottom);
  const x = box.right;
  const marks = hasLabels ? windowMarks(split, unit) : [];
  const rows = spreadLabels(
    marks.map((mark) => shown(mark.offset)),
    textSize * 1.4,
    box.top + textSize,
    box.bottom - textSize * 0.3,
  );
  const spine = x + 10;
  const isEmpty = highest < lowest;
  const bracket = [
    { x: spine - 5, y: shown(highest) },
    { x: spine, y: shown(highest) },
    { x: spine, y: shown(lowest) },
    { x: spine - 5, y: shown(lowest) },
  ];
  const textX = x + 40;
  return [
    group('window-bracket', [
      node('path', { class: isEmpty ? 'window-empty' : 'window-spine', d: pointsData(bracket, false) }),
      ...marks.flatMap((mark, i) => leader(mark, shown(mark.offset), rows[i] ?? 0, spine, textX, textSize)),
      ...arrowAt(split, shown, x, spine),
    ]),
  ];
}

/** The numbers of a window, from the top: for the bracket, or for a row of text where there is no room beside it. */
export function windowMarks(split: StackSplit, unit: JobUnit): WindowMark[] {
  if (split.result === null) return [];
  const { lowest, noTouch, highest } = split.result.window;
  const touches = { text: `no touch ${signedText(noTouch, unit)}`, offset: noTouch, className: 'text-soft' };
  return [
    { text: `highest ${signedText(highest, unit)}`, offset: highest, className: '' },
    ...(noTouch < highest && noTouch > lowest ? [touches] : []),
    { text: `lowest ${signedText(lowest, unit)}`, offset: lowest, className: '' },
    { text: splitText(split, unit), offset: split.offset, className: `verdict-${symbolOf(split.verdict)}` },
  ];
}

function splitText(split: StackSplit, unit: JobUnit): string {
  const amount = signedText(split.offset, unit);
  return `split ${amount}`;
}

function leader(
  mark: WindowMark,
  at: number,
  row: number,
  spine: number,
  textX: number,
  textSize: number,
): DrawingNode[] {
  const isSplit = mark.text.startsWith('split');
  const start = isSplit ? spine - 8 : spine;
  const points = [
    { x: start, y: at },
    { x: spine + 10, y: at },
    { x: textX - 10, y: row },
    { x: textX - 4, y: row },
  ];
  return [
    node('path', { class: 'thin', d: pointsData(points, false) }),
    label(mark.text, textX, row + textSize * 0.35, {
      size: textSize,
      isStrong: isSplit,
      className: mark.className,
    }),
  ];
}

/** The offset as a dimension from the line to the split, where there is room for it. */
function arrowAt(
  split: StackSplit,
  shown: (offset: number) => number,
  x: number,
  spine: number,
): DrawingNode[] {
  const [from, to] = [shown(0), shown(split.offset)];
  const span = Math.abs(from - to);
  const at = (x + spine) / 2 - 3;
  const tick = (y: number): string =>
    pointsData(
      [
        { x: at - 3, y },
        { x: at + 3, y },
      ],
      false,
    );
  const line = node('path', {
    class: 'dimension',
    d: `${pointsData(
      [
        { x: at, y: from },
        { x: at, y: to },
      ],
      false,
    )}${tick(from)}`,
  });
  if (span < 3) return [];
  return span < 12 ? [line] : [line, arrowHead(at, to, to < from ? 'up' : 'down', 7)];
}

function clamp(value: number, least: number, most: number): number {
  return Math.min(most, Math.max(least, value));
}
