/**
 * What is expected of each test after the assembly, from facts made up for it: one field changed at a time, the sentences written out.
 * Two chambers, two lines where said. mm.
 */
import { describe, expect, test } from 'vitest';
import type { EndShape } from '../../../src/model/end-shape.ts';
import { type Facts, gatherFacts } from '../../../src/model/findings/facts.ts';
import { loadSheet } from '../../../src/model/load-sheet/load-sheet.ts';
import { type LoadTest, loadTests } from '../../../src/model/load-sheet/load-tests.ts';
import { splitThat } from '../../../src/model/load-sheet/split-that.ts';
import { sayWayUp } from '../../../src/model/load-sheet/way-up.ts';
import type { Job } from '../../../src/model/schema/job-schema.ts';
import { lookAt } from '../../support/cylinder-h.ts';
import { buildJob, changed } from '../../support/job-builder.ts';

const factsOf = (job: Job): Facts => {
  const { bench, assembly, evaluation } = lookAt(job);
  return gatherFacts(bench, assembly, evaluation);
};
const JOB = buildJob({ chambers: [{ rootDepth: 0.26 }, { rootDepth: 0.3 }] });
const FACTS = factsOf(JOB);
const SLEEVED = factsOf(
  buildJob({
    chambers: [{ rootDepth: 0.26 }, { rootDepth: 0.3 }],
    sleeve: { outerDiameter: 0.64, clearance: 0.004 },
  }),
);

/** The same facts with some members of some parts changed. */
function withFacts<Name extends keyof Facts>(name: Name, change: Partial<Facts[Name]>, facts = FACTS): Facts {
  return { ...facts, [name]: { ...(facts[name] as object), ...change } };
}

function told(facts: Facts, what: RegExp): Omit<LoadTest, 'what'> {
  const found = loadTests(facts).find((each) => what.test(each.what));
  if (found === undefined) throw new Error(`no test ${String(what)}`);
  return { expected: found.expected, isGood: found.isGood };
}

test('the tests in their order', () => {
  expect(loadTests(FACTS).map(({ what }) => what)).toEqual([
    'Chambers 1 and 2 alone, one after the other: the lower stack in the empty shell, then with driver and spring',
    'Key out: try to turn the plug with a screwdriver blade',
    'Key in and out twenty times, slowly and quickly',
    'Key fully in: turn both ways, all the way',
    'The same with the key lifted lightly, and pressed down lightly',
    'Key one cut short of home: try to turn',
    'Pull the key at 5°, 45°, 90° and 180°',
    'A wrong key of the same keyway',
    'With the lock body, then on the door, the door open and the key in your hand',
  ]);
  expect(loadTests(FACTS).at(-1)).toMatchObject({ expected: 'the same as on the bench', isGood: null });
});

describe('chambers one by one', () => {
  type Alone = Facts['evaluation']['chambers'][number]['alone'];
  const withAlone = (...alone: readonly Alone[]): Facts => {
    const [first] = FACTS.evaluation.chambers;
    const chambers = alone.map((each, i) => ({ ...first!, number: i + 1, alone: each }));
    return withFacts('evaluation', { chambers });
  };
  const [good, bad, open] = ['turns', 'does not turn', "can't say"] as const;
  const rows = (...alone: readonly Alone[]) =>
    loadTests(withAlone(...alone))
      .filter(({ what }) => / alone/u.test(what))
      .map(({ what, expected, isGood }) => [what.split(':')[0], expected, isGood]);

  test.each([
    [good, good, true],
    [good, bad, false],
    [bad, good, false],
    [bad, bad, false],
    [good, open, null],
    [open, good, null],
    [open, open, null],
    [bad, open, false],
    [open, bad, false],
  ] as const)('%s, then %s: good %s', (lowerStackOnly, withDriver, isGood) => {
    expect(rows({ lowerStackOnly, withDriver } as Alone)).toEqual([
      ['Chamber 1 alone', `${lowerStackOnly}, then ${withDriver}`, isGood],
    ]);
  });

  test('those that do the same are told together, one that is not known is left out', () => {
    const fine = { lowerStackOnly: good, withDriver: good } as Alone;
    const held = { lowerStackOnly: good, withDriver: bad } as Alone;
    expect(rows(fine, held, null, fine, fine)).toEqual([
      ['Chambers 1, 4 and 5 alone, one after the other', 'turns, then turns', true],
      ['Chamber 2 alone', 'turns, then does not turn', false],
    ]);
    expect(rows(null)).toEqual([]);
  });
});

