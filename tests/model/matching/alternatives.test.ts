import { describe, expect, test } from 'vitest';
import { alternativesFor } from '../../../src/model/matching/alternatives.ts';
import { assign } from '../../../src/model/matching/assign.ts';
import { compareScores } from '../../../src/model/matching/levels.ts';
import { matchParts, prepareMatch } from '../../../src/model/matching/match.ts';
import { rowsOf } from '../../../src/model/matching/pair-to-fill.ts';
import type { Job } from '../../../src/model/schema/job-schema.ts';
import { loose, withBag } from '../../support/bag-job.ts';
import { buildJob, changed } from '../../support/job-builder.ts';

const SELECTION = { cylinder: 'cylinder', key: 'key', plan: 'plan' };
const two = buildJob({ chambers: [{ rootDepth: 0.26 }, { rootDepth: 0.2605 }] });

function alternatives(job: Job, chamber: string, mostFiled: number | null = null) {
  const { pair, filling } = prepareMatch(job, SELECTION, { mostFiled });
  const assignment = assign(rowsOf(pair, filling), (part) => filling.copies[part] ?? 0);
  return { list: alternativesFor(pair, filling, assignment, chamber), assignment };
}
const pinsOf = (list: ReturnType<typeof alternatives>['list']) =>
  list.map(({ standing }) => standing.items[0]?.part);

describe('what else could stand in a chamber', () => {
  const bag = [0.166, 0.168, 0.17, 0.1715, 0.172, 0.174, 0.19].map((length, i) =>
    loose(`pin-${i}`, { length }),
  );
  const job = withBag(two, bag);

  test('starts with what was chosen, and is in order of what the whole comes to', () => {
    const { list, assignment } = alternatives(job, 'chamber-1');
    expect(list[0]?.isChosen).toBe(true);
    expect(list[0]?.whole).toEqual(assignment.score);
    expect(list[0]?.changes).toEqual([]);
    expect(list.filter(({ isChosen }) => isChosen)).toHaveLength(1);
    for (const [i, each] of list.entries()) {
      const next = list[i + 1];
      if (next !== undefined) expect(compareScores(each.whole, next.whole)).toBeLessThanOrEqual(0);
    }
  });

  test('lists everything that turns there, and nothing that does not', () => {
    expect(pinsOf(alternatives(job, 'chamber-1').list).sort()).toEqual([
      'pin-0',
      'pin-1',
      'pin-2',
      'pin-3',
      'pin-4',
      'pin-5',
    ]);
  });

  test('one that the other chamber has makes that one change, and is told', () => {
    const { chambers } = matchParts(job, SELECTION);
    const inOther = chambers[1]?.standing?.items[0]?.part;
    const taken = alternatives(job, 'chamber-1').list.find(
      ({ standing }) => standing.items[0]?.part === inOther,
    );
    expect(taken?.changes).toEqual(['chamber-2']);
    expect(taken?.whole.filled).toBe(2);
  });

  test('the only part of another chamber costs a filled chamber, and comes last', () => {
    const scarce = withBag(two, [loose('one', { length: 0.172 }), loose('other', { length: 0.1765 })]);
    const depths = changed(scarce, (copy) => {
      // .1765 fits the second chamber no more than the first: only "one" fits both
      copy.parts.find((part) => part.id === 'other')!.quantity = 0;
      copy.parts.push(loose('low', { length: 0.1655 }));
    });
    const { list } = alternatives(depths, 'chamber-2');
    expect(list.at(-1)?.whole.filled ?? 0).toBeLessThanOrEqual(list[0]?.whole.filled ?? 0);
    expect(list[0]?.whole.filled).toBe(2);
  });

  test('the whole of each is what a match with that choice locked comes to', () => {
    for (const { standing, whole } of alternatives(job, 'chamber-1').list) {
      const locked = changed(job, (copy) => {
        const stack = copy.plans[0]!.stacks[0]!;
        stack.items = [...standing.items.map((item) => ({ ...item })), ...stack.items.slice(1)];
        stack.locked = true;
      });
      const rest = matchParts(locked, SELECTION);
      expect(rest.filled).toBe(whole.filled);
      expect(Math.min(rest.score.smallestToSpare, standing.spare)).toBe(whole.smallestToSpare);
      expect(rest.score.squares + standing.deviation ** 2).toBe(whole.squares);
    }
  });

  test('filed ones come after those that fit as they are', () => {
    const { list } = alternatives(job, 'chamber-1', 0.6);
    const filed = list.map(({ standing }) => standing.filedOff > 0);
    expect(filed).toContain(true);
    expect(filed.indexOf(true)).toBeGreaterThan(filed.lastIndexOf(false));
  });

  test('a locked chamber and one that does not exist have none', () => {
    const locked = changed(job, (copy) => (copy.plans[0]!.stacks[0]!.locked = true));
    expect(alternatives(locked, 'chamber-1').list).toEqual([]);
    expect(alternatives(job, 'elsewhere').list).toEqual([]);
  });
});
