/**
 * The lower stack to look for or to make for a chamber: the heights at which its line turns, those that an evaluation calls
 * sure, and the best one, for a stack of the kind that the cylinder takes. Heights mm.
 */
import { evaluateChamber } from '../evaluate/chamber-result.ts';
import { chamberSettings } from '../evaluate/evaluate.ts';
import { sayRange } from '../evaluate/say.ts';
import { lowerStackEnd, type MeasuredPart } from '../measured/measured-stack.ts';
import { formatLength } from '../units/format-length.ts';
import { formatAtMost, formatWithin } from '../units/format-range.ts';
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
  readonly ballDiameter: number | null;
  readonly hasBall: boolean;
};

/** What to look for: the range of the table and of the bag, within what would turn. */
export type SureHeight = { readonly from: number; readonly to: number; readonly isAbout: boolean };

/** Finds the heights wanted in a chamber; null where the height is not known, or where no length would turn. */
export function wantedHeight(keyIn: KeyInSite, place: ChamberPlace): WantedHeight | null {
  const { site } = keyIn;
  for (const parts of examplesFor(site, place)) {
    const fit = site.fitOfStack(place, { parts, tops: parts.map(() => null), together: [] });
    if (fit === null || fit.barred !== null) continue;
    const level = keyIn.levelOf(place, fit);
    if (level === null) return null;
    const lowest = parts[0];
    const ball = lowest?.role === 'ball' ? lowest : null;
    return {
      chamber: place.chamber,
      number: place.number,
      from: level + fit.lowest,
      to: level + fit.highest,
      best: level + bestOffset(fit),
      ball: ball !== null && site.stock.numbers.has(ball.part.id) ? ball.part : null,
      ballDiameter: ball === null ? null : 2 * ball.radius.value,
      hasBall: ball !== null,
    };
  }
  return null;
}

/**
 * The same range as an evaluation tells, with the doubt of all readings taken off and nothing above level. For one chamber
 * at a time: it takes a hundred times as long. Null where the evaluation has none.
 */
export function sureHeight(keyIn: KeyInSite, place: ChamberPlace): SureHeight | null {
  const { site, bench } = keyIn;
  const setting = chamberSettings(bench, site.assembly, site.measured).find(
    ({ chamber }) => chamber.id === place.chamber,
  );
  if (setting === undefined) return null;
  const { useFrom, useTo, noneCertain } = evaluateChamber(setting);
  if (useFrom === null || useTo === null || useTo <= 0) return null;
  return { from: Math.max(0, useFrom), to: useTo, isAbout: noneCertain };
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

/** "a ball + bottom pin of .2455 in to .2495 in, best .2480 in, with a ball of .1150 in (B1)" */
export function sayWanted(wanted: WantedHeight, sure: SureHeight | null, unit: JobUnit): string {
  const { hasBall, ball, ballDiameter } = wanted;
  const { from, to, isAbout } = sure ?? { ...wanted, isAbout: false };
  const text = (mm: number) => formatLength(mm, { unit, form: 'bench', hasUnit: true, keepsPlaces: true });
  const best = formatWithin(wanted.best, from, to, unit);
  const range = isAbout
    ? `about ${text(from)}`
    : from <= 0
      ? `up to ${formatAtMost(to, unit)} ${unit}`
      : `${sayRange(from, to, unit)}, best ${best} ${unit}`;
  const named = ball === null ? '' : ` (${ball.label})`;
  const on = ballDiameter === null ? '' : `, with a ball of ${text(ballDiameter)}${named}`;
  return `a ${hasBall ? 'ball + bottom pin' : 'bottom pin'} of ${range}${on}`;
}
