/**
 * Random valid jobs that cost little to evaluate: mostly one chamber, now and then up to seven. Sizes of real cylinders and beyond,
 * ends and mouths of every kind, keys that miss a cut, parts that are missing or upside down, now and then a size that makes no
 * sense. `wildness` 0 leaves out what makes no sense. Lengths in inches, angles in degrees, until the job has them.
 */
import type { Chamber } from '../../src/model/schema/cylinder-schema.ts';
import type { Job } from '../../src/model/schema/job-schema.ts';
import type { LengthValue } from '../../src/model/schema/leaf.ts';
import { buildJob, type ChamberOptions } from './job-builder.ts';
import { seededRandom } from './random-job.ts';
import { type EndOptions, inches, statedInches } from './values.ts';

type Random = () => number;

const between = (random: Random, from: number, to: number) =>
  Math.round((from + (to - from) * random()) * 1e5) / 1e5;
const pick = <const T>(random: Random, list: readonly [T, ...T[]]): T =>
  list[Math.floor(random() * list.length)] ?? list[0];

/** Of a hundred jobs, how many have one chamber, two, and so on. */
const CHAMBERS = [88, 6, 2, 1, 1, 1, 1] as const;

export const SELECTION = { cylinder: 'cylinder', key: 'key', plan: 'plan' } as const;

/** Makes a job with ids as in job-builder.ts; look at it with SELECTION. */
export function smallJob(seed: number, wildness = 1): Job {
  const random = seededRandom(seed);
  const count = chamberCount(random() * 100);
  const plugDiameter = between(random, 0.4, 0.8);
  const chamberDiameter = between(random, 0.1, 0.14);
  const spacing = between(random, 0.12, 0.2);
  const play = between(random, 0.001, 0.008);
  const job = buildJob({
    instrumentError: random() < 0.08 ? 'default' : 'none',
    numbering: pick(random, ['bow', 'tip']),
    plugDiameter,
    clearance: play,
    lies: pick(random, ['away from drivers', 'centred']),
    turnDeg: pick(random, [360, 360, 180, 90, 20]),
    ...(random() < 0.06 && { sleeve: { outerDiameter: plugDiameter + 0.12, clearance: play } }),
    chamberDiameter,
    chamberSpacing: spacing,
    rootFlat: between(random, 0.01, 0.09),
    cutAngleDeg: between(random, 60, 140),
    floorHeight: between(random, 0, 0.15),
    stop: 'shoulder',
    tip: { position: 1.4 + spacing * count, noseHeight: between(random, 0.03, 0.2), rampDeg: 45 },
    pinDiameter: chamberDiameter - between(random, 0.001, 0.008),
    pinFoot: randomEnd(random, chamberDiameter),
    pinTop: randomEnd(random, chamberDiameter),
    driverEnd: randomEnd(random, chamberDiameter),
    driverLength: between(random, 0.1, 0.25),
    chambers: Array.from({ length: count }, (_, i) => randomChamber(random, 0.7 + i * spacing)),
  });
  for (const chamber of job.cylinders[0]?.chambers ?? []) giveMouth(random, chamber);
  if (random() < 0.1) spoilStack(random, job);
  if (random() < 0.1 * wildness) spoilLength(random, job);
  return job;
}

function chamberCount(share: number): number {
  let left = share;
  const at = CHAMBERS.findIndex((each) => (left -= each) < 0);
  return at < 0 ? 1 : at + 1;
}

function randomChamber(random: Random, position: number): ChamberOptions {
  const cut = random();
  const rootDepth = between(random, 0.18, 0.33);
  return {
    position,
    rootDepth,
    ...(cut < 0.03 && { cutPosition: null }),
    ...(cut > 0.8 && { cutPosition: position + between(random, -0.03, 0.03) }),
    ...(random() < 0.05 && { overBall: { reading: between(random, 0.2, 0.4), ball: 0.109 } }),
    ...(random() < 0.2 && { ball: 0.109 }),
    ...(random() < 0.5 && { bottomPin: between(random, 0.02, 0.3) }),
    ...(random() < 0.2 && { masterPins: [between(random, 0.01, 0.08)] }),
    ...(random() < 0.05 && { driver: null }),
    ...(random() < 0.2 && { restDepth: between(random, 0, 0.1) }),
  };
}

function randomEnd(random: Random, diameter: number): EndOptions {
  const edge = between(random, 0.002, 0.02);
  switch (pick(random, ['flat', 'bevel', 'radius', 'dome', 'cone', 'cup', 'sphere'])) {
    case 'flat':
      return { kind: 'flat' };
    case 'bevel':
      return { kind: 'bevel', width: edge, angleDeg: between(random, 15, 75) };
    case 'radius':
      return { kind: 'radius', radius: edge };
    case 'dome':
      return random() < 0.5 ? { kind: 'dome' } : { kind: 'dome', radius: between(random, 0.06, 0.5) };
    case 'cone':
      return {
        kind: 'cone',
        tipFlatDiameter: between(random, 0, diameter),
        includedAngleDeg: between(random, 40, 160),
      };
    case 'cup':
      return {
        kind: 'cup',
        mouthDiameter: between(random, 0.01, diameter),
        includedAngleDeg: between(random, 60, 150),
      };
    case 'sphere':
      return { kind: 'sphere' };
  }
}

function giveMouth(random: Random, chamber: Chamber): void {
  const kind = pick(random, ['sharp', 'sharp', 'deburred along', 'countersunk'] as const);
  const size = kind === 'sharp' ? {} : { size: statedInches(between(random, 0.001, 0.012)) };
  for (const hole of chamber.holes) hole.outerMouth = { kind, ...size, basis: 'seen' };
}

/** A part is missing, there twice, or upside down. */
function spoilStack(random: Random, job: Job): void {
  const stack = job.plans[0]?.stacks[0];
  const at = Math.floor(random() * (stack?.items.length ?? 0));
  const item = stack?.items[at];
  if (stack === undefined || item === undefined) return;
  delete stack.rest;
  job.groups = [];
  const others = { missing: [], twice: [item, item], turned: [{ ...item, flipped: true as const }] };
  stack.items.splice(at, 1, ...others[pick(random, ['missing', 'twice', 'turned'])]);
}

/** A length that nobody means: nothing, less than nothing, far too much. */
function spoilLength(random: Random, job: Job): void {
  const lengths: LengthValue[] = [];
  const gather = (node: unknown): void => {
    if (typeof node !== 'object' || node === null) return;
    if ('readings' in node && 'basis' in node) {
      const value = node as LengthValue;
      if (value.readings[0]?.unit === 'in') lengths.push(value);
    } else Object.values(node).forEach(gather);
  };
  gather([job.cylinders, job.keys, job.seatings, job.parts]);
  const length = lengths[Math.floor(random() * lengths.length)];
  const value = pick(random, [0, -0.1, 1e-5, 3, 30, -30]);
  if (length !== undefined) length.readings = inches(value).readings;
}
