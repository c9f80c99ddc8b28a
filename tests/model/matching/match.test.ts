import { describe, expect, test } from 'vitest';
import { evaluate } from '../../../src/model/evaluate/evaluate.ts';
import { type Match, type MatchAsk, matchParts, prepareMatch } from '../../../src/model/matching/match.ts';
import { wantedHeight } from '../../../src/model/matching/wanted-height.ts';
import type { Job } from '../../../src/model/schema/job-schema.ts';
import type { Part } from '../../../src/model/schema/parts-schema.ts';
import { asPlanned, loose, withBag } from '../../support/bag-job.ts';
import { buildJob, changed } from '../../support/job-builder.ts';
import { inches, statedInches } from '../../support/values.ts';

const SELECTION = { cylinder: 'cylinder', key: 'key', plan: 'plan' };
const INCH = 25.4;
const HALF_THOU = 0.0127;

/** Three chambers that call for pins of .172, .132 and .192 in. */
const LEVEL = [0.172, 0.132, 0.192] as const;
const empty = buildJob({ chambers: [{ rootDepth: 0.26 }, { rootDepth: 0.3 }, { rootDepth: 0.24 }] });
const withParts = (...bag: Part[]) => withBag(empty, bag);
const match = (job: Job, ask?: MatchAsk) => matchParts(job, SELECTION, ask);
const pins = (found: Match) => found.chambers.map(({ standing }) => standing?.items.at(-1)?.part ?? null);

describe('a bag with the right pins', () => {
  const right = LEVEL.map((length, i) => loose(`right-${i + 1}`, { length }));

  test('they are found, and stand level', () => {
    const found = match(withParts(...right));
    expect(pins(found)).toEqual(['right-1', 'right-2', 'right-3']);
    expect(found).toMatchObject({ filled: 3, of: 3, isProved: true, notes: [] });
    for (const { standing } of found.chambers) expect(standing?.offset).toBeCloseTo(0, 6);
    expect(found.answer).toMatch(/^All 3 chambers can be filled\. The tightest has \.\d+ in to spare\.$/);
  });

  test('the plan they make turns by the evaluation', () => {
    const job = withParts(...right, loose('longer', { length: 0.1725 }));
    const planned = asPlanned(job, match(job));
    expect(evaluate(planned, SELECTION).lines[0]?.verdict).toBe('turns');
  });

  test('one pin of which there are two copies stands in two chambers', () => {
    const twins = buildJob({ chambers: [{ rootDepth: 0.26 }, { rootDepth: 0.26 }] });
    const two = match(withBag(twins, [loose('twin', { length: 0.172, quantity: 2 })]));
    const one = match(withBag(twins, [loose('twin', { length: 0.172, quantity: 1 })]));
    expect([two.filled, one.filled]).toEqual([2, 1]);
  });
});

describe('parts the same length for all a caliper can tell', () => {
  const same = (id: string, more: Parameters<typeof loose>[1]) => loose(id, { length: 0.172, ...more });

  test('the one from this cylinder is taken, then the better one, then the one that is there already', () => {
    const poor = same('poor', { condition: 'poor' });
    const good = same('good', { condition: 'good' });
    const own = same('own', { condition: 'poor', from: ' CYLINDER ', length: 0.1721 });
    expect(pins(match(withParts(poor, good)))[0]).toBe('good');
    expect(pins(match(withParts(poor, good, own)))[0]).toBe('own');
    const present = changed(withParts(same('a', {}), same('b', {})), (copy) => {
      copy.plans[0]!.stacks[0]!.items[0] = { part: 'b' };
      // both come from this cylinder, so that only the change is left to settle it
      for (const part of copy.parts) part.from = 'Cylinder';
    });
    expect(pins(match(present))[0]).toBe('b');
  });

  test('a pin that is nearer by a whole step is taken all the same', () => {
    const own = same('own', { from: 'Cylinder', length: 0.1714 });
    // another chamber is tighter, so that what is to spare here does not count
    const tight = loose('tight', { length: 0.134 });
    expect(pins(match(withParts(own, same('nearer', {}), tight)))).toEqual(['nearer', 'tight', null]);
  });
});

