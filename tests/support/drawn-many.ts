/** Two cylinders or three, two keys or three, one chamber or two each, and a bag of a few pins: small enough to try every way. */
import type { ManyAsk } from '../../src/model/matching/match-many.ts';
import type { Job } from '../../src/model/schema/job-schema.ts';
import { loose } from './bag-job.ts';
import { changed } from './job-builder.ts';
import { manyJob } from './many-job.ts';
import { seededRandom } from './random-job.ts';
import { inchesToMm } from './values.ts';

export type SmallMany = { readonly job: Job; readonly ask: ManyAsk; readonly eachKeyOnce: boolean };

/** Draws one. Ids as in many-job.ts; the loose pins fit one chamber or another, or nearly. */
export function smallManyJob(seed: number): SmallMany {
  const random = seededRandom(seed);
  const upTo = (most: number) => Math.floor(random() * (most + 1));
  const size = { keys: 2 + upTo(1), cylinders: 2 + upTo(1), chambers: 1 + upTo(1) };
  const job = changed(manyJob({ ...size, parts: 0, seed }), (copy) => {
    for (const part of copy.parts) if (part.id.includes('bottom-pin')) part.quantity = upTo(4) === 0 ? 1 : 0;
    const wanted = copy.keys.flatMap(({ cuts }) =>
      cuts.map(({ rootDepth }) => 0.432 - (rootDepth?.readings[0]?.value ?? 6.35) / 25.4),
    );
    for (let i = 0; i < 5 + upTo(4); i++) {
      const length =
        (wanted[upTo(wanted.length - 1)] ?? 0.17) + [0, 0, 0.001, -0.001, -0.002, 0.004, 0.008][upTo(6)]!;
      const quantity = 1 + (upTo(5) === 0 ? 1 : 0);
      copy.parts.push(loose(`loose-${i + 1}`, { length: Math.round(length * 1e4) / 1e4, quantity }));
    }
    if (upTo(3) === 0) copy.plans[0]!.stacks[0]!.locked = true;
    if (upTo(3) === 0) copy.plans[1]!.stacks[0]!.items[0] = { part: 'c1-bottom-pin-1' };
    if (upTo(4) === 0) copy.plans.push({ ...structuredClone(copy.plans[0]!), id: 'found', kind: 'as found' });
    if (upTo(4) === 0) copy.plans.push({ ...structuredClone(copy.plans[0]!), id: 'built', kind: 'as built' });
  });
  const ask = {
    cylinders: job.cylinders.map(({ id }) => ({ cylinder: id, plan: id.replace('cylinder', 'plan') })),
    keys: job.keys.map(({ id }) => id),
    mostFiled: upTo(2) === 0 ? inchesToMm(0.01) : null,
  };
  return { job, ask, eachKeyOnce: upTo(2) === 0 };
}
