/**
 * The window of a close-up: which part of the end view it shows, how large, and stretched or not. The line's crest at the
 * chamber's axis lies on the same height in every window of a row, so that heights compare like bars. CSS pixels and mm.
 */
import { asScale } from './scale-series.ts';
import type { StackSplit } from './stack-split.ts';
import { PX_PER_MM, type View } from './view.ts';

export type CloseUpMode = 'stretched' | 'true';

export type Box = {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
};

export type CloseUpFrame = {
  readonly box: Box;
  readonly view: View;
  /** How much higher than wide things are drawn: 1 is true. */
  readonly stretch: number;
  /** Enlargement on paper, 50 for 50:1; of the width when stretched. */
  readonly enlargement: number;
};

/** How high the line lies in the window, from the top: more room below, where the round falls away. */
const LINE_HEIGHT_SHARE = 0.46;
/** A stretched window shows the chamber and this share of its radius of metal on each side. */
const SIDE_SHARE = 0.42;
/** An end view looks in from the front, where x points to the left. */
export const LOOKING_IN = -1;

/** Chooses the view for a window. */
export function closeUpFrame(split: StackSplit, box: Box, mode: CloseUpMode, stretch: number): CloseUpFrame {
  const width = box.right - box.left;
  const widest = Math.max(...split.chamber.holes.map((hole) => hole.radius));
  const acrossMm = 2 * widest * (1 + SIDE_SHARE);
  const trueEnlargement = asScale(50);
  const scaleX = mode === 'stretched' ? width / acrossMm : trueEnlargement * PX_PER_MM;
  const scaleY = mode === 'stretched' ? scaleX * stretch : scaleX;
  return {
    box,
    view: viewOnLine(split, box, scaleX, scaleY, LINE_HEIGHT_SHARE),
    stretch: mode === 'stretched' ? stretch : 1,
    enlargement: scaleX / PX_PER_MM,
  };
}

/** Places the plane's origin so that the line's crest lies in the middle across, at the share of the height. */
export function viewOnLine(split: StackSplit, box: Box, scaleX: number, scaleY: number, share: number): View {
  const crest = split.line.innerAxisY + split.line.radius;
  const y = box.top + share * (box.bottom - box.top);
  return {
    scaleX: LOOKING_IN * scaleX,
    scaleY,
    originX: (box.left + box.right) / 2,
    originY: y + crest * scaleY,
  };
}
