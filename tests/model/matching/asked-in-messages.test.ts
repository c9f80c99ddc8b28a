/** Every kind of question that the station of the parts asks, against the function that answers it; and how a wanted part is said. */
import { describe, expect, test } from 'vitest';
import { alternativesFor } from '../../../src/model/matching/alternatives.ts';
import { assign } from '../../../src/model/matching/assign.ts';
import { buildTogether } from '../../../src/model/matching/build-together.ts';
import { chooseKeys } from '../../../src/model/matching/choose-keys.ts';
import { deeperCut } from '../../../src/model/matching/deeper-cut.ts';
import { matchParts, prepareMatch } from '../../../src/model/matching/match.ts';
import { pairTable, runToEnd } from '../../../src/model/matching/match-many.ts';
import { answerRequest } from '../../../src/model/matching/matching-request.ts';
import { rowsOf } from '../../../src/model/matching/pair-to-fill.ts';
import { matchTwoKeys } from '../../../src/model/matching/two-keys.ts';
import { sayWanted, type WantedHeight, wantedHeight } from '../../../src/model/matching/wanted-height.ts';
import type { Part } from '../../../src/model/schema/parts-schema.ts';
import type { Job } from '../../../src/model/schema/job-schema.ts';
import { loose, withBag } from '../../support/bag-job.ts';
import { smallManyJob } from '../../support/drawn-many.ts';
import { buildJob, changed } from '../../support/job-builder.ts';
import { withKey } from '../../support/keyed-job.ts';
import { SELECTION } from '../../support/small-job.ts';
import { inches } from '../../support/values.ts';

const ONE = buildJob({ chambers: [{ rootDepth: 0.26 }] });
const pins = (count: number) =>
  Array.from({ length: count }, (_, i) => loose(`p${i}`, { length: 0.172 - i * 0.00005 }));

describe('each question', () => {
  const { job, ask } = smallManyJob(3);
  const selection = { ...ask.cylinders[0]!, key: ask.keys[0]! };

  test('a match, with what would complete it', () => {
    const { match, missing } = runToEnd(
      answerRequest<'match'>(job, { kind: 'match', selection, ask: { held: [] } }),
    );
    expect(match).toEqual(matchParts(job, selection));
    expect(missing).toEqual([]);
  });

  test('alternatives, twelve at most', () => {
    const many = withBag(ONE, pins(20));
    const { pair, filling } = prepareMatch(many, SELECTION);
    const assignment = assign(rowsOf(pair, filling), (part) => filling.copies[part] ?? 0);
    const found = runToEnd(
      answerRequest<'alternatives'>(many, {
        kind: 'alternatives',
        selection: SELECTION,
        ask: { held: [] },
        chamber: 'chamber-1',
      }),
    );
    expect(found).toHaveLength(12);
    expect(found).toEqual(alternativesFor(pair, filling, assignment, 'chamber-1'));
    expect(alternativesFor(pair, filling, assignment, 'chamber-1', 3)).toEqual(found.slice(0, 3));
    expect(alternativesFor(pair, filling, assignment, 'gone')).toEqual([]);
  });

  test('two keys, a deeper cut', () => {
    const two = withBag(withKey(ONE, 'other', [0.23]), [loose('p', { length: 0.172 })]);
    const wants = [
      { key: 'key', line: 'line' },
      { key: 'other', line: 'line' },
    ] as const;
    const asked = { cylinder: 'cylinder', plan: 'plan', wants };
    expect(runToEnd(answerRequest<'two keys'>(two, { kind: 'two keys', selection: asked }))).toEqual(
      matchTwoKeys(two, asked),
    );
    expect(
      runToEnd(
        answerRequest<'deeper cut'>(two, { kind: 'deeper cut', selection: SELECTION, chamber: 'chamber-1' }),
      ),
    ).toEqual(deeperCut(two, SELECTION, 'chamber-1'));
  });

  test('the table, and several built together', () => {
    expect(runToEnd(answerRequest<'table'>(job, { kind: 'table', ask }))).toEqual(
      runToEnd(pairTable(job, ask)),
    );
    const selections = ask.cylinders.map((each, i) => ({ ...each, key: ask.keys[i]! }));
    expect(
      runToEnd(answerRequest<'together'>(job, { kind: 'together', selections, mostFiled: 0.1 })),
    ).toEqual(buildTogether(job, selections, 0.1));
    expect(() => buildTogether(job, [selections[0]!, { ...selections[0]!, key: ask.keys[1]! }])).toThrow(
      'a cylinder can be built for one key at a time',
    );
  });

  test('keys: every case is told, then the choice with the cylinders built', () => {
    const { job: drawn, ask: asked } = smallManyJob(2);
    const withFiling = { ...asked, mostFiled: 0.1, eachKeyOnce: true };
    const steps = [...answerRequest<'keys'>(drawn, { kind: 'keys', ask: withFiling })];
    expect(steps).toEqual([...chooseKeys(drawn, withFiling)].map(({ cases }) => ({ done: cases, of: null })));
    const { choice, together } = runToEnd(answerRequest<'keys'>(drawn, { kind: 'keys', ask: withFiling }));
    expect(choice).toEqual(runToEnd(chooseKeys(drawn, withFiling)));
    const pairs = choice.keys.flatMap(({ key, ...each }) => (key === null ? [] : [{ ...each, key }]));
    expect(together).toEqual(buildTogether(drawn, pairs, 0.1));
    const none = runToEnd(answerRequest<'keys'>(drawn, { kind: 'keys', ask: { ...asked, keys: [] } }));
    expect(none.together).toBeNull();
    expect(none.choice.keys.map(({ key }) => key)).toEqual(asked.cylinders.map(() => null));
    // one key for two cylinders, each once: only one is built
    const one = runToEnd(
      answerRequest<'keys'>(drawn, {
        kind: 'keys',
        ask: { ...asked, keys: asked.keys.slice(0, 1), eachKeyOnce: true },
      }),
    );
    expect(one.together?.matches).toHaveLength(1);
  });
});

