import { describe, expect, test } from 'vitest';
import { addChamber, removeChamber } from '../../../src/model/edit/chamber-count.ts';
import { setPlugDiameter } from '../../../src/model/edit/edit-cylinder.ts';
import { lengthOf } from '../../../src/model/measured/part-ends.ts';
import { parseJob } from '../../../src/model/schema/parse-job.ts';
import { emptyBench, inches } from './edit-support.ts';

describe('newJob', () => {
  test.each([
    [5, 'in'],
    [6, 'in'],
    [7, 'mm'],
  ] as const)('makes a valid job file with %i chambers in %s', (chambers, unit) => {
    const { job } = emptyBench(chambers, unit);
    expect(parseJob(JSON.parse(JSON.stringify(job)))).toMatchObject({ type: 'success' });
    expect(job.cylinders[0]?.chambers).toHaveLength(chambers);
    expect(job.keys[0]?.cuts).toHaveLength(chambers);
    expect(job.plans[0]?.stacks).toHaveLength(chambers);
  });

  test('assumes the play as .004 in, from .002 to .006, and says so', () => {
    const clearance = emptyBench().job.cylinders[0]?.lines[0]?.clearance;
    expect(clearance).toMatchObject({ basis: 'assumed', range: { from: 0.0508, to: 0.1524 } });
    expect(clearance?.readings[0]).toMatchObject({ typed: '.004', value: 0.1016 });
  });

  test('leaves the plug, the cuts and the stacks to be measured', () => {
    const { job } = emptyBench();
    expect(job.cylinders[0]?.bodies[0]?.outerDiameter).toBeUndefined();
    expect(job.keys[0]?.cuts.every((cut) => cut.rootDepth === undefined)).toBe(true);
    expect(job.groups).toEqual([]);
  });

  test('takes a digital caliper of half a thousandth, good to a thousandth', () => {
    expect(emptyBench().job.instruments[0]).toMatchObject({
      kind: 'digital caliper',
      resolutionMm: 0.0127,
      maxPermissibleErrorMm: 0.0254,
      repeatabilityMm: 0.0127,
      source: 'assumed',
    });
  });
});

describe('a plug of another size', () => {
  test('renews what was only assumed: pins, chambers, flat, spacing', () => {
    const { job, where } = emptyBench();
    const large = setPlugDiameter(job, where.cylinder, inches(0.748));
    const chambers = large.cylinders[0]?.chambers ?? [];
    expect(lengthOf(chambers[0]?.holes[0]?.diameter, 0)).toBeCloseTo(0.16 * 25.4, 9);
    expect(lengthOf(chambers[1]?.position, 0) - lengthOf(chambers[0]?.position, 0)).toBeCloseTo(6.35, 9);
    expect(lengthOf(large.keys[0]?.rootFlat, 0)).toBeCloseTo(0.06 * 25.4, 9);
    expect(lengthOf(large.parts.find((part) => part.kind === 'ball')?.diameter, 0)).toBeCloseTo(3.9624, 9);
  });

  test('leaves what was measured', () => {
    const { job, where } = emptyBench();
    const [cut] = job.keys[0]?.cuts ?? [];
    const measured = {
      ...job,
      keys: job.keys.map((key) => ({
        ...key,
        rootFlat: inches(0.05),
        cuts: key.cuts.map((each) => (each.id === cut?.id ? { ...each, position: inches(0.3) } : each)),
      })),
    };
    const large = setPlugDiameter(measured, where.cylinder, inches(0.748));
    expect(lengthOf(large.keys[0]?.rootFlat, 0)).toBeCloseTo(1.27, 9);
    expect(lengthOf(large.keys[0]?.cuts[0]?.position, 0)).toBeCloseTo(7.62, 9);
  });

  test('changes nothing else when the size class stays', () => {
    const { job, where } = emptyBench();
    const next = setPlugDiameter(job, where.cylinder, inches(0.5));
    expect(next.parts).toBe(job.parts);
    expect(next.keys).toBe(job.keys);
  });
});

describe('chambers', () => {
  test('a chamber added at the back brings its cut and its stack, and is spaced like the others', () => {
    const { job, where, newId } = emptyBench(5);
    const six = addChamber(job, where, newId);
    const chambers = six.cylinders[0]?.chambers ?? [];
    expect(chambers).toHaveLength(6);
    expect(lengthOf(chambers[5]?.position, 0) - lengthOf(chambers[4]?.position, 0)).toBeCloseTo(3.9624, 6);
    expect(six.keys[0]?.cuts).toHaveLength(6);
    expect(six.plans[0]?.stacks).toHaveLength(6);
    expect(parseJob(JSON.parse(JSON.stringify(six)))).toMatchObject({ type: 'success' });
  });

  test('taking it away again leaves a valid job with the chambers there were', () => {
    const { job, where, newId } = emptyBench(5);
    const five = removeChamber(addChamber(job, where, newId), where);
    expect(five.cylinders[0]?.chambers.map((chamber) => chamber.id)).toEqual(
      job.cylinders[0]?.chambers.map((chamber) => chamber.id),
    );
    expect(five.keys[0]?.cuts.map((cut) => cut.id)).toEqual(job.keys[0]?.cuts.map((cut) => cut.id));
    expect(parseJob(JSON.parse(JSON.stringify(five)))).toMatchObject({ type: 'success' });
  });

  test('stops at one and at eight', () => {
    const { job, where, newId } = emptyBench(1);
    expect(removeChamber(job, where)).toBe(job);
    let many = job;
    for (let i = 0; i < 12; i++) many = addChamber(many, where, newId);
    expect(many.cylinders[0]?.chambers).toHaveLength(8);
  });
});
