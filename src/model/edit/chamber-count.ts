/** Adds and takes away chambers at the back of the cylinder, each with its cut and its stack. */
import { known } from '../assert.ts';
import { lengthOf } from '../measured/part-ends.ts';
import type { Job } from '../schema/job-schema.ts';
import type { Id, LengthValue } from '../schema/leaf.ts';
import { withoutEntry } from './change.ts';
import { changeCylinder, plugDiameterOf } from './edit-cylinder.ts';
import { changeKey } from './edit-key.ts';
import { newParts } from './new-parts.ts';
import { withoutStandIns } from './loose-ends.ts';
import { assumedLike, movedValue } from './values.ts';

export const FEWEST_CHAMBERS = 1;
export const MOST_CHAMBERS = 8;

type Where = { readonly cylinder: Id; readonly key: Id };

/**
 * Adds one chamber behind the last, spaced like the others, with a cut under it and an unmeasured stack in it. Nobody read where
 * they lie: their places are assumed unless even spacing was stated.
 */
export function addChamber(job: Job, where: Where, newId: () => Id): Job {
  const cylinder = known(
    job.cylinders.find((each) => each.id === where.cylinder),
    `cylinder ${where.cylinder}`,
  );
  const key = known(
    job.keys.find((each) => each.id === where.key),
    `key ${where.key}`,
  );
  if (cylinder.chambers.length >= MOST_CHAMBERS) return job;
  const chambers = inOrder(cylinder.chambers);
  const last = known(chambers[chambers.length - 1], 'last chamber');
  const step = stepOf(chambers);
  const chamber = { ...last, id: newId(), position: placeBehind(last.position, step, job) };
  const parts = newParts(newId, job.settings.unit, plugDiameterOf(job, where.cylinder));
  const cuts = inOrder(key.cuts);
  const deepest = key.stop.kind === 'tip' ? cuts[0] : cuts[cuts.length - 1];
  const sign = key.stop.kind === 'tip' ? -1 : 1;
  const withChamber = changeCylinder(job, where.cylinder, (each) => ({
    ...each,
    chambers: [...each.chambers, chamber],
  }));
  const withCut = changeKey(withChamber, where.key, (each) => ({
    ...each,
    cuts:
      deepest === undefined
        ? each.cuts
        : [...each.cuts, { id: newId(), position: placeBehind(deepest.position, sign * step, job) }],
    ...(each.tip?.position?.basis === 'assumed' && {
      tip: { ...each.tip, position: movedValue(each.tip.position, step) },
    }),
  }));
  // all plans of a cylinder are about the same holes
  const stack = { chamber: chamber.id, items: parts.map((part) => ({ part: part.id })) };
  return {
    ...withCut,
    parts: [...withCut.parts, ...parts],
    plans: withCut.plans.map((plan) =>
      plan.cylinder === where.cylinder ? { ...plan, stacks: [...plan.stacks, stack] } : plan,
    ),
  };
}

/** Takes away the last chamber, the last cut, and all that was said about them. Parts that were measured stay on hand. */
export function removeChamber(job: Job, where: Where): Job {
  const cylinder = known(
    job.cylinders.find((each) => each.id === where.cylinder),
    `cylinder ${where.cylinder}`,
  );
  if (cylinder.chambers.length <= FEWEST_CHAMBERS) return job;
  const last = known(inOrder(cylinder.chambers)[cylinder.chambers.length - 1], 'last chamber').id;
  const withoutChamber = changeCylinder(job, where.cylinder, (each) => ({
    ...each,
    chambers: each.chambers.filter((chamber) => chamber.id !== last),
    bodies: each.bodies.map((body) => {
      if (body.crestDropAt === undefined) return body;
      return { ...body, crestDropAt: withoutEntry(body.crestDropAt, last) };
    }),
  }));
  const withoutCut = changeKey(withoutChamber, where.key, (each) => {
    if (each.cuts.length <= cylinder.chambers.length - 1) return each;
    const order = inOrder(each.cuts);
    const gone = (each.stop.kind === 'tip' ? order[0] : order[order.length - 1])?.id;
    return { ...each, cuts: each.cuts.filter((cut) => cut.id !== gone) };
  });
  const held = withoutCut.plans
    .flatMap(({ stacks }) => stacks.filter((stack) => stack.chamber === last))
    .flatMap(({ items }) => items.map(({ part }) => part));
  const without: Job = {
    ...withoutCut,
    plans: withoutCut.plans.map((plan) => ({
      ...plan,
      stacks: plan.stacks.filter((stack) => stack.chamber !== last),
    })),
    seatings: withoutCut.seatings.map((seating) => ({
      ...seating,
      standsUpBy: seating.standsUpBy.filter((each) => each.chamber !== last),
      felt: seating.felt.filter((each) => each.chamber !== last),
      pinnedRoutes: withoutEntry(seating.pinnedRoutes, last),
    })),
    benchResults: withoutCut.benchResults.filter((each) => each.chamber !== last),
  };
  return withoutStandIns(without, held);
}

/** A place that nobody read, a step from one that somebody may have. */
function placeBehind(place: LengthValue, byMm: number, { sessions }: Job): LengthValue {
  return movedValue(assumedLike(place, sessions), byMm);
}

function inOrder<T extends { readonly position: LengthValue }>(list: readonly T[]): T[] {
  return [...list].sort((a, b) => lengthOf(a.position, 0) - lengthOf(b.position, 0));
}

function stepOf(chambers: readonly { readonly position: LengthValue }[]): number {
  const first = lengthOf(chambers[0]?.position, 0);
  const last = lengthOf(chambers[chambers.length - 1]?.position, 0);
  return chambers.length > 1 ? (last - first) / (chambers.length - 1) : 4;
}