describe('a wanted part in words', () => {
  const wanted: WantedHeight = {
    chamber: 'chamber-1',
    number: 1,
    from: 0.168 * 25.4,
    to: 0.174 * 25.4,
    best: 0.172 * 25.4,
    ball: null,
    ballDiameter: null,
    hasBall: false,
  };
  const on = { hasBall: true, ballDiameter: 0.115 * 25.4 };

  test.each<[string, Partial<WantedHeight>, Parameters<typeof sayWanted>[1]]>([
    ['a bottom pin of .1680 in to .1740 in, best .1720 in', {}, null],
    [
      'a bottom pin of .1700 in to .1710 in, best .1710 in',
      {},
      { from: 0.17 * 25.4, to: 0.171 * 25.4, isAbout: false },
    ],
    ['a bottom pin of about .1700 in', {}, { from: 0.17 * 25.4, to: 0.17 * 25.4, isAbout: true }],
    ['a bottom pin of up to .1710 in', {}, { from: 0, to: 0.1712 * 25.4, isAbout: false }],
    ['a bottom pin of up to .1740 in', { from: -1 }, null],
    ['a ball + bottom pin of .1680 in to .1740 in, best .1720 in, with a ball of .1150 in', on, null],
    [
      'a ball + bottom pin of .1680 in to .1740 in, best .1720 in, with a ball of .1150 in (B1)',
      { ...on, ball: { label: 'B1' } as Part },
      null,
    ],
    ['a ball + bottom pin of .1680 in to .1740 in, best .1720 in', { hasBall: true }, null],
  ])('%s', (text, change, sure) => {
    expect(sayWanted({ ...wanted, ...change }, sure, 'in')).toBe(text);
  });

  test('in mm', () => {
    expect(sayWanted(wanted, null, 'mm')).toBe('a bottom pin of 4.27 mm to 4.41 mm, best 4.37 mm');
  });

  const wantedIn = (job: Job) => {
    const { pair } = prepareMatch(job, SELECTION);
    return wantedHeight(pair.keyIn, pair.toFill[0]!.place);
  };
  const empty = (job: Job) =>
    changed(job, (copy) => {
      for (const stack of copy.plans[0]!.stacks) stack.items = stack.items.slice(-2);
      copy.plans[0]!.stacks[0]!.items = [];
    });

  test('like what is there, else like the commonest of the bag, else the usual one', () => {
    const flat = { kind: 'flat' } as const;
    const round = { kind: 'dome' } as const;
    expect(wantedIn(ONE)!.best / 25.4).toBeCloseTo(0.172, 6);
    // flat tops under a driver with a broken edge have to stand lower than domed ones
    const bag = (flats: number, domes: number) =>
      wantedIn(
        empty(
          withBag(ONE, [
            ...Array.from({ length: flats }, (_, i) => loose(`f${i}`, { length: 0.1, top: flat })),
            ...Array.from({ length: domes }, (_, i) => loose(`d${i}`, { length: 0.1, top: round })),
          ]),
        ),
      )!;
    expect(bag(3, 1).from).toBe(bag(2, 0).from);
    expect(bag(1, 3).from).toBe(bag(0, 2).from);
    expect(bag(3, 1).from).not.toBe(bag(1, 3).from);
    const usual = wantedIn(empty(changed(ONE, (copy) => (copy.parts = []))));
    expect(usual).toMatchObject({ hasBall: false, ball: null, ballDiameter: null, number: 1 });
  });

  test('on a ball: its diameter, and the ball where it is one of the job', () => {
    const onBall = buildJob({ chambers: [{ rootDepth: 0.26, ball: 0.115 }] });
    expect(wantedIn(onBall)).toMatchObject({ hasBall: true, ball: { id: 'ball-1' } });
    expect(wantedIn(onBall)!.ballDiameter! / 25.4).toBeCloseTo(0.115, 6);
    const usual = wantedIn(
      changed(onBall, (copy) => {
        copy.parts = copy.parts.filter(({ id }) => id === 'ball-1' || id.startsWith('driver'));
        copy.plans[0]!.stacks[0]!.items = [{ part: 'ball-1' }];
      }),
    );
    expect(usual).toMatchObject({ hasBall: true });
  });
});

