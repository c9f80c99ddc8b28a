/** Sentences and small decisions of the matching, each branch and boundary by hand. Lengths in inches where said. */
import { describe, expect, test } from 'vitest';
import { buildFilled } from '../../support/filled-bag.ts';
import { assignAround, type Held } from '../../../src/model/matching/held.ts';
import { matchParts, measuringOf, prepareMatch } from '../../../src/model/matching/match.ts';
import {
  leastMargin,
  resolutionOf,
  stepsApart,
  stepsToSpare,
  stepsToTakeOff,
} from '../../../src/model/matching/resolution.ts';
import { layOutSite } from '../../../src/model/matching/site.ts';
import { takeStock } from '../../../src/model/matching/stock.ts';
import { sayUse, usedTooOften } from '../../../src/model/matching/used-parts.ts';
import type { Job } from '../../../src/model/schema/job-schema.ts';
import type { Part } from '../../../src/model/schema/parts-schema.ts';
import { loose, withBag } from '../../support/bag-job.ts';
import { buildJob, changed, joinJobs } from '../../support/job-builder.ts';
import { SELECTION } from '../../support/small-job.ts';
import { inches } from '../../support/values.ts';

/** Calls for a pin of .172 in. */
const ONE = buildJob({ chambers: [{ rootDepth: 0.26 }] });
const TWO = buildJob({ chambers: [{ rootDepth: 0.26 }, { rootDepth: 0.3 }] });
const siteOf = (job: Job, options: Parameters<typeof layOutSite>[3] = {}) =>
  layOutSite(job, SELECTION, takeStock(job, measuringOf(job)), options);

describe('what to know about the bag', () => {
  const notes = (job: Job) => matchParts(job, SELECTION).notes;
  const labelled = (...labels: readonly string[]) =>
    notes(
      withBag(
        ONE,
        labels.map((label, i) => loose(`p${i}`, { length: 0.172, label })),
      ),
    );

  test('labels used twice, but not those that say nothing', () => {
    expect(labelled('a', 'b')).toEqual([]);
    expect(labelled('', '', ' ', ' ')).toEqual([]);
    expect(labelled('a', 'a', 'b')).toEqual([
      '2 parts are called a: give each its own label, or you may take the wrong one.',
    ]);
    expect(labelled('a', 'a', 'b', 'b', 'b', 'c', 'c')[0]).toMatch(
      /^2 parts are called a, and 2 other labels are used more than once: give each/u,
    );
    expect(labelled('a', 'a', 'b', 'b')[0]).toContain(
      'called a, and 1 other label is used more than once: give each',
    );
  });

  test('what has no length, or a length of nothing, one or several', () => {
    const none = (id: string) => loose(id, { length: null });
    const nothing = (id: string) => loose(id, { length: 0 });
    expect(notes(withBag(ONE, [none('a')]))).toEqual(['1 part has no length yet and cannot be chosen.']);
    expect(notes(withBag(ONE, [none('a'), none('b'), nothing('c')]))).toEqual([
      '2 parts have no length yet and cannot be chosen.',
      '1 part has a length of nothing or less: read again.',
    ]);
  });

  test('dimples that were not measured, only where balls are taken', () => {
    const cup = { kind: 'cup', mouthDiameter: 0.06, includedAngleDeg: 118 } as const;
    const bag = (count: number) => [
      loose('ball', { kind: 'ball', diameter: 0.115 }),
      ...Array.from({ length: count }, (_, i) => loose(`p${i}`, { length: 0.06, diameter: null, foot: cup })),
    ];
    const onBalls = buildJob({ chambers: [{ rootDepth: 0.26, ball: 0.115 }] });
    const sentence = 'a dimple that was not measured: measure ball + bottom pin together.';
    expect(notes(withBag(onBalls, bag(1)))).toEqual([`1 pin has ${sentence}`]);
    expect(notes(withBag(onBalls, bag(2)))).toEqual([`2 pins have ${sentence}`]);
    expect(notes(withBag(ONE, bag(2)))).toEqual([]);
  });

  test('a cylinder whose chambers are all closed has none to fill', () => {
    const closed = changed(ONE, (copy) => (copy.cylinders[0]!.chambers[0]!.closed = true));
    expect(matchParts(closed, SELECTION)).toMatchObject({
      answer: 'This cylinder has no open chamber.',
      chambers: [],
      filled: 0,
      of: 0,
      smallestToSpare: null,
    });
  });
});

