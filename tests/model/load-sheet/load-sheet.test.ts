/** The load sheet of cylinder H, and the tests it predicts, against what was built in on purpose. Inches, degrees. */
import { describe, expect, test } from 'vitest';
import { gatherFacts } from '../../../src/model/findings/facts.ts';
import type { FindingCode } from '../../../src/model/findings/finding-codes.ts';
import { loadSheet } from '../../../src/model/load-sheet/load-sheet.ts';
import { toDegrees } from '../../../src/model/radians.ts';
import type { Job } from '../../../src/model/schema/job-schema.ts';
import { cylinderH, lookAt } from '../../support/cylinder-h.ts';
import { FINDING_CASES, soundJob } from '../../support/finding-cases.ts';
import { buildJob } from '../../support/job-builder.ts';

const INCH = 25.4;

function sheet(job: Job) {
  const { bench, assembly, evaluation } = lookAt(job);
  return loadSheet(gatherFacts(bench, assembly, evaluation));
}

test('farthest chamber first; ball, then pin into the plug; spring, then driver into the shell; which way up', () => {
  const { rows } = sheet(cylinderH());
  expect(rows.map(({ number }) => number)).toEqual([6, 5, 4, 3, 2, 1]);
  const first = rows[5]!;
  expect(first.inPlug.map(({ label, wayUp }) => [label, wayUp])).toEqual([
    ['ball 1', null],
    ['bottom pin 1', 'dimple down, crown up'],
  ]);
  expect(first.inShell.map(({ label, wayUp }) => [label, wayUp])).toEqual([
    ['spring 1', null],
    ['driver 1', 'broken edge down, flat end up'],
  ]);
  expect((first.inPlugHeight ?? 0) / INCH).toBeCloseTo(0.3345, 5);
});

test('counted from the tip the order of loading stays, the numbers turn round', () => {
  const { rows } = sheet(cylinderH((job) => (job.settings.numbering = 'tip')));
  expect(rows.map(({ number }) => number)).toEqual([1, 2, 3, 4, 5, 6]);
});

test('tools of cylinder H', () => {
  const [tools] = sheet(cylinderH()).tools;
  expect(toDegrees(tools!.turnAtLeast)).toBeCloseTo(24.39, 2);
  expect((tools!.followerFrom ?? 0) / INCH).toBeCloseTo(0.743, 5);
  expect(tools!.followerTo / INCH).toBeCloseTo(0.752, 5);
  expect(tools!.shimUpTo / INCH).toBeCloseTo(0.004, 5);
});

test('master pins go into the plug with what is under them, a part planned turned over says so', () => {
  const job = buildJob({ chambers: [{ rootDepth: 0.26, masterPins: [0.03] }] });
  job.plans[0]!.stacks[0]!.items[0]!.flipped = true;
  const [row] = sheet(job).rows;
  expect(row?.inPlug.map(({ role }) => role)).toEqual(['bottomPin', 'masterPin']);
  expect(row?.inPlug[0]?.wayUp).toBe('crown down, point up (turned over)');
  expect(row?.inShell.map(({ role }) => role)).toEqual(['spring', 'driver']);
});

describe('what the tests will show', () => {
  const expectation = (job: Job, what: RegExp) => sheet(job).tests.find((each) => what.test(each.what))!;
  const inJob = (code: FindingCode) => FINDING_CASES[code]()[0];

  test('all as it should be in a sound job with everything measured', () => {
    const { tests } = sheet(soundJob());
    expect(tests.filter(({ isGood }) => isGood === false)).toEqual([]);
    expect(tests[0]).toMatchObject({
      what: 'Chambers 1, 2, 3, 4, 5 and 6 alone, one after the other: the lower stack in the empty shell, then with driver and spring',
      expected: 'turns, then turns',
      isGood: true,
    });
    expect(expectation(soundJob(), /^Key out/u)).toMatchObject({
      expected: 'it does not turn: 6 of 6 chambers hold',
      isGood: true,
    });
    // chambers level, .004 from where the bottom pin stops the plug
    expect(expectation(soundJob(), /lifted lightly/u).expected).toBe('it turns up to a lift of .004 in');
    expect(expectation(soundJob(), /one cut short/u)).toMatchObject({
      expected: 'it does not turn',
      isGood: true,
    });
  });

  test.each([
    ['pulls-out-turned', /^Pull/u, 'it comes out'],
    ['end-play-catches', /^Pull/u, /held; back upright the pins may catch/u],
    ['driver-strikes-cap', /twenty times/u, 'it stops: no room above chamber 3'],
    ['nose-too-high', /twenty times/u, /may jam at chamber/u],
    ['turns-when-lifted', /lifted lightly/u, 'it turns only when lifted'],
    ['turns-when-lifted', /^Key fully in/u, 'it does not turn'],
    ['loose-for-neighbour', /wrong key/u, /neighbouring cuts may/u],
  ] as const)('%s: %s', (code, what, expected) => {
    const told = expectation(inJob(code), what);
    if (typeof expected === 'string') expect(told.expected).toBe(expected);
    else expect(told.expected).toMatch(expected);
    expect(told.isGood).toBe(false);
  });

  test('chambers that should do otherwise are told apart', () => {
    const job = soundJob();
    job.groups[4]!.height.readings[0]!.value += 0.01 * INCH;
    const [others, fifth] = sheet(job).tests;
    expect(others?.what).toMatch(/^Chambers 1, 2, 3, 4 and 6 alone/u);
    expect(fifth).toMatchObject({ expected: 'does not turn, then does not turn', isGood: false });
    expect(fifth?.what).toMatch(/^Chamber 5 alone: /u);
  });

  test('with every chamber open at rest the plug turns without a key', () => {
    const job = soundJob();
    job.plans[0]!.stacks.forEach((stack) =>
      stack.rest!.belowLine.readings.forEach((reading) => (reading.value = 0)),
    );
    expect(expectation(job, /^Key out/u)).toMatchObject({
      expected: 'it turns: nothing stands across',
      isGood: false,
    });
  });

  test('a key with all cuts alike turns one cut short as well', () => {
    const job = buildJob({
      chambers: Array.from({ length: 5 }, () => ({ rootDepth: 0.26, restDepth: 0.1 })),
    });
    const key = job.keys[0]!;
    key.cuts.push({ ...structuredClone(key.cuts[4]!), id: 'one-more' });
    key.cuts[5]!.position.readings[0]!.value += 0.16 * INCH;
    key.tip!.position!.readings[0]!.value += 0.16 * INCH;
    expect(expectation(job, /one cut short/u)).toMatchObject({
      expected: 'it turns there as well',
      isGood: false,
    });
  });
});
