/**
 * A close-up: one stack at one line, looking along the plug. It shows what the long section cannot, the roundness of the
 * plug: its arc and the bore's, the chamber's walls and mouths, the top of the pin, the end of the driver, the line, and
 * how far the number can be trusted. Stretched in height for a row of small ones (and says so), or true. CSS pixels.
 *
 *        4
 *     +------+
 *    -|      |
 *    -|======|  window
 *    -|      |
 *     +------+
 *    high .0025
 *    ~ high, rubs
 */
import type { Assembly } from '../model/assembly/assembly.ts';
import type { Pose } from '../model/assembly/pose.ts';
import type { Evaluation } from '../model/evaluate/evaluation.ts';
import type { JobUnit } from '../model/units/length-unit.ts';
import { type Box, type CloseUpFrame, closeUpFrame, type CloseUpMode } from './close-up-frame.ts';
import { closeUpMetal } from './close-up-metal.ts';
import { crossingSymbol, ladder, outsideMark, uncertaintyBar } from './close-up-marks.ts';
import { label, textWidth, wrapped } from './label.ts';
import { type DrawingNode, drawingRoot, group, node } from './node.ts';
import { scaleBar } from './scale-bar.ts';
import { scaleText } from './scale-series.ts';
import { amountText, lineWords, offsetWords, symbolOf } from './split-words.ts';
import { type StackSplit, stackSplit } from './stack-split.ts';
import { verdictSymbol } from './symbols.ts';

export type CloseUpOptions = {
  readonly chamber: string;
  /** by default the innermost line */
  readonly line?: string;
  /** CSS px of the whole drawing, and of the window's height. */
  readonly width: number;
  readonly windowHeight: number;
  readonly unit: JobUnit;
  /** by default `true`: true proportions at 50:1, the middle of the stack only */
  readonly mode?: CloseUpMode;
  /** height against width when stretched; by default 10 */
  readonly stretch?: number;
  readonly isPicked?: boolean;
  readonly textScale?: number;
  /** `full` writes scale, stretch and +- under the window; `short` only the factor over it, for a row with one caption. */
  readonly badge?: 'full' | 'short';
};

const DEFAULT_STRETCH = 10;
const TEXT_PX = 13;

/** Draws a close-up. */
export function closeUp(
  assembly: Assembly,
  pose: Pose,
  evaluation: Evaluation | null,
  options: CloseUpOptions,
): DrawingNode {
  const split = stackSplit(assembly, pose, evaluation, options.chamber, options.line);
  const textSize = TEXT_PX * (options.textScale ?? 1);
  const small = textSize * 0.85;
  const gutter = textWidth('0.10', small) + 14;
  const top = textSize * 1.7;
  const box: Box = { left: gutter, right: options.width - 2, top, bottom: top + options.windowHeight };
  const frame = closeUpFrame(split, box, options.mode ?? 'true', options.stretch ?? DEFAULT_STRETCH);
  const words = wordsUnder(split, box, options.unit, textSize);
  const badge = badgeUnder(split, frame, options, small, words.bottom);
  const head = headRow(split, frame, options, textSize, small);
  const name = `Close-up of chamber ${split.chamber.number} at the ${lineWords(split.lineIndex, assembly.lines.length)}`;
  const height = Math.ceil((badge.bottom ?? words.bottom) + textSize * 0.3);
  return drawingRoot({ width: options.width, height }, name, [
    group('metal', [closeUpMetal(assembly, split, frame.view, box, 'narrow')], {
      'data-chamber': options.chamber,
    }),
    frameNode(box, options.isPicked ?? false),
    ladder(split, frame.view, box, options.unit, small),
    ...crossingSymbol(split, frame.view, box, textSize),
    ...uncertaintyBar(split, frame.view, box),
    ...outsideMark(split, frame.view, box, options.unit, small),
    group('labels', [...head, ...words.nodes, ...badge.nodes]),
  ]);
}

/** The sentence that belongs under a row of close-ups whose own badges are short. */
export function closeUpCaption(
  assembly: Assembly,
  pose: Pose,
  evaluation: Evaluation | null,
  options: Pick<CloseUpOptions, 'unit' | 'mode' | 'stretch' | 'line'>,
): string {
  const splits = assembly.chambers.map(({ id }) => stackSplit(assembly, pose, evaluation, id, options.line));
  const widest = Math.max(0, ...splits.map(({ result }) => result?.expandedUncertainty ?? 0));
  const scale =
    (options.mode ?? 'true') === 'stretched'
      ? stretchWords(options.stretch ?? DEFAULT_STRETCH)
      : 'true proportions';
  const bar =
    widest === 0 ? '' : ` · bar: good to about ±${amountText(widest, options.unit)} ${options.unit}`;
  return `End views, looking along the plug: ${scale}${bar}`;
}

