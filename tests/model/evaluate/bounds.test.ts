/**
 * What was felt and tried at the bench, against trying every height that the key could call for: the bounds are the heights with
 * which everything that was felt and tried could have come out as it did. Heights mm.
 */
import { describe, expect, test } from 'vitest';
import { boundsOnNeeded } from '../../../src/model/evaluate/bounds.ts';
import { layOut } from '../../../src/model/measured/selection.ts';
import type { Job } from '../../../src/model/schema/job-schema.ts';
import type { Item } from '../../../src/model/schema/key-schema.ts';
import { buildJob, changed, type JobOptions } from '../../support/job-builder.ts';
import { seededRandom } from '../../support/random-job.ts';
import { SELECTION } from '../../support/small-job.ts';
import { inches } from '../../support/values.ts';

const WINDOW = { lowest: -0.2, highest: 0.1 };
/** mm. What a thumb feels (.001 in). Common practice, no source. */
const FELT_MM = 0.0254;
const CHAMBER = 'chamber-1';

/** Pins of so many inches, named a, b, c …, that lie on the bench. */
function jobWith(lengths: readonly number[], options: JobOptions = {}): Job {
  return changed(buildJob({ chambers: 2, ...options }), (job) => {
    lengths.forEach((length, i) => {
      const id = String.fromCharCode(97 + i);
      job.parts.push({ ...job.parts[0]!, id, label: id, length: inches(length) });
    });
  });
}

type Try = { readonly items: readonly string[]; readonly turned: boolean; readonly chamber?: string };

function tried(job: Job, tries: readonly Try[], key = 'key', plan = 'plan'): Job {
  return changed(job, ({ benchResults }) => {
    for (const { items, turned, chamber = CHAMBER } of tries)
      benchResults.push({ plan, key, chamber, turned, at: '', items: items.map(itemOf) });
  });
}

const itemOf = (part: string): Item => ({ part });

function felt(job: Job, part: string, is: 'above' | 'level' | 'below', chamber = CHAMBER): Job {
  return changed(job, ({ seatings }) => void seatings[0]!.felt.push({ chamber, items: [{ part }], is }));
}

const boundsOf = (job: Job) => boundsOnNeeded(layOut(job, SELECTION), CHAMBER, WINDOW, 6.5, 1.52);

