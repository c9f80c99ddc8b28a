/**
 * A chain of upright dimensions beside a picture: extension lines, a dimension line with arrow heads (outside when there
 * is no room between), and texts to the right, spread so that none overlap, with leaders. CSS pixels.
 */
import type { Box } from './close-up-frame.ts';
import { label } from './label.ts';
import { type DrawingNode, group, node } from './node.ts';
import { spreadLabels } from './spread-labels.ts';
import type { Dimension } from './stack-dimensions.ts';
import { arrowHead } from './symbols.ts';
import { pointsData, type View, xPx, yPx } from './view.ts';

const ARROW_PX = 7;
const TEXT_GAP_PX = 30;

/** Draws the chain on the upright line at `x`. */
export function dimensionChain(
  dimensions: readonly Dimension[],
  view: View,
  x: number,
  box: Box,
  textSize: number,
): DrawingNode[] {
  if (dimensions.length === 0) return [];
  const spans = dimensions.map(({ from, to }) => ({ low: yPx(view, from), high: yPx(view, to) }));
  const rows = spreadLabels(
    spans.map(({ low, high }) => (low + high) / 2),
    textSize * 1.45,
    box.top + textSize,
    box.bottom - textSize * 0.4,
  );
  const levels = [...new Set(spans.flatMap(({ low, high }) => [low, high]))];
  const start = xPx(view, 0) + 4;
  const extensions = levels
    .map((y) =>
      pointsData(
        [
          { x: start, y },
          { x: x + 4, y },
        ],
        false,
      ),
    )
    .join('');
  return [
    group('dimensions', [
      node('path', { class: 'extension', d: extensions }),
      ...dimensions.flatMap((dimension, i) => {
        const { low, high } = spans[i] ?? { low: 0, high: 0 };
        const row = rows[i] ?? low;
        const middle = (low + high) / 2;
        const isCramped = low - high < 3 * ARROW_PX;
        const line = isCramped
          ? [
              { x, y: high - 1.8 * ARROW_PX },
              { x, y: low + 1.8 * ARROW_PX },
            ]
          : [
              { x, y: high },
              { x, y: low },
            ];
        const leader = [
          { x: x + 2, y: middle },
          { x: x + TEXT_GAP_PX - 12, y: row },
          { x: x + TEXT_GAP_PX - 4, y: row },
        ];
        return [
          node('path', { class: 'dimension', d: pointsData(line, false) + pointsData(leader, false) }),
          arrowHead(x, high, isCramped ? 'down' : 'up', ARROW_PX),
          arrowHead(x, low, isCramped ? 'up' : 'down', ARROW_PX),
          label(dimension.text, x + TEXT_GAP_PX, row + textSize * 0.35, { size: textSize }),
        ];
      }),
    ]),
  ];
}
