/**
 * Where the long section lies in its drawing: one scale for both directions, the same for every travel, so that only the
 * key moves. CSS pixels; x of the view is the distance along the plug.
 *
 *     +--------------------------------------------+
 *     | flags                                      |
 *     | chamber numbers                            |
 *     |  ~  [         metal             ]  line    |
 *     | caption                       scale bar    |
 *     +--------------------------------------------+
 */
import { known } from '../model/assert.ts';
import type { Assembly } from '../model/assembly/assembly.ts';
import { bodySpans, plugRadius, shellShape } from '../geometry/body-sizes.ts';
import { placedKey } from '../geometry/key-outline.ts';
import { boundsOf } from '../geometry/outline.ts';
import { textWidth } from './label.ts';
import type { LongSectionOptions } from './long-section-options.ts';
import { lineWords } from './split-words.ts';
import type { View } from './view.ts';

export type LongSectionFrame = {
  readonly width: number;
  readonly height: number;
  readonly view: View;
  readonly textSize: number;
  /** Where the key is broken off, mm. */
  readonly breakZ: number;
  /** Pixels: what the metal takes, and where text goes. */
  readonly metal: {
    readonly left: number;
    readonly right: number;
    readonly top: number;
    readonly bottom: number;
  };
  readonly numbersY: number;
  readonly flagRowHeight: number;
  /** A narrow drawing has its line label and caption under each other, and lighter lines. */
  readonly isNarrow: boolean;
};

const TEXT_PX = 13;
const SIDE_PX = 6;
/** How much of the key in front of the plug is drawn, as a share of the plug's radius. */
const LEAD = 0.78;
const NARROW_PX = 560;
/** How far a shear line goes on past the plug's end: long enough to be seen as dash-dotted. */
export const LINE_END_PX = 26;

/** Lays out the drawing. `flagRows` is how many rows of flags it needs. */
export function longSectionFrame(
  assembly: Assembly,
  options: LongSectionOptions,
  flagRows: number,
): LongSectionFrame {
  const { width } = options;
  const isFlat = options.flatColours !== undefined;
  const textSize = TEXT_PX * (options.textScale ?? 1);
  const isNarrow = width < NARROW_PX * (options.textScale ?? 1);
  const lines = assembly.lines.length;
  const widest = Math.max(...assembly.lines.map((_, i) => textWidth(lineWords(i, lines), textSize)));
  const right = isFlat || isNarrow ? SIDE_PX : SIDE_PX + LINE_END_PX + 6 + widest;
  const flagRowHeight = textSize * 1.9;
  const top = isFlat ? SIDE_PX : SIDE_PX + flagRows * flagRowHeight + textSize * 1.9;
  const bottom = isFlat ? SIDE_PX : textSize * (isNarrow ? (lines > 1 ? 6.6 : 5.2) : 2.9);
  const plug = plugRadius(assembly);
  const shell = shellShape(assembly);
  const lead = LEAD * plug;
  const end = known(bodySpans(assembly)[0], 'span of the plug').back;
  const key = assembly.key === null ? null : boundsOf(placedKey(assembly.key, 0));
  const lowest = Math.min(shell.axisY - shell.barrelRadius, key?.bottom ?? Infinity);
  const highest = Math.max(shell.topY, key?.top ?? -Infinity);
  const scaleByWidth = (width - SIDE_PX - right) / (lead + end + 0.1 * plug);
  const room = (options.maxHeight ?? Infinity) - top - bottom;
  const scale = Math.max(1, Math.min(scaleByWidth, room / (highest - lowest)));
  const spare = Math.max(0, (scaleByWidth - scale) * (lead + end)) / 2;
  const view: View = {
    scaleX: scale,
    scaleY: scale,
    originX: SIDE_PX + spare + lead * scale,
    originY: top + highest * scale,
  };
  const metalBottom = view.originY - lowest * scale;
  return {
    width,
    height: Math.ceil(metalBottom + bottom),
    view,
    textSize,
    breakZ: -lead,
    metal: { left: SIDE_PX + spare, right: view.originX + end * scale, top, bottom: metalBottom },
    numbersY: top - textSize * 0.6,
    flagRowHeight,
    isNarrow,
  };
}