function stretchWords(stretch: number): string {
  return `height ×${stretch}, width ×1, angles not true`;
}

function frameNode(box: Box, isPicked: boolean): DrawingNode {
  const { left, right, top, bottom } = box;
  return node('rect', {
    class: isPicked ? 'frame frame-picked' : 'frame',
    x: left,
    y: top,
    width: right - left,
    height: bottom - top,
  });
}

/** The chamber's number, and how much is enlarged or stretched, shortened where there is little room. */
function headRow(
  split: StackSplit,
  frame: CloseUpFrame,
  options: CloseUpOptions,
  textSize: number,
  small: number,
): DrawingNode[] {
  const { box, stretch } = frame;
  const y = box.top - textSize * 0.5;
  const number = String(split.chamber.number);
  const scale = scaleText(frame.enlargement);
  const factors = stretch === 1 ? [scale] : [`height ×${stretch}`, `×${stretch} high`, `×${stretch}`];
  const room = box.right - box.left - textWidth(number, textSize, true) - textSize * 0.5;
  const factor = factors.find((text) => textWidth(text, small) <= room) ?? factors.at(-1) ?? '';
  return [
    label(number, box.left, y, {
      size: textSize,
      isStrong: true,
      className: (options.isPicked ?? false) ? '' : 'text-soft',
    }),
    label(factor, box.right, y, { size: small, anchor: 'end', className: 'text-soft' }),
  ];
}

/** Offset in words, then symbol and verdict; colour last. Words wider than the window start further left. */
function wordsUnder(
  split: StackSplit,
  box: Box,
  unit: JobUnit,
  textSize: number,
): { nodes: DrawingNode[]; bottom: number } {
  const { result, verdict } = split;
  const first = box.bottom + textSize * 1.45;
  if (result === null) return { nodes: [], bottom: box.bottom + textSize * 0.4 };
  const symbol = symbolOf(verdict);
  const second = first + textSize * 1.35;
  const size = textSize * 0.92;
  const indent = symbol === 'none' ? 0 : size * 1.25;
  const offset = offsetWords(split.offset, verdict, unit);
  // What is level is not said twice.
  const said = verdict === offset ? 'turns' : verdict;
  const widest = Math.max(textWidth(offset, textSize, true), indent + textWidth(said, size));
  const x = Math.max(2, Math.min(box.left, box.right - widest));
  return {
    nodes: [
      label(offset, x, first, { size: textSize, isStrong: true }),
      ...verdictSymbol(symbol, x + size * 0.42, second - size * 0.36, size * 0.75),
      label(said, x + indent, second, { size, className: `verdict-${symbol}` }),
    ],
    bottom: second + textSize * 0.25,
  };
}

/** Scale bar, scale or stretch, and ± under the window, in as many rows as it takes. */
function badgeUnder(
  split: StackSplit,
  frame: CloseUpFrame,
  options: CloseUpOptions,
  size: number,
  from: number,
): { nodes: DrawingNode[]; bottom: number | null } {
  const { box, stretch } = frame;
  const isTrue = stretch === 1;
  if (options.badge === 'short') return { nodes: [], bottom: null };
  const bar = scaleBar(
    2,
    from + size * 0.5,
    Math.abs(frame.view.scaleX),
    (box.right - box.left) * 0.6,
    options.unit,
    size,
  );
  const plusMinus = split.result?.expandedUncertainty ?? 0;
  const sentences = [
    ...(isTrue
      ? ['True proportions', scaleText(frame.enlargement)]
      : [`Height ×${stretch}`, 'width ×1', 'angles not true']),
    ...(plusMinus > 0 ? [`bar: ±${amountText(plusMinus, options.unit)} ${options.unit}`] : []),
  ];
  const texts = wrapped(sentences, ', ', options.width - 4, size);
  const start = from + size * 3.2;
  const rows = texts.map((text, i) =>
    label(text, 2, start + i * size * 1.3, { size, className: 'text-soft' }),
  );
  return {
    nodes: [...bar.nodes, ...rows],
    bottom: start + (texts.length - 1) * size * 1.3 + size * 0.3,
  };
}