describe('a locked chamber', () => {
  const locked = (change: (copy: Job) => void) =>
    matchParts(
      changed(ONE, (copy) => {
        copy.plans[0]!.stacks[0]!.locked = true;
        change(copy);
      }),
      SELECTION,
    ).chambers[0]!;
  const pin = (copy: Job) => copy.parts.find(({ id }) => id === 'bottom-pin-1')!;

  test('that turns is told with how it stands', () => {
    const { why, standing, isLocked } = locked(() => undefined);
    expect([why, isLocked, standing?.items, standing?.filedOff]).toEqual([
      null,
      true,
      [{ part: 'bottom-pin-1' }],
      0,
    ]);
    expect(standing?.offset).toBeCloseTo(0, 6);
    expect(standing?.height).toBeCloseTo(0.172 * 25.4, 6);
    expect(standing?.deviation).toBe(0);
    expect(standing?.spare).toBeGreaterThan(0);
  });

  test.each([
    ['too high', 0.18, /^Chamber 1 is locked, and is \.\d+ in too high\.$/u],
    ['too low', 0.15, /^Chamber 1 is locked, and is \.\d+ in too low\.$/u],
  ])('%s says so', (_, length, sentence) => {
    const { why, standing } = locked((copy) => (pin(copy).length = inches(length)));
    expect(why).toMatch(sentence);
    expect(standing?.spare).toBeLessThan(0);
  });

  test('of unknown height, or of a shape that cannot turn there, says so', () => {
    const unknown = { standing: null, why: 'Chamber 1 is locked, and its height is not known.' };
    expect(locked((copy) => delete pin(copy).length)).toMatchObject(unknown);
    expect(locked((copy) => (copy.plans[0]!.stacks[0]!.items = []))).toMatchObject(unknown);
    expect(locked((copy) => delete copy.keys[0]!.cuts[0]!.rootDepth)).toMatchObject(unknown);
    const flat = changed(
      buildJob({
        chambers: [{ rootDepth: 0.26 }],
        driverEnd: { kind: 'flat' },
        pinTop: { kind: 'flat' },
        clearance: 0,
      }),
      (copy) => {
        copy.plans[0]!.stacks[0]!.locked = true;
      },
    );
    expect(matchParts(flat, SELECTION).chambers[0]).toMatchObject({
      standing: null,
      why: 'Chamber 1 is locked with parts that cannot turn there.',
    });
  });
});

