/**
 * What is chosen for two keys at once, kept as text: for each drawn job what the keys call for, the bag, the stacks and what is said.
 * That both keys turn what is chosen is held in two-keys.test.ts, by evaluating the plan.
 */
import { describe, test } from 'vitest';
import { matchTwoKeys, type TwoKeysMatch } from '../../../src/model/matching/two-keys.ts';
import type { Job } from '../../../src/model/schema/job-schema.ts';
import type { Part } from '../../../src/model/schema/parts-schema.ts';
import { asText } from '../../support/as-text.ts';
import { loose } from '../../support/bag-job.ts';
import { expectGolden } from '../../support/golden.ts';
import { buildJob, changed } from '../../support/job-builder.ts';
import { seededRandom } from '../../support/random-job.ts';
import { type EndOptions, inches, statedInches } from '../../support/values.ts';

type Random = () => number;

const pick = <const T>(random: Random, list: readonly [T, ...T[]]): T =>
  list[Math.floor(random() * list.length)] ?? list[0];

/** How far the second key calls for another height, and how far a part lies off. Inches. */
const APART = [0, 0, 0.001, 0.008, 0.03, -0.03, 0.045] as const;
/** Plug less metal under the key: less the root depth, what a chamber calls for. The outer line stands so much higher. Inches. */
const PLUG_LESS_FLOOR = 0.432;
const SLEEVE = 0.0655;
const OFF = [0, 0, 0.0005, -0.0005, -0.001, 0.001, -0.002, 0.006] as const;
const TOPS: readonly [EndOptions, ...EndOptions[]] = [
  { kind: 'dome' },
  { kind: 'dome' },
  { kind: 'bevel', width: 0.012, angleDeg: 45 },
  { kind: 'flat' },
];
const LOWER: readonly [EndOptions, ...EndOptions[]] = [
  { kind: 'flat' },
  { kind: 'flat' },
  { kind: 'bevel', width: 0.005, angleDeg: 45 },
  { kind: 'bevel', width: 0.005, angleDeg: 45 },
  { kind: 'dome' },
  { kind: 'sphere' },
  { kind: 'cone', tipFlatDiameter: 0.03, includedAngleDeg: 90 },
];

describe('what is chosen for two keys', () => {
  test.each(Array.from({ length: 50 }, (_, i) => i + 1))('drawn at random, %i', (seed) => {
    const { job, line, otherLine } = drawnJob(seed);
    const match = matchTwoKeys(job, {
      cylinder: 'cylinder',
      plan: 'plan',
      wants: [
        { key: 'key', line },
        { key: 'other-key', line: otherLine },
      ],
    });
    expectGolden(
      `two-key-choices/${seed}.txt`,
      asText({ ...shown(job), lines: `${line}, ${otherLine}`, ...written(match) }),
    );
  });
});

