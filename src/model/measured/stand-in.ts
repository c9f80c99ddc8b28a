/**
 * What a chamber without parts is reckoned with: the usual ball and pin, so that the height its key calls for, and the
 * range to look for in the bag, are known before any part is. Marked by having no place in the plan. mm.
 */
import type { Estimate } from '../estimate/estimate.ts';
import { readLength } from '../estimate/read-value.ts';
import type { Job } from '../schema/job-schema.ts';
import type { Part } from '../schema/parts-schema.ts';
import { type MeasuredStack, measureStack } from './measured-stack.ts';
import type { Bench } from './selection.ts';

const BALL: Part = { id: 'stand-in-ball', label: 'usual ball', kind: 'ball', quantity: 1, original: false };
const PIN: Part = { id: 'stand-in-pin', label: 'usual pin', kind: 'pin', quantity: 1, original: false };
/** Without a ball, a pin is pointed: a flat one would ride on the sides of every cut. */
const POINTED: Part = {
  ...PIN,
  ends: [
    { kind: 'cone', basis: 'assumed' },
    { kind: 'dome', basis: 'assumed' },
  ],
};
const DRIVER: Part = {
  id: 'stand-in-driver',
  label: 'usual driver',
  kind: 'pin',
  quantity: 1,
  original: false,
};

/** The usual stack: with a ball if any stack of the plan has one, or if the plan is empty. */
export function standInStack(bench: Bench, lineRadius: number, holeRadius: number): MeasuredStack {
  const lowest = bench.plan.stacks.flatMap((stack) => {
    const first = stack.items[0];
    return first === undefined ? [] : [bench.parts.get(first.part)?.kind];
  });
  const hasBall = lowest.length === 0 || lowest.includes('ball');
  const used = hasBall ? [BALL, PIN, DRIVER] : [POINTED, DRIVER];
  const parts = new Map(used.map((part) => [part.id, part]));
  return measureStack(
    used.map((part) => ({ part: part.id })),
    parts,
    [],
    lineRadius,
    holeRadius,
    bench.measuring,
  );
}

/** The doubt that measuring a stack of this height with the job's instrument once would bring. */
export function oneReading(job: Job, mm: number, bench: Bench): Estimate {
  return readLength(
    {
      readings: [{ typed: '', unit: 'mm', value: mm, instrument: job.settings.instrument, session: null }],
      estimator: 'mean',
      basis: 'measured',
    },
    { owner: 'stand-in', id: 'stack', name: 'height' },
    bench.measuring,
  );
}
