/**
 * Jobs with a bag drawn from a seed: one to three chambers, and loose pins and balls about as long as the chambers call for, of all
 * diameters, ends, numbers of copies, origins and conditions; now and then something that is not measured or cannot be. Invented
 * sizes, in inches, until the job has them. Look at it with SELECTION of small-job.ts.
 */
import type { MatchAsk } from '../../src/model/matching/match.ts';
import type { Job } from '../../src/model/schema/job-schema.ts';
import type { Part } from '../../src/model/schema/parts-schema.ts';
import { loose, type LooseOptions } from './bag-job.ts';
import { buildJob, type ChamberOptions, changed } from './job-builder.ts';
import { seededRandom } from './random-job.ts';
import { type EndOptions, inches, inchesToMm, statedInches } from './values.ts';

type Random = () => number;

const pick = <const T>(random: Random, list: readonly [T, ...T[]]): T =>
  list[Math.floor(random() * list.length)] ?? list[0];

/** Plug less metal under the key: less the root depth, what a chamber calls for. */
const PLUG_LESS_FLOOR = 0.432;

/** How far a part lies off what its chamber calls for; a half thousandth is one step. */
const OFF = [
  0, 0, 0, 0.0001, 0.0005, -0.0005, 0.001, -0.001, -0.0015, -0.002, 0.002, 0.004, 0.009, -0.02,
] as const;
const BALLS = [0.109, 0.115] as const;
const TOPS: readonly [EndOptions, ...EndOptions[]] = [
  { kind: 'dome' },
  { kind: 'dome' },
  { kind: 'bevel', width: 0.012, angleDeg: 45 },
  { kind: 'radius', radius: 0.01 },
  { kind: 'flat' },
];
const FEET: readonly [EndOptions, ...EndOptions[]] = [
  { kind: 'cone', tipFlatDiameter: 0.03, includedAngleDeg: 90 },
  { kind: 'cone', tipFlatDiameter: 0.03, includedAngleDeg: 90 },
  { kind: 'cone', tipFlatDiameter: 0.02, includedAngleDeg: 100 },
  { kind: 'sphere' },
];
const DRIVERS: readonly [EndOptions, ...EndOptions[]] = [
  { kind: 'bevel', width: 0.005, angleDeg: 45 },
  { kind: 'dome' },
  { kind: 'flat' },
];
const UNDER_A_BALL: readonly [EndOptions, ...EndOptions[]] = [
  { kind: 'flat' },
  { kind: 'flat' },
  { kind: 'cup', mouthDiameter: 0.06, includedAngleDeg: 120 },
];

/** What is asked of the bag with it. */
export type DrawnBag = { readonly job: Job; readonly ask: MatchAsk };

/** Draws a job and what is asked: nothing filed, or some; a chamber locked now and then. */
export function drawnBag(seed: number): DrawnBag {
  const random = seededRandom(seed);
  const hasBalls = random() < 0.35;
  const depths = Array.from(
    { length: pick(random, [1, 1, 2, 2, 3]) },
    () => Math.round(200 + random() * 90) / 1000,
  );
  const base = buildJob({
    unit: pick(random, ['in', 'in', 'mm']),
    numbering: pick(random, ['bow', 'tip']),
    clearance: pick(random, [0.002, 0.003, 0.005]),
    lies: pick(random, ['away from drivers', 'centred']),
    driverEnd: pick(random, DRIVERS),
    ...(random() < 0.1 && { sleeve: { outerDiameter: 0.64, clearance: 0.004 } }),
    chambers: depths.map((rootDepth) => chamberOf(random, rootDepth, hasBalls)),
  });
  const job = changed(base, (copy) => {
    for (const part of copy.parts) {
      if (part.kind !== 'pin' || !part.id.startsWith('bottom')) continue;
      part.quantity = random() < 0.5 ? 0 : 1;
      if (random() < 0.3) part.original = false;
    }
    const bag = depths.flatMap((depth, i) =>
      Array.from({ length: pick(random, [2, 3, 4]) }, (_, k) =>
        loosePin(random, `p${i + 1}${'abcd'[k]}`, PLUG_LESS_FLOOR - depth, hasBalls),
      ),
    );
    const balls = hasBalls
      ? BALLS.map((diameter, i) =>
          loose(`ball${i + 1}`, { kind: 'ball', diameter, quantity: pick(random, [1, 2, 9]) }),
        )
      : random() < 0.2
        ? [loose('ball1', { kind: 'ball', diameter: 0.115 })]
        : [];
    copy.parts.push(...balls, ...bag);
    addOddThings(random, copy, bag);
  });
  const mostFiled = pick(random, [null, null, inchesToMm(0.002), inchesToMm(0.01)]);
  return { job, ask: { mostFiled, locked: random() < 0.15 ? ['chamber-1'] : [] } };
}

