/**
 * One cylinder for two keys: in every chamber a bottom pin that is right for the key that calls for less, and on it a master
 * pin that makes up the difference for the other; or the bottom pin alone where one split serves both. The two keys may turn
 * the same line, or one the inner and one the outer line of a cylinder with a sleeve.
 *
 *     driver     |        |
 *     ---------- |========| ----  split at the line of the key that calls for more
 *     master pin |        |
 *     ---------- |========| ----  split at the line of the key that calls for less
 *     bottom pin |        |
 *
 * Chosen by the same levels as for one key; to spare is that of the tighter split, and the squared deviations of both add up.
 * Parts are shared by all chambers: what is a bottom pin in one cannot be a master pin in another. Heights above the foot,
 * offsets + high, - low; mm.
 */
import { known } from '../assert.ts';
import { sayAmount } from '../evaluate/say.ts';
import { thresholdsOf } from '../rest/thresholds.ts';
import type { Job } from '../schema/job-schema.ts';
import type { Item } from '../schema/key-schema.ts';
import type { Id } from '../schema/leaf.ts';
import { assign } from './assign.ts';
import type { ChamberPlace } from './fits.ts';
import type { Score } from './levels.ts';
import { measuringOf } from './match.ts';
import { putKeyIn } from './needed-height.ts';
import { listRow } from './option.ts';
import { layOutSite, type Site } from './site.ts';
import { takeStock } from './stock.ts';
import { tieBreaksOf } from './tie-breaks.ts';
import {
  hasDriver,
  type KeyAtLine,
  levelsOf,
  type ServedKey,
  twoKeyOptions,
  type TwoKeysSetting,
  type Want,
} from './two-key-options.ts';
import { copiesLeft } from './used-parts.ts';

export type TwoKeysSelection = {
  readonly cylinder: Id;
  readonly plan: Id;
  readonly wants: readonly [KeyAtLine, KeyAtLine];
};

export type TwoKeysChamber = {
  readonly chamber: Id;
  readonly number: number;
  readonly isLocked: boolean;
  /** Ball, bottom pin, master pin, as far as there are any; null when nothing fits. A locked chamber is left as it is. */
  readonly items: readonly Item[] | null;
  /** In the order the keys were given. */
  readonly serves: readonly ServedKey[];
  readonly why: string | null;
};

export type TwoKeysMatch = {
  readonly chambers: readonly TwoKeysChamber[];
  /** Of the chambers that are not locked. */
  readonly filled: number;
  readonly of: number;
  readonly smallestToSpare: number | null;
  readonly score: Score;
  readonly isProved: boolean;
  readonly bound: Score;
  readonly answer: string;
};

/** Finds the best parts on hand for two keys at once. Cylinder, plan, keys and lines must exist in the job. */
export function matchTwoKeys(job: Job, selection: TwoKeysSelection): TwoKeysMatch {
  const stock = takeStock(job, measuringOf(job));
  const site = layOutSite(job, selection, stock, { choosesMasterPins: true });
  const wants = selection.wants.map((at) => wantOf(site, at));
  const toFill = site.places.filter((place) => !place.isLocked);
  const copies = copiesLeft(job, stock, [site.kept]);
  const copiesOf = (part: number) => copies[part] ?? 0;
  const setting: TwoKeysSetting = {
    site,
    wants,
    copiesOf,
    tieBreaks: tieBreaksOf(site),
    rows: toFill.length,
    thinnest: thresholdsOf(job).thinnestMasterPin,
  };
  const rows = toFill.map((place) => listRow(twoKeyOptions(setting, place)));
  const { chosen, score, isProved, bound } = assign(rows, copiesOf);
  const chambers = site.places.map((place): TwoKeysChamber => {
    const { chamber, number, isLocked } = place;
    if (isLocked) return { chamber, number, isLocked, items: place.present, serves: [], why: null };
    const stacked = chosen[toFill.indexOf(place)] ?? null;
    if (stacked !== null)
      return { chamber, number, isLocked, items: stacked.items, serves: stacked.serves, why: null };
    return { chamber, number, isLocked, items: null, serves: [], why: whyNot(setting, place) };
  });
  const margins = chambers.flatMap(({ serves }) => serves.map(({ margin }) => margin));
  const smallestToSpare = margins.length === 0 ? null : Math.min(...margins);
  return {
    chambers,
    filled: score.filled,
    of: toFill.length,
    smallestToSpare,
    score,
    isProved,
    bound,
    answer: answerOf(setting, chambers, score.filled, smallestToSpare),
  };
}

function wantOf(site: Site, at: KeyAtLine): Want {
  const { job, cylinder } = site.bench;
  const line = cylinder.lines.findIndex((each) => each.id === at.line);
  const key = known(
    job.keys.find((each) => each.id === at.key),
    `key ${at.key}`,
  );
  return { at, keyIn: putKeyIn(site, key), line, above: known(site.lineHeights[line], `line ${at.line}`) };
}

function whyNot({ site, wants, thinnest }: TwoKeysSetting, place: ChamberPlace): string {
  const unit = site.bench.job.settings.unit;
  const usual = site.usual(place);
  const fit = site.fitOfStack(place, usual);
  const levels = fit === null ? null : levelsOf(wants, place, fit);
  const number = place.number;
  if (levels === null)
    return `The heights that the keys call for in chamber ${number} are not known yet: measure both cuts.`;
  if (!hasDriver(place))
    return `Put a driver into chamber ${number} first: a master pin lies between bottom pin and driver.`;
  const [low, high] = levels.map(({ level }) => level).sort((one, other) => one - other);
  const apart = (high ?? 0) - (low ?? 0);
  if (apart < thinnest) {
    return `In chamber ${number} the keys call for heights ${sayAmount(apart, unit)} apart, too little for a master pin: one split has to serve both, and nothing in the bag does.`;
  }
  return `Nothing in the bag fits chamber ${number} for both keys: a bottom pin, and a master pin about ${sayAmount(apart, unit)} thick.`;
}

function answerOf(
  { site }: TwoKeysSetting,
  chambers: readonly TwoKeysChamber[],
  filled: number,
  smallestToSpare: number | null,
): string {
  const free = chambers.filter(({ isLocked }) => !isLocked);
  const unit = site.bench.job.settings.unit;
  const tight =
    smallestToSpare === null ? '' : ` The tightest split has ${sayAmount(smallestToSpare, unit)} to spare.`;
  if (free.length === 0) return 'No chamber is free to choose for: all are locked.';
  if (filled === free.length) {
    const all = filled === 1 ? 'The chamber' : `All ${filled} chambers`;
    return `${all} can be filled for both keys.${tight}`;
  }
  const why = free.find((each) => each.why !== null)?.why ?? '';
  return `${filled} of ${free.length} chambers can be filled for both keys.${tight} ${why}`.trimEnd();
}
