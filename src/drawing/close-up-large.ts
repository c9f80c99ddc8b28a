/**
 * The picked close-up, whole and in true proportions: the stack at its line with chamber walls, mouths and rounds, and
 * beside it what was reckoned: the window from lowest to highest, where it begins to touch, the offset with its +-.
 * CSS pixels; heights are offsets from the line's crest at the chamber's axis.
 *
 *     5                                  20:1
 *     +-----------------------------+
 *    -|      |           |          |  --- highest +.0040
 *    -|......|....._.....|..........|   |            ^ high .0095
 *    -|   .--'-'       '-'--.       |  --- lowest -.0077
 *     +-----------------------------+
 */
import type { Assembly } from '../model/assembly/assembly.ts';
import type { Pose } from '../model/assembly/pose.ts';
import type { Evaluation } from '../model/evaluate/evaluation.ts';
import type { JobUnit } from '../model/units/length-unit.ts';
import { type Box, viewOnLine } from './close-up-frame.ts';
import { closeUpMetal, contactMark } from './close-up-metal.ts';
import { crossingSymbol, ladder, outsideMark, uncertaintyBand, uncertaintyBar } from './close-up-marks.ts';
import { label, textWidth, wrapped } from './label.ts';
import { type DrawingNode, drawingRoot, group, node } from './node.ts';
import { scaleBar } from './scale-bar.ts';
import { asScale, scaleText } from './scale-series.ts';
import { amountText, lineWords, splitSentence, symbolOf, unitWords } from './split-words.ts';
import { type StackSplit, stackSplit } from './stack-split.ts';
import { verdictSymbol } from './symbols.ts';
import { PX_PER_MM } from './view.ts';
import { windowBracket, windowMarks } from './window-bracket.ts';

export type LargeCloseUpOptions = {
  readonly chamber: string;
  /** by default the innermost line */
  readonly line?: string;
  readonly width: number;
  /** by default as high as the window needs, at most this */
  readonly maxHeight?: number;
  readonly unit: JobUnit;
  readonly textScale?: number;
  /** Where a turn binds: across and height above the plug's axis, mm. */
  readonly contact?: { readonly x: number; readonly y: number } | null;
};

const TEXT_PX = 13;
/** Largest enlargement: what the smallest step of the standard series needs to show a thou as a space. */
const LARGEST = 50;
const SIDE_SHARE = 0.34;
const LINE_SHARE = 0.5;

