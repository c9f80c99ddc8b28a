/**
 * Edits of a driver's waist: the narrowed middle of a spool, the grooves of a serrated one, the flare of a mushroom. Each
 * gives a new job. mm, from the lower end of the part as it stands when not turned over.
 */
import { lengthOf } from '../measured/part-ends.ts';
import type { Job } from '../schema/job-schema.ts';
import type { Id, LengthValue } from '../schema/leaf.ts';
import type { Part, Waist } from '../schema/parts-schema.ts';
import { type JobUnit, MM_PER_INCH } from '../units/length-unit.ts';
import { withOptional } from './change.ts';
import { changePart } from './edit-stack.ts';
import { assumedValue } from './values.ts';

export type WaistSize = 'from' | 'length' | 'diameter';

/**
 * What a waist usually is, in shares of the driver's length or of what it is across, and from where to where it may be.
 * Common practice, no source.
 */
const USUAL_SHARE: Readonly<Record<WaistSize, readonly [usual: number, from: number, to: number]>> = {
  from: [0.25, 0.1, 0.5],
  length: [0.5, 0.2, 0.7],
  diameter: [0.7, 0.5, 0.9],
};

/** For a driver that nobody measured. mm. */
const UNKNOWN = { length: 5.1, diameter: 2.92 };

/** Sets what kind of driver it is; its sizes are assumed until somebody measures them. Null: a plain one. */
export function setWaistKind(job: Job, part: Id, kind: Waist['kind'] | null): Job {
  const { unit } = job.settings;
  return changePart(job, part, (each) => {
    if (kind === null) return withOptional(each, 'waist', undefined);
    const before = each.waist;
    const size = (name: WaistSize) => before?.[name] ?? usualSize(each, name, unit);
    return {
      ...each,
      waist: { kind, from: size('from'), length: size('length'), diameter: size('diameter') },
    };
  });
}

/** Sets one size of a waist; undefined goes back to the usual one. */
export function setWaistSize(job: Job, part: Id, name: WaistSize, value: LengthValue | undefined): Job {
  const { unit } = job.settings;
  return changePart(job, part, (each) =>
    each.waist === undefined
      ? each
      : { ...each, waist: { ...each.waist, [name]: value ?? usualSize(each, name, unit) } },
  );
}

function usualSize(part: Part, name: WaistSize, unit: JobUnit): LengthValue {
  const whole =
    name === 'diameter' ? lengthOf(part.diameter, UNKNOWN.diameter) : lengthOf(part.length, UNKNOWN.length);
  const written = (share: number) =>
    ((share * whole) / (unit === 'in' ? MM_PER_INCH : 1)).toFixed(unit === 'in' ? 3 : 2);
  const [usual, from, to] = USUAL_SHARE[name];
  return assumedValue([written(usual), written(from), written(to)], unit);
}