function drawnJob(seed: number): { job: Job; line: string; otherLine: string } {
  const random = seededRandom(seed);
  const hasBalls = random() < 0.25;
  const hasSleeve = random() < 0.2;
  const lines = hasSleeve ? (['inner-line', 'outer-line'] as const) : (['line'] as const);
  const [line, otherLine] = [pick(random, lines), pick(random, lines)];
  const higher = (which: string) => (which === 'outer-line' ? SLEEVE : 0);
  const wanted = Array.from({ length: pick(random, [1, 1, 2]) }, () => {
    const rootDepth = Math.round(220 + random() * 60) / 1000;
    return { rootDepth, other: rootDepth - pick(random, APART) };
  });
  const base = buildJob({
    unit: pick(random, ['in', 'in', 'mm']),
    clearance: pick(random, [0.002, 0.003, 0.005]),
    ...(hasSleeve && { sleeve: { outerDiameter: 0.64, clearance: 0.004 } }),
    chambers: wanted.map(({ rootDepth }) => ({
      rootDepth,
      ...(hasBalls && { ball: 0.115 }),
      ...(random() < 0.08 && { driver: null }),
    })),
  });
  const job = changed(base, (copy) => {
    const other = structuredClone(copy.keys[0]!);
    other.id = 'other-key';
    for (const [i, cut] of other.cuts.entries()) cut.rootDepth = statedInches(wanted[i]!.other);
    copy.keys.push(other);
    copy.seatings.push({ ...structuredClone(copy.seatings[0]!), key: 'other-key' });
    for (const part of copy.parts) if (part.id.startsWith('bottom')) part.quantity = random() < 0.3 ? 1 : 0;
    const heights = wanted.map((each) => [
      PLUG_LESS_FLOOR - each.rootDepth + higher(line),
      PLUG_LESS_FLOOR - each.other + higher(otherLine),
    ]);
    copy.parts.push(...bagFor(random, heights, hasBalls));
    if (random() < 0.1) copy.plans[0]!.stacks[0]!.locked = true;
    if (random() < 0.08) delete copy.keys[1]!.cuts[0]!.rootDepth;
    if (random() < 0.1) copy.settings.thresholds = { thinnestMasterPin: inches(0.04) };
  });
  return { job, line, otherLine };
}

function bagFor(random: Random, heights: readonly (readonly number[])[], hasBalls: boolean): Part[] {
  const length = (value: number) => Math.round((value + pick(random, OFF)) * 1e5) / 1e5;
  const balls = hasBalls
    ? [loose('ball1', { kind: 'ball', diameter: 0.115, quantity: pick(random, [1, 9]) })]
    : [];
  const pins = heights.flatMap((both, i) => {
    const least = Math.min(...both) - (hasBalls ? 0.115 : 0);
    const apart = Math.max(...both) - Math.min(...both);
    return [
      ...['a', 'b'].map((name) =>
        loose(`p${i + 1}${name}`, {
          length: length(least),
          top: pick(random, TOPS),
          quantity: pick(random, [1, 1, 2]),
          ...(hasBalls && { foot: { kind: 'flat' } }),
          ...(random() < 0.3 && { condition: pick(random, ['good', 'poor']) }),
        }),
      ),
      ...['a', 'b'].map((name) =>
        loose(`m${i + 1}${name}`, {
          length: Math.max(0.01, length(apart)),
          foot: pick(random, LOWER),
          top: pick(random, TOPS),
          diameter: pick(random, [0.116, 0.116, 0.116, 0.116, 0.116, 0.122, 0.1]),
          quantity: pick(random, [1, 1, 1, 0]),
        }),
      ),
    ];
  });
  return [...balls, ...pins];
}

function shown(job: Job) {
  const bag = job.parts.filter(({ id }) => /^(ball|bottom|p|m)/u.test(id));
  return {
    callsFor: job.keys.map(({ id, cuts }) => ({
      key: id,
      height: cuts
        .map(({ rootDepth }) => sayMm(PLUG_LESS_FLOOR * 25.4 - (rootDepth?.readings[0]?.value ?? NaN)))
        .join(' '),
    })),
    bag: bag.map(({ id, quantity, length, diameter, ends }) => ({
      id,
      quantity,
      length: length === undefined ? '' : sayMm(length.readings[0]!.value),
      diameter: diameter?.readings[0]?.value,
      ends: ends?.map((end) => end.kind).join(', ') ?? '',
    })),
  };
}

const sayMm = (mm: number) => mm.toFixed(4);

function written({ chambers, score, bound, ...match }: TwoKeysMatch) {
  const { filled, smallestToSpare, squares, ties } = score;
  return {
    ...match,
    whole: `${filled} filled, ${smallestToSpare} to spare, squares ${squares}, ties ${ties.join(' ')}`,
    bound: match.isProved ? 'as chosen' : bound,
    chambers: chambers.map(({ items, ...each }) => ({
      ...each,
      items: items?.map(({ part }) => part).join(' + ') ?? 'nothing',
    })),
  };
}
