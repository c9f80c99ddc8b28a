/**
 * The lower stack to look for or to make for a chamber: the heights at which its line turns, and the best one, for a stack of
 * the kind that the cylinder takes. Heights mm.
 */
import { lowerStackEnd, type MeasuredPart } from '../measured/measured-stack.ts';
import { sayLength } from '../evaluate/say.ts';
import type { Id } from '../schema/leaf.ts';
import type { Part } from '../schema/parts-schema.ts';
import type { JobUnit } from '../units/length-unit.ts';
import { bestOffset } from './candidate-heights.ts';
import type { KeyInSite } from './needed-height.ts';
import type { ChamberPlace } from './fits.ts';
import type { Site } from './site.ts';

export type WantedHeight = {
  readonly chamber: Id;
  /** As counted on screen. */
  readonly number: number;
  /** Of ball + bottom pin together, or of the bottom pin where there is no ball. */
  readonly from: number;
  readonly to: number;
  readonly best: number;
  /** The ball it was reckoned with; null for a pin alone, or a ball nobody measured. */
  readonly ball: Part | null;
  readonly hasBall: boolean;
};

/** Finds the heights wanted in a chamber; null where the height is not known, or where no length would turn. */
export function wantedHeight(keyIn: KeyInSite, place: ChamberPlace): WantedHeight | null {
  const { site } = keyIn;
  for (const parts of examplesFor(site, place)) {
    const fit = site.fitOfStack(place, { parts, tops: parts.map(() => null), together: [] });
    if (fit === null || fit.barred !== null) continue;
    const level = keyIn.levelOf(place, fit);
    if (level === null) return null;
    const lowest = parts[0];
    const ball = lowest?.role === 'ball' ? lowest.part : null;
    return {
      chamber: place.chamber,
      number: place.number,
      from: level + fit.lowest,
      to: level + fit.highest,
      best: level + bestOffset(fit),
      ball: ball !== null && site.stock.numbers.has(ball.id) ? ball : null,
      hasBall: ball !== null,
    };
  }
  return null;
}

/**
 * Lower stacks like the one wanted, the likeliest first: what is in the chamber, what is in the others, the commonest of the
 * bag, and the usual one.
 */
function* examplesFor(site: Site, place: ChamberPlace): Generator<readonly MeasuredPart[], void> {
  for (const { presentStack } of [place, ...site.places]) {
    const parts = presentStack.parts.slice(0, lowerStackEnd(presentStack) + 1);
    if (parts.at(-1)?.role === 'bottomPin' && (parts[0]?.role === 'ball') === site.takesBall) yield parts;
  }
  const batches = site.stock.batches.filter((batch) => batch.hasBall === site.takesBall);
  batches.sort((one, other) => other.lengths.length - one.lengths.length);
  for (const batch of batches) yield site.stackOf(place, batch).parts;
  const usual = site.usual(place).parts.filter(({ role }) => role === 'ball' || role === 'bottomPin');
  yield site.takesBall ? usual : usual.filter(({ role }) => role !== 'ball');
}

/** "a ball + bottom pin of .3335 to .3370 in (best .3360 in)" */
export function sayWanted({ from, to, best, hasBall, ball }: WantedHeight, unit: JobUnit): string {
  const what = hasBall ? 'ball + bottom pin' : 'bottom pin';
  const on = ball === null ? '' : ` with ${ball.label}`;
  return `a ${what}${on} of ${sayLength(from, unit)} to ${sayLength(to, unit)}, best ${sayLength(best, unit)}`;
}
