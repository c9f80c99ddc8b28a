/** What stands in a chamber once parts are chosen, or stays there because it is locked. Offsets + high, - low; mm. */
import { sayAmount } from '../evaluate/say.ts';
import { lowerStackEnd } from '../measured/measured-stack.ts';
import type { Item } from '../schema/key-schema.ts';
import { bestOffset, type Candidate, marginAt, offsetOf } from './candidate-heights.ts';
import type { KeyInSite } from './needed-height.ts';
import { stepsApart, stepsToSpare } from './resolution.ts';
import type { ChamberPlace } from './fits.ts';
import type { Stock } from './stock.ts';

/** What stands in a chamber, and how well. */
export type Standing = {
  readonly items: readonly Item[];
  /** Of the lower stack as measured. */
  readonly height: number;
  /** To file off the pin's crown, mm. */
  readonly filedOff: number;
  /** Once filed. */
  readonly offset: number;
  readonly lowest: number;
  readonly highest: number;
  /** To spare: mm, and nearest steps of the shop's resolution; negative outside the window. */
  readonly margin: number;
  readonly spare: number;
  /** Whole steps from the best height. */
  readonly deviation: number;
};

/** A chosen candidate as it will stand. */
export function standingOf({ span, at, filed, spare }: Candidate, stock: Stock, step: number): Standing {
  const { batch, fit } = span;
  const { lowest, highest } = fit;
  const filedOff = filed * step;
  const offset = offsetOf(span, at) - filedOff;
  const parts = [batch.balls[at] ?? -1, batch.pins[at] ?? -1].flatMap((number) => stock.parts[number] ?? []);
  return {
    items: parts.map((part) => ({ part: part.id })),
    height: (batch.lengths[at] ?? 0) + batch.added,
    filedOff,
    offset,
    lowest,
    highest,
    margin: marginAt(offset, fit),
    spare,
    deviation: stepsApart(offset - bestOffset(fit), step),
  };
}

export type Present = {
  /** Null when its height is not known, or nothing of its shape could turn. */
  readonly standing: Standing | null;
  /** When it does not turn: one sentence. */
  readonly why: string | null;
};

/** How what is in a chamber now stands, for a chamber that stays as it is. */
export function lockedIn(keyIn: KeyInSite, place: ChamberPlace, step: number): Present {
  const { number } = place;
  const standing = presentIn(keyIn, place, step);
  if (standing === 'not known') {
    return { standing: null, why: `Chamber ${number} is locked, and its height is not known.` };
  }
  if (standing === 'cannot turn') {
    return { standing: null, why: `Chamber ${number} is locked with parts that cannot turn there.` };
  }
  if (standing.spare >= 0) return { standing, why: null };
  const way = standing.offset > standing.highest ? 'too high' : 'too low';
  const by = sayAmount(standing.margin, keyIn.bench.job.settings.unit);
  return { standing, why: `Chamber ${number} is locked, and is ${by} ${way}.` };
}

/** How the lower stack that is in a chamber now stands. */
export function presentIn(
  keyIn: KeyInSite,
  place: ChamberPlace,
  step: number,
): Standing | 'not known' | 'cannot turn' {
  const { presentStack, present } = place;
  const height = presentStack.tops[lowerStackEnd(presentStack)]?.value;
  const fit = keyIn.site.fitOfStack(place, presentStack);
  const level = fit === null || fit.barred !== null ? null : keyIn.levelOf(place, fit);
  if (height === undefined || fit === null || fit.barred === 'cannot be') return 'not known';
  if (fit.barred !== null) return 'cannot turn';
  if (level === null) return 'not known';
  const { lowest, highest } = fit;
  const offset = height - level;
  const margin = marginAt(offset, fit);
  return {
    items: present,
    height,
    filedOff: 0,
    offset,
    lowest,
    highest,
    margin,
    spare: stepsToSpare(margin, step),
    deviation: stepsApart(offset - bestOffset(fit), step),
  };
}