describe('key out', () => {
  type Locks = boolean | null;
  const keyOut = (facts: Facts, ...locks: readonly (readonly Locks[])[]) => {
    const [first] = facts.rest.chambers;
    const chambers = locks.map((atLines) => ({
      ...first!,
      atLines: atLines.map((each) => ({ ...first!.atLines[0]!, locks: each })),
    }));
    return told(withFacts('rest', { chambers }, facts), /^Key out/u);
  };
  const open = { expected: 'it turns: nothing stands across', isGood: false };
  const unknown = { expected: 'not known: how far the stacks sink is not measured', isGood: null };
  const held = (few: number, of: number) => ({
    expected: `it does not turn: ${few} of ${of} chambers hold`,
    isGood: true,
  });

  test.each([
    [[[true], [true]], held(2, 2)],
    [[[true], [false]], held(1, 2)],
    [[[true], [null]], held(1, 2)],
    [[[false], [false]], open],
    [[[false], [null]], unknown],
    [[[null], [null]], unknown],
    [[], unknown],
    [[[]], unknown],
  ])('one line, %j', (locks, expected) => {
    expect(keyOut(FACTS, ...locks)).toEqual(expected);
  });

  test.each([
    [
      [
        [true, true],
        [true, false],
      ],
      held(1, 2),
    ],
    [
      [
        [true, false],
        [true, false],
      ],
      open,
    ],
    [
      [
        [true, null],
        [true, null],
      ],
      unknown,
    ],
    [
      [
        [null, false],
        [null, false],
      ],
      open,
    ],
  ])('two lines, %j', (locks, expected) => {
    expect(keyOut(SLEEVED, ...locks)).toEqual(expected);
  });
});

describe('in and out', () => {
  const inAndOut = (facts: Facts) => told(facts, /twenty times/u);
  type Rest = Facts['rest']['chambers'][number];
  const withRest = (change: (chamber: Rest, i: number) => Rest): Facts =>
    withFacts('rest', { chambers: FACTS.rest.chambers.map(change) });
  const withRoom = (toSpare: readonly (number | null)[], roomLeft: readonly (number | null)[] = [1, 1]) =>
    withRest((chamber, i) => ({
      ...chamber,
      spring: chamber.spring === null ? null : { ...chamber.spring, toSpare: toSpare[i] ?? null },
      driver: { ...chamber.driver, roomLeft: roomLeft[i] ?? null },
    }));

  test('goes freely where every spring and driver has room, nothing left over included', () => {
    const free = { expected: 'it goes freely', isGood: true };
    expect(inAndOut(withRoom([0.5, 0.2]))).toEqual(free);
    expect(inAndOut(withRoom([0, 0], [0, 0]))).toEqual(free);
    expect(inAndOut(withRoom([0.5, 0.2], [null, null]))).toEqual(free);
  });

  test('stops at the chambers without room, for the spring or for the driver', () => {
    expect(inAndOut(withRoom([-0.1, 0.2]))).toEqual({
      expected: 'it stops: no room above chamber 1',
      isGood: false,
    });
    expect(inAndOut(withRoom([0.1, 0.2], [1, -0.1])).expected).toBe('it stops: no room above chamber 2');
    expect(inAndOut(withRoom([-0.1, null], [1, -0.1])).expected).toBe('it stops: no room above chamber 1, 2');
  });

  test('is open where a spring is not known', () => {
    const open = { expected: 'nothing in the way that is measured; springs are not all known', isGood: null };
    expect(inAndOut(withRoom([0.5, null]))).toEqual(open);
    expect(inAndOut(withRest((chamber) => ({ ...chamber, spring: null })))).toEqual(open);
  });

  test('jams where a foot cannot climb, going in or coming out', () => {
    const first = FACTS.way.chambers[0]!;
    const climbs = (canClimb: boolean | null) => ({ ...first.goingIn!, canClimb }) as typeof first.goingIn;
    const jam = (goingIn: typeof first.goingIn, comingOut: typeof first.goingIn) => {
      const roomy = withRoom([0.5, 0.5]);
      const chambers = FACTS.way.chambers.map((each, i) =>
        i === 1 ? { ...each, goingIn, comingOut } : each,
      );
      return inAndOut(withFacts('way', { chambers }, roomy));
    };
    const jams = { expected: 'it may jam at chamber 2', isGood: false };
    expect(jam(climbs(false), climbs(true))).toEqual(jams);
    expect(jam(climbs(true), climbs(false))).toEqual(jams);
    expect(jam(null, null)).toEqual({ expected: 'it goes freely', isGood: true });
    expect(jam(climbs(null), climbs(null))).toEqual({ expected: 'it goes freely', isGood: true });
  });

  test('nothing is known without a key', () => {
    expect(inAndOut(withFacts('way', { chambers: [] }, withRoom([0.5, 0.5])))).toEqual({
      expected: 'not known: no key yet',
      isGood: null,
    });
  });
});

