/**
 * Single dimensions as ISO 129-1 draws them: extension lines that leave a gap to the outline and run a little past the
 * dimension line, narrow filled arrow heads (outside where there is no room between), the text over the line and along it, to
 * be read from below or from the right. Sizes in millimetres of paper, places in CSS pixels.
 *
 *      |                |
 *      |     12.70      |   text, over the line
 *      |<-------------->|   dimension line
 *      |                |   extension line, past the dimension line
 *
 *    --+----------------+-- outline, a gap under the extension lines
 */
import type { Point } from '../geometry/outline.ts';
import { label, textWidth } from './label.ts';
import { type DrawingNode, group, node } from './node.ts';
import { numberText } from './number-text.ts';
import { arrowHead } from './symbols.ts';
import { pointsData, PX_PER_MM } from './view.ts';

/** Of the ISO 3098 series: capitals 2.5 mm high. */
export const DIMENSION_TEXT_PX = 13;
/** Between the outline and its extension line. */
export const EXTENSION_GAP_PX = 1 * PX_PER_MM;
const OVERSHOOT_PX = 1.5 * PX_PER_MM;
const ARROW_PX = 2.5 * PX_PER_MM;
const OUTSIDE_PX = 4.5 * PX_PER_MM;
const TEXT_GAP_PX = 0.7 * PX_PER_MM;

/** From left to right, on the level `y`. */
export type LevelDimension = {
  readonly from: number;
  readonly to: number;
  readonly y: number;
  readonly text: string;
};

/** From the lower end (larger y) to the upper, on the upright `x`. */
export type UprightDimension = {
  readonly low: number;
  readonly high: number;
  readonly x: number;
  /** Left of the line, read from the right. */
  readonly text: string;
  /** Right of the line, in brackets: told beside, not asked for. */
  readonly beside?: string | null;
  /** Text on metal has a ground of its own. */
  readonly isOnMetal?: boolean;
  /** Middle of the text along the line, where it is not the middle of the dimension. */
  readonly textAt?: number;
};

export function levelDimension({ from, to, y, text }: LevelDimension): DrawingNode {
  const isCramped = to - from < 2.5 * ARROW_PX;
  const [left, right] = isCramped ? [from - OUTSIDE_PX, to + OUTSIDE_PX] : [from, to];
  return group('dimensions', [
    line([
      { x: left, y },
      { x: right, y },
    ]),
    arrowHead(from, y, isCramped ? 'right' : 'left', ARROW_PX),
    arrowHead(to, y, isCramped ? 'left' : 'right', ARROW_PX),
    label(text, (from + to) / 2, y - TEXT_GAP_PX, { size: DIMENSION_TEXT_PX, anchor: 'middle' }),
  ]);
}

export function uprightDimension(dimension: UprightDimension): DrawingNode {
  const { low, high, x, text, beside = null, isOnMetal = false } = dimension;
  const isCramped = low - high < 2.5 * ARROW_PX;
  const [bottom, top] = isCramped ? [low + OUTSIDE_PX, high - OUTSIDE_PX] : [low, high];
  const middle = dimension.textAt ?? (low + high) / 2;
  const className = isOnMetal ? 'text-on-metal' : '';
  return group('dimensions', [
    line([
      { x, y: bottom },
      { x, y: top },
    ]),
    arrowHead(x, high, isCramped ? 'down' : 'up', ARROW_PX),
    arrowHead(x, low, isCramped ? 'up' : 'down', ARROW_PX),
    readFromRight(text, x - TEXT_GAP_PX, middle, className),
    ...(beside === null
      ? []
      : [readFromRight(`(${beside})`, x + TEXT_GAP_PX + 0.76 * DIMENSION_TEXT_PX, middle, className)]),
  ]);
}

/** Extension lines of upright and level dimensions: from a gap beside the outline to a little past the last line. */
export function extensionLine(from: Point, to: Point): DrawingNode {
  const length = Math.hypot(to.x - from.x, to.y - from.y) || 1;
  const [x, y] = [(to.x - from.x) / length, (to.y - from.y) / length];
  const start = { x: from.x + x * EXTENSION_GAP_PX, y: from.y + y * EXTENSION_GAP_PX };
  const end = { x: to.x + x * OVERSHOOT_PX, y: to.y + y * OVERSHOOT_PX };
  return node('path', { class: 'extension', d: pointsData([start, end], false) });
}

/** How long a text is along its line. */
export function dimensionTextWidth(text: string): number {
  return textWidth(text, DIMENSION_TEXT_PX);
}

function line(points: readonly Point[]): DrawingNode {
  return node('path', { class: 'dimension', d: pointsData(points, false) });
}

function readFromRight(text: string, x: number, y: number, className: string): DrawingNode {
  const upright = label(text, x, y, { size: DIMENSION_TEXT_PX, anchor: 'middle', className });
  return {
    ...upright,
    attributes: { ...upright.attributes, transform: `rotate(-90 ${numberText(x)} ${numberText(y)})` },
  };
}
