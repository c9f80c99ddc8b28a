/**
 * Keys against cylinders: for every pair, how much of the bag fits. Each pair is looked at alone, with all parts that are
 * not in use elsewhere; which pairs can be built at the same time is build-together.ts. Works off one pair at a time and
 * tells how far it is, so that whoever runs it can show that, or stop. Lengths mm.
 */
import type { Job } from '../schema/job-schema.ts';
import type { Id } from '../schema/leaf.ts';
import { assign } from './assign.ts';
import { measuringOf } from './match.ts';
import { type MissingPart, missingParts } from './missing-part.ts';
import { type Filling, fillingOf, type PairToFill, pairToFill, rowsOf } from './pair-to-fill.ts';
import { type CylinderWithPlan, layOutSite, type Site } from './site.ts';
import { lockedIn, standingOf } from './standing.ts';
import { takeStock } from './stock.ts';

export type ManyAsk = {
  readonly cylinders: readonly CylinderWithPlan[];
  readonly keys: readonly Id[];
  /** As in `MatchAsk`. */
  readonly mostFiled?: number | null;
};

export type PairCell = {
  readonly cylinder: Id;
  readonly plan: Id;
  readonly key: Id;
  /** Chambers that turn, of how many. */
  readonly filled: number;
  readonly of: number;
  /** Pins to file for it. */
  readonly filed: number;
  /** Of the tightest chamber that turns: mm, and whole steps. Null when none does. */
  readonly smallestToSpare: number | null;
  readonly smallestSteps: number | null;
  /** Sum of squared deviations, in steps. */
  readonly squares: number;
  /** Any one of these would complete it. */
  readonly missing: readonly MissingPart[];
  readonly isProved: boolean;
};

/** How far a long reckoning is. */
export type Progress = { readonly done: number; readonly of: number };

/** Reckons the table, cylinder by cylinder; yields after every step and returns the cells. */
export function* pairTable(job: Job, ask: ManyAsk): Generator<Progress, PairCell[], void> {
  const { cylinders, keys, mostFiled = null } = ask;
  const of = cylinders.length * (keys.length + 1);
  let done = 0;
  const stock = takeStock(job, measuringOf(job));
  const sites: Site[] = [];
  for (const each of cylinders) {
    sites.push(layOutSite(job, each, stock, { beside: sites[0] }));
    done += 1;
    yield { done, of };
  }
  const filling = fillingOf(job, sites, 0, mostFiled);
  const cells: PairCell[] = [];
  for (const site of sites) {
    for (const key of keys) {
      cells.push(cellOf(pairToFill(site, key), filling));
      done += 1;
      yield { done, of };
    }
  }
  return cells;
}

/** Runs something that works step by step to its end. */
export function runToEnd<T>(steps: Generator<unknown, T, void>): T {
  for (;;) {
    const step = steps.next();
    if (step.done === true) return step.value;
  }
}

function cellOf(pair: PairToFill, common: Filling): PairCell {
  const { site, bench } = pair.keyIn;
  const filling = { ...common, placeCount: pair.toFill.length };
  const rows = rowsOf(pair, filling);
  const assignment = assign(rows, (part) => filling.copies[part] ?? 0);
  const { chosen, score, isProved } = assignment;
  const locked = site.places
    .filter((place) => place.isLocked)
    .map((place) => lockedIn(pair.keyIn, place, filling.step).standing);
  const free = chosen.flatMap((each) => (each === null ? [] : [standingOf(each, site.stock, filling.step)]));
  const standing = [...free, ...locked].filter((each) => each !== null).filter(({ spare }) => spare >= 0);
  const smallest = (of: readonly number[]): number | null => (of.length === 0 ? null : Math.min(...of));
  const lockedTurn = locked.every((each) => each !== null && each.spare >= 0);
  return {
    cylinder: bench.cylinder.id,
    plan: bench.plan.id,
    key: bench.key?.id ?? '',
    filled: standing.length,
    of: site.places.length,
    filed: score.filed,
    smallestToSpare: smallest(standing.map(({ margin }) => margin)),
    smallestSteps: smallest(standing.map(({ spare }) => spare)),
    squares: score.squares,
    missing: lockedTurn ? missingParts(pair, filling, rows, assignment) : [],
    isProved,
  };
}