describe('key in', () => {
  const [line] = FACTS.evaluation.lines;
  const keyIn = (...lines: readonly Partial<NonNullable<typeof line>>[]) =>
    told(withFacts('evaluation', { lines: lines.map((each) => ({ ...line!, ...each })) }), /^Key fully in/u);
  const open = (lean: 'probably turns' | 'probably not' | null) =>
    ({ verdict: "can't say yet", lean }) as const;
  const turns = { verdict: 'turns', lean: null } as const;
  const held = { verdict: 'will not turn', lean: null } as const;

  test.each([
    [[turns], 'it turns', true],
    [[held, turns], 'it turns', true],
    [[held], 'it does not turn', false],
    [[held, held], 'it does not turn', false],
    [[open('probably turns')], 'it probably turns', null],
    [[open('probably not')], 'it probably does not turn', null],
    [[open(null)], 'not known yet', null],
    [[held, open('probably turns')], 'it probably turns', null],
    [[open(null), open('probably not')], 'it probably does not turn', null],
  ] as const)('%j: %s', (lines, expected, isGood) => {
    expect(keyIn(...lines)).toEqual({ expected, isGood });
  });
});

describe('key lifted', () => {
  const lifted = (facts: Facts) => told(facts, /lifted lightly/u);
  type Split = Facts['evaluation']['chambers'][number]['splits'][number];
  /** Both chambers with one split, whose windows and offsets are said. */
  const withSplits = (...said: readonly { offset: number; lowest: number; highest: number }[]): Facts => {
    const chambers = FACTS.evaluation.chambers.map((chamber, i) => {
      const [split] = chamber.splits;
      const { offset, lowest, highest } = said[i]!;
      const changedSplit: Split = { ...split!, offset, window: { ...split!.window, lowest, highest } };
      return { ...chamber, splits: [changedSplit], verdicts: [{ ...chamber.verdicts[0]!, split: 0 }] };
    });
    return withFacts('evaluation', { chambers });
  };

  test('turns up to what the tightest chamber has above it', () => {
    // .002 in and .005 in to the highest
    const facts = withSplits(
      { offset: 0.0254, lowest: -0.1, highest: 0.0762 },
      { offset: -0.0508, lowest: -0.1, highest: 0.0762 },
    );
    expect(lifted(facts)).toEqual({ expected: 'it turns up to a lift of .002 in', isGood: true });
    expect(splitThat(facts).map(({ offset }) => offset)).toEqual([0.0254, -0.0508]);
  });

  test('turns only when lifted, or not at all', () => {
    const low = withSplits(
      { offset: -0.2, lowest: -0.1, highest: 0.1 },
      { offset: -0.15, lowest: -0.1, highest: 0.1 },
    );
    expect(lifted(low)).toEqual({ expected: 'it turns only when lifted', isGood: false });
    const apart = withSplits(
      { offset: -0.2, lowest: -0.1, highest: 0.1 },
      { offset: 0.2, lowest: -0.1, highest: 0.1 },
    );
    expect(lifted(apart)).toEqual({ expected: 'it does not turn', isGood: false });
  });

  test('is not known while a chamber has no split, or there is no key', () => {
    const open = { expected: 'not known yet', isGood: null };
    const chambers = FACTS.evaluation.chambers.map((each) => ({ ...each, splits: [] }));
    expect(lifted(withFacts('evaluation', { chambers }))).toEqual(open);
    expect(told(withFacts('evaluation', { chambers }), /one cut short/u)).toEqual(open);
    expect(lifted(withFacts('assembly', { key: null }))).toEqual(open);
  });

  test('a chamber without a verdict, or whose split is not told, has no split that counts', () => {
    const [first] = FACTS.evaluation.chambers;
    const chambers = [
      { ...first!, verdicts: [] },
      { ...first!, verdicts: [{ ...first!.verdicts[0]!, split: null }] },
      { ...first!, verdicts: [{ ...first!.verdicts[0]!, split: 9 }] },
    ];
    expect(splitThat(withFacts('evaluation', { chambers }))).toEqual([]);
  });
});

