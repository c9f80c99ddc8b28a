/** Edits of how a key sits in a cylinder, and of what was read and felt there. Each gives a new job. Lengths mm. */
import { assert } from '../assert.ts';
import type { Job } from '../schema/job-schema.ts';
import type { Item, Seating } from '../schema/key-schema.ts';
import type { Id, LengthValue } from '../schema/leaf.ts';
import type { Route } from '../evaluate/evaluation.ts';
import { sameIds, withOptional, withoutEntry } from './change.ts';

export type BottomEdge = NonNullable<Seating['bottomEdge']>;

/** A key in a cylinder, of which nothing was read yet. */
export function newSeating(cylinder: Id, key: Id): Seating {
  return { cylinder, key, standsUpBy: [], felt: [], knownSets: [], pinnedRoutes: {} };
}

/** Changes the pairing of a key with a cylinder; it is made with the first thing that is said about it. */
export function changeSeating(job: Job, cylinder: Id, key: Id, change: (seating: Seating) => Seating): Job {
  const isIt = (each: Seating) => each.cylinder === cylinder && each.key === key;
  if (!job.seatings.some(isIt)) {
    assert(
      job.cylinders.some((each) => each.id === cylinder) && job.keys.some((each) => each.id === key),
      `key ${key} and cylinder ${cylinder} are in the job`,
    );
    return { ...job, seatings: [...job.seatings, change(newSeating(cylinder, key))] };
  }
  return { ...job, seatings: job.seatings.map((each) => (isIt(each) ? change(each) : each)) };
}

/**
 * Answers whether the key's bottom edge is level with the underside of the plug. A height read before stays only with
 * "above"; for the other two answers what follows from them is assumed when it is needed.
 */
export function setBottomEdge(job: Job, cylinder: Id, key: Id, answer: BottomEdge): Job {
  return changeSeating(job, cylinder, key, (seating) => {
    const answered: Seating = { ...seating, bottomEdge: answer };
    return answer === 'above' ? answered : withOptional(answered, 'keywayFloorHeight', undefined);
  });
}

/** Sets the metal under the key. A reading also answers where the key sits. */
export function setKeywayFloorHeight(job: Job, cylinder: Id, key: Id, value: LengthValue | undefined): Job {
  return changeSeating(job, cylinder, key, (seating) => {
    const changed = withOptional(seating, 'keywayFloorHeight', value);
    return value === undefined ? changed : { ...changed, bottomEdge: 'above' };
  });
}

/** Sets the one reading that holds plug less metal under the key: rod down the chamber to the floor, read to the crest. */
export function setPlugMinusFloor(job: Job, cylinder: Id, key: Id, value: LengthValue | undefined): Job {
  return changeSeating(job, cylinder, key, (seating) => withOptional(seating, 'plugMinusFloor', value));
}

/** Sets how far the key stops short of home. */
export function setStopShort(job: Job, cylinder: Id, key: Id, value: LengthValue | undefined): Job {
  return changeSeating(job, cylinder, key, (seating) => withOptional(seating, 'stopShort', value));
}

/** What a pin that is surely too long stood up by, in one chamber. */
export type StoodUp = {
  readonly stack: LengthValue;
  readonly reading: LengthValue;
  readonly items: readonly Item[];
};

/** Sets or takes away the "stands up by" reading of one chamber. */
export function setStandsUpBy(job: Job, cylinder: Id, key: Id, chamber: Id, stood: StoodUp | undefined): Job {
  return changeSeating(job, cylinder, key, (seating) => {
    const others = seating.standsUpBy.filter((each) => each.chamber !== chamber);
    if (stood === undefined) return { ...seating, standsUpBy: others };
    const entry = { chamber, items: [...stood.items], stack: stood.stack, reading: stood.reading };
    return { ...seating, standsUpBy: [...others, entry] };
  });
}

/** Records what a thumb across the crest felt with these parts in the hole; null takes it back. */
export function setFelt(
  job: Job,
  { cylinder, key, chamber, items }: { cylinder: Id; key: Id; chamber: Id; items: readonly Item[] },
  felt: 'above' | 'level' | 'below' | null,
): Job {
  const parts = items.map((item) => item.part);
  return changeSeating(job, cylinder, key, (seating) => {
    const others = seating.felt.filter(
      (each) =>
        each.chamber !== chamber ||
        !sameIds(
          each.items.map((item) => item.part),
          parts,
        ),
    );
    if (felt === null) return { ...seating, felt: others };
    return { ...seating, felt: [...others, { chamber, items: [...items], is: felt }] };
  });
}

/** What was felt with these parts in the hole. */
export function feltWith(
  seating: Seating | null,
  chamber: Id,
  items: readonly Item[],
): 'above' | 'level' | 'below' | null {
  const parts = items.map((item) => item.part);
  const entry = seating?.felt.find(
    (each) =>
      each.chamber === chamber &&
      sameIds(
        each.items.map((item) => item.part),
        parts,
      ),
  );
  return entry?.is ?? null;
}

/** Pins the route to the needed height for a chamber; null leaves it to the one with the smallest ±. */
export function pinRoute(job: Job, cylinder: Id, key: Id, chamber: Id, route: Route | null): Job {
  return changeSeating(job, cylinder, key, (seating) => {
    const others = withoutEntry(seating.pinnedRoutes, chamber);
    return { ...seating, pinnedRoutes: route === null ? others : { ...others, [chamber]: route } };
  });
}
