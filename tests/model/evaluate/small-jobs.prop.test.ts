/**
 * What holds for any valid job, over a hundred thousand small random ones: a minute and a half of one core. RANDOM_JOBS=1000000
 * asks for a million (a quarter of an hour). The mirror image, more play and a wider chamber are tried on every fiftieth.
 */
import { describe, expect, test } from 'vitest';
import { evaluate } from '../../../src/model/evaluate/evaluate.ts';
import type { Evaluation, SplitResult } from '../../../src/model/evaluate/evaluation.ts';
import type { Job } from '../../../src/model/schema/job-schema.ts';
import type { LengthValue } from '../../../src/model/schema/leaf.ts';
import type { EndForm } from '../../../src/model/schema/parts-schema.ts';
import { parseJob } from '../../../src/model/schema/parse-job.ts';
import { changed } from '../../support/job-builder.ts';
import { SELECTION, smallJob } from '../../support/small-job.ts';
import { endForm } from '../../support/values.ts';

const JOBS = Number(process.env['RANDOM_JOBS'] ?? 100_000);
const SHARE = 50;
const PIECES = 10;

/** Tells whether everything in a result that is a number is one. */
function isSound(node: unknown): boolean {
  if (typeof node === 'number') return Number.isFinite(node);
  if (typeof node === 'string') return !node.includes('NaN') && !node.includes('Infinity');
  if (typeof node !== 'object' || node === null) return true;
  for (const name in node) if (!isSound((node as Record<string, unknown>)[name])) return false;
  return true;
}

const of = (job: Job): Evaluation => evaluate(job, SELECTION);
const splitsOf = ({ chambers }: Evaluation): readonly SplitResult[] =>
  chambers.flatMap(({ splits }) => splits);

/** A split by what it lies between and at which line: the two evaluations list the same ones. */
const nameOf = ({ below, above, line }: SplitResult) => `${below} ${above ?? ''} ${line}`;

const numbersOf = ({ offset, margin, window: { lowest, noTouch, highest } }: SplitResult) => [
  offset,
  margin,
  lowest,
  noTouch,
  highest,
];

/** Each split of one evaluation beside the same one of another. */
function pairs(one: Evaluation, other: Evaluation): [SplitResult, SplitResult][] {
  const others = new Map(splitsOf(other).map((split) => [nameOf(split), split]));
  return splitsOf(one).flatMap((split) => {
    const same = others.get(nameOf(split));
    return same === undefined ? [] : [[split, same]];
  });
}

/** Adds to lengths that were read, mm. */
function add(value: LengthValue | undefined, more: number): void {
  for (const reading of value?.readings ?? []) reading.value += more;
}

/**
 * Ends that an edge can lift all the way: pins domed to the inner line, drivers flat or broken a little, mouths that are no countersink.
 * A steeper end meets the edge of a wider hole more squarely, and a countersink of a fixed depth ends higher up on it. At the line
 * around a sleeve it need not hold: that line turns further before a wider hole's edge lifts the driver, and a top domed to the
 * smaller plug has gone down meanwhile.
 */
function climbable(job: Job, seed: number): Job {
  const drivers: EndForm[] = [
    endForm({ kind: 'flat' }),
    endForm({ kind: 'bevel', width: 0.005, angleDeg: 40 }),
  ];
  return changed(job, (copy) => {
    for (const part of copy.parts) {
      const end = part.id.startsWith('driver') ? drivers[seed % 2]! : endForm({ kind: 'dome' });
      if (part.kind === 'pin') part.ends = [end, end];
    }
    for (const { holes } of copy.cylinders[0]!.chambers)
      for (const { outerMouth } of holes) if (outerMouth?.kind === 'countersunk') outerMouth.kind = 'sharp';
  });
}

/** A hole is wider in the plug and in the sleeve; the parts in it are as thick as before. */
function widened(job: Job, more: number): Job {
  return changed(job, (copy) => {
    for (const { holes } of copy.cylinders[0]!.chambers)
      for (const hole of holes.slice(0, -1)) add(hole.diameter, more);
  });
}