describe('one cut short', () => {
  test('with one chamber or none there is nothing to try', () => {
    const only = { expected: 'there is only one chamber', isGood: null };
    const { chambers } = FACTS.assembly;
    expect(told(withFacts('assembly', { chambers: chambers.slice(0, 1) }), /one cut short/u)).toEqual(only);
    expect(told(withFacts('assembly', { chambers: [] }), /one cut short/u)).toEqual(only);
  });

  test('does not turn where the next cut is another one', () => {
    expect(told(FACTS, /one cut short/u)).toEqual({ expected: 'it does not turn', isGood: true });
  });
});

test.each([
  [{ keyIsHeld: null }, {}, 'not known yet', null],
  [{ keyIsHeld: false }, {}, 'it comes out', false],
  [{ keyIsHeld: true }, { catches: false, play: 0.5 }, 'it is held; upright it comes out', true],
  [{ keyIsHeld: true }, { catches: null, play: 0.5 }, 'it is held; upright it comes out', true],
  [{ keyIsHeld: true }, { catches: true, play: null }, 'it is held; upright it comes out', true],
  [
    { keyIsHeld: true },
    { catches: true, play: 0.508 },
    'it is held; back upright the pins may catch, with .020 in of end play',
    false,
  ],
] as const)('pulled, %j and %j: %s', (way, play, expected, isGood) => {
  expect(told(withFacts('play', play, withFacts('way', way)), /^Pull/u)).toEqual({ expected, isGood });
});

describe('a wrong key', () => {
  const strict = { expected: 'it must not turn', isGood: null };
  const loose = { expected: 'it must not turn; one with neighbouring cuts may', isGood: false };
  const [line] = FACTS.assembly.lines;
  const wrongKey = (depthStep: number | null, clearance: number, ...drops: readonly number[]) => {
    const chambers = FACTS.assembly.chambers.map((chamber, i) => ({
      ...chamber,
      crestDrops: drops[i] === undefined ? [] : [drops[i]],
    }));
    const assembly = { ...FACTS.assembly, chambers, lines: [{ ...line!, clearance }] };
    return told(withFacts('thresholds', { depthStep }, { ...FACTS, assembly }), /wrong key/u);
  };

  test('may turn where the play and the lowest crest come to more than half a step', () => {
    expect(wrongKey(0.2, 0.08)).toEqual(strict);
    expect(wrongKey(0.25, 0.125)).toEqual(strict);
    expect(wrongKey(0.2, 0.11)).toEqual(loose);
    expect(wrongKey(0.2, 0.08, 0, 0.03)).toEqual(loose);
    expect(wrongKey(0.2, 0.08, 0.03, 0)).toEqual(loose);
    expect(wrongKey(0.2, 0.08, 0.01, 0.015)).toEqual(strict);
    expect(wrongKey(0.2, 0.08, -0.5, -0.5)).toEqual(strict);
  });

  test('nothing is said where no step is known, nor with no line', () => {
    expect(wrongKey(null, 9)).toEqual(strict);
    const facts = withFacts('thresholds', { depthStep: 0.2 }, withFacts('assembly', { lines: [] }));
    expect(told(facts, /wrong key/u)).toEqual(strict);
  });
});

