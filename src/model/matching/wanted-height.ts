/**
 * The lower stack to look for or to make for a chamber: the heights at which its line turns, and the best one, for the usual
 * pin on the ball that the cylinder takes. Heights mm.
 */
import { lowerStackEnd, type MeasuredPart } from '../measured/measured-stack.ts';
import { sayLength } from '../evaluate/say.ts';
import type { Id } from '../schema/leaf.ts';
import type { Part } from '../schema/parts-schema.ts';
import type { JobUnit } from '../units/length-unit.ts';
import { bestOffset } from './candidate-heights.ts';
import type { KeyInSite } from './needed-height.ts';
import type { ChamberPlace, Site } from './site.ts';

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
  const usual = site.usual(place);
  const pin = usual.parts[lowerStackEnd(usual)];
  if (pin === undefined) return null;
  const ball = site.takesBall ? (ballFor(site, place) ?? usual.parts[0] ?? null) : null;
  const parts = ball === null ? [pin] : [ball, pin];
  const fit = site.fitOfStack(place, { parts, tops: parts.map(() => null), together: [] });
  if (fit === null || fit.barred !== null) return null;
  const level = keyIn.levelOf(place, fit);
  if (level === null) return null;
  return {
    chamber: place.chamber,
    number: place.number,
    from: level + fit.lowest,
    to: level + fit.highest,
    best: level + bestOffset(fit),
    ball: ball === null || !site.stock.numbers.has(ball.part.id) ? null : ball.part,
    hasBall: ball !== null,
  };
}

/** The ball that is in the chamber, else the first in any chamber, else the commonest that fits. */
function ballFor(site: Site, place: ChamberPlace): MeasuredPart | null {
  for (const { presentStack } of [place, ...site.places]) {
    const lowest = presentStack.parts[0];
    if (lowest?.role === 'ball' && lowest.part.diameter !== undefined) return lowest;
  }
  let best: MeasuredPart | null = null;
  for (const batch of site.stock.batches) {
    if (!batch.hasBall) continue;
    const stack = site.stackOf(place, batch);
    const ball = stack.parts[0];
    const fit = site.fitOf(place, batch);
    if (ball === undefined || fit === null || fit.barred === 'too wide' || fit.barred === 'too loose')
      continue;
    if (fit.barred === 'falls through') continue;
    if (best === null || ball.part.quantity > best.part.quantity) best = ball;
  }
  return best;
}

/** "a ball + bottom pin of .3335 to .3370 in (best .3360 in)" */
export function sayWanted({ from, to, best, hasBall, ball }: WantedHeight, unit: JobUnit): string {
  const what = hasBall ? 'ball + bottom pin' : 'bottom pin';
  const on = ball === null ? '' : ` with ${ball.label}`;
  return `a ${what}${on} of ${sayLength(from, unit)} to ${sayLength(to, unit)}, best ${sayLength(best, unit)}`;
}
