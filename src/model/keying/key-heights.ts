/**
 * Which contact heights clear a line in one chamber: a stretch of heights for every split that can reach it. A key whose cut
 * holds the foot within one of them lets this chamber turn at that line. Contact heights are of the foot's lowest point
 * above the key's bottom edge; offsets + high, - low; mm.
 *
 *                 lowest      highest
 *     split 1   ----[============]------------------------------> contact height
 *     split 2   --------------------------[============]-------->
 *
 * A split goes up with the foot: it stands at its line when the foot stands at (contact height now - offset now).
 */
import type { ChamberResult, SplitResult } from '../evaluate/evaluation.ts';
import type { Id } from '../schema/leaf.ts';

export type HeightRange = { readonly from: number; readonly to: number };

/** How far the ends of every window are moved. All mm, + widens. */
export type WindowShift = {
  /** The lowest end goes down by this: a crest that was filed or is worn. */
  readonly lowered: number;
  /** The highest end goes up by this: a bore that is worn. */
  readonly raised: number;
  /** With the ±: only heights that surely turn, or all that possibly do. */
  readonly doubt: 'as measured' | 'surely' | 'possibly';
};

export const AS_MEASURED: WindowShift = Object.freeze({ lowered: 0, raised: 0, doubt: 'as measured' });

/** mm. Stretches this close run into each other: rounding must not part them. */
const ROUNDING_MM = 1e-9;

/**
 * Lists the contact heights that clear a line, lowest first, overlapping ones joined, as far as a key can reach.
 *
 * @param bladeHeight the highest a key can hold the foot, mm
 * @returns null where the height that a split needs is not known
 */
export function heightsThatClear(
  { splits, contactHeight }: ChamberResult,
  line: Id,
  bladeHeight: number,
  shift: WindowShift = AS_MEASURED,
): readonly HeightRange[] | null {
  if (contactHeight === null || splits.length === 0) return null;
  const found = splits.flatMap((split): HeightRange[] => {
    if (split.line !== line) return [];
    const range = rangeOf(split, contactHeight, shift);
    const from = Math.max(0, range.from);
    const to = Math.min(bladeHeight, range.to);
    return from <= to ? [{ from, to }] : [];
  });
  return joined(found);
}

function rangeOf(
  split: SplitResult,
  contactHeight: number,
  { lowered, raised, doubt }: WindowShift,
): HeightRange {
  const level = contactHeight - split.offset;
  const sign = doubt === 'surely' ? 1 : doubt === 'possibly' ? -1 : 0;
  return {
    from: level + split.window.lowest - lowered + sign * split.toLowest,
    to: level + split.window.highest + raised - sign * split.toHighest,
  };
}

/** Joins ranges that overlap or touch. */
export function joined(ranges: readonly HeightRange[]): HeightRange[] {
  const list: { from: number; to: number }[] = [];
  for (const { from, to } of [...ranges].sort((one, other) => one.from - other.from)) {
    const last = list[list.length - 1];
    if (last !== undefined && from <= last.to + ROUNDING_MM) last.to = Math.max(last.to, to);
    else list.push({ from, to });
  }
  return list;
}

/** Does this contact height clear the line? */
export function clears(ranges: readonly HeightRange[], height: number): boolean {
  return ranges.some(({ from, to }) => height >= from - ROUNDING_MM && height <= to + ROUNDING_MM);
}
