/**
 * Flags over the chambers that hold the lock: a word and an amount, on a pole that ends at the line. Laid out from the
 * chambers' places alone: each flag in turn takes the lowest row where it fits over its pole, first in full, then with
 * the amount only; what does not fit is counted. Chambers that the answer names come first and stand out: the others are an
 * amount on a pole, without a box. CSS pixels.
 *
 *     [x too high .0095]
 *        |       [? high .0025]
 *        5          6
 */
import { textWidth } from './label.ts';
import type { VerdictSymbol } from './split-words.ts';

export type FlagWish = {
  readonly chamber: string;
  readonly number: number;
  /** Of the line it is about, inside to outside. */
  readonly lineIndex: number;
  readonly x: number;
  readonly text: string;
  readonly shortText: string;
  readonly symbol: VerdictSymbol;
  /** The answer names this chamber; the others are open as well, but step back. */
  readonly isNamed: boolean;
};

export type Flag = {
  readonly wish: FlagWish;
  readonly text: string;
  /** 0 is the row next to the drawing. */
  readonly row: number;
  readonly left: number;
  readonly right: number;
};

export type FlagLayout = { readonly flags: readonly Flag[]; readonly rows: number; readonly hidden: number };

const MOST_ROWS = 2;
const PAD_PX = 6;
const SYMBOL_SHARE = 1.05;
const CLEAR_PX = 6;

/**
 * Lays out flags, the most important first. Where all are about one line, as few as need be are amounts only, so that as many as
 * can be are shown; else an amount would not say which line it is about.
 */
export function layOutFlags(
  wishes: readonly FlagWish[],
  textSize: number,
  left: number,
  right: number,
): FlagLayout {
  let best = layOut(wishes, textSize, left, right);
  const isOneLine = wishes.every(({ lineIndex }) => lineIndex === wishes[0]?.lineIndex);
  for (let kept = wishes.length - 1; isOneLine && kept >= 0 && best.hidden > 0; kept--) {
    const shorter = wishes.map((wish, i) => (i < kept ? wish : { ...wish, text: wish.shortText }));
    const layout = layOut(shorter, textSize, left, right);
    if (layout.hidden < best.hidden) best = layout;
  }
  return best;
}

function layOut(wishes: readonly FlagWish[], textSize: number, left: number, right: number): FlagLayout {
  const flags: Flag[] = [];
  let hidden = 0;
  for (const wish of wishes) {
    const flag = place(wish, flags, textSize, left, right);
    if (flag === null) hidden++;
    else flags.push(flag);
  }
  const rows = flags.reduce((most, flag) => Math.max(most, flag.row + 1), 0);
  return { flags, rows, hidden };
}

function place(
  wish: FlagWish,
  taken: readonly Flag[],
  textSize: number,
  left: number,
  right: number,
): Flag | null {
  for (const text of wish.isNamed ? [wish.text, wish.shortText] : [wish.shortText]) {
    const width = flagWidth(text, wish.symbol, textSize);
    if (width > right - left) continue;
    for (let row = 0; row < MOST_ROWS; row++) {
      const start = spotFor(wish.x, width, row, taken, left, right);
      if (start !== null) return { wish, text, row, left: start, right: start + width };
    }
  }
  return null;
}

/** Slides a flag along its row so that its pole still hits it; poles of flags above must not run through it. */
function spotFor(
  x: number,
  width: number,
  row: number,
  taken: readonly Flag[],
  left: number,
  right: number,
): number | null {
  const wanted = [0.5, 0.2, 0.8, 0.1, 0.9].map((share) => x - share * width);
  const starts = wanted.map((start) => Math.min(right - width, Math.max(left, start)));
  const found = starts.find((start) => {
    const end = start + width;
    if (x < start || x > end) return false;
    return taken.every((flag) => {
      const isSameRow = flag.row === row && start < flag.right + CLEAR_PX && flag.left < end + CLEAR_PX;
      const crossesPole = flag.row > row && flag.wish.x > start - CLEAR_PX && flag.wish.x < end + CLEAR_PX;
      const isCrossed = flag.row < row && x > flag.left - CLEAR_PX && x < flag.right + CLEAR_PX;
      return !isSameRow && !crossesPole && !isCrossed;
    });
  });
  return found ?? null;
}

/** Measures a flag with its symbol and margins. */
export function flagWidth(text: string, symbol: VerdictSymbol, textSize: number): number {
  const mark = symbol === 'none' ? 0 : textSize * SYMBOL_SHARE;
  return 2 * PAD_PX + mark + textWidth(text, textSize, true);
}

/** Where a flag's text starts and its symbol sits, from the flag's left edge. */
export function flagInside(symbol: VerdictSymbol, textSize: number): { symbolX: number; textX: number } {
  const mark = symbol === 'none' ? 0 : textSize * SYMBOL_SHARE;
  return { symbolX: PAD_PX + textSize * 0.38, textX: PAD_PX + mark };
}