describe('bounds on the height that a chamber calls for', () => {
  test('are the heights that fit everything felt and tried', () => {
    const random = seededRandom(18);
    let bounded = 0;
    for (let round = 0; round < 60; round++) {
      const needed = 4 + random();
      const mm = Array.from({ length: 3 }, () => Math.round((needed - 0.4 + 0.8 * random()) * 100) / 100);
      const stacks = mm.map((_, i) => String.fromCharCode(97 + i));
      const clears = (height: number, n: number, hasDriver: boolean) =>
        height - n <= WINDOW.highest && (!hasDriver || height - n >= WINDOW.lowest);
      const feels = (height: number, n: number) =>
        height - n > FELT_MM ? 'above' : height - n < -FELT_MM ? 'below' : 'level';
      let job = jobWith(mm.map((height) => height / 25.4));
      const isFelt = stacks.map(() => random() < 0.4);
      stacks.forEach((stack, i) => {
        job = tried(job, [
          { items: [stack], turned: clears(mm[i]!, needed, false) },
          { items: [stack, 'driver-1'], turned: clears(mm[i]!, needed, true) },
        ]);
        if (isFelt[i] === true) job = felt(job, stack, feels(mm[i]!, needed));
      });
      const fits = (n: number) =>
        stacks.every(
          (_, i) =>
            clears(mm[i]!, n, false) === clears(mm[i]!, needed, false) &&
            clears(mm[i]!, n, true) === clears(mm[i]!, needed, true) &&
            // what is felt above may still be nearly level: the thumb is not surer than its step
            (isFelt[i] !== true || mayFeel(mm[i]! - n, feels(mm[i]!, needed))),
        );
      const { least, most } = boundsOf(job);
      const step = 0.002;
      const all = Array.from({ length: 1200 }, (_, i) => 3.4 + i * step).filter(fits);
      expect(least, `round ${round}`).toBeLessThanOrEqual(needed + 1e-9);
      expect(most, `round ${round}`).toBeGreaterThanOrEqual(needed - 1e-9);
      if (all.length === 0) continue;
      expect(Math.max(least, 3.4), `round ${round}`).toBeGreaterThan(all[0]! - step - 1e-9);
      expect(Math.max(least, 3.4), `round ${round}`).toBeLessThan(all[0]! + 1e-9);
      expect(Math.min(most, 5.798), `round ${round}`).toBeLessThan(all.at(-1)! + step + 1e-9);
      expect(Math.min(most, 5.798), `round ${round}`).toBeGreaterThan(all.at(-1)! - 1e-9);
      if (Number.isFinite(least) && Number.isFinite(most)) bounded++;
    }
    expect(bounded).toBeGreaterThan(30);
  });

  const mayFeel = (off: number, is: 'above' | 'level' | 'below') =>
    is === 'above' ? off >= -FELT_MM : is === 'below' ? off <= FELT_MM : Math.abs(off) <= FELT_MM;

  const open = { least: -Infinity, most: Infinity };

  test('come from this chamber, this key and this cylinder only', () => {
    const job = jobWith([0.18]);
    const turned = [{ items: ['a'], turned: true }];
    expect(boundsOf(tried(job, turned)).least).toBeCloseTo(0.18 * 25.4 - WINDOW.highest, 9);
    expect(boundsOf(tried(job, [{ ...turned[0]!, chamber: 'chamber-2' }]))).toEqual(open);
    expect(boundsOf(felt(job, 'a', 'level', 'chamber-2'))).toEqual(open);
    const others = changed(job, (copy) => {
      copy.keys.push({ ...copy.keys[0]!, id: 'other-key' });
      copy.cylinders.push({ ...copy.cylinders[0]!, id: 'other-cylinder' });
      copy.plans.push({ ...copy.plans[0]!, id: 'other-plan', cylinder: 'other-cylinder' });
    });
    expect(boundsOf(tried(others, turned, 'other-key'))).toEqual(open);
    expect(boundsOf(tried(others, turned, 'key', 'other-plan'))).toEqual(open);
  });

  test('take a whole cylinder that turned for each of its chambers, and nothing from one that did not', () => {
    const job = jobWith([]);
    const height = job.parts.find(({ id }) => id === 'bottom-pin-1')!.length!.readings[0]!.value;
    const all = (turned: boolean) => boundsOf(tried(job, [{ items: [], chamber: 'all', turned }]));
    expect(all(true)).toEqual({
      least: expect.closeTo(height - WINDOW.highest, 9) as number,
      most: expect.closeTo(height - WINDOW.lowest, 9) as number,
    });
    expect(all(false)).toEqual(open);
  });

  test('take nothing from a turn that another split or another line may have allowed', () => {
    const job = jobWith([0.18, 0.05]);
    expect(boundsOf(tried(job, [{ items: ['a', 'b', 'driver-1'], turned: true }]))).toEqual(open);
    const sleeved = jobWith([0.18], { sleeve: { outerDiameter: 0.63, clearance: 0.003 } });
    expect(boundsOf(tried(sleeved, [{ items: ['a', 'driver-1'], turned: true }]))).toEqual(open);
    expect(boundsOf(tried(sleeved, [{ items: ['a'], turned: true }])).least).toBeCloseTo(4.472, 9);
  });

  test('are not moved by a driver that stopped the turn, unless the same stack turned without it', () => {
    const job = jobWith([0.18, 0.19]);
    const stopped = { items: ['a', 'driver-1'], turned: false };
    expect(boundsOf(tried(job, [stopped]))).toEqual(open);
    const another = boundsOf(tried(job, [stopped, { items: ['b'], turned: true }]));
    expect(another.least).toBeCloseTo(0.19 * 25.4 - WINDOW.highest, 9);
    const same = boundsOf(tried(job, [stopped, { items: ['a'], turned: true }]));
    expect(same.least).toBeCloseTo(0.18 * 25.4 - WINDOW.lowest, 9);
  });

  test('take nothing from parts without a height', () => {
    const job = changed(jobWith([0.18]), ({ parts }) => {
      delete parts.find(({ id }) => id === 'a')!.length;
    });
    expect(boundsOf(felt(tried(job, [{ items: ['a'], turned: true }]), 'a', 'above'))).toEqual(open);
  });
});