describe('a cylinder laid out', () => {
  test('takes balls if its plan has any, or, with an empty plan, if there are some', () => {
    const ball = loose('ball', { kind: 'ball', diameter: 0.115 });
    const flat = loose('flat', { length: 0.06, foot: { kind: 'flat' } });
    const empty = (job: Job) =>
      changed(job, (copy) => {
        for (const stack of copy.plans[0]!.stacks) stack.items = [];
      });
    expect(siteOf(TWO).takesBall).toBe(false);
    expect(siteOf(withBag(TWO, [ball, flat])).takesBall).toBe(false);
    expect(siteOf(empty(withBag(TWO, [ball, flat]))).takesBall).toBe(true);
    expect(siteOf(empty(withBag(TWO, [flat]))).takesBall).toBe(false);
    const one = buildJob({ chambers: [{ rootDepth: 0.26 }, { rootDepth: 0.26, ball: 0.115 }] });
    expect(siteOf(one).takesBall).toBe(true);
  });

  const ids = (items: readonly { readonly part: string }[]) => items.map(({ part }) => part);
  const masters = buildJob({ chambers: [{ rootDepth: 0.26, masterPins: [0.03] }, { rootDepth: 0.3 }] });

  test('what is chosen is the lower stack; the master pin stays, or is chosen too', () => {
    const [first, second] = siteOf(masters).places;
    expect([ids(first!.present), ids(first!.above)]).toEqual([
      ['bottom-pin-1'],
      ['master-pin-1-1', 'driver-1', 'spring-1'],
    ]);
    expect(first!.over?.role).toBe('masterPin');
    expect([ids(second!.present), ids(second!.above)]).toEqual([['bottom-pin-2'], ['driver-2', 'spring-2']]);
    const [both] = siteOf(masters, { choosesMasterPins: true }).places;
    expect([ids(both!.present), ids(both!.above)]).toEqual([
      ['bottom-pin-1', 'master-pin-1-1'],
      ['driver-1', 'spring-1'],
    ]);
    expect(both!.over?.part.id).toBe('driver-1');
  });

  test('without a driver nothing stands on what is chosen', () => {
    const bare = changed(masters, (copy) => {
      copy.plans[0]!.stacks[0]!.items = [{ part: 'bottom-pin-1' }, { part: 'spring-1' }];
      copy.plans[0]!.stacks[1]!.items = [{ part: 'bottom-pin-2' }, { part: 'gone' }];
    });
    for (const choosesMasterPins of [false, true]) {
      const [first, second] = siteOf(bare, { choosesMasterPins }).places;
      expect([ids(first!.present), ids(first!.above), first!.over]).toEqual([
        ['bottom-pin-1'],
        ['spring-1'],
        null,
      ]);
      expect([ids(second!.present), ids(second!.above), second!.over]).toEqual([['bottom-pin-2'], [], null]);
    }
  });

  test('locked in the plan or asked for; what stays is counted as kept', () => {
    const locked = changed(masters, (copy) => (copy.plans[0]!.stacks[1]!.locked = true));
    expect(siteOf(locked).places.map(({ isLocked }) => isLocked)).toEqual([false, true]);
    expect(siteOf(locked, { locked: ['chamber-1'] }).places.map(({ isLocked }) => isLocked)).toEqual([
      true,
      true,
    ]);
    expect(siteOf(locked).kept.parts).toEqual([
      'master-pin-1-1',
      'driver-1',
      'spring-1',
      'driver-2',
      'spring-2',
      'bottom-pin-2',
    ]);
  });

  test('only a hole that somebody measured bars a part, and only a part that somebody measured is barred', () => {
    const wide = loose('wide', { length: 0.172, diameter: 0.125 });
    const open = loose('open', { length: 0.172, diameter: null });
    const barred = (change: (copy: Job) => void, part: Part) => {
      const site = siteOf(changed(withBag(ONE, [part]), change));
      const batch = site.stock.batches.find(({ example }) => example[0]?.id === part.id)!;
      return site.fitOf(site.places[0]!, batch)?.barred;
    };
    const across = (copy: Job) => siteOf(copy).places[0]!.across;
    expect(barred(() => undefined, wide)).toBe('too wide');
    expect(barred(() => undefined, open)).toBeNull();
    expect(
      barred((copy) => copy.cylinders[0]!.chambers[0]!.holes.forEach((hole) => delete hole.diameter), wide),
    ).not.toBe('too wide');
    expect(across(ONE)).toBeCloseTo(0.12 * 25.4, 6);
    // the plug's hole is the first that counts, wherever it is listed
    expect(across(changed(ONE, (copy) => copy.cylinders[0]!.chambers[0]!.holes.reverse()))).not.toBeNull();
    expect(across(changed(ONE, (copy) => (copy.cylinders[0]!.chambers[0]!.holes = [])))).toBeNull();
    const second = changed(TWO, (copy) =>
      copy.cylinders[0]!.chambers[1]!.holes.forEach((hole) => delete hole.diameter),
    );
    expect(siteOf(second).places.map((place) => place.across === null)).toEqual([false, true]);
    // of the plug's hole alone nobody may know it; the first listed counts then
    const plug = changed(
      ONE,
      (copy) => delete copy.cylinders[0]!.chambers[0]!.holes.find(({ body }) => body === 'plug')!.diameter,
    );
    expect(across(plug)).toBeNull();
    expect(across(changed(plug, (copy) => copy.cylinders[0]!.chambers[0]!.holes.reverse()))).not.toBeNull();
    // exactly as wide as the hole; nine tenths of it
    expect(barred(() => undefined, loose('same', { length: 0.172, diameter: 0.12 }))).toBe('too wide');
    expect(barred(() => undefined, loose('nine', { length: 0.172, diameter: 0.1081 }))).toBeNull();
    expect(barred(() => undefined, loose('less', { length: 0.172, diameter: 0.1079 }))).toBe('too loose');
    const slot = (width: number) => (copy: Job) => void (copy.cylinders[0]!.keywayWidth = inches(width));
    const narrow = loose('narrow', { length: 0.172, diameter: 0.116 });
    expect(barred(slot(0.115), narrow)).toBeNull();
    expect(barred(slot(0.117), narrow)).toBe('falls through');
    expect(barred(slot(0.117), open)).toBeNull();
  });
});

