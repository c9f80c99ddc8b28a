/** Plans for several keys in random cylinders, put in and evaluated; and one height for several windows against trying many. */
import { describe, expect, test } from 'vitest';
import { evaluate } from '../../../src/model/evaluate/evaluate.ts';
import { heightForAll, type WantedSplit } from '../../../src/model/keying/merge-splits.ts';
import { planKeys } from '../../../src/model/keying/plan-keys.ts';
import { putKeysPlan } from '../../../src/model/keying/put-plan.ts';
import { buildJob } from '../../support/job-builder.ts';
import { withKey } from '../../support/keyed-job.ts';
import { seededRandom } from '../../support/random-job.ts';

const SEEDS = Array.from({ length: 10 }, (_, i) => i + 1);

describe('a plan put in and evaluated', () => {
  test('every key finds its split where it was planned, and turns its line', () => {
    let splits = 0;
    for (const seed of SEEDS) {
      const random = seededRandom(seed);
      const roots = () => Array.from({ length: 3 }, () => 0.2 + 0.0001 * Math.floor(random() * 900));
      const hasSleeve = random() < 0.5;
      const hasBall = random() < 0.5;
      const first = buildJob({
        bladeHeight: 0.34,
        rootFlat: 0.05 + 0.02 * random(),
        capDepth: 0.7,
        clearance: 0.002 + 0.003 * random(),
        ...(hasSleeve && { sleeve: { outerDiameter: 0.6 + 0.05 * random(), clearance: 0.003 } }),
        chambers: roots().map((rootDepth) => ({ rootDepth, ...(hasBall && { ball: 0.1 }) })),
      });
      const names = random() < 0.5 ? ['second'] : ['second', 'third'];
      const job = names.reduce((now, name) => withKey(now, name, roots()), first);
      const lines = hasSleeve ? ['inner-line', 'outer-line'] : ['line'];
      const wants = ['key', ...names].map((key, i) => ({ key, line: lines[i % lines.length]! }));
      const plan = planKeys(job, { cylinder: 'cylinder', plan: 'plan', wants });
      let count = 0;
      const put = putKeysPlan(job, plan, () => `new-${(count += 1)}`).job;
      for (const { key, line } of wants) {
        const result = evaluate(put, { cylinder: 'cylinder', key, plan: 'plan' });
        expect(result.lines.find((each) => each.line === line)?.verdict, `seed ${seed}, ${key}`).toBe(
          'turns',
        );
        for (const planned of plan.chambers) {
          const serves = planned.splits.flatMap((split) => split.serves).find((each) => each.key === key)!;
          const chamber = result.chambers.find((each) => each.chamber === planned.chamber)!;
          // as planned, but for what is rounded to a ten-thousandth of an inch
          const near = chamber.splits.find(
            (split) => split.line === line && Math.abs(split.offset - serves.offset) < 0.0026,
          );
          expect(near, `seed ${seed}, ${key}, chamber ${planned.number}`).toBeDefined();
          expect(near!.window.lowest).toBeCloseTo(serves.lowest, 9);
          expect(near!.window.highest).toBeCloseTo(serves.highest, 9);
          splits += 1;
        }
      }
    }
    expect(splits).toBeGreaterThan(60);
  });
});

test('one height for several windows is found exactly where trying many finds one', () => {
  let found = 0;
  for (let seed = 1; seed <= 400; seed++) {
    const random = seededRandom(seed);
    const wanted = Array.from(
      { length: 2 + Math.floor(random() * 2) },
      (): WantedSplit => ({
        level: Math.round(random() * 40) / 100,
        // never end to end: there rounding would decide
        lowest: -0.003 - Math.round(random() * 20) / 100,
        highest: 0.004 + Math.round(random() * 10) / 100,
      }),
    );
    const fits = (height: number) =>
      wanted.every(
        ({ level, lowest, highest }) => height >= level + lowest - 1e-9 && height <= level + highest + 1e-9,
      );
    const tried = Array.from({ length: 1001 }, (_, i) => (i - 400) / 1000).filter(fits);
    const height = heightForAll(wanted);
    expect(height !== null, `seed ${seed}`).toBe(tried.length > 0);
    if (height === null) continue;
    expect(fits(height), `seed ${seed}`).toBe(true);
    found += 1;
  }
  expect(found).toBeGreaterThan(50);
});