describe('why a chamber stays empty', () => {
  const why = (job: Job) => matchParts(job, SELECTION).chambers[0]!.why;
  const bare = (job: Job) =>
    changed(
      job,
      (copy) =>
        (copy.parts = copy.parts.filter(({ kind, id }) => kind === 'spring' || id.startsWith('driver'))),
    );

  test('several are barred, the most common reason first', () => {
    const bag = [
      loose('narrow', { length: 0.172, diameter: 0.1 }),
      loose('wide-1', { length: 0.172, diameter: 0.125 }),
      loose('wide-2', { length: 0.171, diameter: 0.126 }),
      loose('wide-3', { length: 0.171, diameter: 0.126, quantity: 0 }),
    ];
    expect(why(withBag(ONE, bag))).toBe(
      'Nothing in the bag can stand in chamber 1: 2 are too wide to enter it; 1 is so narrow as to lean over in it.',
    );
  });

  test('everything on hand is in use', () => {
    const other = changed(ONE, (copy) => {
      copy.cylinders.push({ ...structuredClone(copy.cylinders[0]!), id: 'other' });
      copy.plans.push({ ...structuredClone(copy.plans[0]!), id: 'elsewhere', cylinder: 'other' });
      copy.plans[0]!.stacks[0]!.items = copy.plans[0]!.stacks[0]!.items.slice(1);
      copy.plans[0]!.stacks[0]!.items = [];
    });
    expect(why(other)).toMatch(
      /^No loose part is left for chamber 1: everything on hand is in use\. It needs a bottom pin of /u,
    );
  });

  test('a ball is wanted and there is none; there are only balls', () => {
    const onBall = buildJob({ chambers: [{ rootDepth: 0.26, ball: 0.115 }] });
    const noBall = changed(bare(onBall), (copy) => {
      copy.parts.push(loose('ball-1', { kind: 'ball', diameter: null }), loose('p', { length: 0.1 }));
      copy.plans[0]!.stacks[0]!.items = [{ part: 'ball-1' }, { part: 'driver-1' }];
    });
    expect(why(noBall)).toBe('There is no ball with a bottom pin in the bag for chamber 1.');
    expect(why(changed(bare(ONE), (copy) => (copy.parts = [])))).toBe(
      'There is nothing in the bag for chamber 1 yet.',
    );
    const together = changed(bare(ONE), (copy) => {
      copy.parts = [
        loose('ball', { kind: 'ball', diameter: 0.115 }),
        loose('p', { length: null }),
        loose('q', { length: null }),
      ];
      copy.groups = [{ id: 'g', parts: ['ball', 'p'], height: inches(0.17) }];
      copy.plans[0]!.stacks[0]!.items = [{ part: 'q' }];
    });
    expect(why(together)).toBe(
      'There is no bottom pin in the bag that goes without a ball, as in chamber 1.',
    );
  });
});
