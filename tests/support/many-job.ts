/**
 * A job with many keys, cylinders and loose parts, made from a seed: cylinders of one size whose keys all go into all of
 * them, and a bag of pins whose lengths, diameters and ends are drawn at random. Invented sizes, in inches.
 */
import type { Job } from '../../src/model/schema/job-schema.ts';
import type { Part } from '../../src/model/schema/parts-schema.ts';
import { buildJob, joinJobs } from './job-builder.ts';
import { seededRandom } from './random-job.ts';
import { endForm, type EndOptions, inches } from './values.ts';

export type ManyOptions = {
  readonly keys: number;
  readonly cylinders: number;
  readonly chambers: number;
  readonly parts: number;
  readonly seed: number;
};

const TOPS: readonly EndOptions[] = [
  { kind: 'dome' },
  { kind: 'flat' },
  { kind: 'bevel', width: 0.012, angleDeg: 45 },
  { kind: 'radius', radius: 0.01 },
];
const FEET: readonly EndOptions[] = [
  { kind: 'cone', tipFlatDiameter: 0.03, includedAngleDeg: 90 },
  { kind: 'cone', tipFlatDiameter: 0.02, includedAngleDeg: 100 },
];

/** Ids of the first cylinder, key and plan: c1-cylinder, c1-key, c1-plan; and so on. Loose parts: loose-1 … */
export function manyJob({ keys, cylinders, chambers, parts, seed }: ManyOptions): Job {
  const random = seededRandom(seed);
  const drawn = <T>(list: readonly T[]): T => list[Math.floor(random() * list.length)] ?? list[0]!;
  const jobs = Array.from({ length: Math.max(keys, cylinders) }, (_, i) =>
    buildJob({
      prefix: `c${i + 1}-`,
      plugDiameter: 0.51 + 0.0005 * Math.floor(random() * 9),
      clearance: drawn([0.003, 0.004, 0.005]),
      tip: { position: 0.4 + 0.16 * chambers, noseHeight: 0.06, rampDeg: 45 },
      chambers: Array.from({ length: chambers }, () => ({
        rootDepth: Math.round((0.2 + 0.11 * random()) * 2000) / 2000,
      })),
    }),
  );
  const [first, ...others] = jobs;
  const joined = joinJobs(first!, ...others);
  return {
    ...joined,
    cylinders: joined.cylinders.slice(0, cylinders),
    keys: joined.keys.slice(0, keys),
    // every key has the same metal under it in every plug
    seatings: joined.cylinders
      .slice(0, cylinders)
      .flatMap((cylinder) =>
        joined.keys
          .slice(0, keys)
          .map((key) => ({ ...first!.seatings[0]!, cylinder: cylinder.id, key: key.id })),
      ),
    plans: joined.plans.slice(0, cylinders),
    parts: [
      ...joined.parts,
      ...Array.from(
        { length: parts },
        (_, i): Part => ({
          id: `loose-${i + 1}`,
          label: `L${String(i + 1).padStart(5, '0')}`,
          kind: 'pin',
          quantity: 1,
          original: false,
          diameter: inches(drawn([0.1145, 0.115, 0.1155, 0.116])),
          length: inches(Math.round((0.1 + 0.15 * random()) * 2000) / 2000),
          ends: [endForm(drawn(FEET)), endForm(drawn(TOPS))],
          condition: drawn(['good', 'fair', 'poor']),
        }),
      ),
    ],
  };
}