describe('parts in use', () => {
  const two = joinJobs(buildJob({ chambers: 3 }), buildJob({ prefix: 'b-', chambers: 2 }));

  test('three places in a row, and how many there are', () => {
    const thrice = changed(two, (copy) => {
      copy.parts.find(({ id }) => id === 'bottom-pin-1')!.quantity = 2;
      copy.plans[0]!.stacks[2]!.items[0] = { part: 'bottom-pin-1' };
      copy.plans[1]!.stacks[0]!.items[0] = { part: 'bottom-pin-1' };
    });
    expect(
      usedTooOften(thrice).map(({ message, quantity, uses }) => [message, quantity, uses.length]),
    ).toEqual([
      [
        'bottom-pin-1 is in chamber 1 of Cylinder, chamber 3 of Cylinder and in chamber 1 of b-Cylinder, but there are only 2.',
        2,
        3,
      ],
    ]);
    expect(
      usedTooOften(
        changed(thrice, (copy) => (copy.parts.find(({ id }) => id === 'bottom-pin-1')!.quantity = 3)),
      ),
    ).toEqual([]);
  });

  test('a chamber is counted by where it lies, however the list runs', () => {
    const turned = changed(two, (copy) => copy.cylinders[0]!.chambers.reverse());
    const use = { cylinder: 'cylinder', chamber: 'chamber-3' };
    expect(sayUse(turned, use)).toBe('chamber 3 of Cylinder');
    expect(sayUse({ ...turned, settings: { ...turned.settings, numbering: 'tip' } }, use)).toBe(
      'chamber 1 of Cylinder',
    );
    expect(sayUse(two, { cylinder: 'gone', chamber: 'x' })).toBe('chamber 0 of a cylinder');
  });
});

describe('in steps of the shop', () => {
  test('half a thousandth, or a hundredth of a mm', () => {
    expect([resolutionOf('in'), resolutionOf('mm')]).toEqual([0.0127, 0.01]);
  });

  test('to spare, apart, to take off', () => {
    expect([0, 0.004, 0.006, 0.02, 0.0249].map((mm) => stepsToSpare(mm, 0.01))).toEqual([0, 0, 1, 2, 2]);
    expect([-1e-7, -2.4e-7, -3e-7, -1].map((mm) => stepsToSpare(mm, 0.01))).toEqual([0, 0, -1, -1]);
    expect([0, 1, 3].map((steps) => leastMargin(steps, 0.01))).toEqual([0, 0.005, 0.025]);
    expect([0.014, -0.014, 0.016].map((mm) => stepsApart(mm, 0.01))).toEqual([1, 1, 2]);
    expect([0.02, 0.0200001, 0.021, 0].map((mm) => stepsToTakeOff(mm, 0.01) + 0)).toEqual([2, 2, 3, 0]);
  });
});

