/**
 * Where parts on hand are in use, and how many of each are left. A part in a plan of another cylinder is in use there; the
 * plans of one cylinder (planned, as built) are about the same holes, so a part counts once for each cylinder, as often as
 * the plan that takes most of it. Plans "as found" say where parts came from and keep nothing.
 */
import type { Job } from '../schema/job-schema.ts';
import type { Id } from '../schema/leaf.ts';
import type { Plan } from '../schema/parts-schema.ts';
import type { Stock } from './stock.ts';

export type PartUse = { readonly cylinder: Id; readonly chamber: Id };

/** What stays where it is in a plan that parts are being chosen for: drivers, springs, locked chambers. */
export type Kept = { readonly plan: Plan; readonly parts: readonly Id[] };

/** Counts the copies left of every part in stock, for choosing parts for these plans at the same time. */
export function copiesLeft(job: Job, stock: Stock, building: readonly Kept[]): Int32Array {
  const left = Int32Array.from(stock.parts, (part) => part.quantity);
  const take = (part: Id, count: number) => {
    const number = stock.numbers.get(part);
    if (number !== undefined) left[number] = Math.max(0, (left[number] ?? 0) - count);
  };
  const inHand = new Set(building.map(({ plan }) => plan.cylinder));
  for (const { parts } of building) for (const part of parts) take(part, 1);
  for (const [cylinder, uses] of usesByCylinder(job)) {
    if (!inHand.has(cylinder)) for (const [part, places] of uses) take(part, places.length);
  }
  return left;
}

/** Lists where a part is in use, cylinder by cylinder. */
export function usesOf(job: Job, part: Id): PartUse[] {
  return [...usesByCylinder(job).values()].flatMap((uses) => uses.get(part) ?? []);
}

/** Where every part is that is in use anywhere. */
export function usesOfAll(job: Job): Map<Id, PartUse[]> {
  const byPart = new Map<Id, PartUse[]>();
  for (const uses of usesByCylinder(job).values()) {
    for (const [part, places] of uses) byPart.set(part, [...(byPart.get(part) ?? []), ...places]);
  }
  return byPart;
}

export type UsedTooOften = {
  readonly part: Id;
  readonly uses: readonly PartUse[];
  readonly quantity: number;
  readonly message: string;
};

/** Lists the parts that plans use more often than there are of them, with a sentence that says where. */
export function usedTooOften(job: Job): UsedTooOften[] {
  const byPart = usesOfAll(job);
  return job.parts.flatMap(({ id, label, quantity }): UsedTooOften[] => {
    const uses = byPart.get(id) ?? [];
    if (uses.length <= quantity) return [];
    const where = uses.map((use) => sayUse(job, use));
    const have = quantity === 1 ? 'there is only one' : `there are only ${quantity}`;
    const message =
      quantity === 0
        ? `${label} is in ${list(where)}, but there is none left.`
        : `${label} is in ${list(where)}, but ${have}.`;
    return [{ part: id, uses, quantity, message }];
  });
}

/** "chamber 3 of Front door" */
export function sayUse(job: Job, { cylinder: id, chamber }: PartUse): string {
  const cylinder = job.cylinders.find((each) => each.id === id);
  const inOrder = [...(cylinder?.chambers ?? [])].sort(
    (one, other) => (one.position.readings[0]?.value ?? 0) - (other.position.readings[0]?.value ?? 0),
  );
  const place = inOrder.findIndex((each) => each.id === chamber);
  const number = job.settings.numbering === 'bow' ? place + 1 : inOrder.length - place;
  return `chamber ${number} of ${cylinder?.label ?? 'a cylinder'}`;
}

function list(words: readonly string[]): string {
  return words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} and in ${words.at(-1) ?? ''}`;
}

type Uses = ReadonlyMap<Id, readonly PartUse[]>;

function usesByCylinder(job: Job): ReadonlyMap<Id, Uses> {
  const all = new Map<Id, Map<Id, PartUse[]>>();
  for (const plan of job.plans) {
    if (plan.kind === 'as found') continue;
    const merged = all.get(plan.cylinder) ?? new Map<Id, PartUse[]>();
    all.set(plan.cylinder, merged);
    for (const [part, uses] of usesIn(plan)) {
      if (uses.length > (merged.get(part)?.length ?? 0)) merged.set(part, uses);
    }
  }
  return all;
}

function usesIn(plan: Plan): Map<Id, PartUse[]> {
  const uses = new Map<Id, PartUse[]>();
  for (const { chamber, items } of plan.stacks) {
    for (const { part } of items) {
      const use: PartUse = { cylinder: plan.cylinder, chamber };
      const before = uses.get(part);
      if (before === undefined) uses.set(part, [use]);
      else before.push(use);
    }
  }
  return uses;
}
