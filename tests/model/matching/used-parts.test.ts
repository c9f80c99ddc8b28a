import { describe, expect, test } from 'vitest';
import { measuringOf } from '../../../src/model/matching/match.ts';
import { takeStock } from '../../../src/model/matching/stock.ts';
import { copiesLeft, usedTooOften, usesOf } from '../../../src/model/matching/used-parts.ts';
import type { Job } from '../../../src/model/schema/job-schema.ts';
import { buildJob, changed, joinJobs } from '../../support/job-builder.ts';

const two = joinJobs(buildJob({ chambers: 2 }), buildJob({ prefix: 'b-', chambers: 2 }));

/** The same pin in a chamber of each cylinder. */
const shared = changed(two, (copy) => {
  copy.plans[1]!.stacks[1]!.items[0] = { part: 'bottom-pin-1' };
});

function left(job: Job, part: string, building: readonly number[] = []): number {
  const stock = takeStock(job, measuringOf(job));
  const kept = building.map((i) => ({ plan: job.plans[i]!, parts: [] }));
  return copiesLeft(job, stock, kept)[stock.numbers.get(part) ?? -1] ?? NaN;
}

describe('where parts are in use', () => {
  test('a part in one plan is used there, and nowhere else', () => {
    expect(usesOf(two, 'bottom-pin-2')).toEqual([{ cylinder: 'cylinder', chamber: 'chamber-2' }]);
    expect(usedTooOften(two)).toEqual([]);
  });

  test('a part in two cylinders is told, with where', () => {
    expect(usedTooOften(shared)).toEqual([
      {
        part: 'bottom-pin-1',
        quantity: 1,
        uses: [
          { cylinder: 'cylinder', chamber: 'chamber-1' },
          { cylinder: 'b-cylinder', chamber: 'b-chamber-2' },
        ],
        message:
          'bottom-pin-1 is in chamber 1 of Cylinder and in chamber 2 of b-Cylinder, but there is only one.',
      },
    ]);
  });

  test('chambers are counted from the tip where that is the way', () => {
    const fromTip = changed(shared, (copy) => (copy.settings.numbering = 'tip'));
    expect(usedTooOften(fromTip)[0]?.message).toContain(
      'chamber 2 of Cylinder and in chamber 1 of b-Cylinder',
    );
  });

  test('as planned and as built of one cylinder count once, as found not at all', () => {
    const plans = changed(two, (copy) => {
      copy.plans.push({ ...structuredClone(copy.plans[0]!), id: 'built', kind: 'as built' });
      copy.plans.push({
        ...structuredClone(copy.plans[1]!),
        id: 'found',
        kind: 'as found',
        cylinder: 'cylinder',
      });
    });
    expect(usedTooOften(plans)).toEqual([]);
  });

  test('a part of which none is left, and one in two chambers of the same cylinder', () => {
    const none = changed(two, (copy) => (copy.parts[0]!.quantity = 0));
    expect(usedTooOften(none)[0]?.message).toBe(
      'bottom-pin-1 is in chamber 1 of Cylinder, but there is none left.',
    );
    const twice = changed(two, (copy) => (copy.plans[0]!.stacks[1]!.items[0] = { part: 'bottom-pin-1' }));
    expect(usedTooOften(twice)[0]?.message).toContain('chamber 1 of Cylinder and in chamber 2 of Cylinder');
  });
});

describe('what is left to choose from', () => {
  test('what another cylinder holds is not, what the one in hand holds is', () => {
    expect([
      left(two, 'bottom-pin-1'),
      left(two, 'bottom-pin-1', [0]),
      left(two, 'bottom-pin-1', [1]),
    ]).toEqual([0, 1, 0]);
  });

  test('copies are counted down to nothing, never below', () => {
    const stock = changed(two, (copy) => (copy.parts[0]!.quantity = 3));
    expect(left(stock, 'bottom-pin-1')).toBe(2);
    const none = changed(two, (copy) => (copy.parts[0]!.quantity = 0));
    expect(left(none, 'bottom-pin-1')).toBe(0);
  });

  test('what stays in a plan in hand is taken', () => {
    const stock = takeStock(two, measuringOf(two));
    const copies = copiesLeft(two, stock, [{ plan: two.plans[0]!, parts: ['driver-1'] }]);
    expect(copies[stock.numbers.get('driver-1') ?? -1]).toBe(0);
  });
});