function chamberOf(random: Random, rootDepth: number, hasBall: boolean): ChamberOptions {
  const ball = hasBall ? pick(random, BALLS) : null;
  const reaching = PLUG_LESS_FLOOR - rootDepth - (ball ?? 0);
  const state = random();
  return {
    rootDepth,
    ball,
    bottomPin: Math.round((reaching + pick(random, OFF)) * 1e5) / 1e5,
    ...(state < 0.15 && { bottomPin: null, ball: null }),
    ...(state > 0.92 && { driver: null }),
    ...(state > 0.85 && state < 0.92 && { cutPosition: null }),
    ...(state > 0.15 && state < 0.22 && { masterPins: [0.03] }),
  };
}

function loosePin(random: Random, id: string, reaching: number, hasBalls: boolean): Part {
  const onBall = hasBalls && random() < 0.85;
  const more: LooseOptions = onBall ? { foot: pick(random, UNDER_A_BALL) } : { foot: pick(random, FEET) };
  const state = random();
  const part = loose(id, {
    ...more,
    length: Math.round((reaching - (onBall ? pick(random, BALLS) : 0) + pick(random, OFF)) * 1e5) / 1e5,
    diameter: pick(random, [0.116, 0.116, 0.116, 0.116, 0.1155, 0.122, 0.1]),
    top: pick(random, TOPS),
    quantity: pick(random, [1, 1, 1, 2, 0]),
    ...(random() < 0.5 && { condition: pick(random, ['good', 'fair', 'poor']) }),
    ...(random() < 0.2 && { from: pick(random, ['Cylinder', 'another']) }),
    ...(random() < 0.2 && { original: true }),
    ...(random() < 0.1 && { label: 'P1' }),
    ...(state < 0.05 && { length: null }),
    ...(state > 0.95 && { diameter: null }),
    ...(state > 0.92 && state < 0.95 && { length: 0 }),
  });
  const waist = { kind: 'spool' as const, from: inches(0.02), length: inches(0.05), diameter: inches(0.08) };
  return state > 0.05 && state < 0.09 ? { ...part, waist } : part;
}

/** What was felt, tried or measured in another way, and what else a chamber may be like. */
function addOddThings(random: Random, job: Job, bag: readonly Part[]): void {
  const cylinder = job.cylinders[0]!;
  const seating = job.seatings[0]!;
  const stacks = job.plans[0]!.stacks;
  const items = structuredClone(stacks[0]!.items);
  const ball = job.parts.find(({ id }) => id === 'ball1');
  const pin = bag.find(({ length }) => length !== undefined);
  if (ball !== undefined && pin !== undefined && random() < 0.4) {
    const height = (pin.length!.readings[0]!.value + ball.diameter!.readings[0]!.value) / 25.4 - 0.001;
    job.groups.push({ id: 'pair', parts: [ball.id, pin.id], height: inches(Math.round(height * 1e5) / 1e5) });
  }
  if (random() < 0.15) stacks[0]!.locked = true;
  if (random() < 0.1) cylinder.keywayWidth = inches(pick(random, [0.1, 0.11]));
  if (random() < 0.1) cylinder.bodies[0]!.crestDrop = inches(0.002);
  if (random() < 0.15)
    for (const hole of cylinder.chambers[0]!.holes)
      hole.outerMouth = { kind: 'deburred along', size: statedInches(0.006), basis: 'seen' };
  if (random() < 0.1) delete job.keys[0]!.cuts[0]?.rootDepth;
  if (random() < 0.12)
    seating.felt.push({ chamber: 'chamber-1', items, is: pick(random, ['above', 'level', 'below']) });
  if (random() < 0.12)
    job.benchResults.push({
      plan: 'plan',
      key: 'key',
      chamber: 'chamber-1',
      items,
      turned: random() < 0.5,
      at: '',
    });
  if (random() < 0.12)
    seating.standsUpBy.push({ chamber: 'chamber-1', items, stack: inches(0.19), reading: inches(0.004) });
  if (random() < 0.12) seating.knownSets.push('plan');
  if (random() < 0.1)
    seating.pinnedRoutes['chamber-1'] = pick(random, ['subtraction', 'known set', 'stands up by']);
}
