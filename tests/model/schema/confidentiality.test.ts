import * as z from 'zod/mini';
import { describe, expect, it } from 'vitest';
import { jobSchema } from '../../../src/model/schema/job-schema.ts';
import { restricted, shareable } from '../../../src/model/schema/leaf.ts';
import { schemaLeaves } from '../../support/schema-leaves.ts';

const leaves = schemaLeaves(jobSchema);

describe('what a key could be cut from', () => {
  it('is said for every leaf of the job file, and the walk sees them all', () => {
    expect(leaves.filter(({ marks }) => marks.length === 0).map(({ path }) => path)).toEqual([]);
    expect(leaves.length).toBeGreaterThan(400);
    const tops = new Set(leaves.map(({ path }) => path.split(/[.[{]/)[0]));
    expect([...tops].sort()).toEqual(Object.keys(jobSchema.shape).sort());
  });

  it('is never said in two ways for one leaf', () => {
    expect(leaves.filter(({ marks }) => new Set(marks).size > 1).map(({ path }) => path)).toEqual([]);
  });

  it('is exactly this: a change here is a decision', () => {
    const entered = leaves
      .filter(({ marks }) => marks.at(-1) === true)
      .map(({ path }) =>
        path
          .replace(/\.(readings\[\].*|estimator|basis|range\..*)$/, '')
          .replace(/\.items\[\]\..*$/, '.items'),
      );
    expect([...new Set(entered)]).toEqual([
      'keys[].bladeHeight',
      'keys[].tip.position',
      'keys[].tip.noseHeight',
      'keys[].tip.ramp',
      'keys[].rootFlat',
      'keys[].includedAngle',
      'keys[].cuts[].position',
      'keys[].cuts[].rootDepth',
      'keys[].cuts[].overBall.reading',
      'keys[].cuts[].overBall.ball',
      'keys[].cuts[].rootFlat',
      'keys[].cuts[].includedAngle',
      'seatings[].keywayFloorHeight',
      'seatings[].plugMinusFloor',
      'seatings[].standsUpBy[].items',
      'seatings[].standsUpBy[].stack',
      'seatings[].standsUpBy[].reading',
      'seatings[].felt[].items',
      'parts[].length',
      'groups[].parts[]',
      'groups[].height',
      'plans[].stacks[].items',
      'plans[].stacks[].rest.items',
      'plans[].stacks[].rest.belowLine',
      'benchResults[].items',
      'depths.rootDepths[]',
      'note.restricted{}',
    ]);
  });

  it('is missed by the walk in a schema that does not say it', () => {
    const careless = z.strictObject({ said: shareable(z.string()), unsaid: z.optional(z.array(z.string())) });
    expect(schemaLeaves(careless).filter(({ marks }) => marks.length === 0)).toEqual([
      { path: 'unsaid[]', marks: [] },
    ]);
    const twice = restricted(z.strictObject({ both: shareable(z.string()) }));
    expect(schemaLeaves(twice)).toEqual([{ path: 'both', marks: [true, false] }]);
  });
});
