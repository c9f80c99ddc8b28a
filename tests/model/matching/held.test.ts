/** Choices held by a person, what settled ties, and the messages everything is asked by. */
import { describe, expect, test } from 'vitest';
import { runToEnd } from '../../../src/model/matching/match-many.ts';
import { matchParts } from '../../../src/model/matching/match.ts';
import type { Held } from '../../../src/model/matching/held.ts';
import { answerRequest, type MatchAnswer } from '../../../src/model/matching/matching-request.ts';
import type { Job } from '../../../src/model/schema/job-schema.ts';
import { loose, withBag } from '../../support/bag-job.ts';
import { buildJob, changed } from '../../support/job-builder.ts';

const SELECTION = { cylinder: 'cylinder', key: 'key', plan: 'plan' };
/** Two chambers that call for nearly the same pin: .172 and .1715 in. */
const two = buildJob({ chambers: [{ rootDepth: 0.26 }, { rootDepth: 0.2605 }] });
const bag = ['.1700', '.1715', '.1720', '.1740'].map((text) =>
  loose(`pin ${text}`, { length: Number(text) }),
);
const job = withBag(two, bag);

const hold = (chamber: string, part: string, isFiled = false): Held => ({
  chamber,
  items: [{ part }],
  isFiled,
});
const ask = (from: Job, held: readonly Held[], mostFiled: number | null = null): MatchAnswer =>
  runToEnd(answerRequest(from, { kind: 'match', selection: SELECTION, ask: { held, mostFiled } }));
const pins = ({ match }: MatchAnswer) =>
  match.chambers.map(({ standing }) => standing?.items.at(-1)?.part ?? null);

describe('a choice that is held', () => {
  test('with nothing held it is the plain choice', () => {
    expect(ask(job, []).match).toEqual(matchParts(job, SELECTION));
  });

  test('stays where it is, and the rest is chosen anew around it', () => {
    expect(pins(ask(job, []))).toEqual(['pin .1715', 'pin .1700']);
    // the other chamber has to give its best pin up, and takes the next best of what is left
    const held = ask(job, [hold('chamber-1', 'pin .1700')]);
    expect(pins(held)).toEqual(['pin .1700', 'pin .1715']);
    expect(held.match).toMatchObject({ filled: 2, isProved: true });
    expect(pins(ask(job, [hold('chamber-2', 'pin .1740'), hold('chamber-1', 'pin .1700')]))).toEqual([
      'pin .1700',
      'pin .1740',
    ]);
  });

  test('held in two places, one copy is in the first alone', () => {
    const both = ask(job, [hold('chamber-1', 'pin .1720'), hold('chamber-2', 'pin .1720')]);
    expect(pins(both)).toEqual(['pin .1720', 'pin .1700']);
  });

  test('what can no longer stand there is let go', () => {
    expect(pins(ask(job, [hold('chamber-1', 'gone')]))).toEqual(['pin .1715', 'pin .1700']);
  });

  test('a pin to be filed is held as filed', () => {
    const long = withBag(two, [loose('long', { length: 0.18 }), loose('fits', { length: 0.1715 })]);
    const filed = ask(long, [hold('chamber-2', 'long', true)], 0.254);
    expect(pins(filed)).toEqual(['fits', 'long']);
    expect(filed.match.chambers[1]?.standing?.filedOff).toBeGreaterThan(0.2);
    expect(ask(long, [hold('chamber-2', 'long', true)]).match.chambers[1]?.standing?.filedOff ?? 0).toBe(0);
  });

  test('alternatives are those of the choice with what is held in it', () => {
    const list = runToEnd(
      answerRequest(job, {
        kind: 'alternatives',
        selection: SELECTION,
        ask: { held: [hold('chamber-1', 'pin .1700')] },
        chamber: 'chamber-2',
      }),
    );
    expect(list.find(({ isChosen }) => isChosen)?.standing.items).toEqual([{ part: 'pin .1715' }]);
    // taking the held pin away from chamber 1 would leave that one open
    const robbing = list.find(({ standing }) => standing.items[0]?.part === 'pin .1700');
    expect(robbing?.changes).toEqual(['chamber-1']);
    expect(robbing?.whole.filled).toBe(1);
  });
});

describe('what settled it', () => {
  const one = buildJob({ chambers: [{ rootDepth: 0.26 }] });
  const same = (id: string, more: Parameters<typeof loose>[1] = {}) => loose(id, { length: 0.172, ...more });
  const reason = (from: Job) => ask(from, []).reasons.get('chamber-1') ?? null;

  test('origin, condition, what is there already', () => {
    const own = withBag(one, [same('A'), same('B', { from: 'Cylinder' })]);
    expect(reason(own)).toBe(
      'Taken before A, as long for all a caliper can tell: it comes from this cylinder.',
    );
    expect(reason(withBag(one, [same('A', { condition: 'poor' }), same('B')]))).toContain('better condition');
    const there = changed(withBag(one, [same('A', { from: 'Cylinder' }), same('B')]), (copy) => {
      copy.plans[0]!.stacks[0]!.items[0] = { part: 'B' };
    });
    expect(reason(there)).toContain('it is in this chamber already');
  });

  test('nothing is said where lengths decided, or where the other one is in use', () => {
    expect(reason(withBag(one, [same('A'), loose('B', { length: 0.174, from: 'Cylinder' })]))).toBeNull();
    expect(reason(withBag(one, [same('A')]))).toBeNull();
    const twins = withBag(buildJob({ chambers: [{ rootDepth: 0.26 }, { rootDepth: 0.26 }] }), [
      same('A'),
      same('B', { from: 'Cylinder' }),
    ]);
    expect(ask(twins, []).reasons.size).toBe(0);
  });
});

test('one part short: what would complete it', () => {
  const { missing } = ask(withBag(two, [loose('only', { length: 0.172 })]), []);
  expect(missing.map(({ number }) => number).sort()).toEqual([1, 2]);
  const { missing: none } = ask(job, []);
  expect(none).toEqual([]);
});

test('keys chosen freely are built with the parts they were chosen for', () => {
  const { choice, together } = runToEnd(
    answerRequest(job, {
      kind: 'keys',
      ask: { cylinders: [{ cylinder: 'cylinder', plan: 'plan' }], keys: ['key'] },
    }),
  );
  expect(choice.keys).toEqual([SELECTION]);
  expect(together?.matches[0]).toEqual(matchParts(job, SELECTION));
});