describe('held by a person', () => {
  const onBalls = withBag(
    buildJob({
      chambers: [
        { rootDepth: 0.26, ball: 0.115 },
        { rootDepth: 0.26, ball: 0.115 },
      ],
    }),
    [
      loose('pin', { length: 0.057, foot: { kind: 'flat' } }),
      loose('other', { length: 0.0565, foot: { kind: 'flat' } }),
      loose('long', { length: 0.065, foot: { kind: 'flat' } }),
      loose('ball', { kind: 'ball', diameter: 0.115 }),
      loose('small', { kind: 'ball', diameter: 0.1145 }),
    ],
  );
  const held = (asked: readonly Held[], mostFiled: number | null = null) => {
    const { pair, filling } = prepareMatch(onBalls, SELECTION, { mostFiled });
    const { assignment, rows } = assignAround(pair, filling, asked);
    const stands = buildFilled(pair, assignment.chosen);
    return {
      stands,
      rows: rows.map((row) => row.roomiest(9, () => true).length),
      score: assignment.score,
      isProved: assignment.isProved,
      bound: assignment.bound,
    };
  };
  const hold = (chamber: string, parts: readonly string[], isFiled = false): Held => ({
    chamber,
    items: parts.map((part) => ({ part })),
    isFiled,
  });

  test('stays, and the rest is chosen around it', () => {
    const found = held([hold('chamber-2', ['ball', 'pin'])]);
    expect(found.stands).toEqual(['small + other', 'ball + pin']);
    expect(found.rows[1]).toBe(1);
    expect(found.isProved).toBe(true);
    expect(found.bound).toEqual(found.score);
    expect(held([hold('chamber-1', ['small', 'pin'])]).stands).toEqual(['small + pin', 'ball + other']);
  });

  test.each([
    ['a part that is not there', hold('chamber-1', ['ball', 'gone'])],
    ['a pin without its ball', hold('chamber-1', ['pin'])],
    ['the wrong way round', hold('chamber-1', ['pin', 'ball'])],
    ['one more than stands there', hold('chamber-1', ['ball', 'pin', 'other'])],
    ['filed, where it fits as it is', hold('chamber-1', ['ball', 'pin'], true)],
    ['too long as it is', hold('chamber-1', ['ball', 'long'])],
    ['in a chamber that is not there', hold('chamber-9', ['ball', 'pin'])],
  ])('is let go: %s', (_, asked) => {
    expect(held([asked])).toEqual(held([]));
  });

  test('filed, where that was allowed', () => {
    const found = held([hold('chamber-1', ['ball', 'long'], true)], 0.3);
    expect(found.stands[0]).toBe('ball + long, filed');
    expect(held([hold('chamber-1', ['ball', 'long'], false)], 0.3)).toEqual(held([], 0.3));
  });

  test('a part of which there are two may be held twice, one of which there is one only once', () => {
    const twice = changed(onBalls, (copy) => {
      for (const part of copy.parts) if (part.id === 'pin' || part.id === 'ball') part.quantity = 2;
    });
    const asked = [hold('chamber-1', ['ball', 'pin']), hold('chamber-2', ['ball', 'pin'])];
    const { pair, filling } = prepareMatch(twice, SELECTION);
    expect(buildFilled(pair, assignAround(pair, filling, asked).assignment.chosen)).toEqual([
      'ball + pin',
      'ball + pin',
    ]);
    expect(held(asked).stands).toEqual(['ball + pin', 'small + other']);
  });

  test('each stands where it is held', () => {
    const found = held([hold('chamber-1', ['ball', 'pin']), hold('chamber-2', ['ball', 'other'])]);
    expect(found.stands[0]).toBe('ball + pin');
    expect(found.stands[1]).toBe('small + other');
  });
});
