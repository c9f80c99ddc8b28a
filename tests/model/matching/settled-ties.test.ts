/** What settles between parts that are the same length for all a caliper can tell, and what is said of it. Lengths in inches. */
import { describe, expect, test } from 'vitest';
import { type MatchAsk, measuringOf } from '../../../src/model/matching/match.ts';
import { runToEnd } from '../../../src/model/matching/match-many.ts';
import { answerRequest } from '../../../src/model/matching/matching-request.ts';
import { layOutSite } from '../../../src/model/matching/site.ts';
import { takeStock } from '../../../src/model/matching/stock.ts';
import { tieBreaksOf } from '../../../src/model/matching/tie-breaks.ts';
import type { Job } from '../../../src/model/schema/job-schema.ts';
import type { Part } from '../../../src/model/schema/parts-schema.ts';
import { loose, withBag } from '../../support/bag-job.ts';
import { buildJob, changed } from '../../support/job-builder.ts';
import { SELECTION } from '../../support/small-job.ts';

/** Calls for a pin of .172 in. */
const ONE = buildJob({ chambers: [{ rootDepth: 0.26 }] });
const TWO = buildJob({ chambers: [{ rootDepth: 0.26 }, { rootDepth: 0.3 }] });

describe('between parts that are the same length', () => {
  const reason = (
    bag: readonly Part[],
    change: (copy: Job) => void = () => undefined,
    ask: MatchAsk = {},
  ) => {
    const job = changed(withBag(ONE, bag), change);
    const { match, reasons } = runToEnd(
      answerRequest<'match'>(job, { kind: 'match', selection: SELECTION, ask: { ...ask, held: [] } }),
    );
    return [match.chambers[0]?.standing?.items.at(-1)?.part, reasons.get('chamber-1') ?? null];
  };
  const pin = (id: string, more: Parameters<typeof loose>[1] = {}) => loose(id, { length: 0.172, ...more });
  const before = (label: string, why: string) =>
    `Taken before ${label}, as long for all a caliper can tell: ${why}.`;

  test('each reason in its turn', () => {
    expect(reason([pin('a'), pin('b', { from: 'Cylinder' })])).toEqual([
      'b',
      before('a', 'it comes from this cylinder'),
    ]);
    expect(reason([pin('a'), pin('b', { condition: 'good' })])).toEqual([
      'b',
      before('a', 'it is in better condition'),
    ]);
    expect(reason([pin('a', { condition: 'poor' }), pin('b')])).toEqual([
      'b',
      before('a', 'it is in better condition'),
    ]);
    const own = (copy: Job) => {
      copy.plans[0]!.stacks[0]!.items[0] = { part: 'b' };
      for (const part of copy.parts) part.from = 'Cylinder';
    };
    expect(reason([pin('a'), pin('b')], own)).toEqual(['b', before('a', 'it is in this chamber already')]);
  });

  test('none where nothing else is as good, or nothing settles it', () => {
    expect(reason([pin('a')])).toEqual(['a', null]);
    expect(reason([pin('a'), pin('b')])).toEqual(['a', null]);
    expect(reason([pin('a'), pin('b', { from: 'Cylinder', quantity: 0 })])).toEqual(['a', null]);
    // what is to spare counts first
    expect(reason([pin('a', { from: 'Cylinder' }), pin('b', { length: 0.1705 })])).toEqual(['b', null]);
    expect(reason([])).toEqual([undefined, null]);
  });

  test('a second copy of the same part is no other part; one that would be filed is not as good', () => {
    expect(reason([pin('a', { quantity: 2, from: 'Cylinder' })])).toEqual(['a', null]);
    // as high once filed
    expect(
      reason([pin('a', { from: 'Cylinder' }), pin('b', { length: 0.1795 })], undefined, { mostFiled: 0.254 }),
    ).toEqual(['a', null]);
  });

  test('origin, condition and change as numbers, for each place and pin', () => {
    const job = changed(
      withBag(TWO, [
        pin('good', { condition: 'good' }),
        pin('poor', { condition: 'poor', from: ' cylinder ' }),
        loose('ball', { kind: 'ball', diameter: 0.115 }),
      ]),
      (copy) => {
        copy.plans[0]!.stacks[1]!.items = [{ part: 'ball' }, { part: 'good' }];
        copy.cylinders.push({ ...structuredClone(copy.cylinders[0]!), id: 'other', label: '' });
        copy.plans.push({
          id: 'elsewhere',
          cylinder: 'other',
          kind: 'planned',
          stacks: [{ chamber: 'chamber-1', items: [{ part: 'loose' }] }],
        });
        copy.parts.push(pin('loose', { from: '' }), pin('blank', { from: '  ' }));
      },
    );
    const site = layOutSite(job, SELECTION, takeStock(job, measuringOf(job)));
    const ties = tieBreaksOf(site);
    const number = (id: string) => site.stock.numbers.get(id) ?? -1;
    const [first, second] = site.places;
    expect(ties(first!, number('good'), -1)).toEqual([0, 0, 1]);
    expect(ties(second!, number('good'), -1)).toEqual([0, 0, 1]);
    expect(ties(second!, number('good'), number('ball'))).toEqual([0, 0, 0]);
    expect(ties(first!, number('good'), number('ball'))).toEqual([0, 0, 1]);
    expect(ties(first!, number('poor'), -1)).toEqual([0, 2, 1]);
    expect(ties(first!, number('loose'), -1)).toEqual([1, 1, 1]);
    expect(ties(first!, number('blank'), -1)).toEqual([1, 1, 1]);
    expect(ties(first!, number('bottom-pin-1'), -1)).toEqual([0, 1, 0]);
    expect(ties(second!, number('bottom-pin-1'), -1)).toEqual([0, 1, 1]);
    expect(ties(first!, 99, -1)).toEqual([1, 1, 1]);
  });
});
