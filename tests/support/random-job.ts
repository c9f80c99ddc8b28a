/**
 * Random valid jobs from a seed: the example's shape with every size drawn anew, some of them absurd, parts missing, turned
 * over, doubled, ends of every kind. Valid means that the file reader takes them, not that they make sense.
 */
import type { Job } from '../../src/model/schema/job-schema.ts';
import type { LengthValue } from '../../src/model/schema/leaf.ts';
import type { EndForm, Part } from '../../src/model/schema/parts-schema.ts';

/** A small seeded generator (mulberry32). */
export function seededRandom(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
}

const KINDS = ['flat', 'bevel', 'radius', 'dome', 'cone', 'cup', 'sphere'] as const;

/** Makes a random job out of an example. `wildness` 0: every size within some per cent; 1: anything the file may hold. */
export function randomJob(example: Job, seed: number, wildness: number): Job {
  const random = seededRandom(seed);
  const job = structuredClone(example);
  const wild = () => random() < wildness * 0.15;
  const size = (value: LengthValue): LengthValue => ({
    ...value,
    readings: value.readings.map((reading) => ({ ...reading, value: drawn(reading.value, random, wild()) })),
  });
  const walk = (node: unknown): unknown => {
    if (typeof node !== 'object' || node === null) return node;
    if ('readings' in node && 'basis' in node) return size(node as LengthValue);
    if (Array.isArray(node)) return node.map(walk);
    return Object.fromEntries(Object.entries(node).map(([name, child]) => [name, walk(child)]));
  };
  const changed = walk(job) as Job;
  return {
    ...changed,
    parts: changed.parts.map((part) => randomPart(part, random, wildness)),
    groups: changed.groups.filter(() => random() > wildness * 0.3),
    plans: changed.plans.map((plan) => ({
      ...plan,
      stacks: plan.stacks.map((stack) => ({ ...stack, items: randomItems(stack.items, random, wildness) })),
    })),
    seatings: changed.seatings.map((seating) => {
      if (random() >= wildness * 0.3) return seating;
      const rest = { ...seating };
      delete rest.keywayFloorHeight;
      return {
        ...rest,
        bottomEdge: (['level', 'above', 'unknown'] as const)[Math.floor(random() * 3)] ?? 'level',
      };
    }),
  };
}

function drawn(value: number, random: () => number, wild: boolean): number {
  if (!wild) return value * (0.97 + 0.06 * random());
  const choices = [0, -value, value * 100 * random(), 999 * random(), value / 1000, -999 * random()];
  return Math.max(-1000, Math.min(1000, choices[Math.floor(random() * choices.length)] ?? 0));
}

function randomPart(part: Part, random: () => number, wildness: number): Part {
  if (part.kind !== 'pin' || random() > 0.2 + wildness * 0.5) return part;
  const end = (): EndForm => ({ kind: KINDS[Math.floor(random() * KINDS.length)] ?? 'flat', basis: 'seen' });
  const plain = { ...part };
  delete plain.ends;
  return random() < 0.2 ? plain : { ...part, ends: [end(), end()] };
}

function randomItems<T extends { part: string }>(
  items: readonly T[],
  random: () => number,
  wildness: number,
): T[] {
  const kept = items.filter(() => random() > wildness * 0.15);
  return kept.flatMap((item) => {
    const turned = random() < wildness * 0.2 ? { ...item, flipped: true } : item;
    return random() < wildness * 0.1 ? [turned, turned] : [turned];
  });
}
