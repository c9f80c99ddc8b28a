/**
 * Planning a cylinder for several keys from their cuts alone: in every chamber a bottom pin up to the lowest split that any
 * of them calls for, and a master pin from each split to the next. Worked from contact heights (where the foot really rests),
 * the ball included; windows are those of the usual ends, or of the bottom pin that is in the plan.
 *
 *     driver       |        |
 *     ------------ |========| ----  split of the key that calls for most
 *     master pin   |        |
 *     ------------ |========| ----  split of the key that calls for less
 *     bottom pin   |        |
 *     on its ball   (      )
 *
 * A master pin thinner than the least that holds is told, and where one height serves both of its neighbours that is offered
 * instead. Heights above the foot, offsets + high, - low; mm.
 */
import { known } from '../assert.ts';
import { measuringOf } from '../matching/match.ts';
import { putKeyIn, type KeyInSite } from '../matching/needed-height.ts';
import type { ChamberPlace } from '../matching/fits.ts';
import { layOutSite, type Site } from '../matching/site.ts';
import { takeStock } from '../matching/stock.ts';
import type { KeyAtLine } from '../matching/two-key-options.ts';
import { thresholdsOf } from '../rest/thresholds.ts';
import { measurePair } from '../measured/measured-pair.ts';
import type { Job } from '../schema/job-schema.ts';
import type { Id } from '../schema/leaf.ts';
import { SAME_LENGTH_MM } from '../tolerances.ts';
import { groupSplits, heightForAll, offsetsAt, type WantedSplit } from './merge-splits.ts';
import { plannedShapes, type PlannedShapes } from './planned-shapes.ts';

export type KeysToPlan = {
  readonly cylinder: Id;
  readonly plan: Id;
  /** Two or more; each turns one line. */
  readonly wants: readonly KeyAtLine[];
  /** mm. Thinner master pins are told; by default the job's own threshold, or the usual one. */
  readonly thinnest?: number;
  /** Chambers where one split is to serve several keys, as far as a height fits. */
  readonly merged?: readonly Id[];
};

export type PlannedSplit = {
  readonly height: number;
  /** What it gives each key it serves. */
  readonly serves: readonly (KeyAtLine & {
    readonly offset: number;
    readonly lowest: number;
    readonly highest: number;
  })[];
};

/** One split instead of several, and what it would give. */
export type MergeOffer = { readonly splits: readonly PlannedSplit[]; readonly saves: number };

export type PlannedChamber = {
  readonly chamber: Id;
  readonly number: number;
  /** Left as it is: locked in the plan. */
  readonly isLocked: boolean;
  /** Lowest first; empty when something is missing. */
  readonly splits: readonly PlannedSplit[];
  /** Ball + bottom pin, from the foot. */
  readonly bottom: number | null;
  /** Diameter of the ball that is part of it; null for a pin alone. */
  readonly ball: number | null;
  readonly masters: readonly { readonly length: number; readonly isThin: boolean }[];
  readonly isMerged: boolean;
  /** Null where nothing can be merged, or it is already. */
  readonly offer: MergeOffer | null;
  /** What stands in the way, one sentence. */
  readonly problem: string | null;
};

export type KeysPlan = {
  readonly cylinder: Id;
  readonly plan: Id;
  readonly wants: readonly KeyAtLine[];
  readonly thinnest: number;
  /** Open chambers, front to back. */
  readonly chambers: readonly PlannedChamber[];
  /** Keys whose metal under the key nobody measured in this plug: their heights stand on a guess. */
  readonly guessed: readonly Id[];
};

/** Plans. Cylinder, plan, keys and lines must exist in the job. */
export function planKeys(job: Job, ask: KeysToPlan): KeysPlan {
  const { cylinder, plan, wants, merged = [] } = ask;
  const thinnest = ask.thinnest ?? thresholdsOf(job).thinnestMasterPin;
  const stock = takeStock(job, measuringOf(job));
  const site = layOutSite(job, { cylinder, plan }, stock, { choosesMasterPins: true });
  const seated = wants.map((at) => seatedWant(site, at));
  const chambers = site.places.map((place) =>
    planChamber({ site, place, seated, thinnest, isMerged: merged.includes(place.chamber) }),
  );
  const guessed = seated.filter(({ keyIn }) => isFloorGuessed(keyIn)).map(({ at }) => at.key);
  return { cylinder, plan, wants, thinnest, chambers, guessed };
}

function isFloorGuessed({ site, bench }: KeyInSite): boolean {
  const { seating, key, measuring } = bench;
  return measurePair(seating, key?.id ?? '', site.measured.plugDiameter, measuring).floorIsGuess;
}

type SeatedWant = { readonly at: KeyAtLine; readonly keyIn: KeyInSite; readonly line: number };

function seatedWant(site: Site, at: KeyAtLine): SeatedWant {
  const { job, cylinder } = site.bench;
  const line = cylinder.lines.findIndex((each) => each.id === at.line);
  known(cylinder.lines[line], `line ${at.line}`);
  const key = known(
    job.keys.find((each) => each.id === at.key),
    `key ${at.key}`,
  );
  return { at, keyIn: putKeyIn(site, key), line };
}

