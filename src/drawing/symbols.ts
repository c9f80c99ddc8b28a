/**
 * Symbols for verdicts and directions, drawn, so that they look the same with any font. Each fits a square of `size`
 * around its middle. CSS pixels.
 */
import { type DrawingNode, node } from './node.ts';
import { numberText } from './number-text.ts';
import type { VerdictSymbol } from './split-words.ts';
import { pointsData } from './view.ts';

type Shape = readonly (readonly [x: number, y: number])[];

/** Strokes in a square from -1 to 1, y down. */
const STROKES: Readonly<Record<VerdictSymbol, readonly Shape[]>> = {
  turns: [
    [
      [-0.8, 0.05],
      [-0.25, 0.65],
      [0.85, -0.65],
    ],
  ],
  rubs: [
    [
      [-0.85, 0.2],
      [-0.4, -0.25],
      [0.05, 0.25],
      [0.5, -0.25],
      [0.9, 0.15],
    ],
  ],
  unsure: [],
  stops: [
    [
      [-0.65, -0.65],
      [0.65, 0.65],
    ],
    [
      [-0.65, 0.65],
      [0.65, -0.65],
    ],
  ],
  none: [],
};

/** Draws a verdict's symbol: tick, wave (rubs), question mark or cross. Nothing for `none`. */
export function verdictSymbol(symbol: VerdictSymbol, x: number, y: number, size: number): DrawingNode[] {
  if (symbol === 'none') return [];
  const className = `symbol verdict-${symbol}`;
  if (symbol === 'unsure') return [questionMark(x, y, size, className)];
  const d = STROKES[symbol].map((shape) => strokeData(shape, x, y, size / 2)).join('');
  return [node('path', { class: className, d })];
}

export type Way = 'up' | 'down' | 'left' | 'right';

const BACKWARDS: Readonly<Record<Way, readonly [x: number, y: number]>> = {
  up: [0, 1],
  down: [0, -1],
  left: [1, 0],
  right: [-1, 0],
};

/** A filled arrow head with its tip at the place. */
export function arrowHead(x: number, y: number, way: Way, size: number): DrawingNode {
  const [backX, backY] = BACKWARDS[way];
  const wing = size * 0.28;
  const points = [
    { x, y },
    { x: x + backX * size + backY * wing, y: y + backY * size + backX * wing },
    { x: x + backX * size - backY * wing, y: y + backY * size - backX * wing },
  ];
  return node('path', { class: 'arrow', d: pointsData(points, true) });
}

function questionMark(x: number, y: number, size: number, className: string): DrawingNode {
  const half = size / 2;
  const at = (dx: number, dy: number): string => `${numberText(x + dx * half)} ${numberText(y + dy * half)}`;
  const r = numberText(half * 0.52);
  const hook = `M${at(-0.52, -0.42)}A${r} ${r} 0 1 1 ${at(0.2, 0.06)}Q${at(0, 0.2)} ${at(0, 0.45)}`;
  const dot = `M${at(0, 0.86)}L${at(0, 0.9)}`;
  return node('path', { class: className, d: `${hook}${dot}` });
}

function strokeData(shape: Shape, x: number, y: number, half: number): string {
  return shape
    .map(([dx, dy], i) => `${i === 0 ? 'M' : 'L'}${numberText(x + dx * half)} ${numberText(y + dy * half)}`)
    .join('');
}
