/** The upper part as a turn finds it. Frame: see `window-input.ts`. All lengths mm. */
import { type EndOutline, outlineOf } from './end-outline.ts';
import type { UpperPart } from './window-input.ts';

/** The lower end of the upper part, and where its axis stands across. */
export type RidingEnd = { readonly outline: EndOutline; readonly axis: number };

/**
 * Reads the upper part as pushed with the turn, as far as its play in the outer body goes: whatever touches it, an edge,
 * a ramp or the wall of the hole, pushes it that way.
 */
export function ridingEnd(upper: UpperPart): RidingEnd {
  return { outline: outlineOf(upper.bottom, upper.radius), axis: -upper.sideways };
}
