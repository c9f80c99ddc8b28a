/**
 * Text in a drawing: how wide it is, and the node that shows it. Widths come from the bundled font's own tables, so that
 * a layout made without a screen is the layout on the screen. CSS pixels, y down.
 */
import { said } from './captions.ts';
import { type DrawingNode, node } from './node.ts';
import { TEXT_WIDTHS } from './text-width-table.ts';

export type TextAnchor = 'start' | 'middle' | 'end';

export type LabelStyle = {
  readonly size: number;
  readonly isStrong?: boolean;
  readonly anchor?: TextAnchor;
  /** Further classes: colour by meaning. */
  readonly className?: string;
};

export type Box = {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
};

/** Heights above and below the baseline that ink of this font takes, as shares of its size. */
const ASCENT = 0.76;
const DESCENT = 0.22;
/** Width taken for a character the table does not know, as wide as the widest capitals. */
const UNKNOWN_WIDTH = 900;

/** Measures a line of text, px. */
export function textWidth(text: string, size: number, isStrong = false): number {
  let sum = 0;
  for (const character of said(text)) {
    const widths = TEXT_WIDTHS[character];
    sum += widths === undefined ? UNKNOWN_WIDTH : widths[isStrong ? 1 : 0];
  }
  return (sum * size) / 1000;
}

/** Measures where a label's ink can be. */
export function labelBox(text: string, x: number, y: number, style: LabelStyle): Box {
  const width = textWidth(text, style.size, style.isStrong);
  const anchor = style.anchor ?? 'start';
  const left = anchor === 'start' ? x : anchor === 'middle' ? x - width / 2 : x - width;
  return { left, right: left + width, top: y - ASCENT * style.size, bottom: y + DESCENT * style.size };
}

/** Shows a line of text; y is its baseline. */
export function label(text: string, x: number, y: number, style: LabelStyle): DrawingNode {
  const { size, isStrong = false, anchor = 'start', className = '' } = style;
  const classes = ['text', isStrong ? 'text-strong' : '', `at-${anchor}`, className].filter(
    (name) => name !== '',
  );
  return node('text', { class: classes.join(' '), x, y, 'font-size': size }, [said(text)]);
}

/** Says whether two boxes overlap; boxes that only touch do not. */
export function boxesOverlap(a: Box, b: Box, clear = 0): boolean {
  return (
    a.left < b.right + clear &&
    b.left < a.right + clear &&
    a.top < b.bottom + clear &&
    b.top < a.bottom + clear
  );
}

/** Puts sentences into rows no wider than `width`, joined by `joint` within a row; a sentence is never broken. */
export function wrapped(sentences: readonly string[], joint: string, width: number, size: number): string[] {
  const rows: string[] = [];
  for (const sentence of sentences) {
    const last = rows.at(-1);
    const joined = last === undefined ? sentence : `${last}${joint}${sentence}`;
    if (last !== undefined && textWidth(joined, size) <= width) rows[rows.length - 1] = joined;
    else rows.push(sentence);
  }
  return rows;
}
