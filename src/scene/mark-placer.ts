/**
 * Numbers and flags over the picture: elements of the page, not of the scene, so that they print, scale with the text size
 * and are read aloud. They are moved once a frame; flags that would run into each other are stacked, numbers that would lie
 * on each other (looked at along the plug) give way to the first.
 */
import type { Triple } from '../solids/section-plane.ts';

export type PlacedMark = {
  readonly id: string;
  readonly at: Triple;
  readonly kind: 'chamber' | 'flag';
  /** What is moved: its own (0, 0) is the marked point. */
  readonly element: SVGGElement;
};

type ToPicture = (point: Triple) => { readonly x: number; readonly y: number };

/** CSS pixels. */
const FLAG_ROW = 26;
const FLAG_NEAR = 120;
const NUMBER_NEAR = 16;
/** A number stands over its point; one that would be cut by the picture's upper edge comes down so far. */
const NUMBER_TOP = 22;

export class MarkPlacer {
  #marks: readonly PlacedMark[] = [];

  setMarks(marks: readonly PlacedMark[]): void {
    this.#marks = marks;
  }

  /** Moves every mark to its point. */
  place(toPicture: ToPicture): void {
    const flags: { readonly x: number; readonly row: number }[] = [];
    const numbers: { readonly x: number; readonly y: number }[] = [];
    for (const { at, element, kind } of this.#marks) {
      const point = toPicture(at);
      const { x } = point;
      const isCut = kind === 'chamber' && Math.abs(point.y) < NUMBER_TOP;
      const y = isCut ? NUMBER_TOP : point.y;
      element.setAttribute('transform', `translate(${round(x)} ${round(y)})`);
      if (kind === 'flag') liftFlag(element, freeRow(flags, x));
      else {
        const isCovered = numbers.some((other) => Math.hypot(other.x - x, other.y - y) < NUMBER_NEAR);
        element.setAttribute('visibility', isCovered ? 'hidden' : 'visible');
        if (!isCovered) numbers.push({ x, y });
      }
    }
  }
}

/** The lowest row in which no flag is near; takes it. */
function freeRow(flags: { readonly x: number; readonly row: number }[], x: number): number {
  const taken = flags.filter((flag) => Math.abs(flag.x - x) < FLAG_NEAR).map((flag) => flag.row);
  let row = 0;
  while (taken.includes(row)) row += 1;
  flags.push({ x, row });
  return row;
}

function liftFlag(element: SVGGElement, row: number): void {
  element.querySelector('[data-lift]')?.setAttribute('transform', `translate(0 ${-row * FLAG_ROW})`);
  element.querySelector('[data-leader]')?.setAttribute('y2', String(-20 - row * FLAG_ROW));
}

function round(value: number): number {
  return Math.round(value * 10) / 10;
}