describe('locked chambers', () => {
  const locked = changed(withParts(loose('right', { length: 0.172 })), (copy) => {
    copy.parts.push(loose('in-place', { length: 0.169 }));
    copy.plans[0]!.stacks[0]!.items[0] = { part: 'in-place' };
    copy.plans[0]!.stacks[0]!.locked = true;
  });

  test('what is in them stays, and counts as it stands', () => {
    const found = match(locked);
    expect(pins(found)[0]).toBe('in-place');
    expect(found.chambers[0]?.standing?.offset).toBeCloseTo(-0.003 * INCH, 6);
    expect(found.filled).toBe(1);
  });

  test('their parts are not there for others', () => {
    const job = changed(locked, (copy) => {
      copy.plans[0]!.stacks[0]!.items[0] = { part: 'right' };
      copy.cylinders[0]!.chambers[1]!.position = copy.cylinders[0]!.chambers[0]!.position;
      copy.keys[0]!.cuts[1]!.position = copy.keys[0]!.cuts[0]!.position;
    });
    expect(pins(match(job))).not.toContainEqual(undefined);
    expect(pins(match(job)).filter((part) => part === 'right')).toHaveLength(1);
  });

  test('one that does not turn says so and is not counted', () => {
    const job = changed(locked, (copy) => {
      copy.plans[0]!.stacks[0]!.items[0] = { part: 'long' };
      copy.parts.push(loose('long', { length: 0.19 }));
    });
    const found = match(job);
    expect(found.filled).toBe(0);
    expect(found.chambers[0]?.why).toMatch(/^Chamber 1 is locked, and is \.\d+ in too high\.$/);
  });

  test('asked for, a chamber stays as it is without being locked in the plan', () => {
    const job = changed(locked, (copy) => {
      delete copy.plans[0]!.stacks[0]!.locked;
      copy.parts.find((part) => part.id === 'in-place')!.length = inches(0.1655);
    });
    expect(pins(match(job))[0]).toBe('right');
    expect(pins(match(job, { locked: ['chamber-1'] }))[0]).toBe('in-place');
  });
});

describe('what cannot stand in a chamber at all', () => {
  const missing = (...bag: Part[]) => {
    const { pair } = prepareMatch(withParts(...bag), SELECTION);
    return wantedHeight(pair.keyIn, pair.toFill[0]!.place);
  };
  const why = (...bag: Part[]) => match(withParts(...bag)).chambers[0]?.why;

  test('too wide, too narrow, through the slot', () => {
    expect(why(loose('wide', { length: 0.172, diameter: 0.12 }))).toContain('too wide to enter it');
    expect(why(loose('thin', { length: 0.172, diameter: 0.1 }))).toContain('so narrow as to lean over');
    const slotted = changed(withParts(loose('pin', { length: 0.172 })), (copy) => {
      copy.cylinders[0]!.keywayWidth = inches(0.117);
    });
    expect(match(slotted).chambers[0]?.why).toContain('so narrow as to fall through the keyway');
  });

  test('a ball as narrow as the slot is not taken, a wider one is', () => {
    const withBalls = buildJob({ chambers: [{ rootDepth: 0.26, ball: 0.115 }] });
    const bag = [
      loose('pin', { length: 0.057, foot: { kind: 'flat' } }),
      loose('ball', { kind: 'ball', diameter: 0.115 }),
    ];
    const slot = (width: number) =>
      match(
        changed(withBag(withBalls, bag), (copy) => {
          copy.cylinders[0]!.keywayWidth = inches(width);
        }),
      );
    expect(slot(0.115).chambers[0]?.why).toContain('so narrow as to fall through the keyway');
    expect(slot(0.1).chambers[0]?.standing?.items).toEqual([{ part: 'ball' }, { part: 'pin' }]);
  });

  test('a flat pin under a sharp driver never turns, whatever its length', () => {
    const sharp = buildJob({ chambers: [{ rootDepth: 0.26 }], driverEnd: { kind: 'flat' } });
    const found = match(withBag(sharp, [loose('flat', { length: 0.172, top: { kind: 'flat' } })]));
    expect(found.filled).toBe(0);
    expect(found.chambers[0]?.why).toContain('never turns there');
  });

  test('too long and too short, with the nearest and what is needed', () => {
    // Level is .1720 (.432 - .260): what is told reaches no higher, and .1800 is .0080 more than that.
    expect(why(loose('long', { length: 0.18 }), loose('longer', { length: 0.19 }))).toMatch(
      /^Nothing in the bag fits chamber 1: long, the nearest, is \.008 in too long\. It needs a bottom pin of \.1\d+ in to \.1720 in, best \.1720 in\.$/,
    );
    expect(why(loose('short', { length: 0.15 }))).toContain('too short');
    // .00005 in under the lowest that turns, by what the evaluation tells
    const { from = NaN } = missing(loose('short', { length: 0.15 })) ?? {};
    const hair = loose('hair', { length: Math.round((from / INCH - 0.00005) * 1e6) / 1e6 });
    expect(why(hair)).toContain('hair, the nearest, is less than .0005 in too short. It needs');
  });
});

