/**
 * The neighbours of a job: every valid job that differs from it in one place. A size is a little larger, a little smaller, guessed or
 * missing, a word is another word of its field, a list lacks one of its things, a yes is a no.
 */
import type { Job } from '../../src/model/schema/job-schema.ts';
import type { LengthValue } from '../../src/model/schema/leaf.ts';
import { parseJob } from '../../src/model/schema/parse-job.ts';

export type Neighbour = { readonly name: string; readonly job: Job };

/** Words that stand for each other in some field; the file reader tells in which. */
const WORDS: readonly (readonly string[])[] = [
  ['away from drivers', 'centred'],
  ['both', 'one'],
  ['bow', 'tip'],
  ['shoulder', 'tip'],
  ['level', 'above', 'unknown', 'below'],
  ['flat', 'bevel', 'radius', 'dome', 'cone', 'cup', 'sphere'],
  ['sharp', 'deburred along', 'countersunk'],
  ['spool', 'serrated', 'mushroom'],
  ['closed and ground', 'closed', 'open'],
  ['ball', 'pin', 'spring'],
  ['subtraction', 'over the ball', 'stands up by', 'known set'],
  ['as found', 'planned', 'as built'],
  ['seen', 'assumed'],
  ['in', 'mm'],
];

/** What tells nothing of the cylinder. */
const LEFT_ALONE: readonly string[] = [
  'format',
  'schemaVersion',
  'id',
  'revision',
  'title',
  'note',
  'label',
  'at',
  'typed',
];
const MOST_MM = 0.12;

/** Lists every so manieth of them, in the order of the file. */
export function neighbours(job: Job, every: number, at: number): Neighbour[] {
  const found: Neighbour[] = [];
  let offered = 0;
  const offer = (
    path: readonly (string | number)[],
    what: string,
    change: (holder: Holder, name: string | number) => void,
  ) => {
    if (offered++ % every !== at) return;
    const copy = structuredClone(job);
    let holder = copy as unknown as Holder;
    for (const name of path.slice(0, -1)) holder = holder[name] as Holder;
    change(holder, path.at(-1)!);
    const read = parseJob(copy);
    if (read.type === 'success') found.push({ name: `${sayPath(job, path)}: ${what}`, job: read.job });
  };
  const walk = (node: unknown, path: readonly (string | number)[]): void => {
    const name = path.at(-1);
    if (typeof name === 'string' && LEFT_ALONE.includes(name)) return;
    if (isLength(node)) {
      offerSizes(node, (what, change) => {
        offer(path, what, change);
      });
      return;
    }
    if (typeof node === 'boolean') offer(path, String(!node), (holder, key) => (holder[key] = !node));
    if (typeof node === 'number')
      for (const factor of [0.9, 1.25])
        offer(path, `${factor} ×`, (holder, key) => (holder[key] = node * factor));
    if (typeof node === 'string') {
      for (const word of new Set(WORDS.filter((words) => words.includes(node)).flat()))
        if (word !== node) offer(path, word, (holder, key) => (holder[key] = word));
    }
    if (typeof node !== 'object' || node === null) return;
    if (typeof name === 'string')
      offer(path, 'left out', (holder, key) => Reflect.deleteProperty(holder, key));
    for (const [key, child] of Object.entries(node)) {
      const step = Array.isArray(node) ? Number(key) : key;
      if (Array.isArray(node))
        offer([...path, step], 'left out', (holder) =>
          (holder as unknown as unknown[]).splice(Number(step), 1),
        );
      walk(child, [...path, step]);
    }
  };
  walk(job, []);
  return found;
}

type Holder = Record<string | number, unknown>;
type OfferSize = (what: string, change: (holder: Holder, name: string | number) => void) => void;

function isLength(node: unknown): node is LengthValue {
  return typeof node === 'object' && node !== null && 'readings' in node;
}

function offerSizes(node: LengthValue, offer: OfferSize): void {
  const moved = (by: (value: number) => number): LengthValue => ({
    ...node,
    readings: node.readings.map((each) => ({ ...each, value: by(each.value) })),
  });
  const less = (value: number) => value - Math.min(MOST_MM, Math.abs(value) / 4);
  offer('smaller', (holder, key) => (holder[key] = moved(less)));
  offer('larger', (holder, key) => (holder[key] = moved((value) => 2 * value - less(value))));
  offer('left out', (holder, key) => Reflect.deleteProperty(holder, key));
  const value = node.readings[0]!.value;
  if (node.basis !== 'assumed')
    offer('guessed', (holder, key) => {
      holder[key] = { ...node, basis: 'assumed', range: { from: value * 0.97, to: value * 1.02 } };
    });
}

/** Names of ids in place of numbers, where a thing has one. */
function sayPath(job: Job, path: readonly (string | number)[]): string {
  let at: unknown = job;
  return path
    .map((name) => {
      at = (at as Holder)[name];
      const { id, chamber, key } = (typeof at === 'object' && at !== null ? at : {}) as Record<
        string,
        unknown
      >;
      return typeof name === 'number'
        ? ([id, chamber, key].find((each) => typeof each === 'string') ?? String(name + 1))
        : name;
    })
    .join(' › ');
}
