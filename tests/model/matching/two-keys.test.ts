import { describe, expect, test } from 'vitest';
import { evaluate } from '../../../src/model/evaluate/evaluate.ts';
import {
  matchTwoKeys,
  type TwoKeysMatch,
  type TwoKeysSelection,
} from '../../../src/model/matching/two-keys.ts';
import type { Job } from '../../../src/model/schema/job-schema.ts';
import type { Part } from '../../../src/model/schema/parts-schema.ts';
import { loose, type LooseOptions, withBag } from '../../support/bag-job.ts';
import { buildJob, changed, type JobOptions } from '../../support/job-builder.ts';
import { seededRandom } from '../../support/random-job.ts';
import { statedInches } from '../../support/values.ts';

/** One cylinder and a second key with other root depths; what each chamber calls for is .432 in less the root depth. */
function twoKeyJob(depths: readonly (readonly [number, number])[], options: JobOptions = {}): Job {
  const job = buildJob({ ...options, chambers: depths.map(([rootDepth]) => ({ rootDepth })) });
  return changed(job, (copy) => {
    const other = structuredClone(copy.keys[0]!);
    other.id = 'other-key';
    other.cuts.forEach((cut, i) => (cut.rootDepth = statedInches(depths[i]![1])));
    copy.keys.push(other);
    copy.seatings.push({ ...structuredClone(copy.seatings[0]!), key: 'other-key' });
  });
}

const selection = (line = 'line', otherLine = line): TwoKeysSelection => ({
  cylinder: 'cylinder',
  plan: 'plan',
  wants: [
    { key: 'key', line },
    { key: 'other-key', line: otherLine },
  ],
});
const disc = (id: string, length: number, more: LooseOptions = {}) =>
  loose(id, { length, foot: { kind: 'flat' }, top: { kind: 'dome' }, ...more });

function asPlanned(job: Job, { chambers }: TwoKeysMatch): Job {
  return changed(job, (copy) => {
    for (const { chamber, items } of chambers) {
      const stack = copy.plans[0]!.stacks.find((each) => each.chamber === chamber)!;
      if (items !== null) stack.items = [...items.map((item) => ({ ...item })), ...stack.items.slice(-2)];
    }
  });
}

const turns = (job: Job, key: string, line = 'line') =>
  evaluate(job, { cylinder: 'cylinder', key, plan: 'plan' }).lines.find((each) => each.line === line)
    ?.verdict;

describe('two keys on one line', () => {
  // what they call for: .172 and .202; .152 and .152; .172 and .142
  const job = twoKeyJob([
    [0.26, 0.23],
    [0.28, 0.28],
    [0.26, 0.29],
  ]);
  const bag = [
    loose('b-172', { length: 0.172 }),
    loose('b-152', { length: 0.152 }),
    loose('b-142', { length: 0.142 }),
    disc('m-030a', 0.03),
    disc('m-030b', 0.03),
  ];

  test('bottom pin and master pin where they differ, one split where they do not', () => {
    const match = matchTwoKeys(withBag(job, bag), selection());
    const parts = match.chambers.map(({ items }) => items?.map((item) => item.part.replace(/[ab]$/, '')));
    expect(parts).toEqual([['b-172', 'm-030'], ['b-152'], ['b-142', 'm-030']]);
    expect(match).toMatchObject({ filled: 3, of: 3, isProved: true });
    expect(match.answer).toMatch(/^All 3 chambers can be filled for both keys\. The tightest split has/);
  });

  test('both keys turn the finished plan by the evaluation', () => {
    const bagged = withBag(job, bag);
    const planned = asPlanned(bagged, matchTwoKeys(bagged, selection()));
    expect([turns(planned, 'key'), turns(planned, 'other-key')]).toEqual(['turns', 'turns']);
  });

  test('one master pin too few leaves one chamber open, and says what is missing', () => {
    const match = matchTwoKeys(withBag(job, bag.slice(0, -1)), selection());
    expect(match.filled).toBe(2);
    expect(match.answer).toContain('a master pin about .030 in thick');
  });

  test('a part is not bottom pin here and master pin there', () => {
    // two chambers need the same .172 as bottom pin; "both" could also lie on "short", but there is one of it
    const pair = twoKeyJob([
      [0.26, 0.23],
      [0.345, 0.26],
    ]);
    const shared = [
      loose('both', { length: 0.172, foot: { kind: 'flat' } }),
      disc('m', 0.03),
      disc('s', 0.087),
      disc('t', 0.085),
    ];
    const match = matchTwoKeys(withBag(pair, shared), selection());
    const used = match.chambers.flatMap(({ items }) => items?.map((item) => item.part) ?? []);
    expect(new Set(used).size).toBe(used.length);
  });

  test('too little apart for a master pin: one split serves both, or a sentence says so', () => {
    const near = twoKeyJob([[0.26, 0.258]]);
    const right = matchTwoKeys(
      withBag(near, [loose('pin', { length: 0.172 }), disc('thin', 0.002)]),
      selection(),
    );
    expect(right.chambers[0]?.items).toEqual([{ part: 'pin' }]);
    const far = twoKeyJob([[0.26, 0.245]]);
    const none = matchTwoKeys(
      withBag(far, [loose('pin', { length: 0.172 }), disc('thin', 0.015)]),
      selection(),
    );
    expect(none.chambers[0]?.items).toBeNull();
    expect(none.chambers[0]?.why).toMatch(
      /^In chamber 1 the keys call for heights \.015 in apart, too little for a master pin/,
    );
  });

  test('without a driver there is no place for a master pin', () => {
    const bare = changed(withBag(job, bag), (copy) => {
      for (const stack of copy.plans[0]!.stacks) stack.items = stack.items.slice(0, 1);
    });
    expect(matchTwoKeys(bare, selection()).chambers[0]?.why).toContain('Put a driver into chamber 1 first');
  });

  test('master pins that are in the plan are chosen anew, locked chambers stay', () => {
    const present = changed(withBag(job, bag), (copy) => {
      copy.plans[0]!.stacks[0]!.items.splice(1, 0, { part: 'm-030a' });
      copy.plans[0]!.stacks[1]!.locked = true;
    });
    const match = matchTwoKeys(present, selection());
    expect(match.filled).toBe(2);
    expect(match.chambers[1]).toMatchObject({ isLocked: true, items: [{ part: 'bottom-pin-2' }] });
  });

  test('an empty bag gives an answer', () => {
    const match = matchTwoKeys(
      changed(job, (copy) => (copy.parts = [])),
      selection(),
    );
    expect(match.filled).toBe(0);
    expect(match.answer).toMatch(/^0 of 3 chambers can be filled for both keys\. .+\.$/);
  });
});