describe('filing a loose pin', () => {
  const long = (more = {}) => withParts(loose('long', { length: 0.18, ...more }));

  test('is not offered unless it is asked for', () => {
    expect(match(long()).filled).toBe(0);
    expect(match(long(), { mostFiled: null }).filled).toBe(0);
  });

  test('shortens it to the best height, in whole steps, by no more than was said', () => {
    const { chambers, answer } = match(long(), { mostFiled: 0.01 * INCH });
    expect(chambers[0]?.standing?.filedOff).toBeCloseTo(0.008 * INCH, 6);
    expect(chambers[0]?.standing?.offset).toBeCloseTo(0, 6);
    expect(answer).toContain('One pin has to be filed.');
    expect(match(long(), { mostFiled: 0.003 * INCH }).filled).toBe(0);
  });

  test('never touches an original, and never a pin that fits as it is', () => {
    expect(match(long({ original: true }), { mostFiled: 0.01 * INCH }).filled).toBe(0);
    const job = withParts(loose('long', { length: 0.18 }), loose('low', { length: 0.1695 }));
    const { chambers } = match(job, { mostFiled: 0.01 * INCH });
    expect(chambers[0]?.standing).toMatchObject({ items: [{ part: 'low' }], filedOff: 0 });
  });

  test('a filed stack stands where the evaluation of the shortened pin says', () => {
    const found = match(long(), { mostFiled: 0.01 * INCH });
    const standing = found.chambers[0]?.standing;
    const shortened = changed(asPlanned(long(), found), (copy) => {
      copy.parts.find((part) => part.id === 'long')!.length = statedInches(
        0.18 - (standing?.filedOff ?? 0) / INCH,
      );
    });
    const split = evaluate(shortened, SELECTION).chambers[0]?.splits[0];
    expect(split?.offset).toBeCloseTo(standing?.offset ?? NaN, 6);
    expect(split?.margin).toBeCloseTo(standing?.margin ?? NaN, 6);
  });
});

describe('a bag that gives little', () => {
  test('an empty bag gives an answer', () => {
    const found = match(changed(withParts(), (copy) => (copy.parts = [])));
    expect(found).toMatchObject({ filled: 0, of: 3, smallestToSpare: null });
    expect(found.answer).toBe(
      '0 of 3 chambers can be filled. There is nothing in the bag for chamber 1 yet.',
    );
  });

  test('parts of which none is left do not count', () => {
    const found = match(withParts(loose('none', { length: 0.172, quantity: 0 })));
    expect(found.filled).toBe(0);
  });

  test('absurd lengths are left alone', () => {
    const lengths = [-3, 0, 1e-7, 30, 39];
    const found = match(withParts(...lengths.map((length, i) => loose(`absurd-${i}`, { length }))));
    expect(found.filled).toBe(0);
    expect(found.notes).toEqual(['2 parts have a length of nothing or less: read again.']);
  });

  test('parts without a length are named, and so are labels used twice', () => {
    const found = match(
      withParts(
        loose('a', { length: 0.172, label: 'P07' }),
        loose('b', { length: 0.132, label: 'P07' }),
        loose('c', { length: null }),
      ),
    );
    expect(found.filled).toBe(2);
    expect(found.notes).toEqual([
      '2 parts are called P07: give each its own label, or you may take the wrong one.',
      '1 part has no length yet and cannot be chosen.',
    ]);
  });

  test('a play of nothing with flat ends leaves no window, and says so', () => {
    const job = changed(
      buildJob({ chambers: [{ rootDepth: 0.26 }], clearance: 0, driverEnd: { kind: 'flat' } }),
      (copy) => void copy.parts.push(loose('flat', { length: 0.172, top: { kind: 'flat' } })),
    );
    const found = match(withBag(job, []));
    expect(found.filled).toBe(0);
    expect(found.chambers[0]?.why).toContain('dome or bevel the pin');
  });

  test('sizes that cannot be give a sentence', () => {
    const job = changed(withParts(loose('pin', { length: 0.172 })), (copy) => {
      copy.cylinders[0]!.bodies[0]!.outerDiameter = inches(0.001);
    });
    const found = match(job);
    expect(found.filled).toBe(0);
    expect(found.answer.length).toBeGreaterThan(20);
  });

  test('a key without measured cuts is what is missing then', () => {
    const job = changed(withParts(loose('pin', { length: 0.172 })), (copy) => {
      for (const cut of copy.keys[0]!.cuts) delete cut.rootDepth;
    });
    expect(match(job).answer).toBe('The key has no measured cut yet: measure its cuts first.');
  });

  test('one cut that was not measured leaves its chamber open', () => {
    const job = changed(withParts(...LEVEL.map((length, i) => loose(`p${i}`, { length }))), (copy) => {
      delete copy.keys[0]!.cuts[1]!.rootDepth;
    });
    const found = match(job);
    // without its cut the blade stands there at full height, and the nearest measured cut is another one
    expect(found.chambers[1]?.standing).toBeNull();
    expect(found.filled).toBe(2);
  });
});

test('to spare is counted in steps of the unit the job is kept in', () => {
  const job = withParts(loose('pin', { length: 0.172 }));
  const inInches = match(job).chambers[0]?.standing;
  const inMm = match(changed(job, (copy) => (copy.settings.unit = 'mm'))).chambers[0]?.standing;
  expect(inInches?.spare).toBe(Math.round((inInches?.margin ?? 0) / HALF_THOU));
  expect(inMm?.spare).toBe(Math.round((inMm?.margin ?? 0) / 0.01));
});
