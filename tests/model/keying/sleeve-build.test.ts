/**
 * A sleeve around the plug, planned for two keys from their cuts: an invented cylinder worked by hand (plug .748, sleeve .873,
 * metal under the key .042, so that the lower stack at the plug is .706 less the root and at the sleeve .7685 less the root).
 * All figures in inches; cuts are wide enough for the ball, so that it stands on the root.
 */
import { describe, expect, test } from 'vitest';
import { evaluate } from '../../../src/model/evaluate/evaluate.ts';
import { keyOutcomes } from '../../../src/model/keying/key-outcomes.ts';
import { offsetsAt } from '../../../src/model/keying/merge-splits.ts';
import { type KeysPlan, planKeys } from '../../../src/model/keying/plan-keys.ts';
import { putKeysPlan } from '../../../src/model/keying/put-plan.ts';
import { sayOutcome } from '../../../src/model/keying/say-turning.ts';
import type { Job } from '../../../src/model/schema/job-schema.ts';
import { buildJob } from '../../support/job-builder.ts';
import { withKey } from '../../support/keyed-job.ts';

const A = [0.369, 0.421, 0.333, 0.393, 0.453, 0.303];
const B = [0.393, 0.361, 0.369, 0.453, 0.393, 0.369];
const mm = (inches: number) => inches * 25.4;
const inches = (length: number) => length / 25.4;

function sleeveJob(innerPlay: number): Job {
  const job = buildJob({
    plugDiameter: 0.748,
    floorHeight: 0.042,
    clearance: innerPlay,
    sleeve: { outerDiameter: 0.873, clearance: 0.004 },
    firstChamber: 0.35,
    chamberSpacing: 0.25,
    chamberDiameter: 0.16,
    pinDiameter: 0.156,
    bladeHeight: 0.53,
    rootFlat: 0.09,
    capDepth: 0.75,
    tip: { position: 2.3, noseHeight: 0.06, rampDeg: 45 },
    driverEnd: { kind: 'bevel', width: 0.005, angleDeg: 45 },
    chambers: A.map((rootDepth) => ({ rootDepth, ball: 0.15625 })),
  });
  const alternating = A.map((root, i) => (i % 2 === 0 ? root : B[i]!));
  const deep = A.map((root, i) => (i === 2 ? root - 0.02 : root));
  return [
    ['key-b', B],
    ['alternating', alternating],
    ['deep', deep],
  ].reduce((now, [id, roots]) => withKey(now, id as string, roots as number[]), job);
}

const planned = (job: Job, merged: readonly string[] = []): KeysPlan =>
  planKeys(job, {
    cylinder: 'cylinder',
    plan: 'plan',
    wants: [
      { key: 'key', line: 'inner-line' },
      { key: 'key-b', line: 'outer-line' },
    ],
    merged,
  });

function put(job: Job, plan: KeysPlan): Job {
  let count = 0;
  return putKeysPlan(job, plan, () => `new-${(count += 1)}`).job;
}

const outcomesOf = (job: Job) =>
  new Map(
    keyOutcomes(job, { cylinder: 'cylinder', plan: 'plan' }, (selection) => evaluate(job, selection)).map(
      (each) => [each.key, each],
    ),
  );

