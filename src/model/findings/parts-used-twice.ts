/** One loose part planned in two places. Counted over this plan and the planned or built ones of the other cylinders. */
import type { Finding } from '../evaluate/evaluation.ts';
import type { Id } from '../schema/leaf.ts';
import { type Facts, found, numberOf } from './facts.ts';

/** Lists parts that are used more often than there are of them. */
export function partsUsedTwice(facts: Facts): Finding[] {
  const { bench } = facts;
  const elsewhere = bench.job.plans.filter(
    (plan) => plan.cylinder !== bench.cylinder.id && plan.kind !== 'as found',
  );
  const here = placesIn(bench.plan.stacks);
  return [...here].flatMap(([id, chambers]): Finding[] => {
    const part = bench.parts.get(id);
    if (part === undefined) return [];
    const others = elsewhere.filter((plan) => placesIn(plan.stacks).has(id));
    const used = chambers.length + others.length;
    if (used <= part.quantity) return [];
    const numbers = chambers.map((chamber) => `chamber ${numberOf(facts, chamber)}`);
    const labels = others.map(
      (plan) => bench.job.cylinders.find((each) => each.id === plan.cylinder)?.label ?? 'another cylinder',
    );
    const where = [...numbers, ...labels].join(', ');
    const have = part.quantity === 1 ? 'there is one of it' : `there are ${part.quantity} of it`;
    const message = `Planned ${used} times, and ${have}: ${part.label}, in ${where}.`;
    return [
      found(facts, 'part-used-twice', 'stops', { chambers, fields: ['parts'], message, view: 'section' }),
    ];
  });
}

function placesIn(stacks: Facts['bench']['plan']['stacks']): Map<Id, Id[]> {
  const places = new Map<Id, Id[]>();
  for (const { chamber, items } of stacks) {
    for (const { part } of items) places.set(part, [...(places.get(part) ?? []), chamber]);
  }
  return places;
}