describe('which way up', () => {
  const shapes: readonly EndShape[] = [
    { kind: 'flat' },
    { kind: 'bevel', width: 0.1, angle: 0.5 },
    { kind: 'radius', radius: 0.1 },
    { kind: 'dome', radius: 5 },
    { kind: 'cone', tipRadius: 0.3, halfAngle: 0.7 },
    { kind: 'cup', mouthRadius: 0.5, halfAngle: 0.7 },
    { kind: 'sphere', radius: 1 },
  ] as unknown as readonly EndShape[];
  const wayUp = (lower: number, upper: number, flipped = false) =>
    sayWayUp({ lower: { shape: shapes[lower]! }, upper: { shape: shapes[upper]! }, flipped } as Parameters<
      typeof sayWayUp
    >[0]);

  test('is told by the ends as a person sees them', () => {
    expect(shapes.map((_, i) => wayUp(i, i === 3 ? 0 : 3))).toEqual([
      'flat end down, crown up',
      'broken edge down, crown up',
      'rounded edge down, crown up',
      'crown down, flat end up',
      'point down, crown up',
      'dimple down, crown up',
      'round end down, crown up',
    ]);
    expect(wayUp(4, 3, true)).toBe('point down, crown up (turned over)');
  });

  test('alike ends go in either way up', () => {
    expect(shapes.map((_, i) => wayUp(i, i))).toEqual(shapes.map(() => 'either way up'));
    expect(wayUp(0, 0, true)).toBe('turned over');
  });
});

describe('rows of the sheet', () => {
  test('a ball and a spring have no way up, a spring no length', () => {
    const job = buildJob({ chambers: [{ rootDepth: 0.26, ball: 0.109, masterPins: [0.03] }] });
    const [row] = loadSheet(factsOf(job)).rows;
    const brief = (parts: NonNullable<typeof row>['inPlug']) =>
      parts.map(({ part, role, length, wayUp }) => [
        part,
        role,
        length === null ? null : Number((length / 25.4).toFixed(4)),
        wayUp,
      ]);
    expect(brief(row!.inPlug)).toEqual([
      ['ball-1', 'ball', 0.109, null],
      ['bottom-pin-1', 'bottomPin', 0.063, 'flat end down, crown up'],
      ['master-pin-1-1', 'masterPin', 0.03, 'either way up'],
    ]);
    expect(brief(row!.inShell)).toEqual([
      ['spring-1', 'spring', null, null],
      ['driver-1', 'driver', 0.2, 'either way up'],
    ]);
  });

  test('an empty chamber, and one that was not measured, have no height', () => {
    const job = changed(JOB, (copy) => {
      copy.plans[0]!.stacks[0]!.items = [];
      for (const part of copy.parts) if (part.id === 'bottom-pin-2') delete part.length;
    });
    const { rows } = loadSheet(factsOf(job));
    expect(rows.map(({ number, inPlugHeight, inPlug }) => [number, inPlugHeight, inPlug.length])).toEqual([
      [2, null, 1],
      [1, null, 0],
    ]);
    expect(rows[1]!.inShell).toEqual([]);
    expect(rows[0]!.inPlug[0]!.length).toBeNull();
  });
});