type ChamberToPlan = {
  readonly site: Site;
  readonly place: ChamberPlace;
  readonly seated: readonly SeatedWant[];
  readonly thinnest: number;
  readonly isMerged: boolean;
};

type Wanted = WantedSplit & { readonly at: KeyAtLine; readonly line: number };

function planChamber(chamber: ChamberToPlan): PlannedChamber {
  const { site, place, isMerged, thinnest } = chamber;
  const shapes = plannedShapes(site, place);
  const common = {
    chamber: place.chamber,
    number: place.number,
    isLocked: place.isLocked,
    ball: shapes?.ballDiameter ?? null,
  };
  const nothing = { splits: [], bottom: null, masters: [], isMerged: false, offer: null };
  if (place.isLocked) return { ...common, ...nothing, problem: null };
  const wanted = shapes === null ? null : levelsIn(chamber, shapes);
  if (shapes === null || wanted === null)
    return {
      ...common,
      ...nothing,
      problem: `The heights that the keys call for in chamber ${place.number} are not known yet: measure plug, metal under the key and every key's cut there.`,
    };
  const apart = groupSplits(wanted, (group, next) => isSameHeight(group, next));
  const together = groupSplits(wanted, (group, next) => {
    const all = [...group, next];
    // whether bottom pin or driver bounds it, or a master pin that is left, decides the window
    const isHighest = wanted.every(({ level }) => level - next.level < SAME_LENGTH_MM);
    const here = { isLowest: all[0] === wanted[0], isHighest };
    return isSameHeight(group, next) || heightForAll(withWindows(site, place, shapes, all, here)) !== null;
  });
  const splits = splitsOf(site, place, shapes, isMerged ? together : apart);
  const bottom = splits[0]?.height ?? 0;
  const masters = splits.slice(1).map(({ height }, i) => {
    const length = height - (splits[i]?.height ?? 0);
    return { length, isThin: length < thinnest - SAME_LENGTH_MM };
  });
  const saves = apart.length - together.length;
  return {
    ...common,
    splits,
    bottom,
    masters,
    isMerged: isMerged && saves > 0,
    offer: isMerged || saves === 0 ? null : { splits: splitsOf(site, place, shapes, together), saves },
    problem:
      bottom - (shapes.ballDiameter ?? 0) > 0
        ? null
        : `There is no room for a bottom pin in chamber ${place.number}: check the readings of its cuts.`,
  };
}

/** Where each key wants its split, lowest first, with the window it has alone under the driver; null when one is not known. */
function levelsIn({ site, place, seated }: ChamberToPlan, shapes: PlannedShapes): Wanted[] | null {
  const fit = site.fitOfStack(place, shapes.stack);
  if (fit === null || fit.barred === 'cannot be') return null;
  const wanted = seated.flatMap(({ at, keyIn, line }): Wanted[] => {
    const level = keyIn.levelOf(place, fit);
    const above = site.lineHeights[line];
    const window = site.windowOf(place, shapes.bottom, shapes.driver, line);
    if (level === null || above === undefined || window === null) return [];
    return [{ at, line, level: level + above, lowest: window.lowest, highest: window.highest }];
  });
  if (wanted.length < seated.length) return null;
  return wanted.sort((one, other) => one.level - other.level);
}

function isSameHeight(group: readonly Wanted[], next: Wanted): boolean {
  const first = group[0];
  return first !== undefined && next.level - first.level < SAME_LENGTH_MM;
}

/** The same wants with the windows of one split for all of them: what is under it and over it decides. */
function withWindows(
  site: Site,
  place: ChamberPlace,
  shapes: PlannedShapes,
  group: readonly Wanted[],
  { isLowest, isHighest }: { readonly isLowest: boolean; readonly isHighest: boolean },
): Wanted[] {
  const below = isLowest ? shapes.bottom : shapes.master;
  const above = isHighest ? shapes.driver : shapes.master;
  return group.map((each) => {
    const window = site.windowOf(place, below, above, each.line);
    return window === null ? each : { ...each, lowest: window.lowest, highest: window.highest };
  });
}

function splitsOf(
  site: Site,
  place: ChamberPlace,
  shapes: PlannedShapes,
  groups: readonly (readonly Wanted[])[],
): PlannedSplit[] {
  return groups.map((group, i) => {
    const here = { isLowest: i === 0, isHighest: i === groups.length - 1 };
    const wanted = withWindows(site, place, shapes, group, here);
    const levels = wanted.map(({ level, highest }) => level + Math.min(0, highest));
    const height =
      wanted.length === 1 || isSameHeight(wanted, known(wanted[wanted.length - 1], 'a want'))
        ? Math.min(...levels)
        : (heightForAll(wanted) ?? Math.min(...levels));
    const offsets = offsetsAt(height, wanted);
    return {
      height,
      serves: wanted.map(({ at, lowest, highest }, k) => ({
        ...at,
        offset: offsets[k] ?? 0,
        lowest,
        highest,
      })),
    };
  });
}
