/** Edits of a job in which everything is still assumed; see changes.golden.test.ts. */
import { addChamber, removeChamber } from '../../../src/model/edit/chamber-count.ts';
import { addCylinder } from '../../../src/model/edit/edit-cylinders.ts';
import { setPlugDiameter } from '../../../src/model/edit/edit-cylinder.ts';
import { addKey } from '../../../src/model/edit/edit-keys.ts';
import { addMasterPin } from '../../../src/model/edit/edit-master-pins.ts';
import { setKeyFoot } from '../../../src/model/edit/edit-shapes.ts';
import { addSleeve, sleeveDiameter } from '../../../src/model/edit/edit-sleeve.ts';
import { setPartLength } from '../../../src/model/edit/edit-stack.ts';
import { keepPlanAs } from '../../../src/model/edit/keep-plan.ts';
import { setKnownStack } from '../../../src/model/edit/known-set.ts';
import { newJob } from '../../../src/model/edit/new-job.ts';
import { spaceChambers } from '../../../src/model/edit/spacing.ts';
import {
  assumedAngle,
  assumedLike,
  assumedValue,
  measuredValue,
  movedValue,
  statedAngle,
  statedValue,
  withoutLastRepeat,
  withRepeat,
} from '../../../src/model/edit/values.ts';
import type { Job } from '../../../src/model/schema/job-schema.ts';
import type { LengthValue } from '../../../src/model/schema/leaf.ts';
import type { JobUnit } from '../../../src/model/units/length-unit.ts';
import type { Edits } from '../../support/edit-text.ts';
import { changed } from '../../support/job-builder.ts';
import { inches } from '../../support/values.ts';
import type { Bench } from './edit-support.ts';

/** A large plug; 15.5 mm is where they begin (usual-values.ts). */
const mm = (value: number) =>
  measuredValue({ mm: value, unit: 'mm', typed: String(value) }, { instrument: null, session: null });

/** The same with what only a second cylinder and a second key have, which must stay as they are. */
const withOthers = (job: Job, newId: () => string) =>
  addKey(addCylinder(job, 'Other', 1, newId).job, job.cylinders[0]!.id, 'Spare', newId).job;

export const begunEdits = (where: Bench['where']): Edits => ({
  'large plug': (job) => setPlugDiameter(job, where.cylinder, mm(16)),
  'plug as large as the large ones begin, and hardly less': (job) =>
    [15.5, 15.4999].map((size) => setPlugDiameter(job, where.cylinder, mm(size)).keys[0]?.bladeHeight),
  'large plug, what belongs to others stays': (job, newId) => {
    const others = withOthers(job, newId);
    const next = setPlugDiameter(others, where.cylinder, mm(16));
    return {
      'other cylinder stays': next.cylinders[1] === others.cylinders[1],
      'spare key stays': next.keys[1] === others.keys[1],
      'parts that stay': next.parts.filter((part, i) => part === others.parts[i]).length,
    };
  },
  'large plug where little is known': (job) => {
    const bare = changed(job, (copy) => {
      const [key] = copy.keys;
      for (const name of ['bladeHeight', 'bladeThickness', 'rootFlat', 'tip'] as const)
        Reflect.deleteProperty(key!, name);
      for (const chamber of copy.cylinders[0]!.chambers) {
        delete chamber.capDepth;
        for (const hole of chamber.holes) delete hole.diameter;
      }
      for (const part of copy.parts)
        for (const name of ['diameter', 'length', 'solid', 'free'] as const)
          Reflect.deleteProperty(part, name);
    });
    const next = setPlugDiameter(bare, where.cylinder, mm(16));
    return { key: next.keys[0], chamber: next.cylinders[0]!.chambers[0], parts: next.parts.slice(0, 4) };
  },
  'large plug where all is measured': (job) => {
    const read = JSON.parse(JSON.stringify(job).replaceAll('"basis":"assumed"', '"basis":"stated"')) as Job;
    const next = setPlugDiameter(read, where.cylinder, mm(16));
    return { key: next.keys[0], chamber: next.cylinders[0]!.chambers[0] };
  },
  'small again': (job) => {
    const large = setPlugDiameter(job, where.cylinder, mm(16));
    return setPlugDiameter(large, where.cylinder, undefined);
  },
  'one chamber more': (job, newId) => addChamber(job, where, newId),
  'one chamber more in a large one': (job, newId) =>
    addChamber(setPlugDiameter(job, where.cylinder, mm(16)), where, newId).parts.slice(-4),
  'one chamber less': (job) => removeChamber(job, where),
  'chambers laid out evenly': (job) => spaceChambers(job, where, { first: 0.3, spacing: 0.2 }),
  'a sleeve': (job, newId) => addSleeve(job, where.cylinder, newId),
  'a sleeve that nobody measured': (job, newId) => {
    const sized = setPlugDiameter(addSleeve(job, where.cylinder, newId), where.cylinder, mm(13));
    return sleeveDiameter(sized.cylinders[0]!);
  },
  'a master pin': (job, newId) =>
    addMasterPin(job, where.plan, job.cylinders[0]!.chambers[0]!.id, undefined, newId),
  'pointed pins': (job, newId) => setKeyFoot(job, where.plan, 'pointed pin', newId),
  'a known set': (job, newId) =>
    setKnownStack(job, where, job.cylinders[0]!.chambers[1]!.id, inches(0.33), newId),
  'kept as found': (job, newId) => keepPlanAs(job, where.plan, 'as found', newId),
  'a length taken away': (job) => setPartLength(job, job.parts[2]!.id, 'length', undefined),
  'a length that is not there taken away': (job) => setPartLength(job, job.parts[1]!.id, 'length', undefined),
  'a job with a title and an instrument of its own': (_, newId) => {
    const instrument = {
      label: 'Mine',
      kind: 'micrometer',
      resolutionMm: 0.001,
      maxPermissibleErrorMm: 0.002,
      repeatabilityMm: 0.001,
      source: 'maker',
    } as const;
    const { title, instruments, settings } = newJob({
      newId,
      unit: 'mm',
      chambers: 1,
      title: 'Mine',
      instrument,
    });
    return { title, instruments, inHand: settings.instrument };
  },
});