/** Draws the picked close-up. */
export function closeUpLarge(
  assembly: Assembly,
  pose: Pose,
  evaluation: Evaluation | null,
  options: LargeCloseUpOptions,
): DrawingNode {
  const split = stackSplit(assembly, pose, evaluation, options.chamber, options.line);
  const textSize = TEXT_PX * (options.textScale ?? 1);
  const small = textSize * 0.92;
  const isNarrow = options.width < 520 * (options.textScale ?? 1);
  const left = textWidth('0.10', small) + 16;
  const gutter = isNarrow ? 18 : bracketWidth(split, options.unit, small);
  const top = textSize * 1.9;
  const across = options.width - left - gutter;
  const widest = Math.max(...split.chamber.holes.map((hole) => hole.radius));
  const enlargement = asScale(Math.min(LARGEST, across / (2 * widest * (1 + SIDE_SHARE)) / PX_PER_MM));
  const scale = enlargement * PX_PER_MM;
  const height = Math.min(options.maxHeight ?? Infinity, 2.3 * widest * scale, across * 0.62);
  const box: Box = { left, right: left + across, top, bottom: top + height };
  const view = viewOnLine(split, box, scale, scale, LINE_SHARE);
  const head = headRow(assembly, split, box, options, textSize, enlargement);
  const bracket = windowBracket(split, view, box, options.unit, small, !isNarrow);
  const numbers = isNarrow ? windowMarks(split, options.unit).map(({ text }) => text) : [];
  const sentences = [...captionParts(split, options.unit), ...numbers];
  const rows = wrapped(sentences, ' · ', options.width - left - 2, small);
  const captionY = box.bottom + textSize * 1.35;
  const barY = captionY + (rows.length - 1) * small * 1.35 + textSize * 0.5;
  const bar = scaleBar(box.left, barY, scale, across * 0.4, options.unit, small);
  const where = `Chamber ${split.chamber.number} at the ${lineWords(split.lineIndex, assembly.lines.length)}, enlarged`;
  const said = saidOf(split, options.unit);
  const name = said === '' ? where : `${where}, in ${unitWords(options.unit)}: ${said}`;
  return drawingRoot({ width: options.width, height: Math.ceil(barY + textSize * 1.7) }, name, [
    group('metal', [closeUpMetal(assembly, split, view, box, 'medium')], { 'data-chamber': options.chamber }),
    node('rect', { class: 'frame', x: box.left, y: box.top, width: across, height }),
    ladder(split, view, box, options.unit, small),
    ...uncertaintyBand(split, view, box),
    ...crossingSymbol(split, view, box, textSize),
    ...uncertaintyBar(split, view, box),
    ...contactMark(options.contact ?? null, view, box),
    ...outsideMark(split, view, box, options.unit, small),
    ...bracket,
    group('labels', [
      ...head,
      ...rows.map((text, i) =>
        label(text, box.left, captionY + i * small * 1.35, { size: small, className: 'text-soft' }),
      ),
      ...bar.nodes,
    ]),
  ]);
}

/** The numbers of the picture in words: a picture's own text is not read out. */
function saidOf(split: StackSplit, unit: JobUnit): string {
  const { result, verdict, offset } = split;
  if (result === null) return '';
  const marks = windowMarks(split, unit).filter(({ text }) => !text.startsWith('split'));
  const { expandedUncertainty } = result;
  const sure = expandedUncertainty > 0 ? [`good to about ±${amountText(expandedUncertainty, unit)}`] : [];
  return [splitSentence(offset, verdict, unit), ...sure, ...marks.map(({ text }) => text)].join('; ');
}

function captionParts(split: StackSplit, unit: JobUnit): string[] {
  const plusMinus = split.result?.expandedUncertainty ?? 0;
  const bar = plusMinus === 0 ? [] : [`bar: good to about ±${amountText(plusMinus, unit)} ${unit}`];
  return ['Looking along the plug, true proportions', ...bar];
}

function bracketWidth(split: StackSplit, unit: JobUnit, size: number): number {
  if (split.result === null) return 2;
  return 46 + textWidth(`no touch ${unit === 'in' ? '−.0000' : '−0.00'}`, size);
}

function headRow(
  assembly: Assembly,
  split: StackSplit,
  box: Box,
  options: LargeCloseUpOptions,
  size: number,
  enlargement: number,
): DrawingNode[] {
  const y = box.top - size * 0.6;
  const which = assembly.lines.length > 1 ? `, ${lineWords(split.lineIndex, assembly.lines.length)}` : '';
  const title = `Chamber ${split.chamber.number}${which}`;
  const start = box.left + textWidth(title, size, true) + size;
  const symbol = symbolOf(split.verdict);
  const said = split.result === null ? '' : splitSentence(split.offset, split.verdict, options.unit);
  const scale = scaleText(enlargement);
  const isFitting =
    start + size * 1.3 + textWidth(said, size, true) < box.right - textWidth(scale, size) - size;
  return [
    label(title, box.left, y, { size, isStrong: true }),
    ...(isFitting && said !== ''
      ? [
          ...verdictSymbol(symbol, start + size * 0.4, y - size * 0.35, size * 0.78),
          label(said, start + size * 1.15, y, { size, isStrong: true, className: `verdict-${symbol}` }),
        ]
      : []),
    label(scale, box.right, y, { size: size * 0.92, anchor: 'end', className: 'text-soft' }),
  ];
}
