/**
 * What settles between parts that are the same length for all a caliper can tell: the same origin first, then the better
 * condition, then the fewest changes. Each is a small whole number, less is better.
 */
import type { Job } from '../schema/job-schema.ts';
import type { Part } from '../schema/parts-schema.ts';
import type { ChamberPlace } from './fits.ts';
import type { Site } from './site.ts';

/** Origin, condition, change of a pin (on a ball) in a place. */
export type TieBreaks = (place: ChamberPlace, pin: number, ball: number) => readonly number[];

/** A condition that nobody noted counts as fair. */
const CONDITION = { good: 0, fair: 1, poor: 2 } as const;

/** Makes the tie breaks of a cylinder. */
export function tieBreaksOf(site: Site): TieBreaks {
  const { parts } = site.stock;
  const own = ownParts(site.bench.job, site);
  const known = new Map<number, readonly number[]>();
  return (place, pin, ball) => {
    const [lowest, next] = place.present;
    const isPresent =
      ball < 0
        ? lowest?.part === parts[pin]?.id && next === undefined
        : lowest?.part === parts[ball]?.id && next?.part === parts[pin]?.id;
    const name = pin * 2 + (isPresent ? 1 : 0);
    const before = known.get(name);
    if (before !== undefined) return before;
    const part = parts[pin];
    const ties = [
      part !== undefined && isOwn(part, own, site) ? 0 : 1,
      CONDITION[part?.condition ?? 'fair'],
      isPresent ? 0 : 1,
    ];
    known.set(name, ties);
    return ties;
  };
}

function ownParts(job: Job, { bench }: Site): ReadonlySet<string> {
  const plans = job.plans.filter((plan) => plan.cylinder === bench.cylinder.id);
  return new Set(
    plans.flatMap((plan) => plan.stacks.flatMap((stack) => stack.items.map((item) => item.part))),
  );
}

/** Came out of this cylinder, or is said to be from it. */
function isOwn(part: Part, own: ReadonlySet<string>, { bench }: Site): boolean {
  const from = part.from?.trim().toLowerCase() ?? '';
  return own.has(part.id) || (from !== '' && from === bench.cylinder.label.trim().toLowerCase());
}