/** Values as every way of entering makes them. */
export function valuesIn(unit: JobUnit): Record<string, unknown> {
  const taken = { mm: 9.4, unit: 'mm', typed: '9.40' } as const;
  const hand = { instrument: 'caliper', session: 'morning' };
  const measured = measuredValue(taken, hand);
  const checks: Job['sessions'] = [];
  const checked = [{ id: 'morning', instrument: 'caliper', closedReading: inches(0.001), at: '' }];
  const assumed = assumedValue(['.2', '.1', '.4'], unit);
  const repeated = withRepeat(measured, { ...taken, mm: 9.5, typed: '9.50' }, hand);
  const least: LengthValue = { ...repeated, estimator: 'minimum' };
  const out: LengthValue = {
    ...repeated,
    readings: [{ ...repeated.readings[0]!, left: 'out' }, repeated.readings[1]!],
  };
  const thou: LengthValue = {
    ...measured,
    readings: [{ ...measured.readings[0]!, unit: 'thou', typed: '370' }],
  };
  const inch: LengthValue = {
    ...measured,
    readings: [{ ...measured.readings[0]!, unit: 'in', typed: '.37' }],
  };
  return {
    measured,
    'the least of several': measuredValue(taken, hand, 'minimum'),
    repeated,
    'first of an assumed one': withRepeat(assumed, taken, hand, 'minimum'),
    'first of none': withRepeat(undefined, taken, hand),
    'one repeat less': withoutLastRepeat(repeated),
    'no repeat to take away': withoutLastRepeat(measured) === measured,
    assumed,
    stated: statedValue('.25', unit),
    'stated angle': statedAngle(45),
    'stated angle, as typed': statedAngle(45, '45°'),
    'assumed angle': assumedAngle(90, 86, 100),
    'like the mean': assumedLike(repeated, checks),
    'like the least': assumedLike(least, checks),
    'like what counts': assumedLike(out, checks),
    'like one in thou': assumedLike(thou, checks),
    'like one in inches': assumedLike(inch, checks),
    'like one read under a zero check of .001 in': assumedLike(repeated, checked),
    'like an assumed one': assumedLike(assumed, checks) === assumed,
    moved: movedValue(repeated, 0.12345),
    'moved in thou': movedValue(thou, -0.5),
    'moved in inches': movedValue(inch, 1),
    'moved with its range': movedValue(assumed, 1),
  };
}