describe('without play inside', () => {
  const job = sleeveJob(0);

  test('bottoms and spacers are those worked by hand, in all six chambers', () => {
    const { chambers } = planned(job);
    const bottoms = [0.337, 0.285, 0.373, 0.313, 0.253, 0.3995];
    const spacers = [0.0385, 0.1225, 0.0265, 0.0025, 0.1225, 0.0035];
    chambers.forEach((chamber, i) => {
      expect(inches(chamber.bottom!)).toBeCloseTo(bottoms[i]!, 6);
      expect(inches(chamber.masters[0]!.length)).toBeCloseTo(spacers[i]!, 6);
    });
  });

  test('in chamber 6 the split of the sleeve is the lower one', () => {
    const [lower, upper] = planned(job).chambers[5]!.splits;
    expect([lower?.serves[0]?.line, upper?.serves[0]?.line]).toEqual(['outer-line', 'inner-line']);
  });

  test('the spacers of .0025 and .0035 are too thin, and one split is offered instead', () => {
    const { chambers } = planned(job);
    expect(chambers.map(({ masters }) => masters[0]!.isThin)).toEqual([
      false,
      false,
      false,
      true,
      false,
      true,
    ]);
    expect(chambers.map(({ offer }) => offer?.saves ?? 0)).toEqual([0, 0, 0, 1, 0, 1]);
  });

  test('a split at .3145 stands .00150 high for the plug and .00100 low for the sleeve', () => {
    const wanted = planned(job).chambers[3]!.splits.flatMap(({ height, serves }) =>
      serves.map(({ offset, lowest, highest }) => ({ level: height - offset, lowest, highest })),
    );
    const [plug, sleeve] = offsetsAt(mm(0.3145), wanted).map(inches);
    expect(plug).toBeCloseTo(0.0015, 6);
    expect(sleeve).toBeCloseTo(-0.001, 6);
  });
});

test('.004 of play inside lowers every outer offset by .0020, and no inner one', () => {
  const built = put(sleeveJob(0), planned(sleeveJob(0)));
  const withPlay: Job = { ...built, cylinders: sleeveJob(0.004).cylinders };
  const splitsAt = (job: Job, key: string, line: string) =>
    evaluate(job, { cylinder: 'cylinder', key, plan: 'plan' }).chambers.map(({ splits }) =>
      splits.filter((split) => split.line === line),
    );
  const moved = (key: string, line: string) =>
    splitsAt(withPlay, key, line).flatMap((splits, i) =>
      splits.map(({ offset }, k) => inches(offset - splitsAt(built, key, line)[i]![k]!.offset)),
    );
  expect(moved('key-b', 'outer-line')).toHaveLength(12);
  for (const by of moved('key-b', 'outer-line')) expect(by).toBeCloseTo(-0.002, 6);
  for (const by of moved('key', 'inner-line')) expect(by).toBeCloseTo(0, 6);
});

test('with that play a split at .3145 turns at both lines', () => {
  const wanted = planned(sleeveJob(0.004)).chambers[3]!.splits.flatMap(({ height, serves }) =>
    serves.map(({ offset, lowest, highest }) => ({
      offset: mm(0.3145) - (height - offset),
      lowest,
      highest,
    })),
  );
  expect(wanted).toHaveLength(2);
  for (const { offset, lowest, highest } of wanted) {
    expect(offset).toBeGreaterThan(lowest);
    expect(offset).toBeLessThan(highest);
  }
});

describe.each([0, 0.004])('what turns, with %d of play inside', (play) => {
  const job = sleeveJob(play);

  test.each([
    ['as planned', []],
    ['with one split instead of the thinnest spacers', ['chamber-4', 'chamber-6']],
  ] as const)('%s', (_, merged) => {
    const plan = planned(job, merged);
    const outcomes = outcomesOf(put(job, plan));
    expect(outcomes.get('key')?.does).toBe('plug');
    expect(outcomes.get('key-b')?.does).toBe('together');
    const alternating = outcomes.get('alternating')!;
    expect(alternating).toMatchObject({ does: 'nothing', isMixed: true });
    expect(sayOutcome(alternating)).toBe(
      'turns nothing: some chambers stand at the inner line, some at the outer',
    );
    expect(outcomes.get('deep')).toMatchObject({ does: 'nothing', isMixed: false });
    expect(outcomes.get('deep')?.heldBy[0]?.chambers).toEqual([3]);
    expect(plan.chambers.map(({ masters }) => masters.length)).toEqual(
      merged.length === 0 ? [1, 1, 1, 1, 1, 1] : [1, 1, 1, 0, 1, 0],
    );
  });
});