test('one key for the inner line, the other for the outer line of a sleeve', () => {
  const sleeve = { outerDiameter: 0.63, clearance: 0.003 };
  const job = twoKeyJob([[0.26, 0.25]], { sleeve, capDepth: 0.6 });
  // worked by hand: the outer crest lies (.63 - .512)/2 + .003/2 = .0605 higher, the key .010 lower: .0605 + .010 = .0705
  const bag = [loose('pin', { length: 0.172 }), disc('disc', 0.0705)];
  const bagged = withBag(job, bag);
  const match = matchTwoKeys(bagged, selection('inner-line', 'outer-line'));
  expect(match.chambers[0]?.items).toEqual([{ part: 'pin' }, { part: 'disc' }]);
  const planned = asPlanned(bagged, match);
  expect(turns(planned, 'key', 'inner-line')).toBe('turns');
  expect(turns(planned, 'other-key', 'outer-line')).toBe('turns');
});

describe('any bag', () => {
  const SEEDS = Array.from({ length: 12 }, (_, i) => i + 1);
  const randomBag = (seed: number): { job: Job; bag: Part[] } => {
    const random = seededRandom(seed);
    const upTo = (most: number) => Math.floor(random() * (most + 1));
    const depth = () => 0.22 + 0.0005 * upTo(160);
    const job = twoKeyJob(Array.from({ length: 3 }, () => [depth(), depth()] as const));
    const pins = Array.from({ length: 30 }, (_, i) =>
      loose(`pin-${i}`, {
        length: Math.round((0.13 + 0.09 * random()) * 2000) / 2000,
        top: random() < 0.5 ? { kind: 'dome' } : { kind: 'bevel', width: 0.012, angleDeg: 45 },
      }),
    );
    const discs = Array.from({ length: 20 }, (_, i) => disc(`disc-${i}`, 0.0005 * (20 + upTo(160))));
    return { job, bag: [...pins, ...discs] };
  };

  test('every split stands where the evaluation of the finished plan says, and no part is used twice', () => {
    let compared = 0;
    for (const seed of SEEDS) {
      const { job, bag } = randomBag(seed);
      const bagged = withBag(job, bag);
      const match = matchTwoKeys(bagged, selection());
      const planned = asPlanned(bagged, match);
      const used = match.chambers.flatMap(({ items }) => items?.map((item) => item.part) ?? []);
      expect(new Set(used).size, `seed ${seed}`).toBe(used.length);
      for (const { chamber, serves } of match.chambers) {
        for (const { key, offset, lowest, highest, margin } of serves) {
          const result = evaluate(planned, { cylinder: 'cylinder', key, plan: 'plan' });
          const splits = result.chambers.find((each) => each.chamber === chamber)?.splits ?? [];
          const same = splits.find((split) => Math.abs(split.offset - offset) < 1e-9);
          expect(same?.window.lowest).toBeCloseTo(lowest, 9);
          expect(same?.window.highest).toBeCloseTo(highest, 9);
          expect(same?.margin).toBeCloseTo(margin, 9);
          compared += 1;
        }
      }
    }
    expect(compared).toBeGreaterThan(30);
  });
});

test('with one chamber, and with none that is free, the answer says so', () => {
  const one = withBag(twoKeyJob([[0.26, 0.26]]), [loose('pin', { length: 0.172 })]);
  expect(matchTwoKeys(one, selection()).answer).toMatch(
    /^The chamber can be filled for both keys\. The tightest split has \.\d+ in to spare\.$/,
  );
  const locked = changed(one, (copy) => (copy.plans[0]!.stacks[0]!.locked = true));
  expect(matchTwoKeys(locked, selection()).answer).toBe('No chamber is free to choose for: all are locked.');
});
