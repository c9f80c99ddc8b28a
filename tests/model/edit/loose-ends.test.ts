/** What becomes of parts that nothing holds any more: measured ones stay on hand, stand-ins go. */
import { describe, expect, test } from 'vitest';
import { heldParts, isMeasured, withoutStandIns } from '../../../src/model/edit/loose-ends.ts';
import type { Part } from '../../../src/model/schema/parts-schema.ts';
import { buildJob, changed } from '../../support/job-builder.ts';
import { assumedInches, inches, statedInches } from '../../support/values.ts';

const BARE: Part = { id: 'loose', label: '', kind: 'pin', quantity: 1, original: false };
const assumed = assumedInches(0.1, 0.09, 0.11);

describe('a part counts as measured', () => {
  test.each(['diameter', 'length', 'solid', 'free', 'wire'] as const)('by its %s, read or stated', (name) => {
    expect(isMeasured({ ...BARE, [name]: inches(0.1) })).toBe(true);
    expect(isMeasured({ ...BARE, [name]: statedInches(0.1) })).toBe(true);
    expect(isMeasured({ ...BARE, [name]: assumed })).toBe(false);
  });

  test('by coming with others, or from somewhere; not by being there', () => {
    expect(isMeasured(BARE)).toBe(false);
    expect(isMeasured({ ...BARE, quantity: 2 })).toBe(true);
    expect(isMeasured({ ...BARE, from: 'a bag' })).toBe(true);
    expect(isMeasured({ ...BARE, diameter: assumed, length: assumed, condition: 'good' })).toBe(false);
  });
});

describe('of the parts asked about', () => {
  const loose = { ...BARE, diameter: assumed };
  const job = changed(buildJob({ chambers: 2 }), ({ parts }) => void parts.push(loose));

  test('those go that nobody measured and nothing holds', () => {
    const ids = (candidates: readonly string[], from = job) =>
      withoutStandIns(from, candidates).parts.map(({ id }) => id);
    expect(ids(['loose'])).not.toContain('loose');
    expect(ids(['loose']).length).toBe(job.parts.length - 1);
    expect(ids([])).toContain('loose');
    expect(ids(['driver-1'])).toContain('driver-1');
    const measured = changed(job, ({ parts }) => (parts.at(-1)!.length = inches(0.1)));
    expect(ids(['loose'], measured)).toContain('loose');
    expect(withoutStandIns(job, ['driver-1'])).toBe(job);
    expect(withoutStandIns(job, [])).toBe(job);
  });

  test('a part is held by a stack, its rest, what stood up by it, what was felt, a bench test or a group', () => {
    const items = [{ part: 'loose' }];
    const holding = [
      changed(job, ({ plans }) => void plans[0]!.stacks[0]!.items.push(...items)),
      changed(job, ({ plans }) => {
        plans[0]!.stacks[0]!.rest = { items, belowLine: inches(0.1) };
      }),
      changed(job, ({ seatings }) => {
        const entry = { chamber: 'chamber-1', items, stack: inches(0.4), reading: inches(0.1) };
        seatings[0]!.standsUpBy.push(entry);
      }),
      changed(
        job,
        ({ seatings }) => void seatings[0]!.felt.push({ chamber: 'chamber-1', items, is: 'above' }),
      ),
      changed(job, ({ benchResults }) => {
        benchResults.push({ plan: 'plan', key: 'key', chamber: 'chamber-1', items, turned: true, at: '' });
      }),
      changed(job, ({ groups }) => {
        groups.push({ id: 'pair', parts: ['loose', 'driver-1'], height: inches(0.3) });
      }),
    ];
    expect(heldParts(job).has('loose')).toBe(false);
    for (const each of holding) {
      expect(heldParts(each).has('loose')).toBe(true);
      expect(withoutStandIns(each, ['loose'])).toBe(each);
    }
  });
});