/** Seen in a mirror that stands across the plug: what was in front is behind. */
function mirrored(job: Job): Job {
  return changed(job, (copy) => {
    const { chambers } = copy.cylinders[0]!;
    const places = chambers.map(({ position }) => position.readings[0]!.value);
    const sum = Math.min(...places) + Math.max(...places);
    for (const { position } of [...chambers, ...copy.keys[0]!.cuts])
      for (const reading of position.readings) reading.value = sum - reading.value;
  });
}

describe.each(Array.from({ length: PIECES }, (_, i) => i))('part %i of the random valid jobs', (piece) => {
  const seeds = Array.from({ length: Math.ceil(JOBS / PIECES) }, (_, i) => i * PIECES + piece + 1);
  const some = seeds.filter((_, i) => i % SHARE === 0);

  test('evaluates to finite numbers, windows that run upwards or never turn', () => {
    for (const seed of seeds) {
      const evaluation = of(smallJob(seed));
      if (!isSound(evaluation)) expect.unreachable(`seed ${seed}: a number that is none`);
      for (const { window, verdict, offset } of splitsOf(evaluation)) {
        if (window.lowest > window.highest && verdict !== 'never turns')
          expect.unreachable(`seed ${seed}: an empty window is called ${verdict}`);
        if (verdict === 'level' && offset > window.highest + 1e-9)
          expect.unreachable(`seed ${seed}: level above its window`);
      }
      for (const { useFrom, useTo } of evaluation.chambers)
        if (useFrom !== null && useTo !== null && useFrom > useTo)
          expect.unreachable(`seed ${seed}: use from ${useFrom} to ${useTo}`);
    }
  });

  test('is taken by the reader of files', () => {
    for (const seed of some) {
      const parsed = parseJob(JSON.parse(JSON.stringify(smallJob(seed))));
      if (parsed.type === 'error') expect.unreachable(`seed ${seed}: ${JSON.stringify(parsed.problems[0])}`);
    }
  });

  test('more play between plug and shell never lowers the highest', () => {
    let compared = 0;
    for (const seed of some) {
      const job = smallJob(seed);
      const more = (1 + (seed % 7)) * 0.02;
      const wider = changed(job, (copy) =>
        copy.cylinders[0]!.lines.forEach(({ clearance }) => add(clearance, more)),
      );
      for (const [split, loose] of pairs(of(job), of(wider))) {
        compared += 1;
        expect(loose.window.highest, `seed ${seed}`).toBeGreaterThanOrEqual(split.window.highest - 1e-9);
      }
    }
    expect(compared).toBeGreaterThanOrEqual(Math.floor(some.length / 2));
  });

  test('a wider chamber in the plug never raises the lowest', () => {
    let compared = 0;
    for (const seed of some) {
      const job = climbable(smallJob(seed, 0), seed);
      const inner = job.cylinders[0]!.lines[0]!.id;
      for (const [split, wide] of pairs(of(job), of(widened(job, (1 + (seed % 7)) * 0.02)))) {
        if (split.line !== inner) continue;
        compared += 1;
        expect(wide.window.lowest, `seed ${seed}`).toBeLessThanOrEqual(split.window.lowest + 1e-6);
      }
    }
    expect(compared).toBeGreaterThanOrEqual(Math.floor(some.length / 2));
  });

  test('the mirror image gives the same chambers', () => {
    for (const seed of some) {
      const job = smallJob(seed, 0);
      const [one, other] = [of(job), of(mirrored(job))];
      for (const chamber of one.chambers) {
        const image = other.chambers.find((each) => each.chamber === chamber.chamber);
        expect(image?.contactHeight ?? 0, `seed ${seed}`).toBeCloseTo(chamber.contactHeight ?? 0, 7);
        expect(image?.lowerStack ?? 0, `seed ${seed}`).toBeCloseTo(chamber.lowerStack ?? 0, 7);
        chamber.splits.forEach((split, i) => {
          const seen = image!.splits[i]!;
          numbersOf(split).forEach((number, at) => {
            expect(numbersOf(seen)[at], `seed ${seed}`).toBeCloseTo(number, 6);
          });
          expect(seen.verdict, `seed ${seed}`).toBe(split.verdict);
        });
      }
    }
  });
});
