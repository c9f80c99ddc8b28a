/** Random valid jobs and random edits of jobs, for property tests. */
import * as fc from 'fast-check';
import type { Job } from '../../src/model/schema/job-schema.ts';
import { buildJob, changed, type ChamberOptions } from './job-builder.ts';
import { inches } from './values.ts';

const length = (least: number, most: number) =>
  fc.integer({ min: Math.round(least * 1e4), max: Math.round(most * 1e4) }).map((tenths) => tenths / 1e4);

const chamber: fc.Arbitrary<ChamberOptions> = fc.record(
  {
    rootDepth: length(0.2, 0.32),
    ball: fc.constantFrom(null, 0.109),
    bottomPin: length(0.05, 0.2),
    masterPins: fc.array(length(0.02, 0.06), { maxLength: 2 }),
    driver: length(0.15, 0.25),
    restDepth: length(0, 0.1),
  },
  { requiredKeys: [] },
);

/** A valid job of one to seven chambers, with a title and notes of any characters. */
export const anyJob: fc.Arbitrary<Job> = fc
  .record({
    title: fc.string({ unit: 'binary', maxLength: 60 }),
    chambers: fc.array(chamber, { minLength: 1, maxLength: 7 }),
    plugDiameter: length(0.4, 0.8),
    instrumentError: fc.constantFrom('none' as const, 'default' as const),
    hasSleeve: fc.boolean(),
    notes: fc.dictionary(fc.string({ maxLength: 12 }), fc.string({ maxLength: 40 }), { maxKeys: 4 }),
  })
  .map(({ hasSleeve, notes, ...options }) => {
    const sleeve = hasSleeve
      ? { sleeve: { outerDiameter: options.plugDiameter + 0.12, clearance: 0.003 } }
      : {};
    return changed(buildJob({ ...options, ...sleeve }), (job) => {
      job.note.shared = Object.fromEntries(Object.entries(notes).filter(([name]) => !(name in {})));
    });
  });

/** A change of a job that makes a new one and leaves the old one alone. */
export type RandomEdit = { readonly name: string; readonly change: (job: Job) => Job };

export const anyEdit: fc.Arbitrary<RandomEdit> = fc.oneof(
  fc.string({ maxLength: 20 }).map((title) => ({ name: 'Title', change: (job: Job) => ({ ...job, title }) })),
  fc.record({ at: fc.nat(30), value: length(0.05, 0.4) }).map(({ at, value }) => ({
    name: 'Length of a part',
    change: (job: Job) => ({
      ...job,
      parts: job.parts.map((part, i) =>
        i === at % job.parts.length ? { ...part, length: inches(value) } : part,
      ),
    }),
  })),
  // A careless edit: copies everything, though little changes or nothing.
  fc.constant({ name: 'Copy', change: (job: Job) => structuredClone(job) }),
  fc.constant({
    name: 'Order of chambers',
    change: (job: Job) => changed(job, (copy) => void copy.cylinders[0]?.chambers.reverse()),
  }),
);
