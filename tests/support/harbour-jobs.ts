/** The example with a sleeve, with one of its keys alone, and with keys made up from the cuts of both. */
import { readFileSync } from 'node:fs';
import type { Job } from '../../src/model/schema/job-schema.ts';
import type { Key } from '../../src/model/schema/key-schema.ts';
import { changed } from './job-builder.ts';

const example = JSON.parse(readFileSync('public/examples/harbour-store.json', 'utf8')) as Job;

/** Who a key belongs to: the storekeeper's turns the plug alone, the harbour master's plug and sleeve together. */
export type Owner = 'storekeeper' | 'harbour master';

/** The example as it comes: both keys, the storekeeper's first. */
export function harbourJob(): Job {
  return structuredClone(example);
}

/** The example with one key left, which may be cut like the other one's here and there, or deeper. */
export function harbourJobWith(
  owner: Owner,
  cutLike: (place: number) => Owner = () => owner,
  deeperMm: (place: number) => number = () => 0,
): Job {
  const job = harbourJob();
  const kept = keyOf(job, owner);
  return changed(job, (copy) => {
    const key = keyOf(copy, owner);
    key.cuts.forEach((cut, place) => {
      const source = keyOf(job, cutLike(place)).cuts[place]?.rootDepth;
      if (source === undefined) throw new Error(`no cut ${place}`);
      cut.rootDepth = {
        ...source,
        readings: source.readings.map((reading) => {
          const value = reading.value - deeperMm(place);
          return { ...reading, value, typed: value.toFixed(2) };
        }),
      };
    });
    copy.id = `${job.id}x`;
    copy.keys = [key];
    copy.seatings = copy.seatings.filter((seating) => seating.key === kept.id);
    copy.intents = copy.intents.filter((intent) => intent.key === kept.id);
  });
}

function keyOf(job: Job, owner: Owner): Key {
  const key = job.keys[owner === 'storekeeper' ? 0 : 1];
  if (key === undefined) throw new Error(`no key of the ${owner}`);
  return key;
}
